// What was typed or chosen in the fields while the studio couldn’t hear it: told once it can again; before the page comes anew, kept as a draft.
// A studio that can’t take it isn’t asked for ever.
const mostTries = 6;
// So long, in milliseconds, a way may be broken before the page is told so.
const untold = 60_000;

export function tellUnheard(entries) {
  // Each field with what stood in it, the last touched last.
  const touched = new Map();
  let form = null;
  let tries = 0;
  let lost = null;

  const fieldOf = (event) => (event.target instanceof Element ? event.target.closest(".bench form.entry :is(input, select, textarea)") : null);
  const edited = (event) => {
    const field = fieldOf(event);
    if (!field) return;
    form = field.form.elements.Operation.value;
    touched.delete(field);
    touched.set(field, { at: performance.now(), form, name: field.name, words: field.value, isTyped: field.matches("textarea, input[type=text]") });
  };

  // Once another form has come by a way that holds, what was typed in the one before is saved, or stays with it.
  const heard = new MutationObserver(() => {
    if (lost !== null || touched.size === 0) return;
    const now = document.querySelector(".bench form.entry")?.elements.Operation?.value;
    for (const [field, { form: of }] of touched) if (of !== now) touched.delete(field);
  });
  heard.observe(document.querySelector(".bench") ?? document.body, { subtree: true, childList: true, attributes: true, attributeFilter: ["value"] });

  // What was sent goes with no other form: it was saved if one comes in its place.
  const sent = (event) => {
    if (!(event.target instanceof Element && event.target.matches(".bench form.entry"))) return;
    for (const [field, entry] of touched) if (field.form === event.target) entry.isSent = true;
  };

  // A page hears words as they are typed, and choices when they are made.
  const tell = (field) => {
    for (const what of ["input", "change"]) field.dispatchEvent(new Event(what, { bubbles: true }));
  };

  const away = new MutationObserver(() => (lost = "lost" in document.documentElement.dataset ? (lost ?? performance.now()) : lost));
  away.observe(document.documentElement, { attributeFilter: ["data-lost"] });

  const back = () => {
    const since = (lost ?? performance.now()) - untold;
    const unheard = [...touched].filter(([, { at }]) => at >= since);
    lost = null;
    touched.clear();
    for (const [field, { form: of, name, words, isTyped, isSent }] of unheard) {
      // Another form that was asked for before has come in its place now: words that it has room for go with it.
      const other = field.isConnected || !isTyped || isSent ? null : document.querySelector(`.bench form.entry [name="${CSS.escape(name)}"]`);
      if (other?.value === "") other.value = words;
      if (field.isConnected && field.form.elements.Operation.value === of) {
        if (isTyped) field.value = words;
        tell(field);
      } else if (words && other?.value === words) tell(other);
    }
    const line = document.getElementById("bench-line");
    if (line?.value) line.dispatchEvent(new Event("input", { bubbles: true }));
  };

  const anew = (event) => {
    const open = document.querySelector(".bench form.entry");
    if (!open || open.elements.Operation.value !== form) return;
    const body = new URLSearchParams(new FormData(open));
    event.detail.push(
      fetch(entries().replace(/entries$/, "draft"), { method: "POST", body, redirect: "manual" }).then((answer) => {
        if ((answer.status === 429 || answer.status >= 500) && ++tries < mostTries) throw new Error(String(answer.status));
      }),
    );
  };

  for (const what of ["input", "change"]) document.addEventListener(what, edited);
  document.addEventListener("submit", sent);
  addEventListener("studio-back", back);
  addEventListener("studio-anew", anew);
  return () => {
    away.disconnect();
    heard.disconnect();
    document.removeEventListener("submit", sent);
    for (const what of ["input", "change"]) document.removeEventListener(what, edited);
    removeEventListener("studio-back", back);
    removeEventListener("studio-anew", anew);
  };
}
