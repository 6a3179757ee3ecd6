// What this tab keeps of the bench belongs to whoever said it: on somebody else’s page it is neither shown nor sent, and waits for its own.
export const boxOf = (reed) => `reedclinic-bench-${document.querySelector(".bench[data-me]")?.dataset.me}-${reed}`;

// A tab holds its name as long as it is open. What is asked about and not sent stands under that name in this device's store, too: where
// the tab is gone, another tab of the same account takes it up. Without locks (plain http) it stays in its tab alone.
const left = ["waiting", "questions"];
const nameAt = "reedclinic-bench-tab";
const lockOf = (tab) => `${nameAt}-${tab}`;
let tab = null;

// Settles on a name that no other tab holds: a tab that was doubled takes a new one.
async function named() {
  if (tab || !navigator.locks) return tab;
  const wanted = sessionStorage.getItem(nameAt) ?? crypto.randomUUID();
  const hold = (name) => new Promise((held) => {
    void navigator.locks.request(lockOf(name), { ifAvailable: true }, (lock) => {
      held(lock !== null);
      return lock === null ? undefined : new Promise(() => {});
    });
  });
  tab = (await hold(wanted)) ? wanted : crypto.randomUUID();
  if (tab !== wanted) await hold(tab);
  sessionStorage.setItem(nameAt, tab);
  return tab;
}

// Keeps what is left open under this tab's name, and marks in the tab that it does.
export function mirror(box, what, value) {
  if (!tab || !left.includes(what)) return;
  try {
    if (value?.length) {
      localStorage.setItem(`${box}-${what}@${tab}`, JSON.stringify(value));
      sessionStorage.setItem(`${box}-${what}@`, "kept");
    } else {
      sessionStorage.removeItem(`${box}-${what}@`);
      localStorage.removeItem(`${box}-${what}@${tab}`);
    }
  } catch {
    // A full or closed store: it still stands in this tab.
  }
}

// What another tab has taken up meanwhile (this one was on another page) isn't this one's any more.
const takenUp = (box) => left.filter((what) => sessionStorage.getItem(`${box}-${what}@`) !== null && localStorage.getItem(`${box}-${what}@${tab}`) === null);

// Moves what a tab that is gone left open of another reed to where this tab keeps that reed's.
function moveTo(at, items) {
  const all = [...(JSON.parse(sessionStorage.getItem(at)) ?? []), ...items];
  sessionStorage.setItem(at, JSON.stringify(all));
  localStorage.setItem(`${at}@${tab}`, JSON.stringify(all));
  sessionStorage.setItem(`${at}@`, "kept");
}

// Takes up what tabs that are gone left open, once; what belongs to another reed waits there. taken: which of this box's own another tab has.
export async function leftBehind(box) {
  const found = [];
  if (!(await named().catch(() => null))) return { found, taken: [] };
  const [mine, open] = [boxOf(""), new Set((await navigator.locks.query()).held.map((lock) => lock.name))];
  for (const key of Object.keys(localStorage)) {
    const [, of, what, name] = (key.startsWith(mine) && /^(.+)-(waiting|questions)@(.+)$/.exec(key)) || [];
    if (!what || name === tab || open.has(lockOf(name))) continue;
    try {
      const items = JSON.parse(localStorage.getItem(key));
      if (of === box) found.push(...items);
      else moveTo(`${of}-${what}`, items);
      localStorage.removeItem(key);
    } catch {
      // What can't be read or kept stays where it is.
    }
  }
  return { found, taken: takenUp(box) };
}
