// What is folded to leave the log its room stays folded on this device, from reed to reed.
const store = "reedclinic-bench-folded";

function isFolded() {
  try {
    return localStorage.getItem(store) === "yes";
  } catch {
    return false;
  }
}

export function showFolds() {
  document.documentElement.toggleAttribute("data-way-folded", isFolded());
  for (const button of document.querySelectorAll("[data-folds]")) button.setAttribute("aria-expanded", String(!isFolded()));
}

document.addEventListener("click", (event) => {
  if (!(event.target instanceof Element && event.target.closest("[data-folds]"))) return;
  try {
    localStorage.setItem(store, isFolded() ? "no" : "yes");
  } catch {
    // A full or closed store: nothing is folded.
  }
  showFolds();
});
