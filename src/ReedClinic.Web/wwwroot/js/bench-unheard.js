// What was typed or chosen in the fields while the studio couldn’t hear it: told once it can again; before the page comes anew, kept as a draft.
// A studio that can’t take it isn’t asked for ever.
const mostTries = 6;

export function tellUnheard(entries) {
  const unheard = new Set();
  let touched = null;
  let tries = 0;

  const edited = (event) => {
    const field = event.target instanceof Element ? event.target.closest(".bench form.entry :is(input, select, textarea)") : null;
    if (!field) return;
    touched = field.form.elements.Operation.value;
    if ("lost" in document.documentElement.dataset) unheard.add(field);
  };

  const back = () => {
    for (const field of unheard) {
      // A page hears words as they are typed, and choices when they are made.
      for (const what of ["input", "change"]) field.dispatchEvent(new Event(what, { bubbles: true }));
    }
    unheard.clear();
  };

  const anew = (event) => {
    const form = document.querySelector(".bench form.entry");
    if (!form || form.elements.Operation.value !== touched) return;
    const body = new URLSearchParams(new FormData(form));
    event.detail.push(
      fetch(entries().replace(/entries$/, "draft"), { method: "POST", body, redirect: "manual" }).then((answer) => {
        if ((answer.status === 429 || answer.status >= 500) && ++tries < mostTries) throw new Error(String(answer.status));
      }),
    );
  };

  for (const what of ["input", "change"]) document.addEventListener(what, edited);
  addEventListener("studio-back", back);
  addEventListener("studio-anew", anew);
  return () => {
    for (const what of ["input", "change"]) document.removeEventListener(what, edited);
    removeEventListener("studio-back", back);
    removeEventListener("studio-anew", anew);
  };
}
