import { typedAhead } from "./bench-keys.js";

// Brings the answer to a save into sight, and puts the focus on the first thing that has to be mended.
export function show(answer, field) {
  const told = document.getElementById(answer);
  const wanted = field ? document.getElementById(field) : null;
  if (wanted) {
    (wanted.matches("fieldset") ? wanted.querySelector("input") : wanted)?.focus({ preventScroll: true });
    wanted.closest(".field, fieldset")?.scrollIntoView({ block: "center" });
  } else if (told?.querySelector(".problems")) {
    told.focus({ preventScroll: true });
    told.scrollIntoView({ block: "center" });
  } else {
    told?.scrollIntoView({ block: "nearest" });
  }
}

// Opens the fields and puts the focus on the first of them, or on the words where these were asked for, with what was typed meanwhile.
export function open(fold) {
  const fields = document.getElementById(fold);
  if (!fields) return;
  fields.open = true;
  const ahead = typedAhead();
  const words = ahead && fields.querySelector("form.entry textarea[name=Words]");
  if (words && ahead.text) {
    words.value += ahead.text;
    words.dispatchEvent(new Event("input", { bubbles: true }));
  }
  const first = words ?? fields.querySelector("form.entry :is(input:not([type=hidden]), select, textarea)");
  first?.focus({ preventScroll: true });
  // Beside the log where there is room for both; else at the head of the window.
  fields.querySelector(".entry-title")?.scrollIntoView({ block: matchMedia("(min-width: 70rem)").matches ? "nearest" : "start" });
}
