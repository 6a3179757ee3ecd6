// A memo at the bench: one key begins it, the same key ends it. What the browser records is put aside on this device while it is
// being said, and stays there until the studio has all of it: neither a lost connection nor a closed window loses it.
import { send, wait, Refused, SignedOut } from "./recording-upload.js";
import { reasonOf } from "./sound/microphone.js";

const kinds = ["audio/webm;codecs=opus", "audio/ogg;codecs=opus", "audio/mp4"];
const lastStretch = 30;
const again = 10_000;

// The shelf of this device. Where there is none (a private window, a full disk), a take is kept in the page alone.
const shelf = (() => {
  let opened = null;
  const open = () =>
    (opened ??= new Promise((done, fail) => {
      const asked = indexedDB.open("reedclinic-memos", 1);
      asked.onupgradeneeded = () => {
        asked.result.createObjectStore("takes", { keyPath: "id" });
        asked.result.createObjectStore("pieces", { keyPath: ["take", "number"] });
      };
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => fail(asked.error);
    }));
  const within = async (mode, work) => {
    const book = await open();
    return new Promise((done, fail) => {
      const change = book.transaction(["takes", "pieces"], mode);
      const asked = work(change.objectStore("takes"), change.objectStore("pieces"));
      change.oncomplete = () => done(asked?.result);
      change.onabort = change.onerror = () => fail(change.error);
    });
  };
  const ofTake = (id) => IDBKeyRange.bound([id, 0], [id, Number.MAX_SAFE_INTEGER]);
  return {
    takes: () => within("readonly", (takes) => takes.getAll()),
    pieces: (id) => within("readonly", (_, pieces) => pieces.getAll(ofTake(id))),
    put: (take) => within("readwrite", (takes) => takes.put(take)),
    add: (take, number, blob) => within("readwrite", (_, pieces) => pieces.put({ take, number, blob })),
    forget: (id) =>
      within("readwrite", (takes, pieces) => {
        takes.delete(id);
        pieces.delete(ofTake(id));
      }),
  };
})();

const box = () => document.querySelector("[data-memo]");
const part = (name) => box()?.querySelector(`[data-${name}]`);
const clock = (seconds) => `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, "0")}`;
const said = (take) => ({ id: take.id, reed: take.reed, at: take.at, who: take.who, type: take.type });

let starting = false;
let now = null;
const unsafe = new Set();

function tell(words, kind = "") {
  const state = part("state");
  if (!state) return;
  state.className = `memo-state ${kind}`;
  state.textContent = words;
}

function show() {
  const button = box()?.querySelector("button.key");
  if (!button) return;
  button.setAttribute("aria-pressed", now ? "true" : "false");
  part("label").textContent = now ? box().dataset.stop : box().dataset.record;
  part("time").hidden = !now;
}

// Only one window of this device has a take in hand.
const alone = (id, work) =>
  navigator.locks ? navigator.locks.request(`reedclinic-memo-${id}`, { ifAvailable: true }, async (lock) => lock && work()) : work();

async function begin() {
  const words = box().dataset;
  const type = globalThis.MediaRecorder && kinds.find((kind) => MediaRecorder.isTypeSupported(kind));
  if (!type || !navigator.mediaDevices?.getUserMedia) return tell(words.unable, "refused");
  let stream;
  try {
    // What makes voices clear takes the crow of a reed for noise.
    stream = await navigator.mediaDevices.getUserMedia({ audio: { channelCount: 1, echoCancellation: false, noiseSuppression: false } });
  } catch (trouble) {
    return tell(words[reasonOf(trouble)], "refused");
  }
  const take = { id: crypto.randomUUID(), reed: words.of, at: Number(words.at), who: words.me, type, pieces: [], isKept: true };
  await new Promise((begun) => void alone(take.id, () => record(take, stream, Number(words.most), begun)).finally(begun));
}

async function record(take, stream, most, begun) {
  const words = box()?.dataset ?? {};
  let recorder;
  try {
    recorder = new MediaRecorder(stream, { mimeType: take.type, audioBitsPerSecond: 48_000 });
    recorder.start(1000);
  } catch {
    for (const track of stream.getTracks()) track.stop();
    return tell(words.unable, "refused");
  }
  const writing = [keep(take, () => shelf.put(said(take)))];
  let end = "";
  recorder.ondataavailable = (event) => {
    if (event.data.size === 0) return;
    const number = take.pieces.push(event.data) - 1;
    writing.push(keep(take, () => shelf.add(take.id, number, event.data)));
  };
  const stopped = new Promise((done) => (recorder.onstop = done));
  now = { take, stop: (why) => ((end ||= why ?? ""), recorder.state !== "inactive" && recorder.stop()) };
  for (const track of stream.getAudioTracks()) track.onended = () => now?.stop("unplugged");
  const since = performance.now();
  const tick = setInterval(() => {
    const seconds = (performance.now() - since) / 1000;
    if (part("time")) part("time").textContent = `${clock(Math.min(seconds, most))} ${words.ofMost.replace("{0}", clock(most))}`;
    if (seconds >= most) now?.stop("full");
    else if (most - seconds <= lastStretch && most > 2 * lastStretch && !part("state")?.classList.contains("ending")) tell(words.ending, "ending");
  }, 200);
  begun();
  show();
  tell(words.recording, "recording");
  await stopped;
  clearInterval(tick);
  if (stream.getAudioTracks().some((track) => track.readyState === "ended")) end ||= "unplugged";
  for (const track of stream.getTracks()) track.stop();
  now = null;
  show();
  await Promise.all(writing);
  if (take.pieces.length === 0) {
    await forget(take);
    return tell(words.nothing, "refused");
  }
  await deliver(take, end ? words[end] : "");
}

