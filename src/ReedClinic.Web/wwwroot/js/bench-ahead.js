// What is typed before the line is there for it: a reason, begun at once where one is asked for.
// How long an entry may take to come into the line, in milliseconds.
const patience = 5_000;
// A letter alone may be a key or begin a word: the next press says which, within this time.
const undecided = 700;

const letter = /^\p{L}$/u;

// asks: whether a reason is asked for, or will be once what was said stands; usual: presses a key as ever; line: takes words, and says whether something else has to be answered first.
export function ahead(asks, usual, line) {
  let first = null;
  let words = null;

  const own = () => document.querySelector(".asked[data-reason] [data-own-words]");

  function clear() {
    clearTimeout(first?.timer);
    clearTimeout(words?.timer);
    first = words = null;
  }

  // The entry that a reason is for comes into the line as soon as the question stands.
  function open() {
    const way = own();
    if (!words || words.opened || !way) return;
    words.opened = true;
    way.click();
  }

  // While something has to be answered first, no reason is asked for yet: words stand in the line, in sight.
  function begin(text) {
    if (line.asks() && !own()) {
      line.give(text);
      return;
    }
    words = { text, opened: false, sent: false, after: [], timer: setTimeout(late, patience) };
    open();
  }

  // Nothing that was typed is lost: what the entry didn't come for stands in the line by itself.
  function late() {
    const { text, after } = words;
    clear();
    const typed = after.filter((key) => key.length === 1).join("");
    if (text) line.give([text, typed.trim()].filter(Boolean).join(" "));
  }

  function gather(event) {
    // What was sent is said: whatever is pressed behind it comes after it.
    if (words.sent) {
      if (event.key === "Backspace") words.after.pop();
      else if (event.key.length === 1 || event.key === "Escape") words.after.push(event.key);
      // What is typed behind it stands in the line first.
      else if (event.key !== "Enter") return false;
    } else if (event.key === "Enter") words.sent = true;
    else if (event.key === "Backspace") words.text = words.text.slice(0, -1);
    else if (event.key.length === 1) words.text += event.key;
    else return false;
    event.preventDefault();
    return true;
  }

  // A second letter, or a space, makes words of the first; a number or a sign is a key of its own, and so the letter before it was one.
  function second(event) {
    const key = first.key;
    if (event.key === "Shift") return true;
    clear();
    // Pressed twice, it is the key of what is asked.
    if (line.asks() && event.key === key) {
      event.preventDefault();
      usual(key);
      usual(key);
      return true;
    }
    if (letter.test(event.key) || event.key === " " || event.key === "’" || event.key === "'") {
      event.preventDefault();
      begin(key + event.key);
      return true;
    }
    if (event.key.length === 1) usual(key);
    return false;
  }

  return {
    // True when the press is taken care of.
    take(event) {
      if (words) return gather(event);
      if (first) return second(event);
      if (!letter.test(event.key) || !asks()) return false;
      event.preventDefault();
      const key = event.key;
      first = {
        key,
        timer: setTimeout(() => {
          first = null;
          usual(key);
        }, undecided),
      };
      return true;
    },
    open,
    // Own words were asked for: whatever is typed before there is a field for them is theirs.
    expect() {
      if (words) return;
      begin("");
      words.opened = true;
    },
    // What was typed for the entry that has just come into the line; whether it was sent, too, and what was pressed behind that.
    taken() {
      const typed = words && { text: words.text, sent: words.sent, after: words.after };
      clear();
      return typed;
    },
    // What was begun and isn't sent is left; what was sent isn't. True where something was.
    leave(event) {
      if (words?.sent) return gather(event);
      const key = first?.key;
      clear();
      // A letter that stood alone was a key.
      if (key) usual(key);
      return false;
    },
    clear,
  };
}
