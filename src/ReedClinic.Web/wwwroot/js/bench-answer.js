// What the bench answers, above the line. What was asked before it could be recorded stays there until it is answered or taken back,
// the oldest first, and over a reload; all other news stand beside it.

// A press within this time, in milliseconds, was meant for what stood there before.
const unread = 600;

// place: where answers stand; typedIn: the line; kept, keep: what this tab keeps for the reed; does: what an answer does.
export function answers(place, typedIn, { kept, keep }, does) {
  const words = place.dataset;
  const open = kept("questions") ?? [];
  // What was refused is told until something else is, over a reload too: what is typed stays in the line without it.
  let news = open.length > 0 ? null : kept("refused");
  let drawn = null;
  let since = 0;
  let asking = null;
  let dropped = -unread;

  const element = (name, content, kind = "") => {
    const one = document.createElement(name);
    one.className = kind;
    one.textContent = content;
    return one;
  };

  // A key of the question: pressed too soon it was meant for the question before.
  const key = (name, letter, label, press) => {
    const button = element("button", "", "second key");
    button.type = "button";
    Object.assign(button.dataset, { benchName: name, benchKey: letter });
    const cap = element("kbd", "");
    cap.dataset.enter = words.enter;
    button.append(cap, ` ${label}`);
    button.addEventListener("click", () => {
      if (performance.now() >= since) press();
      else tell("cleared", words.notpressed.replace("{0}", cap.textContent || letter));
    });
    return button;
  };

  const labelOf = (item) => (item.advice || item.unsure ? words.heeded : item.agree ? words.agree : item.fields.Text ? words.backtoline : words.again);

  // how: what else is sent with it.
  function answer(item, how) {
    const goes = item.advice || item.agree || item.unsure || !item.fields.Text;
    if (!goes && typedIn.value.trim()) return tell("refused", words.linefull);
    // It is kept in its new place before it leaves this one.
    if (goes) does.say(item, how);
    else does.back(item.fields.Text, item.fields.Seen);
    close(item);
    return undefined;
  }

  function draw() {
    const item = open[0] ?? null;
    if (item && item === drawn) return beside();
    since = item && drawn ? performance.now() + unread : 0;
    [drawn, asking] = [item, null];
    place.replaceChildren();
    place.className = item ? (item.advice ? "before" : "refused") : (news?.kind ?? "");
    if (!item) {
      if (news) place.append(element("p", news.text));
      return undefined;
    }
    const line = element("p", "");
    line.append(element("span", `“${item.text}” `, "asked-of"), item.message);
    if (item.why) line.append(" ", element("span", item.why, "reason"));
    const say = key("agree", "r", labelOf(item), () => answer(item));
    const keys = element("span", "", "asked-keys");
    keys.append(say);
    // What was done can be recorded without a word that isn’t true.
    if (item.agree) keys.append(key("unagreed", "0", words.unagreed, () => answer(item, "not")));
    keys.append(key("undo", "u", words.leaveout, () => drop()));
    place.append(line, keys);
    // Where the hands are in the line with the same words, Enter sets advice aside; not the press that was asked about, held or doubled.
    // Consent is the student’s: no words that are said again stand for it.
    asking = (item.advice || item.agree) && item.fields.Text ? { text: item.fields.Text, since: performance.now(), agree: () => answer(item), button: say, byEnter: () => !item.agree && !(item.holds && does.followed()) } : null;
    beside();
    settle();
    return undefined;
  }

  function beside() {
    const more = open.length > 1 ? words.morequestions.replace("{0}", open.length - 1) : "";
    const text = [news?.text, more].filter(Boolean).join(" · ");
    const standing = place.querySelector(".told-beside");
    if (!text) return standing?.remove();
    const line = standing ?? place.appendChild(element("p", ""));
    line.className = `told-beside ${news?.kind ?? ""}`;
    line.textContent = text;
    return undefined;
  }

  // of: the words that were refused, where they stand in the line; undefined for what needn't be told after a reload.
  function tell(kind, text, of) {
    news = text ? { kind, text, of } : null;
    keep("refused", of === undefined ? null : news);
    draw();
  }

  function close(item) {
    const at = open.indexOf(item);
    if (at < 0) return;
    open.splice(at, 1);
    keep("questions", open);
    tell("", "");
  }

  // The key that agrees is the one that works where the hands are; and what stands in the line isn't said twice.
  function settle() {
    const same = Boolean(drawn?.fields.Text) && typedIn.value === drawn.fields.Text;
    place.querySelector(".asked-of")?.toggleAttribute("hidden", same);
    const here = asking !== null && document.activeElement === typedIn && typedIn.value === asking.text;
    asking?.button.classList.toggle("by-enter", here && asking.byEnter());
    return here;
  }

  // Whoever takes back after a refusal means what was refused, and that stands nowhere: an older entry mustn't go for it.
  // of: the operation that is meant, where that is known; else the oldest.
  function drop(of) {
    const item = of ? open.find((one) => one.fields.Operation === of) : open[0];
    // The second half of a double press takes back nothing older.
    if (!item && performance.now() - dropped < unread) return true;
    if (!item && news?.kind !== "refused") return false;
    if (item) dropped = performance.now();
    const last = document.querySelector(".reed-end [data-bench-name=undo]")?.title;
    if (item) {
      close(item);
      does.left(item);
    }
    const next = last && !open.length ? words.undonext.replace("{0}", last) : "";
    tell("cleared", [item ? words.leftout.replace("{0}", item.text) : words.cleared, next].filter(Boolean).join(" "));
    return true;
  }

  const said = ({ url, fields: { Operation, Heeded, Agreed, Asked, ...rest } }) => JSON.stringify([url, rest]);
  // What other things wait behind isn’t answered by being said again: that is said a second time, and waits as they do.
  const same = (item) => open.find((one) => !one.holds && said(one) === said(item));
  draw();
  return {
    tell,
    drop,
    settle,
    asking: () => asking,
    refusedWords: () => news?.of,
    // A question, or words that can't go back to where they were typed; sent twice it is asked once.
    ask(item) {
      if (!open.some((one) => one.fields.Operation === item.fields.Operation)) open.push(item);
      keep("questions", open);
      draw();
    },
    // What another tab asks about isn’t asked here.
    forget(item) {
      const asked = open.find((one) => one.fields.Operation === item.fields.Operation);
      if (asked) close(asked);
    },
    // Something is asked about that what is said after it waits behind.
    holds: () => open.some((item) => item.holds),
    // What it asks isn't asked again of what waits behind it.
    asksOnce: () => open.some((item) => item.holds && item.advice),
    // What takes back means something that is asked about or was refused.
    drops: () => open.length > 0 || news?.kind === "refused",
    // Something waits for an answer.
    waits: () => open.length > 0,
    // Just these words stand in a question.
    keeps: (text) => open.some((one) => one.fields.Text === text),
    // Said once more it is the same thing, and what was told of it is named by that.
    operationOf: (item) => same(item)?.fields.Operation,
    // Said once more it is answered.
    saidAgain(item) {
      const asked = same(item);
      if (asked) close(asked);
    },
  };
}