// What can't be put on the shelf is still in the page; then the window has to stay open, and says so when it is closed.
async function keep(take, work) {
  try {
    await work();
  } catch {
    take.isKept = false;
    unsafe.add(take.id);
  }
}

async function forget(take) {
  unsafe.delete(take.id);
  await shelf.forget(take.id).catch(() => {});
}

async function deliver(take, before = "") {
  const with_ = (words) => [before, words].filter(Boolean).join(" ");
  const blob = new Blob(take.pieces, { type: take.type });
  const onItsWay = (done) => now || tell(with_((box()?.dataset.sending ?? "").replace("{0}", Math.round(done * 100))), before && "ending");
  for (;;) {
    const words = box()?.dataset ?? {};
    onItsWay(0);
    try {
      await send(
        blob,
        { reed: take.reed, kind: "VoiceMemo", token: box()?.querySelector("[name=__RequestVerificationToken]")?.value ?? "", operation: take.id, atSequence: take.at },
        {
          progress: onItsWay,
          waiting: () => now || tell(with_(take.isKept ? words.waiting : words.waitingHere), "waiting"),
        },
      );
      await forget(take);
      if (!now) tell(with_(words.kept), "saved");
      return;
    } catch (trouble) {
      if (trouble instanceof Refused && (trouble.message || trouble.status === 404)) {
        return left(take, blob, trouble.message || words.gone);
      }
      if (!now) tell(with_(trouble instanceof SignedOut ? words.signedOut : take.isKept ? words.waiting : words.waitingHere), "waiting");
      await wait(again);
    }
  }
}

// What can't be brought back goes at the second press.
function twice(button, first, second, done) {
  const one = button(first, () => {
    if (one.textContent === second) return done();
    one.textContent = second;
    one.addEventListener("blur", () => (one.textContent = first), { once: true });
  });
  return one;
}

// What isn't taken is still the teacher's: to be tried again, saved elsewhere, or thrown away.
function left(take, blob, reason) {
  const list = part("left");
  if (!list) return;
  if (!now) tell("");
  const words = box().dataset;
  const row = document.createElement("li");
  const told = document.createElement("p");
  told.textContent = reason;
  const button = (text, press) => {
    const one = document.createElement("button");
    one.type = "button";
    one.className = "second";
    one.textContent = text;
    one.addEventListener("click", press);
    return one;
  };
  const gone = () => {
    row.remove();
    list.hidden = list.children.length === 0;
  };
  const file = document.createElement("a");
  file.href = URL.createObjectURL(blob);
  file.download = `memo.${take.type.replace("audio/", "").split(";")[0]}`;
  file.className = "button second";
  file.textContent = words.save;
  row.append(
    told,
    button(words.again, () => (gone(), void alone(take.id, () => deliver(take)))),
    file,
    twice(button, words.discard, words.discardSure, () => (gone(), void forget(take))),
  );
  list.append(row);
  list.hidden = false;
}

// What an earlier window began and couldn't send.
async function resume() {
  const words = box()?.dataset;
  const takes = await shelf.takes().catch(() => []);
  for (const take of takes.filter((one) => one.who === words?.me)) {
    void alone(take.id, async () => {
      const pieces = (await shelf.pieces(take.id)).map((piece) => piece.blob);
      if (pieces.length === 0) return forget(take);
      await deliver({ ...take, pieces, isKept: true }, words.found);
    });
  }
}

// While one memo is on its way, the next one can be said.
async function press() {
  if (now) return now.stop();
  if (starting) return;
  starting = true;
  await begin().finally(() => (starting = false));
}

async function change(event) {
  const form = event.target instanceof HTMLFormElement ? event.target : null;
  if (!form || (form.dataset.memoLetter === undefined && !form.dataset.memoRemove)) return;
  event.preventDefault();
  const token = form.querySelector("[name=__RequestVerificationToken]").value;
  const body = new URLSearchParams(new FormData(form));
  body.set("Operation", crypto.randomUUID());
  const remove = form.dataset.memoRemove;
  const answer = await (remove
    ? fetch(`${remove}?operation=${body.get("Operation")}`, { method: "DELETE", headers: { RequestVerificationToken: token }, redirect: "manual" })
    : fetch(form.action, { method: "POST", body, headers: { Accept: "application/json" }, redirect: "manual" })
  ).catch(() => null);
  if (!answer?.ok) {
    const problem = answer?.status === 422 ? (await answer.json().catch(() => ({}))).problem : "";
    tell(problem || (answer?.type === "opaqueredirect" ? box()?.dataset.signedOut : box()?.dataset.notDone) || "", "refused");
  }
}

const click = (event) => {
  if (event.target instanceof Element && event.target.closest("[data-memo] button.key")) void press();
};

// That a memo is kept has been read by whoever says the next thing: its row goes back to the page.
const read = () => {
  if (part("state")?.classList.contains("saved")) tell("");
};

const leaving = (event) => {
  if (now || unsafe.size > 0) event.preventDefault();
};

export function start() {
  document.addEventListener("click", click);
  document.addEventListener("submit", change);
  document.addEventListener("bench-said", read);
  addEventListener("beforeunload", leaving);
  show();
  document.documentElement.dataset.memoReady = "yes";
  void resume();
}

export function stop() {
  now?.stop();
  document.removeEventListener("click", click);
  document.removeEventListener("submit", change);
  document.removeEventListener("bench-said", read);
  if (unsafe.size === 0) removeEventListener("beforeunload", leaving);
}
