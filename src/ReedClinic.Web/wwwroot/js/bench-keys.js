// The bench's keys. Each control names its key in data-bench-key; a key presses the control it stands on, and nothing else.
// Which keys they are, and whether single keys work at all, is this device's own setting: a foot pedal is plugged into a device.
import { ahead } from "./bench-ahead.js";
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
let early = null;
let presses = null;
let settings = { off: false, keys: {}, ...read() };

// What no control can be given: keys that only change others, that lead through the page, or that a screen's keyboard sends for all of its keys.
const never = new Set(["Tab", "Escape", "Enter", "Shift", "Control", "Alt", "AltGraph", "Meta", "CapsLock", "NumLock", "ScrollLock", "Fn", "FnLock", "Dead", "Process", "Unidentified"]);
const usualAgain = new Set(["Backspace", "Delete"]);

// The space bar has no sign of its own.
const said = (key) => (key === " " ? (document.querySelector("[data-space]")?.dataset.space ?? key) : key);

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
    const key = settings.off ? "" : said(keyOf(control));
    const hint = control.querySelector("kbd");
    if (hint && hint.textContent !== key) hint.textContent = key;
    if (key) control.setAttribute("aria-keyshortcuts", key);
    else control.removeAttribute("aria-keyshortcuts");
  }
}

const typing = (target) =>
  target instanceof Element && (target.closest("input:not([type=radio]):not([type=checkbox]), textarea, select, [contenteditable]") !== null);

// Where the page stood when a fold was opened by its key.
const came = new WeakMap();

