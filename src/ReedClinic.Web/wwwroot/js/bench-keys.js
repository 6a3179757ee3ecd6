// The bench's keys. Each control names its key in data-bench-key; a key presses the control it stands on, and nothing else.
// Which keys they are, and whether single keys work at all, is this device's own setting: a foot pedal is plugged into a device.
const store = "reedclinic-bench-keys";
const pitchLetters = /^[a-g]$/;

const read = () => {
  try {
    return JSON.parse(localStorage.getItem(store)) ?? {};
  } catch {
    return {};
  }
};

let settings = { off: false, keys: {}, ...read() };

const keyOf = (control) => settings.keys[control.dataset.benchName] ?? control.dataset.benchKey;

// A way to a field works where its button isn't shown: on a narrow screen the field is at hand anyway.
const shown = (control) => !control.disabled && (control.getClientRects().length > 0 || control.dataset.focus !== undefined);

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
  const control = controls().find((one) => keyOf(one) === key && shown(one));
  return control ? { key, control, press: () => act(control) } : null;
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

// A press that changes what the keys offer is waited for: what is pressed meanwhile is meant for what comes, never for what was there.
// A list that doesn't come (the connection is away) gets none of them; after what was said itself they are pressed all the same.
const patience = 5_000;
let turning = null;

function turns(event) {
  const control = event.target instanceof Element ? event.target.closest("[data-turns]") : null;
  const pad = control?.closest(".picks");
  if (!pad) return;
  clearTimeout(turning?.late);
  turning = { pad, from: pad.dataset.turn, keys: turning?.keys ?? [], late: setTimeout(() => over(control.dataset.say !== undefined), patience) };
}

// Keys that the list of picks has now, or may have when it has turned.
const ofThePad = (key, control) =>
  control ? control.closest(".picks") !== null : /^[0-9]$/.test(key) || Object.entries(settings.keys).some(([name, own]) => own === key && name.startsWith("pick-"));

function turned() {
  // On another reed nothing is pressed that was meant for this one.
  if (turning && (!turning.pad.isConnected || turning.pad.dataset.turn !== turning.from)) over(turning.pad.isConnected);
}

function over(pressing) {
  const { keys, late } = turning;
  clearTimeout(late);
  turning = null;
  while (pressing && keys.length > 0 && !turning) pressed(keys.shift());
  if (turning) turning.keys = keys;
}

function pressed(key) {
  const control = controls().find((one) => keyOf(one) === key && shown(one));
  // What only looks on leaves the focus where it is.
  if (control && !control.matches("summary") && !control.dataset.focus && !("keepFocus" in control.dataset)) control.focus({ preventScroll: true });
  if (control) act(control);
}

function press(event, line) {
  if (event.key === "Escape" && !event.defaultPrevented && !document.querySelector("dialog[open]")) {
    if (turning) turning.keys = [];
    return leave(event);
  }
  if (settings.off || event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.repeat) return;
  if (document.querySelector("dialog[open]") || typing(event.target)) return;
  const key = event.key;
  // An arrow or Enter on a control is that control's own.
  if (event.target instanceof Element && event.target.closest("button, a, summary, [role=button], [role=radio]") && (key === "Enter" || key === " ")) return;
  const control = controls().find((one) => keyOf(one) === key && shown(one));
  if (turning && ofThePad(key, control)) {
    event.preventDefault();
    turning.keys.push(key);
  } else if (control) {
    event.preventDefault();
    pressed(key);
  } else if (line && pitchLetters.test(key)) {
    // A note begins with its letter: the line takes it, and gives the keys back when it is sent.
    event.preventDefault();
    line.begin(key);
  }
}

export function listen(line) {
  const heard = (event) => press(event, line);
  document.addEventListener("keydown", heard);
  document.addEventListener("click", turns, { capture: true });
  const seen = new MutationObserver(() => {
    label();
    turned();
  });
  const bench = document.querySelector(".bench");
  if (bench) seen.observe(bench, { childList: true, subtree: true, attributes: true, attributeFilter: ["data-turn"] });
  label();
  return () => {
    document.removeEventListener("keydown", heard);
    document.removeEventListener("click", turns, { capture: true });
    clearTimeout(turning?.late);
    turning = null;
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
