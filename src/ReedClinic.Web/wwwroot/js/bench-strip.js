import { boxOf } from "./bench-store.js";

// What was asked on another reed and isn't answered, and what couldn't be sent from there, waits in this tab: the strip tells of it,
// by a mark for the eye and in words for readers.
const count = (reed, what) => {
  try {
    return JSON.parse(sessionStorage.getItem(`${boxOf(reed)}-${what}`))?.length ?? 0;
  } catch {
    return 0;
  }
};

// What is open on the reed that lies here is seen on its desk.
export function tellLeftOpen() {
  for (const place of document.querySelectorAll("[data-left-open]")) {
    const { leftOpen: reed, one, more, unsent } = place.dataset;
    const isHere = place.closest("[aria-current]") !== null;
    const [asked, waiting] = isHere ? [0, 0] : [count(reed, "questions"), count(reed, "waiting")];
    const words = [asked === 1 ? one : asked ? more.replace("{0}", asked) : "", waiting ? unsent.replace("{0}", waiting) : ""].filter(Boolean).join("; ");
    if (place.title === words) continue;
    const [mark, said] = [document.createElement("span"), document.createElement("span")];
    mark.setAttribute("aria-hidden", "true");
    mark.textContent = [asked ? `? ${asked}` : "", waiting ? `… ${waiting}` : ""].filter(Boolean).join(" ");
    said.className = "visually-hidden";
    said.textContent = `, ${words}`;
    place.title = words;
    place.replaceChildren(...(words ? [mark, said] : []));
  }
}

// What was typed, asked about or not sent on another reed is in this tab alone.
export function waitsElsewhere(here) {
  try {
    const mine = boxOf("");
    return Object.keys(sessionStorage).some((key) => {
      const [, reed] = (key.startsWith(mine) && /^(.+)-(?:questions|waiting|typed|unsent)$/.exec(key.slice(mine.length))) || [];
      return reed && reed !== here && JSON.parse(sessionStorage.getItem(key))?.length > 0;
    });
  } catch {
    return false;
  }
}
