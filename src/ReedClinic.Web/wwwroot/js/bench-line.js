// What is said at the bench goes out by HTTP, one thing after the other, each under its own id: what was sent twice stands once, and
// what couldn't be sent waits in this tab until it can. The circuit only shows; it may come and go.
import { answers } from "./bench-answer.js";
import { showFolds } from "./bench-fold.js";
import { followHeard } from "./bench-heard.js";
import { alone, leadsToLine, listen, moved, pressKey, settle, typedAhead } from "./bench-keys.js";
import { boxOf, leftBehind, mirror } from "./bench-store.js";
import { tellLeftOpen, waitsElsewhere } from "./bench-strip.js";
import { tellUnheard } from "./bench-unheard.js";

const again = [500, 1000, 2000, 4000];
// A second press within this time, in milliseconds, is the same press: what came in its place hasn't been read yet.
const doublePress = 600;
// So long, in milliseconds, no repeated news takes the place of what was just told.
const readable = 6000;
// A link is followed within this time, in milliseconds.
const wayOut = 1000;
// So often one thing may break the studio before it is given back.
const mostBroken = 6;
// What the studio answers where something is no taking back and waits behind what is asked about.
const behind = "Behind";
// What was said “again” of something that was left out since: it is asked about and not sent.
const unsure = "Unsure";
const saysAgain = /\b(again|once more|one more|another|more|same|repeat|ditto)\b/i;

