// The list of picks as the hands know it. What is pressed before the page has followed is meant for what comes, never for what was
// there: it is kept, and pressed once that stands. What can't be waited for isn't pressed at all, and that is told.
const patience = 5_000;
// A question that has just come in the place of the picks hasn't been read yet, in milliseconds.
const unread = 600;

const shown = () => document.querySelector(".picks");

// line: what is being sent and what was answered; press: presses a key where it stands now; tell: says which key wasn't pressed.
export function follow(line, press, tell) {
  let here = shown();
  let turn = null;
  let asksNext = false;
  // The list that was asked for is the verdicts'.
  let ends = false;
  let kept = [];
  let late = 0;
  let question = null;
  let since = 0;

  const number = (what) => Number(shown()?.dataset[what] ?? 0);
  // A press has asked for another list that isn't there yet.
  const turning = () => turn !== null && number("turn") < turn;
  // Something said doesn't stand in the log as it is shown.
  const behind = () => line.sends() || number("at") < line.answered();
  const waits = (control) => turning() || (behind() && (asksNext || control?.dataset.ofLog !== undefined));

  function clear() {
    clearTimeout(late);
    late = 0;
    kept = [];
  }

  function drop() {
    const keys = kept.map((one) => one.key);
    turn = null;
    clear();
    if (keys.length > 0) tell(keys.join(" "));
  }

  // True when the key is taken care of: kept for what comes, and then pressed as it would have been now, or not pressed at all.
  function take(key, control, how = press, find = () => press.find(key)) {
    if (kept.length > 0 || waits(control)) {
      kept.push({ key, how, find });
      late ||= setTimeout(drop, patience);
      return true;
    }
    if (control?.closest(".asked") && performance.now() - since < unread) {
      tell(key);
      return true;
    }
    return false;
  }

  function move() {
    // On another reed nothing is pressed that was meant for this one.
    if (shown() !== here) {
      here = shown();
      turn = null;
      clear();
    }
    const now = here?.querySelector(".asked")?.getAttribute("aria-label") ?? null;
    if (now !== question) {
      // The area may have been scrolled among the picks: a question is read from its beginning.
      here?.querySelector(".pick-area")?.scrollTo({ top: 0, left: 0 });
      question = now;
      since = now && !asksNext ? performance.now() : -unread;
    }
    while (kept.length > 0 && !waits(kept[0].find())) {
      const { key, how, find } = kept.shift();
      const control = find();
      // Whoever said that the work ends answers why; where nothing is asked, the number isn't work.
      if (!control || (asksNext && /^pick-/.test(control.dataset.benchName) && !control.closest(".asked"))) {
        kept.unshift({ key, how, find });
        return drop();
      }
      how(control);
    }
    if (kept.length === 0) clear();
  }

  const clicked = (event) => {
    const control = event.target instanceof Element ? event.target.closest(".picks button") : null;
    if (!control) return;
    if (control.dataset.turns !== undefined) {
      turn = (turning() ? turn : number("turn")) + 1;
      ends = control.dataset.benchName === "verdict";
    }
    if (control.dataset.say !== undefined) asksNext = control.dataset.asksNext !== undefined;
  };
  document.addEventListener("click", clicked, { capture: true });
  const seen = new MutationObserver(move);
  seen.observe(document.querySelector(".bench") ?? document.body, { childList: true, subtree: true, attributes: true, attributeFilter: ["data-turn", "data-at"] });
  move();
  return {
    take,
    move,
    // Something was pressed that waits for the page.
    keeps: () => kept.length > 0,
    // A reason is asked for, or will be once what was said stands; a verdict may have to be answered for before it does, or its list isn't there yet.
    asksWhy: () => document.querySelector(".asked[data-reason]") !== null || (asksNext && (behind() || line.asks())) || (ends && turning() && kept.length > 0),
    close() {
      clear();
      seen.disconnect();
      document.removeEventListener("click", clicked, { capture: true });
    },
  };
}
