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

// Keeps what is left open under this tab's name.
export function mirror(box, what, value) {
  if (!tab || !left.includes(what)) return;
  try {
    if (value?.length) localStorage.setItem(`${box}-${what}@${tab}`, JSON.stringify(value));
    else localStorage.removeItem(`${box}-${what}@${tab}`);
  } catch {
    // A full or closed store: it still stands in this tab.
  }
}

// Takes up what tabs that are gone left open, once: what belongs to another reed waits there, and what belongs to this box comes back.
export async function leftBehind(box) {
  try {
    if (!(await named())) return [];
    const { held } = await navigator.locks.query();
    const [mine, open, found] = [boxOf(""), new Set(held.map((lock) => lock.name)), []];
    for (const key of Object.keys(localStorage)) {
      const [, of, what, name] = (key.startsWith(mine) && /^(.+)-(waiting|questions)@(.+)$/.exec(key)) || [];
      if (!what || name === tab || open.has(lockOf(name))) continue;
      const items = JSON.parse(localStorage.getItem(key));
      if (of === box) found.push(...items.map((item) => ({ what, item })));
      else {
        const all = [...(JSON.parse(sessionStorage.getItem(`${of}-${what}`)) ?? []), ...items];
        sessionStorage.setItem(`${of}-${what}`, JSON.stringify(all));
        mirror(of, what, all);
      }
      localStorage.removeItem(key);
    }
    return found;
  } catch {
    return [];
  }
}