function open(form) {
  const reed = form.dataset.reed;
  const box = boxOf(reed);
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
  // What was refused and stands in the line alone, with why.
  let refusedAlone = null;
  // What stood in the line when an entry was taken up to be said better: it comes back when that is done or left.
  let aside = null;
  // The entry that is taken up and its words as they stood; and wordings that were left for another entry before they were sent.
  let taken = null;
  const unsent = new Map(kept("unsent") ?? []);
  // Advice that was shown before something was recorded, and since when; what is said once more after that is recorded.
  const shownAdvice = new Map(kept("advice") ?? []);
  // When somebody was told that this reed stays here.
  let stayed = -readable;
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
    mirror(box, what, value);
  }

  const answer = answers(told, typedIn, { kept, keep }, {
    say(item, how) {
      // What came back into the line is sent from here: it isn't to be sent a second time from there.
      if (typedIn.value === item.fields.Text && !item.fields.Seen) type("");
      if (item.advice) shownAdvice.set(item.advice, 0);
      // What is said “again” behind it means this from now on.
      if (item.unsure) for (const later of queue) delete later.unsure;
      send(item.agree ? { ...item.fields, Agreed: how ?? "true" } : item.fields, item.url, item.text, item.whole, item.holds);
    },
    // Advice that was left out together with what it was told of isn't set aside: it is told again. What waited behind it goes on.
    left(item) {
      // What came back into the line is left out there, too.
      if (item.fields.Text && typedIn.value === item.fields.Text && !better()) type("");
      shownAdvice.delete(item.advice);
      keep("advice", [...shownAdvice]);
      // What was said “again” behind it has lost what it meant: that is asked about when its turn comes.
      if (item.holds) for (const later of queue) later.unsure ||= isLater(later) && saysAgain.test(later.fields.Text ?? "");
      keep("waiting", queue);
      void flush();
    },
    followed: () => queue.some(isLater),
    back(text, seen) {
      if (seen && retake(seen, text)) return;
      type(text);
      typedIn.focus();
    },
  });

  // What is typed is kept with the tab: the line’s own words, and the wordings of entries that were taken up and aren’t sent.
  function remember() {
    keep("typed", aside ?? typedIn.value);
    if (taken && typedIn.value !== taken.text) unsent.set(taken.seen, typedIn.value);
    else if (taken) unsent.delete(taken.seen);
    keep("unsent", [...unsent]);
    keep("taken", taken?.seen ?? "");
  }

  // Takes an entry up again with words that were typed for it; false where it isn’t there any more.
  function retake(seen, text) {
    const place = document.querySelector(`[data-chain~="${seen}"]`);
    const way = place?.querySelector("[data-takes-up]");
    if (!way) return false;
    const tail = place.dataset.chain.split(" ").at(-1);
    unsent.delete(seen);
    unsent.set(tail, text);
    keep("unsent", [...unsent]);
    way.click();
    if (tail !== seen) answer.tell("cleared", words.mendchanged);
    return true;
  }

  // After a reload: the correction is one again, and words whose entry has gone stand in the line, or wait beside it.
  function restore() {
    const [typed, open] = [kept("typed"), kept("taken")];
    if (typed && !typedIn.value) type(typed);
    for (const [seen, text] of [...unsent]) {
      const isSent = queue.some((item) => item.fields.Seen === seen && item.fields.Text === text);
      const isThere = document.querySelector(`[data-chain~="${seen}"] [data-takes-up]`) !== null;
      if (isThere && !isSent && seen === open) retake(seen, text);
      if (isThere && !isSent) continue;
      unsent.delete(seen);
      if (!isSent) loose(text);
    }
    keep("unsent", [...unsent]);
  }

  function loose(text) {
    if (typedIn.value) answer.ask({ url: form.action, text, fields: { Text: text, Operation: crypto.randomUUID() }, message: words.mendgone });
    else {
      type(text);
      answer.tell("cleared", words.mendgone);
    }
  }

  // An answer that comes late doesn't take an entry out of sight that is being said better, in the line or in its fields.
  function follow() {
    if (!better() && !document.querySelector("#by-fields[open] form.entry input[name=Seen][value]:not([value=''])")) newest();
  }

  // Work that is asked about before it is recorded was done before whatever is said after it: that waits behind it, so that the log tells
  // them in their order. What is said better has its place already.
  const barred = (item) => answer.holds() && isLater(item);
  const next = () => queue.find((item) => !barred(item));

  function waiting() {
    if (performance.now() - stayed <= readable) return;
    const behind = queue.filter(barred);
    if (next()) answer.tell("waiting", words.waiting.replace("{0}", queue.length));
    else if (behind.length > 0) answer.tell("waiting", (answer.asksOnce() ? words.behindtold : words.behind).replace("{0}", behind.map((item) => short(item.text)).join(" · ")));
  }

  // What is said after something that is still on its way may mean that: the last of what is.
  const onItsWay = () => queue.filter((item) => !barred(item)).at(-1)?.fields.Operation;

  function send(fields, url, text, whole, first = false) {
    const now = Date.now();
    const heeded = [...shownAdvice].filter(([, since]) => now - since > doublePress).map(([id]) => id).join(" ");
    const item = { url, after: fields.Text && !fields.Seen && !fields.Meant && !fields.Asked ? onItsWay() : undefined, text, whole, fields: { ...fields, Heeded: heeded, Operation: fields.Operation ?? answer.operationOf({ url, fields }) ?? crypto.randomUUID() } };
    item.first = first;
    if (item.first) queue.unshift(item);
    else queue.push(item);
    document.dispatchEvent(new Event("bench-said"));
    keep("waiting", queue);
    answer.saidAgain(item);
    if (barred(item)) waiting();
    void flush();
  }

  async function flush() {
    if (busy) return;
    busy = true;
    clearTimeout(timer);
    try {
      for (let item = next(), done = null; item && (done = await deliver(item)); item = next()) {
        if (done === behind) continue;
        queue.splice(queue.indexOf(item), 1);
        keep("waiting", queue);
        failed = 0;
        if (done === unsure) continue;
        moved();
      }
    } finally {
      busy = false;
    }
    if (!next()) waiting();
    else {
      timer = setTimeout(flush, again[Math.min(failed++, again.length - 1)]);
    }
  }

  // True when the item is done with, for good or ill.
  async function deliver(item) {
    if (item.unsure) {
      answer.ask({ ...item, holds: true, message: words.againleft });
      return unsure;
    }
    if (item.fields.Asked && !answer.drops()) delete item.fields.Asked;
    let response;
    try {
      const token = form.querySelector("[name=__RequestVerificationToken]").value;
      const body = new URLSearchParams({ ...item.fields, __RequestVerificationToken: token });
      response = await fetch(item.url, { method: "POST", body, headers: { Accept: "application/json" }, redirect: "manual", keepalive: true });
    } catch {
      waiting();
      return false;
    }
    if (response.type === "opaqueredirect" || response.status === 401) {
      // It waits and isn’t refused: nothing that takes back means it.
      answer.tell("refused out", words.signedout);
      return false;
    }
    // What breaks the studio each time mustn't keep what waits behind it. A refusal whose words didn't come through is asked for again.
    const problems = response.status === 422 ? await response.json().then(read, () => null) : [];
    const isBroken = response.status >= 500 || problems === null;
    item.broken = (item.broken ?? 0) + (response.status === 500 || problems === null ? 1 : 0);
    if (response.status === 408 || response.status === 429 || (isBroken && item.broken < mostBroken)) {
      waiting();
      return false;
    }
    if (response.ok) {
      const saved = await response.json().catch(() => ({}));
      answered = Math.max(answered, saved.sequence ?? 0);
      answer.tell("saved", item.whole ?? saved.whole ?? ((item.fields.Seen && item.fields.Text) || (saved.corrected && item.fields.Text) ? words.corrected : words.saved).replace("{0}", (saved.said ?? [item.text]).join(" · ")));
      if (item.fields.Text && item.fields.Seen === better()) leave(typedOn(item.fields));
      // What is new stands at the log's end; what was mended is looked at in its place.
      if (!item.fields.Seen || (item.fields.Kind === "Undo" && !item.fields.One)) follow();
      return true;
    }
    if (problems?.some((problem) => problem.field === behind)) {
      delete item.fields.Asked;
      return behind;
    }
    if (problems?.some((problem) => problem.field === "Asked")) answer.drop(item.after);
    else refused(item, response, problems ?? []);
    return true;
  }

  function refused(item, response, problems) {
    const before = problems.find((problem) => problem.field.startsWith("Heeded:"));
    const isWork = problems.some((problem) => problem.field === "Work");
    const agree = problems.some((problem) => problem.field === "Agreed");
    // Why stands beside it, whatever came back.
    const why = response.status === 404 ? words.gone : response.status === 422 || response.status >= 500 ? words.broke : words.stale;
    const unsaid = response.status === 409 ? words.changed : `${words.notsaved} ${why}`;
    const message = (before ? [before] : problems).map((problem) => problem.message).filter(Boolean).join(" ") || unsaid;
    // The words go back to where they were typed, unless something new stands there.
    const back = item.fields.Text;
    if (back && !typedIn.value && !item.fields.Seen) {
      type(back);
      refusedText = back;
    }
    const asked = { ...item, agree, holds: (agree || isWork) && !item.fields.Seen, message, advice: before?.field.slice("Heeded:".length), why: before && problems.find((problem) => problem.field === "Reason")?.message };
    if (asked.advice && !shownAdvice.has(asked.advice)) {
      shownAdvice.set(asked.advice, Date.now());
      keep("advice", [...shownAdvice]);
    }
    // Whose line was only borrowed has the words back in it, and Enter goes on from there.
    if (asked.advice && typedIn.value === back && document.activeElement === document.body) {
      borrowed = true;
      typedIn.focus({ preventScroll: true });
    }
    // Words that take back, sent after this while it was on its way, mean this and nothing older.
    for (const later of queue) if (later.after === item.fields.Operation) later.fields.Asked = agree || isWork ? "held" : "true";
    // What can be said all the same waits for its answer, and so do words without a place in the line and every press that the studio didn't take.
    const waits = asked.advice || agree || (back && item.fields.Seen && item.fields.Seen !== better());
    // What comes back into the line and waits in the question as well is typed over by the next thing that is said.
    if (waits && back && typedIn.value === back && document.activeElement === typedIn) typedIn.select();
    if (waits || (back && !item.fields.Seen && typedIn.value !== back) || (!back && item.fields.Kind !== "Undo")) answer.ask(asked);
    else {
      refusedAlone = typedIn.value === back ? asked : null;
      keep("alone", refusedAlone);
      answer.tell("refused", refusedAlone ? message : `${message} “${item.text}”`, refusedAlone ? back : "");
    }
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

  // An entry that is left as it stands: that is said, in the place of what was said before.
  function leaveUnchanged() {
    const title = form.querySelector(".instead .title")?.textContent ?? taken?.text ?? "";
    leave();
    newest();
    answer.tell("cleared", words.left.replace("{0}", title));
  }

  // What was typed on while an entry's new words were on their way, and isn't sent itself: a line of its own.
  function typedOn({ Text: sent, Seen: seen }) {
    const typed = typedIn.value;
    if (queue.some((one) => one.fields.Seen === seen && one.fields.Text === typed)) return "";
    return typed.startsWith(sent) ? typed.slice(sent.length).trimStart() : typed;
  }

  // What stood in the line, where it doesn't stand in a question: it waits there, and isn't to be glued to what is typed next.
  const loosely = (words) => (words && !answer.keeps(words) ? words : "");

  // An entry that is said better stays taken up until that is saved.
  function leave(on = "") {
    const back = [loosely(aside), on].filter(Boolean).join(" ");
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
    const right = meantBy(text);
    const asking = answer.settle() ? answer.asking() : null;
    const isDoubled = asking !== null && performance.now() - asking.since <= doublePress;
    if (isDoubled || asking?.byEnter()) {
      if (!isDoubled) asking.agree();
    } else if (seen) {
      const isSent = queue.some((item) => item.fields.Seen === seen && item.fields.Text === text);
      if (!text.trim()) leaveUnchanged();
      else if (!isSent) send({ Text: text, Seen: seen }, form.action, text);
    } else if (key) {
      type("");
      key.press();
    } else if (right?.takesBack !== undefined && !onItsWay() && answer.drop()) {
      // What was refused or asked about is taken back, and nothing older.
      type("");
    } else if (text.trim()) {
      // Sent before it was heard, it may take back what is asked about: the studio says so, and what waits behind that isn’t recorded.
      const asked = !right && !onItsWay() && answer.drops() && { Asked: answer.holds() ? "held" : "true" };
      // What its card names is older than what is still on its way: the studio finds out what is meant once that stands.
      send({ Text: text, ...(right && !onItsWay() && { Meant: right.meant }), ...asked }, form.action, text);
      type("");
    }
    if (borrowed) {
      borrowed = false;
      typedIn.blur();
    }
  });
  typedIn.addEventListener("input", () => {
    remember();
    answer.settle();
    const key = better() ? null : alone(typedIn.value);
    for (const other of document.querySelectorAll("[data-would-press]")) other.removeAttribute("data-would-press");
    key?.control.setAttribute("data-would-press", "");
    lone.textContent = key ? lone.dataset.words.replace("{0}", key.key).replace("{1}", name(key.control)) : "";
  });
  typedIn.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && event.repeat) event.preventDefault();
    // Whoever is in the line already and presses the key that leads there means no word.
    else if (!typedIn.value && leadsToLine(event)) event.preventDefault();
    else if (event.key === "Escape" && better()) {
      // One press leaves both, the entry and the line, which has back what stood in it.
      event.preventDefault();
      leaveUnchanged();
      borrowed = false;
      typedIn.blur();
    } else if (event.key === "Escape") {
      borrowed = false;
      typedIn.blur();
    }
  });
  for (const change of ["focus", "blur"]) typedIn.addEventListener(change, answer.settle);

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
    if (target?.closest("[data-leave]") && aside !== null) leaveUnchanged();
    const button = target?.closest("button[data-say]");
    if (button?.dataset.benchName === "undo" && (answer.waits() || !onItsWay()) && answer.drop()) {
      // What was refused is taken back by this press, and nothing older.
    } else if (button?.dataset.benchName === "undo" && onItsWay()) {
      // What is still on its way would be meant, and the log doesn't show it yet: nothing older goes for it.
      answer.tell("cleared", words.notpressed.replace("{0}", name(button)));
    } else if (button && /again$/.test(button.dataset.benchName) && answer.holds()) {
      // What was done last is what is asked about, and it doesn't stand in the log yet: nothing older is done again in its place.
      answer.tell("cleared", words.againfirst);
    } else if (button) {
      const words = button.dataset.words ?? button.textContent.trim();
      for (const fields of [JSON.parse(button.dataset.say)].flat()) {
        send(fields, form.dataset.entries, words, button.dataset.told);
      }
    }
  };
  document.addEventListener("click", pressed);
  const escaped = (event) => {
    if (event.key === "Escape" && !document.querySelector("dialog[open]")) newest();
  };
  document.addEventListener("keydown", escaped);

  // What goes when it is pressed is pressed once, and the focus stays in its place.
  let last = { name: "", at: -doublePress };
  let tapped = "";
  const going = (event) => {
    // Without a network, or without the studio, another page can't be fetched: this one stays, with all that waits in it.
    const isCut = !navigator.onLine || "lost" in document.documentElement.dataset;
    const away = event.target instanceof Element ? event.target.closest("a[href]:not([download], [target])") : null;
    if (isCut && away && away.origin === location.origin && !(away.pathname === location.pathname && away.hash)) {
      event.preventDefault();
      event.stopImmediatePropagation();
      stayed = performance.now();
      answer.tell("waiting", told.dataset.offline);
      return;
    }
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

  restore();
  if (typedIn.value && (answer.asking()?.text ?? answer.refusedWords()) === typedIn.value) refusedText = typedIn.value;
  const refusedBefore = kept("alone");
  if (refusedBefore && typedIn.value === refusedBefore.fields.Text && answer.refusedWords() === typedIn.value) refusedAlone = refusedBefore;
  if (queue.length > 0) {
    waiting();
    void flush();
  }
  // What a tab that is gone left open is asked about here, each by itself: nobody knows what was said since. Under its own id it stands once.
  const mine = { waiting: kept("waiting") ?? [], questions: kept("questions") ?? [] };
  void leftBehind(box).then(({ found, taken }) => {
    for (const item of taken.flatMap((what) => mine[what])) {
      queue = queue.filter((one) => one.fields.Operation !== item.fields.Operation);
      answer.forget(item);
    }
    if (taken.length > 0) keep("waiting", queue);
    // What was asked about comes first: the rest waited behind it.
    const asked = found.filter((item) => item.message);
    const behind = found.filter((item) => !item.message).map((item) => ({ ...item, unsure: true, message: words.tabgone }));
    for (const item of [...asked, ...behind]) answer.ask(item);
    for (const what of ["waiting", "questions"]) mirror(box, what, kept(what));
    tellLeftOpen();
  });
  // The fields are saved at once, and not behind anything.
  const guard = (event) => {
    const fields = event.target instanceof Element && event.target.matches("form.entry") ? event.target : null;
    if (!fields || fields.elements.Seen?.value || !answer.holds()) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    answer.tell("refused", words.answerfirst);
    told.scrollIntoView({ block: "nearest" });
  };
  addEventListener("submit", guard, true);
  // What is typed, asked about or not sent yet goes with the tab: the browser asks first. From page to page of the studio it stays.
  let underWay = -wayOut;
  const led = (event) => {
    const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
    const here = link && link.origin === location.origin && !link.target && !link.hasAttribute("download");
    if (here && !event.defaultPrevented && !event.ctrlKey && !event.metaKey && !event.shiftKey) underWay = performance.now();
  };
  addEventListener("click", led);
  // What was uploaded leads back here.
  const back = () => (underWay = performance.now());
  addEventListener("studio-way", back);
  const isTyped = () => (taken ? typedIn.value !== taken.text || aside.trim() : typedIn.value.trim()) || unsent.size > 0;
  const isUnsent = () => queue.some(barred) || (queue.length > 0 && (failed > 0 || !navigator.onLine));
  const leaving = (event) => {
    if (performance.now() - underWay < wayOut) return;
    if (isUnsent() || answer.waits() || isTyped() || waitsElsewhere(reed)) event.preventDefault();
  };
  addEventListener("beforeunload", leaving);

  const line = {
    begin(letter) {
      borrowed = true;
      typedIn.focus();
      // What is asked about stands in its question, and what was refused waits beside the line: what is begun isn't glued to it.
      if (refusedAlone && typedIn.value === refusedAlone.fields.Text) answer.ask(refusedAlone);
      type((answer.keeps(typedIn.value) ? "" : typedIn.value) + letter);
    },
    sends: () => next() !== undefined,
    asks: () => answer.waits(),
    answered: () => answered,
    unpressed: (keys) => answer.tell("cleared", words.notpressed.replace("{0}", keys)),
    silent: (why) => answer.tell("cleared", why),
    give(text) {
      type([typedIn.value, text].filter(Boolean).join(" "));
      typedIn.focus();
    },
  };
  // What was pressed behind words that were sent before the line was there for them.
  const pressLater = (key) => {
    if (key === "Escape") typedIn.blur();
    else if (document.activeElement === typedIn) type(typedIn.value + key);
    else pressKey(key);
  };
  const deaf = listen(line);
  const heard = tellUnheard(() => form.dataset.entries);
  const behindhand = followHeard(typedIn);
  takingUp = (text, seen) => {
    // What was typed for another entry waits until that one is taken up again.
    if (taken && typedIn.value !== taken.text) unsent.set(taken.seen, typedIn.value);
    if (text === null) {
      const back = aside;
      [aside, taken] = [null, null];
      if (back !== null) type(loosely(back));
      else remember();
      return;
    }
    aside ??= typedIn.value;
    taken = { seen, text };
    const early = typedAhead();
    type((unsent.get(seen) ?? text) + (early?.text ?? ""));
    typedIn.focus();
    typedIn.setSelectionRange(typedIn.value.length, typedIn.value.length);
    insight();
    if (early?.sent) form.requestSubmit();
    early?.after.forEach(pressLater);
  };
  return () => {
    takingUp = null;
    deaf();
    heard();
    behindhand();
    clearTimeout(timer);
    document.removeEventListener("click", pressed);
    document.removeEventListener("keydown", escaped);
    document.removeEventListener("click", going, true);
    removeEventListener("online", online);
    removeEventListener("submit", guard, true);
    removeEventListener("click", led);
    removeEventListener("studio-way", back);
    removeEventListener("beforeunload", leaving);
  };
}

