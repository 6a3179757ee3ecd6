// What is said at the bench goes out by HTTP, one thing after the other, each under its own id: what was sent twice stands once, and
// what couldn't be sent waits in this tab until it can. The circuit only shows; it may come and go.
import { alone, listen, moved, settle } from "./bench-keys.js";

const again = [500, 1000, 2000, 4000];
// A second press within this time, in milliseconds, is the same press: what came in its place hasn't been read yet.
const doublePress = 600;
// So often one thing may break the studio before it is given back.
const mostBroken = 6;

function open(form) {
  const reed = form.dataset.reed;
  const box = `reedclinic-bench-${reed}`;
  const typedIn = form.querySelector("input[name=Text]");
  const told = document.getElementById("line-answer");
  const lone = document.getElementById("line-key");
  const words = told.dataset;
  let queue = kept("waiting") ?? [];
  let busy = false;
  let failed = 0;
  let timer = 0;
  let borrowed = false;
  let refusedText = null;
  let asking = null;
  // What stood in the line when an entry was taken up to be said better: it comes back when that is done or left.
  let aside = null;
  // The entry that is taken up and its words as they stood; and wordings that were left for another entry before they were sent.
  let taken = null;
  const unsent = new Map();
  // Advice that was shown before something was recorded, and since when; what is said once more after that is recorded.
  const shownAdvice = new Map(kept("advice") ?? []);
  // A question that nobody has answered yet, about what was sent when.
  let standing = null;
  // The last place in the log that an answer told of.
  let answered = 0;

  const better = () => form.elements.Seen?.value ?? "";

  function kept(what) {
    try {
      return JSON.parse(sessionStorage.getItem(`${box}-${what}`));
    } catch {
      return null;
    }
  }

  function keep(what, value) {
    try {
      sessionStorage.setItem(`${box}-${what}`, JSON.stringify(value));
    } catch {
      // A full or closed store: what waits is still in this page.
    }
  }

  function say(kind, text, item) {
    asking = null;
    standing = item?.agree || item?.advice ? item : null;
    told.className = kind;
    told.replaceChildren();
    const line = document.createElement("p");
    line.textContent = text;
    told.append(line);
    if (item?.why) {
      const reason = document.createElement("span");
      reason.className = "reason";
      reason.textContent = item.why;
      line.append(" ", reason);
    }
    if (standing) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "second key";
      Object.assign(button.dataset, { benchName: "agree", benchKey: "r" });
      const shown = document.createElement("kbd");
      shown.dataset.enter = words.enter;
      button.append(shown, ` ${item.advice ? words.heeded : words.agree}`);
      const agree = () => {
        // What came back into the line is sent from here: it isn't to be sent a second time from there.
        if (typedIn.value === item.fields.Text && !item.fields.Seen) type("");
        asking = null;
        if (item.advice) shownAdvice.set(item.advice, 0);
        send(item.advice ? item.fields : { ...item.fields, Agreed: "true" }, item.url, item.text, item.whole);
      };
      button.addEventListener("click", agree);
      told.append(button);
      // Where the hands are in the line with the same words, Enter says it; not the press that was asked about, held or doubled.
      asking = item.fields.Text ? { text: item.fields.Text, since: performance.now(), agree, button } : null;
      settleAgreed();
    }
  }

  // Something beside the matter: a question that waits for its answer stays.
  function tell(text) {
    if (!standing) return say("cleared", text);
    const beside = told.querySelector(".told-beside") ?? told.appendChild(document.createElement("p"));
    beside.className = "told-beside";
    beside.textContent = text;
  }

  // The key that agrees is the one that works where the hands are.
  function settleAgreed() {
    const here = asking && document.activeElement === typedIn && typedIn.value === asking.text;
    asking?.button.classList.toggle("by-enter", Boolean(here));
    return here;
  }

  function waiting() {
    if (queue.length > 0) say("waiting", words.waiting.replace("{0}", queue.length));
  }

  function send(fields, url, text, whole) {
    const now = Date.now();
    const heeded = [...shownAdvice].filter(([, since]) => now - since > doublePress).map(([id]) => id).join(" ");
    queue.push({ url, text, whole, since: now, fields: { ...fields, Heeded: heeded, Operation: crypto.randomUUID() } });
    keep("waiting", queue);
    void flush();
  }

  async function flush() {
    if (busy) return;
    busy = true;
    clearTimeout(timer);
    try {
      while (queue.length > 0 && (await deliver(queue[0]))) {
        queue.shift();
        keep("waiting", queue);
        failed = 0;
        moved();
      }
    } finally {
      busy = false;
    }
    if (queue.length > 0) {
      timer = setTimeout(flush, again[Math.min(failed++, again.length - 1)]);
    }
  }

  // True when the item is done with, for good or ill.
  async function deliver(item) {
    let answer;
    try {
      const token = form.querySelector("[name=__RequestVerificationToken]").value;
      const body = new URLSearchParams({ ...item.fields, __RequestVerificationToken: token });
      answer = await fetch(item.url, { method: "POST", body, headers: { Accept: "application/json" }, redirect: "manual" });
    } catch {
      waiting();
      return false;
    }
    if (answer.type === "opaqueredirect" || answer.status === 401) {
      say("refused", words.signedout);
      return false;
    }
    // What breaks the studio each time mustn't keep what waits behind it.
    item.broken = (item.broken ?? 0) + (answer.status === 500 ? 1 : 0);
    if (answer.status === 429 || (answer.status >= 500 && item.broken < mostBroken)) {
      waiting();
      return false;
    }
    if (answer.ok) {
      const saved = await answer.json().catch(() => ({}));
      answered = Math.max(answered, saved.sequence ?? 0);
      // A question about what was sent after this, or together with it, stays until it is answered.
      if (!standing || item.since > standing.told) say("saved", item.whole ?? (item.fields.Seen && item.fields.Text ? words.corrected : words.saved).replace("{0}", (saved.said ?? [item.text]).join(" · ")));
      if (item.fields.Text && item.fields.Seen === better()) leave();
      return true;
    }
    await refused(item, answer);
    return true;
  }

  async function refused(item, answer) {
    const problems = (answer.status === 422 ? await answer.json().catch(() => []) : []).map((one) => ({ field: one.field ?? one.Field, message: one.message ?? one.Message }));
    const before = problems.find((problem) => problem.field.startsWith("Heeded:"));
    const agree = problems.some((problem) => problem.field === "Agreed");
    const why = (before ? [before] : problems).map((problem) => problem.message).join(" ");
    // The words go back to where they were typed, unless something new stands there: then they are repeated in the answer.
    const back = item.fields.Text;
    if (back && !typedIn.value && !item.fields.Seen) {
      type(back);
      refusedText = back;
    }
    const asked = { ...item, agree, told: Date.now(), advice: before?.field.slice("Heeded:".length), why: before && problems.find((problem) => problem.field === "Reason")?.message };
    if (asked.advice && !shownAdvice.has(asked.advice)) {
      shownAdvice.set(asked.advice, asked.told);
      keep("advice", [...shownAdvice]);
    }
    // Whose line was only borrowed has the words back in it, and Enter goes on from there.
    if (asked.advice && typedIn.value === back && document.activeElement === document.body) {
      borrowed = true;
      typedIn.focus({ preventScroll: true });
    }
    say(asked.advice ? "before" : "refused", `${why || (answer.status === 409 ? words.changed : words.notsaved)}${back && typedIn.value !== back ? ` “${back}”` : ""}`, asked);
  }

  // What a control says, without its key.
  function name(control) {
    const copy = control.cloneNode(true);
    for (const key of copy.querySelectorAll("kbd, .hint")) key.remove();
    return copy.textContent.trim();
  }

  function type(text) {
    typedIn.value = text;
    typedIn.dispatchEvent(new Event("input", { bubbles: true }));
  }

  // An entry that is said better stays taken up until that is saved.
  function leave() {
    const back = aside ?? "";
    aside = null;
    unsent.delete(better());
    taken = null;
    if (form.elements.Seen) form.elements.Seen.value = "";
    form.querySelector("[data-leave]")?.click();
    type(back);
  }

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const text = typedIn.value;
    const seen = better();
    const key = seen ? null : alone(text);
    if (settleAgreed()) {
      if (performance.now() - asking.since > doublePress) asking.agree();
    } else if (seen) {
      const isSent = queue.some((item) => item.fields.Seen === seen && item.fields.Text === text);
      if (!text.trim()) leave();
      else if (!isSent) send({ Text: text, Seen: seen }, form.action, text);
    } else if (key) {
      type("");
      key.press();
    } else if (text.trim()) {
      send({ Text: text }, form.action, text);
      type("");
    }
    if (borrowed) {
      borrowed = false;
      typedIn.blur();
    }
  });
  typedIn.addEventListener("input", () => {
    keep("typed", aside ?? typedIn.value);
    settleAgreed();
    const key = better() ? null : alone(typedIn.value);
    for (const other of document.querySelectorAll("[data-would-press]")) other.removeAttribute("data-would-press");
    key?.control.setAttribute("data-would-press", "");
    lone.textContent = key ? lone.dataset.words.replace("{0}", key.key).replace("{1}", name(key.control)) : "";
  });
  typedIn.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && event.repeat) event.preventDefault();
    else if (event.key === "Escape" && better()) {
      event.preventDefault();
      leave();
    } else if (event.key === "Escape") {
      borrowed = false;
      typedIn.blur();
    }
  });
  for (const change of ["focus", "blur"]) typedIn.addEventListener(change, settleAgreed);

  // Everything else that is said by one press: a button with the fields it sends.
  const pressed = (event) => {
    const target = event.target instanceof Element ? event.target : null;
    const way = target?.closest("[data-focus]");
    if (way) {
      const field = document.getElementById(way.dataset.focus);
      field?.focus();
      // What came back is there to be said better; whoever says something else instead types over it.
      if (field === typedIn && typedIn.value === refusedText) typedIn.select();
    }
    // The line is given back what stood in it.
    if (target?.closest("[data-leave]") && aside !== null) leave();
    const button = target?.closest("button[data-say]");
    if (button?.dataset.benchName === "undo" && (told.classList.contains("refused") || told.classList.contains("before"))) {
      // Whoever takes back after a refusal means what was refused, and that stands nowhere: an older entry mustn't go for it.
      say("cleared", words.cleared.replace("{0}", button.title));
    } else if (button) {
      const words = button.dataset.words ?? button.textContent.trim();
      for (const fields of [JSON.parse(button.dataset.say)].flat()) {
        send(fields, form.dataset.entries, words, button.dataset.told);
      }
    }
  };
  document.addEventListener("click", pressed);

  // What goes when it is pressed is pressed once, and the focus stays in its place.
  let last = { name: "", at: -doublePress };
  let tapped = "";
  const going = (event) => {
    const pick = event.target instanceof Element ? event.target.closest(".picks button") : null;
    const words = pick ? `${pick.dataset.benchName} ${pick.dataset.words ?? ""}` : "";
    // The second tap of two meant what was there for the first.
    if (pick && event.detail > 1 && words !== tapped) {
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    tapped = words;
    const button = event.target instanceof Element ? event.target.closest("[data-once]") : null;
    if (!button) return;
    const before = last;
    last = { name: button.dataset.benchName, at: event.timeStamp };
    if (before.name === last.name && last.at - before.at < doublePress) {
      event.preventDefault();
      event.stopImmediatePropagation();
    } else if (document.activeElement === button) {
      button.closest("[tabindex='-1']")?.focus({ preventScroll: true });
    }
  };
  document.addEventListener("click", going, true);
  const online = () => void flush();
  addEventListener("online", online);

  const typed = kept("typed");
  if (typed && !typedIn.value) type(typed);
  if (queue.length > 0) {
    waiting();
    void flush();
  }

  const line = {
    begin(letter) {
      borrowed = true;
      typedIn.focus();
      type(typedIn.value + letter);
    },
    sends: () => queue.length > 0,
    answered: () => answered,
    unpressed: (keys) => tell(words.notpressed.replace("{0}", keys)),
    silent: tell,
  };
  const deaf = listen(line);
  takingUp = (text, seen) => {
    // What was typed for another entry waits until that one is taken up again.
    if (taken && typedIn.value !== taken.text) unsent.set(taken.seen, typedIn.value);
    if (text === null) {
      const back = aside;
      [aside, taken] = [null, null];
      if (back !== null) type(back);
      return;
    }
    aside ??= typedIn.value;
    taken = { seen, text };
    type(unsent.get(seen) ?? text);
    typedIn.focus();
    typedIn.setSelectionRange(typedIn.value.length, typedIn.value.length);
  };
  return () => {
    takingUp = null;
    deaf();
    clearTimeout(timer);
    document.removeEventListener("click", pressed);
    document.removeEventListener("click", going, true);
    removeEventListener("online", online);
  };
}

let close = null;
let takingUp = null;

// An entry of the log comes back into the line, to be said better there; without words the line is given back what stood in it.
export function takeUp(words, seen) {
  takingUp?.(words, seen);
}

export function start() {
  close?.();
  const form = document.querySelector("form[data-reed]");
  // Where nothing can be written there are still keys: to the reed before, the next one, last time's lesson.
  close = form ? open(form) : listen(null);
  for (const table of document.querySelectorAll("[data-bench-keys]")) settle(table);
  document.documentElement.dataset.benchReady = "yes";
}

export function stop() {
  close?.();
  close = null;
}
