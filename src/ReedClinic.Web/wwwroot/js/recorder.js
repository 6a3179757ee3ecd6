// Recording in the page, inside the form that also takes a file: count, record, look over, listen; then keep it or take it again. A take is sent
// by that form, with the words typed in it. Whatever can't be had is told in plain words, and the file field is there as before.
import { check } from "./sound/check.js";
import { reasonOf } from "./sound/microphone.js";
import { play, record, wav } from "./sound/take.js";

const states = new WeakMap();
const clock = (seconds) => `0:${String(Math.floor(seconds)).padStart(2, "0")}`;

class Recorder {
  constructor(box) {
    this.box = box;
    this.form = box.closest("form");
    this.words = box.dataset;
    this.form.addEventListener("going", (event) => this.kept && this.tell(event.detail));
    this.form.addEventListener("unsent", (event) => {
      if (!this.kept) return;
      this.tell(event.detail, "refused");
      this.show("looked");
    });
  }

  part(name) {
    return this.box.querySelector(`[data-${name}]`);
  }

  // One of: idle, asking, counting, sounding, looked, sending.
  show(what) {
    this.box.dataset.now = what;
    for (const part of this.box.querySelectorAll("[data-while]")) part.hidden = !part.dataset.while.split(" ").includes(what);
    if (this.box.contains(document.activeElement) || document.activeElement === document.body) {
      this.box.querySelector(`[data-while]:not([hidden]) [data-first], [data-while]:not([hidden])[data-first]`)?.focus();
    }
  }

  tell(words, kind = "") {
    const state = this.part("told");
    state.className = kind;
    state.textContent = words;
  }

  async take() {
    this.drop();
    this.tell("");
    this.show("asking");
    try {
      this.going = await record({
        most: Number(this.words.most),
        counted: (left) => this.counted(left),
        heard: (level, seconds) => this.heard(level, seconds),
      });
    } catch (trouble) {
      this.tell(this.words[reasonOf(trouble)], "refused");
      return this.show("idle");
    }
    this.looked(await this.going.done);
  }

  counted(left) {
    if (left > 0) {
      this.show("counting");
      this.part("count").textContent = left;
    } else {
      this.show("sounding");
    }
  }

  heard(level, seconds) {
    const full = Math.max(0, Math.min(1, (level + 60) / 60));
    for (const bar of this.box.querySelectorAll("[data-level]")) {
      bar.style.setProperty("--level", full.toFixed(3));
      bar.dataset.level = level > -3 ? "much" : level > -42 ? "well" : "little";
    }
    this.part("time").textContent = `${clock(seconds)} ${this.words.ofMost}`;
  }

  looked(take) {
    this.going = null;
    if (!take) return;
    const poor = check(take);
    const list = this.part("poor");
    list.replaceChildren(
      ...poor.map((name) => {
        const line = document.createElement("li");
        line.textContent = this.words[`poor${name[0].toUpperCase()}${name.slice(1)}`];
        return line;
      }),
    );
    list.hidden = poor.length === 0;
    const ended = { unplugged: this.words.unplugged, full: this.words.full }[take.end] ?? "";
    if (poor.includes("nothing")) {
      this.tell([ended, this.words.poorNothing].filter(Boolean).join(" "), "refused");
      return this.show("idle");
    }
    this.kept = take;
    this.form.recorded = wav(take.samples, take.rate);
    this.tell([ended, poor.length > 0 ? this.words.poor : this.words.well].filter(Boolean).join(" "), poor.length > 0 ? "poor" : "well");
    this.show("looked");
  }

  listen() {
    if (this.playing) return this.playing();
    const label = this.part("listen-label");
    label.textContent = this.words.hush;
    this.playing = play(this.kept, () => {
      this.playing = null;
      label.textContent = this.words.listen;
    });
  }

  keep() {
    this.playing?.();
    this.tell("");
    this.show("sending");
    this.form.requestSubmit();
  }

  drop() {
    this.playing?.();
    this.going?.drop();
    this.going = null;
    this.kept = null;
    delete this.form.recorded;
  }

  leave() {
    this.drop();
    this.tell("");
    this.show("idle");
  }
}

const of = (element) => {
  const box = element.closest("[data-recorder]");
  if (box && !states.has(box)) states.set(box, new Recorder(box));
  return box && states.get(box);
};

const presses = {
  record: (one) => one.take(),
  stop: (one) => one.going?.stop(),
  listen: (one) => one.listen(),
  keep: (one) => one.keep(),
  leave: (one) => one.leave(),
};

if (!globalThis.recorders) {
  globalThis.recorders = true;
  document.addEventListener("click", (event) => {
    const button = event.target instanceof Element ? event.target.closest("[data-recorder] button[data-press]") : null;
    if (button) void presses[button.dataset.press](of(button));
  });
  // A file that is chosen afterwards is meant instead.
  document.addEventListener("change", (event) => {
    const box = event.target instanceof Element && event.target.matches("input[type=file]") ? event.target.form?.querySelector("[data-recorder]") : null;
    if (box) of(box).leave();
  });
  addEventListener("beforeunload", (event) => {
    if (document.querySelector('[data-recorder][data-now="sounding"], [data-recorder][data-now="looked"]')) event.preventDefault();
  });
  document.documentElement.dataset.records = "yes";
  // What was kept or removed a moment ago is in sight; at the bench, where it lies in a margin of its own, once the bench is ready.
  const come = () => document.querySelector(".recordings .kept, .recordings li > .error")?.scrollIntoView({ block: "center" });
  come();
  const ready = new MutationObserver(() => {
    ready.disconnect();
    come();
  });
  ready.observe(document.documentElement, { attributeFilter: ["data-bench-ready"] });
}
