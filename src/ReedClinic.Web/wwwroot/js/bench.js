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
