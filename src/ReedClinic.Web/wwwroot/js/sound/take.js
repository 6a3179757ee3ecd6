// A take: three counts, then the sound, until somebody stops it, or it is over, or its time is. All of it stays in this page.
import { listen } from "./microphone.js";

const beat = 1;
const beats = 3;
// What sounded just before the count was over belongs to the take: nobody begins on the very beat, and quiet before the sound is wanted.
const before = 0.3;
const settles = 0.3;
const sounded = 0.3;
const silent = 0.8;

const decibels = (samples) => {
  let all = 0;
  for (const one of samples) all += one * one;
  return 10 * Math.log10(all / samples.length + 1e-12);
};

// The room is what is quietest while it is counted: whoever begins too soon isn't taken for it.
const quietest = (levels) => (levels.length > 0 ? [...levels].sort((a, b) => a - b)[Math.floor(levels.length / 5)] : -120);

/**
 * Records a take.
 * @param {{most: number, untilQuiet?: boolean, counted?: (left: number) => void, heard?: (decibels: number, seconds: number) => void}} how
 *   Seconds at the most; whether it ends by itself when the sound is over; what is told of the count (0 when it begins) and of the level.
 * @returns {Promise<{stop: () => void, drop: () => void, done: Promise<{samples: Float32Array, rate: number, room: number, end: string} | null>}>}
 *   How to end it and how to throw it away, and what it is at its end: `room` is the level of the quiet while it was counted; null when it was thrown away.
 */
export async function record(how) {
  let finish = null;
  const done = new Promise((end) => (finish = end));
  const [chunks, room] = [[], []];
  let [mic, heard, told, loud, quiet, isOver, isGone] = [null, 0, beats + 1, 0, 0, false, false];

  const end = (why) => {
    if (isOver) return;
    isOver = true;
    mic?.close();
    finish(why ? whole(why) : null);
  };

  const whole = (why) => {
    const rate = mic.rate;
    const all = new Float32Array(chunks.reduce((sum, one) => sum + one.length, 0));
    let at = 0;
    for (const chunk of chunks) {
      all.set(chunk, at);
      at += chunk.length;
    }
    const from = Math.max(0, Math.min(all.length, Math.round((beats * beat - before) * rate)));
    return { samples: all.slice(from), rate, room: quietest(room), end: why };
  };

  // The count goes by the samples themselves: what was heard while it ran is the quiet of the room.
  const count = (level, seconds) => {
    const left = Math.ceil(beats - seconds / beat);
    if (left < told && left > 0) how.counted?.((told = left));
    if (seconds > settles && seconds < beats * beat - before) room.push(level);
    how.heard?.(level, 0);
  };

  const follow = (level, seconds) => {
    if (told > 0) how.counted?.((told = 0));
    how.heard?.(level, seconds);
    const isSound = level > Math.max(-55, quietest(room) + 12);
    loud += isSound ? 1024 / mic.rate : 0;
    quiet = isSound ? 0 : quiet + 1024 / mic.rate;
    if (how.untilQuiet && loud >= sounded && quiet >= silent) end("quiet");
    else if (seconds >= how.most) end("full");
  };

  mic = await listen(
    "take-worklet.js",
    "reedclinic-take",
    (chunk) => {
      if (isOver || !mic) return;
      chunks.push(chunk);
      heard += chunk.length;
      const seconds = heard / mic.rate;
      if (seconds < beats * beat) count(decibels(chunk), seconds);
      else follow(decibels(chunk), seconds - beats * beat);
    },
    // It may be gone before it is handed over.
    () => (mic ? end("unplugged") : (isGone = true)),
  );
  if (isGone) end("unplugged");
  return { stop: () => end("stopped"), drop: () => end(""), done };
}

/** A 16-bit file of one channel (RIFF WAVE, Microsoft and IBM, 1991), with the rate it was taken at. */
export function wav(samples, rate) {
  const file = new DataView(new ArrayBuffer(44 + 2 * samples.length));
  const words = (at, text) => [...text].forEach((one, i) => file.setUint8(at + i, one.charCodeAt(0)));
  words(0, "RIFF");
  file.setUint32(4, 36 + 2 * samples.length, true);
  words(8, "WAVEfmt ");
  file.setUint32(16, 16, true);
  file.setUint16(20, 1, true);
  file.setUint16(22, 1, true);
  file.setUint32(24, rate, true);
  file.setUint32(28, 2 * rate, true);
  file.setUint16(32, 2, true);
  file.setUint16(34, 16, true);
  words(36, "data");
  file.setUint32(40, 2 * samples.length, true);
  samples.forEach((one, i) => file.setInt16(44 + 2 * i, Math.max(-32768, Math.min(32767, Math.round(one * 32768))), true));
  return new Blob([file.buffer], { type: "audio/wav" });
}

/** Plays a take once; the answer ends it. Through the page's own sound, since addresses of blobs aren't let in. */
export function play(take, over) {
  const context = new AudioContext();
  const buffer = context.createBuffer(1, take.samples.length, take.rate);
  buffer.copyToChannel(take.samples, 0);
  const source = new AudioBufferSourceNode(context, { buffer });
  source.onended = () => {
    void context.close().catch(() => {});
    over();
  };
  source.connect(context.destination);
  source.start();
  return () => source.stop();
}