// Opens or closes a fold, brings what is in it into sight, and gives it the keys; closed, the page stands where it did.
function turn(fold) {
  fold.open = !fold.open;
  if (fold.open) {
    came.set(fold, scrollY);
    const first = fold.querySelector("input:not([type=hidden]), select, textarea, button, a[href]") ?? fold.querySelector("summary");
    first.focus({ preventScroll: true });
    fold.scrollIntoView({ block: "nearest" });
    first.scrollIntoView({ block: "nearest" });
  } else {
    fold.querySelector("summary").focus({ preventScroll: true });
    scrollTo({ top: came.get(fold) ?? scrollY, behavior: "instant" });
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
  // The hands stay in the line, also when the press has to wait.
  const press = () => {
    if (!held(key, control, act)) act(control);
  };
  return control ? { key, control, press } : null;
}

// The key that leads to the line, where it is a sign: a letter may begin a word.
export const leadsToLine = (event) =>
  !settings.off && !event.ctrlKey && !event.metaKey && !event.altKey && /^[^\p{L}\p{N}]$/u.test(event.key) && find(event.key)?.dataset.focus === "bench-line";

// Esc leaves what was opened last: the fold that one is in, or the list that is offered for now.
function leave(event) {
  const fold = event.target instanceof Element ? event.target.closest("details[open]:has(> summary[data-bench-key])") : null;
  const offered = document.querySelector("[data-close-list]");
  const sheet = document.querySelector("[data-keep-focus][aria-expanded=true]:not([data-folds])");
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

// What was pressed before goes first: a key that leads to another reed waits behind it, too.
const held = (key, control, how) => (ofThePad(key, control) || (control?.matches("a[href]") && pad?.keeps())) && Boolean(pad?.take(key, control, how));

// Esc comes after what was pressed before it, and takes none of that away.
function escaped(event) {
  if (early?.leave(event)) return;
  if (pad?.keeps()) pad.take("Esc", null, () => leave({ target: document.activeElement }), () => document.body);
  else leave(event);
}

// The buttons of an entry are one stop of the Tab key: the arrow keys lead from one to the other.
function walked(event) {
  const mends = event.target instanceof Element ? event.target.closest(".mends") : null;
  if (!mends || event.ctrlKey || event.metaKey || event.altKey || !(event.key === "ArrowLeft" || event.key === "ArrowRight")) return;
  event.preventDefault();
  mends.querySelector(event.key === "ArrowLeft" ? "button" : "button:last-of-type").focus();
}

function press(event, line) {
  if (event.key === "Escape" && !event.defaultPrevented && !document.querySelector("dialog[open]")) return escaped(event);
  if (settings.off || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.repeat) return;
  if (document.querySelector("dialog[open]") || typing(event.target)) return;
  if (early?.take(event)) return;
  const key = event.key;
  // An arrow or Enter on a control is that control's own.
  if (event.target instanceof Element && event.target.closest("button, a, summary, [role=button], [role=radio]") && (key === "Enter" || key === " ")) return;
  const ofEntry = key === "Delete" && event.target instanceof Element ? event.target.closest(".log-line")?.querySelector("[data-of-entry]") : null;
  if (ofEntry) {
    event.preventDefault();
    ofEntry.click();
  } else if (usual(key, line)) {
    event.preventDefault();
  }
}

// Presses what a key stands for; false where it stands for nothing.
function usual(key, line) {
  const control = find(key);
  if (held(key, control)) return true;
  if (control) pressed(control);
  // A note begins with its letter: the line takes it, and gives the keys back when it is sent.
  else if (line && pitchLetters.test(key)) line.begin(key);
  else {
    // A key that has nothing to press just now says why.
    const why = line && silentOf(key);
    if (why) line.silent(why);
    return false;
  }
  return true;
}

const silentOf = (key) =>
  [...document.querySelectorAll("[data-for][data-silent]")].find((field) => (settings.keys[field.dataset.for] ?? field.dataset.usual) === key)?.dataset.silent;

// Something was answered: what waited for it may go on.
export const moved = () => pad?.move();

// Presses a key that was pressed before there was anything to press.
export const pressKey = (key) => presses?.(key);

// What was typed ahead for the entry that has just come into the line.
export const typedAhead = () => early?.taken() ?? null;

export function listen(line) {
  const heard = (event) => press(event, line);
  document.addEventListener("keydown", heard);
  document.addEventListener("keydown", walked);
  // What was typed in the fields isn't given up by Esc, also where the studio hasn't heard of it yet.
  const typed = (event) => event.target.closest("form.entry")?.querySelector("[data-leave-fields]")?.removeAttribute("data-leave-fields");
  document.addEventListener("input", typed);
  const ownWords = (event) => event.target instanceof Element && event.target.closest("[data-own-words]") && early?.expect();
  document.addEventListener("click", ownWords, { capture: true });
  const seen = new MutationObserver(() => {
    label();
    early?.open();
  });
  const bench = document.querySelector(".bench");
  if (bench) seen.observe(bench, { childList: true, subtree: true });
  label();
  pad = line ? follow(line, Object.assign(pressed, { find }), line.unpressed) : null;
  presses = (key) => usual(key, line);
  early = line ? ahead(() => pad.asksWhy(), presses, line) : null;
  return () => {
    document.removeEventListener("keydown", heard);
    document.removeEventListener("keydown", walked);
    document.removeEventListener("input", typed);
    document.removeEventListener("click", ownWords, { capture: true });
    pad?.close();
    early?.clear();
    pad = early = presses = null;
    seen.disconnect();
  };
}

// The table of keys: one field for each control that may be given another key.
export function settle(table) {
  const off = table.querySelector("[name=off]");
  off.checked = settings.off;
  const fields = [...table.querySelectorAll("[data-for]")];
  const current = (field) => settings.keys[field.dataset.for] ?? field.dataset.usual;
  const fill = () => fields.forEach((field) => (field.value = said(current(field))));
  const keep = () => {
    localStorage.setItem(store, JSON.stringify(settings));
    label();
  };
  // What is wrong with a key stands beside the field in which it was pressed.
  const tell = (field, words) => {
    for (const one of fields) {
      const wrong = one === field && words;
      one.toggleAttribute("aria-invalid", Boolean(wrong));
      document.getElementById(one.getAttribute("aria-describedby")).textContent = wrong ? words : "";
    }
  };
  const choose = (field, pressed) => {
    const key = usualAgain.has(pressed) ? field.dataset.usual : pressed;
    const taken = fields.find((other) => other !== field && current(other) === key);
    tell(field, taken ? table.dataset.taken.replace("{0}", said(key)).replace("{1}", taken.dataset.words) : "");
    if (!taken && key === field.dataset.usual) delete settings.keys[field.dataset.for];
    else if (!taken) settings.keys[field.dataset.for] = key;
    field.value = said(current(field));
    keep();
  };
  fill();
  off.addEventListener("change", () => {
    settings.off = off.checked;
    keep();
  });
  for (const field of fields) {
    field.addEventListener("keydown", (event) => {
      if (event.key === "Enter") event.preventDefault();
      if (never.has(event.key) || event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      choose(field, event.key);
    });
    // A keyboard on the glass doesn't say which key it was: what it writes is the key.
    field.addEventListener("input", (event) => (event.data ? choose(field, [...event.data].at(-1)) : choose(field, "Backspace")));
  }
  table.querySelector("[data-reset]").addEventListener("click", () => {
    settings = { off: off.checked, keys: {} };
    tell(null, "");
    fill();
    keep();
  });
}
