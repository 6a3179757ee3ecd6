// The bench's keys. Each control names its key in data-bench-key; a key presses the control it stands on, and nothing else.
// Which keys they are, and whether single keys work at all, is this device's own setting: a foot pedal is plugged into a device.
import { follow } from "./bench-pad.js";

const store = "reedclinic-bench-keys";
const pitchLetters = /^[a-g]$/;

const read = () => {
  try {
    return JSON.parse(localStorage.getItem(store)) ?? {};
  } catch {
    return {};
  }
};

let pad = null;
let settings = { off: false, keys: {}, ...read() };

const keyOf = (control) => settings.keys[control.dataset.benchName] ?? control.dataset.benchKey;

// A way to a field works where its button isn't shown: on a narrow screen the field is at hand anyway.
// The keys of the picks work where they are folded away, too.
const shown = (control) => !control.disabled && (control.getClientRects().length > 0 || control.dataset.focus !== undefined || control.closest(".picks") !== null);

function controls() {
  return [...document.querySelectorAll("[data-bench-key]")];
}

// The key on each control is written into its own <kbd>, so that what is seen is what works.
export function label() {
  document.documentElement.dataset.benchKeys = settings.off ? "off" : "on";
  for (const control of controls()) {
    const key = settings.off ? "" : keyOf(control);
    const hint = control.querySelector("kbd");
    if (hint && hint.textContent !== key) hint.textContent = key;
    if (key) control.setAttribute("aria-keyshortcuts", key);
    else control.removeAttribute("aria-keyshortcuts");
  }
}

const typing = (target) =>
  target instanceof Element && (target.closest("input:not([type=radio]):not([type=checkbox]), textarea, select, [contenteditable]") !== null);

// Opens or closes a fold, brings what is in it into sight, and gives it the keys.
function turn(fold) {
  fold.open = !fold.open;
  if (fold.open) {
    const first = fold.querySelector("input:not([type=hidden]), select, textarea, button, a[href]") ?? fold.querySelector("summary");
    first.focus({ preventScroll: true });
    fold.scrollIntoView({ block: "nearest" });
    first.scrollIntoView({ block: "nearest" });
  } else {
    fold.querySelector("summary").focus();
  }
}

function act(control) {
  if (control.matches("summary")) return turn(control.parentElement);
  control.click();
}

// A key that stands alone in the line, and what it presses there with Enter. A note's letter is a pitch, and anything longer is words:
// what is typed is never taken for a key before it is sent.
export function alone(text) {
  const key = text.trim();
  if (settings.off || key.length !== 1 || pitchLetters.test(key)) return null;
  const control = find(key);
  const press = () => {
    if (!held(key, control)) act(control);
  };
  return control ? { key, control, press } : null;
}

// Esc leaves what was opened last: the fold that one is in, or the list that is offered for now.
function leave(event) {
  const fold = event.target instanceof Element ? event.target.closest("details[open]:has(> summary[data-bench-key])") : null;
  const offered = document.querySelector("[data-bench-key][aria-pressed=true]");
  const sheet = document.querySelector("[data-keep-focus][aria-expanded=true]");
  const left = document.querySelector("[data-leave], [data-unsaid]");
  if (fold) {
    fold.querySelector("[data-leave-fields]")?.click();
    turn(fold);
  } else if (left && !typing(event.target)) left.click();
  else if (sheet && !typing(event.target)) sheet.click();
  else if (offered && !typing(event.target)) offered.click();
}

// Keys that the list of picks has now, or may have when it has turned.
const ofThePad = (key, control) =>
  control ? control.closest(".picks") !== null : /^[0-9]$/.test(key) || Object.entries(settings.keys).some(([name, own]) => own === key && name.startsWith("pick-"));

const find = (key) => controls().find((one) => keyOf(one) === key && shown(one));

function pressed(control) {
  // What only looks on leaves the focus where it is.
  if (!control.matches("summary") && !control.dataset.focus && !("keepFocus" in control.dataset)) control.focus({ preventScroll: true });
  act(control);
}

const held = (key, control) => ofThePad(key, control) && Boolean(pad?.take(key, control));

function press(event, line) {
  if (event.key === "Escape" && !event.defaultPrevented && !document.querySelector("dialog[open]")) {
    pad?.clear();
    return leave(event);
  }
  if (settings.off || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.repeat) return;
  if (document.querySelector("dialog[open]") || typing(event.target)) return;
  const key = event.key;
  // An arrow or Enter on a control is that control's own.
  if (event.target instanceof Element && event.target.closest("button, a, summary, [role=button], [role=radio]") && (key === "Enter" || key === " ")) return;
  const control = find(key);
  if (held(key, control)) {
    event.preventDefault();
  } else if (control) {
    event.preventDefault();
    pressed(control);
  } else if (line && pitchLetters.test(key)) {
    // A note begins with its letter: the line takes it, and gives the keys back when it is sent.
    event.preventDefault();
    line.begin(key);
  } else if (line) {
    // A key that has nothing to press just now says why.
    const why = silentOf(key);
    if (why) line.silent(why);
  }
}

const silentOf = (key) =>
  [...document.querySelectorAll("[data-for][data-silent]")].find((field) => (settings.keys[field.dataset.for] ?? field.dataset.usual) === key)?.dataset.silent;

// Something was answered: what waited for it may go on.
export const moved = () => pad?.move();

export function listen(line) {
  const heard = (event) => press(event, line);
  document.addEventListener("keydown", heard);
  // What was typed in the fields isn't given up by Esc, also where the studio hasn't heard of it yet.
  const typed = (event) => event.target.closest("form.entry")?.querySelector("[data-leave-fields]")?.removeAttribute("data-leave-fields");
  document.addEventListener("input", typed);
  const seen = new MutationObserver(label);
  const bench = document.querySelector(".bench");
  if (bench) seen.observe(bench, { childList: true, subtree: true });
  label();
  pad = line ? follow(line, Object.assign(pressed, { find }), line.unpressed) : null;
  return () => {
    document.removeEventListener("keydown", heard);
    document.removeEventListener("input", typed);
    pad?.close();
    pad = null;
    seen.disconnect();
  };
}

// The table of keys: one field for each control that may be given another key.
export function settle(table) {
  const off = table.querySelector("[name=off]");
  const problem = table.querySelector("[role=alert]");
  off.checked = settings.off;
  const fields = [...table.querySelectorAll("[data-for]")];
  const fill = () => fields.forEach((field) => (field.value = settings.keys[field.dataset.for] ?? field.dataset.usual));
  const keep = () => {
    localStorage.setItem(store, JSON.stringify(settings));
    label();
  };
  fill();
  off.addEventListener("change", () => {
    settings.off = off.checked;
    keep();
  });
  for (const field of fields) {
    field.addEventListener("keydown", (event) => {
      if (event.key === "Tab" || event.key === "Escape" || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      if (event.key === "Shift") return;
      const taken = fields.find((other) => other !== field && other.value === event.key);
      problem.textContent = taken ? table.dataset.taken.replace("{0}", event.key).replace("{1}", taken.dataset.words) : "";
      if (taken) return;
      field.value = event.key;
      settings.keys[field.dataset.for] = event.key;
      keep();
    });
  }
  table.querySelector("[data-reset]").addEventListener("click", () => {
    settings = { off: off.checked, keys: {} };
    problem.textContent = "";
    fill();
    keep();
  });
}
