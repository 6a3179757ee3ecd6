// Sound at the bench: a sheet that shows what sounds now, and one key that records a test of the reed. The sheet's sound stays in this page; a
// test is sent when it is good, and asks first when it is poor.
import { Refused, SignedOut, send } from "./recording-upload.js";
import { check } from "./sound/check.js";
import { listen, reasonOf } from "./sound/microphone.js";
import { record, wav } from "./sound/take.js";
import { TunerSheet } from "./sound/tuner-sheet.js";

const box = () => document.querySelector("[data-sound]");
const part = (name) => box()?.querySelector(`[data-${name}]`);
const key = (name) => box()?.querySelector(`[data-bench-name="${name}"]`);
const words = () => box()?.dataset ?? {};

let sheet = null;
let hearing = null;
let taking = null;
let wanted = false;
let kept = null;
let unsent = 0;
let openedForTest = false;
let fading = 0;

function tell(text, kind = "") {
  const [state, said] = [part("state"), part("outcome")];
  if (!state) return;
  for (const place of [state, said]) {
    place.className = kind;
    place.textContent = place === said && isOpen() ? "" : text;
  }
  clearTimeout(fading);
  if (kind === "saved") fading = setTimeout(() => tell(""), 10_000);
}

const isOpen = () => part("sheet")?.hidden === false;

// The sheet.
async function open() {
  part("sheet").hidden = false;
  key("tuner").setAttribute("aria-expanded", "true");
  sheet = new TunerSheet(part("sheet"));
  const mine = sheet;
  try {
    const heard = await listen("tuner-worklet.js", "reedclinic-tuner", (reading) => mine === sheet && sheet.show(reading), () => lost());
    if (mine !== sheet) return heard.close();
    hearing = heard;
    part("sheet").dataset.hears = "yes";
  } catch (trouble) {
    if (mine === sheet) tell(words()[reasonOf(trouble)], "refused");
  }
}

function lost() {
  hearing?.close();
  hearing = null;
  sheet?.clear();
  if (!taking) tell(words().gone, "refused");
}

function close() {
  hearing?.close();
  [sheet, hearing, openedForTest] = [null, null, false];
  const leaf = part("sheet");
  if (!leaf) return;
  leaf.hidden = true;
  delete leaf.dataset.hears;
  key("tuner").setAttribute("aria-expanded", "false");
}

// A test.
function stage(now) {
  const leaf = part("sheet");
  if (leaf) leaf.dataset.now = now;
  key("retest")?.setAttribute("aria-pressed", now === "counting" || now === "sounding" ? "true" : "false");
  if (part("does")) part("does").hidden = now !== "poor" && now !== "unsent";
  if (part("label")) part("label").textContent = now === "counting" || now === "sounding" ? words().stop : words().retest;
}

async function test() {
  if (taking) return taking === "asking" ? undefined : taking.stop();
  taking = "asking";
  kept = null;
  const place = { reed: words().of, at: Number(words().at) };
  if (!isOpen()) {
    openedForTest = true;
    void open();
  }
  tell("");
  part("poor").hidden = true;
  stage("asking");
  let take = null;
  wanted = true;
  try {
    taking = await record({
      most: Number(words().most),
      untilQuiet: true,
      counted: (left) => {
        stage(left > 0 ? "counting" : "sounding");
        part("count").textContent = left > 0 ? left : "";
        // What was said just before the key may have come into the log while it counted: the reed sounds after that.
        if (left <= 0 && words().of === place.reed) place.at = Number(words().at);
      },
      heard: (_, seconds) => {
        const clock = part("clock");
        if (clock) clock.textContent = `0:${String(Math.floor(seconds)).padStart(2, "0")} ${words().ofMost}`;
      },
    });
    if (!wanted) taking.drop(); // it was closed while the browser asked for the microphone
    take = await taking.done;
  } catch (trouble) {
    tell(words()[reasonOf(trouble)], "refused");
  }
  taking = null;
  stage("idle");
  if (take) await look({ ...take, place, operation: crypto.randomUUID() });
}

async function look(take) {
  const poor = check(take);
  const before = take.end === "unplugged" ? words().unplugged : "";
  if (poor.includes("nothing")) return tell([before, words().poorNothing].filter(Boolean).join(" "), "refused");
  kept = take;
  if (poor.length === 0) return keep(before);
  const list = part("poor");
  list.replaceChildren(
    ...poor.map((name) => {
      const line = document.createElement("li");
      line.textContent = words()[`poor${name[0].toUpperCase()}${name.slice(1)}`];
      return line;
    }),
  );
  list.hidden = false;
  tell([before, words().poor].filter(Boolean).join(" "), "refused");
  stage("poor");
}

async function keep(before = "") {
  const take = kept;
  if (!take) return;
  kept = null;
  part("poor").hidden = true;
  stage("sending");
  unsent++;
  const told = (text, kind) => taking || tell([before, text].filter(Boolean).join(" "), kind);
  told(words().sending);
  try {
    await send(
      wav(take.samples, take.rate),
      { reed: take.place.reed, kind: words().kind, token: part("token").querySelector("input").value, operation: take.operation, atSequence: take.place.at, retest: true },
      { waiting: () => told(words().waiting) },
    );
    if (openedForTest && !taking) close();
    told(words().kept, "saved");
    if (!taking) stage("idle");
  } catch (trouble) {
    const isOver = trouble instanceof Refused && trouble.message;
    told(trouble instanceof SignedOut ? words().signedOut : isOver ? trouble.message : words().unsent, "refused");
    if (!taking && !isOver) {
      kept = take;
      stage("unsent");
    }
  } finally {
    unsent--;
  }
}

function drop() {
  kept = null;
  part("poor").hidden = true;
  tell("");
  stage("idle");
  if (openedForTest) close();
}

const presses = {
  tuner: () => (isOpen() ? leave() : void open()),
  retest: () => void test(),
  keep: () => void keep(),
  again: () => void test(),
  drop,
};

function leave() {
  wanted = false;
  if (taking && taking !== "asking") taking.drop();
  if (!kept) tell("");
  close();
}

const click = (event) => {
  const button = event.target instanceof Element ? event.target.closest("[data-sound] button[data-press]") : null;
  if (button) presses[button.dataset.press]?.();
};

const leaving = (event) => {
  if (unsent > 0 || kept) event.preventDefault();
};

export function start() {
  document.addEventListener("click", click);
  addEventListener("beforeunload", leaving);
  document.documentElement.dataset.soundReady = "yes";
}

export function stop() {
  wanted = false;
  if (taking && taking !== "asking") taking.drop();
  close();
  document.removeEventListener("click", click);
  removeEventListener("beforeunload", leaving);
}