// What a refusal says, of which field.
const read = (problems) => problems.map((one) => ({ field: one.field ?? one.Field, message: one.message ?? one.Message }));

// What the card of just these words puts right or takes back.
function meantBy(text) {
  const card = document.querySelector("#line-heard [data-meant]");
  return card && card.dataset.from.trim() === text.trim() ? card.dataset : null;
}

// What isn’t asked about, mended or taken back: it was said after what is asked about.
const isLater = (item) => !item.first && !item.fields.Seen && !item.fields.Asked;

const short = (text) => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

// The log grows at its end: there the newest is in sight, and stays so.
const newest = () => document.querySelector(".log")?.scrollTo({ top: 0 });

// The entry that was taken up may have been scrolled away by then: it comes back into the log's own window, and nothing else moves.
function insight() {
  const [log, row] = [document.querySelector(".log"), document.querySelector(".log-line.better")];
  if (!log || !row) return;
  const [window, at] = [log.getBoundingClientRect(), row.getBoundingClientRect()];
  if (at.top < window.top || at.bottom > window.bottom) log.scrollBy({ top: at.top - window.top - (window.height - at.height) / 2 });
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
  for (const table of document.querySelectorAll(".key-table")) settle(table);
  tellLeftOpen();
  showFolds();
  document.documentElement.dataset.benchReady = "yes";
}

export function stop() {
  close?.();
  close = null;
}
