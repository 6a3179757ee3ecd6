import { PitchReader } from "./pitch.js";

// Why a take is poor, before it is sent. The limits are our own choice; what a clip needs to be read stands in docs/measurement/sound.md.
const fullScale = 32766 / 32768;
const clippedRun = 3;
const faint = -60;
const tooQuiet = -42;
const overRoom = 6;
const clearOfRoom = 20;
const leastSound = 0.5;
const quietBefore = 0.06;
const looked = 0.2;
const repeats = 0.15;

const isClipped = (samples) => {
  let run = 0;
  for (const one of samples) {
    run = Math.abs(one) >= fullScale ? run + 1 : 0;
    if (run === clippedRun) return true;
  }
  return false;
};

// The level of each hundredth of a second, in decibels under full scale.
const levels = (samples, rate) => {
  const length = Math.round(rate / 100);
  const all = [];
  for (let at = 0; at + length <= samples.length; at += length) {
    let sum = 0;
    for (let i = at; i < at + length; i++) sum += samples[i] * samples[i];
    all.push(10 * Math.log10(sum / length + 1e-12));
  }
  return all;
};

// Whether its beginning is a tone: whoever began too soon is told from a room that is noisy.
const beginsWithTone = (samples, rate) => {
  const reader = new PitchReader(rate);
  reader.hear(samples.subarray(0, Math.min(samples.length, Math.round(looked * rate), 8192)));
  const { hertz, aperiodicity } = reader.read();
  return hertz > 0 && aperiodicity < repeats;
};

/**
 * Looks a take over.
 * @param {{samples: Float32Array, rate: number, room: number}} take What was recorded, and the level of the room before it.
 * @returns {string[]} Of `nothing`, `clipped`, `quiet`, `begun`, `noisy`, `short` those that hold.
 */
export function check({ samples, rate, room }) {
  const all = levels(samples, rate);
  // As loud as it is for a twentieth of a second, all together: less is a knock.
  const loud = [...all].sort((a, b) => b - a)[Math.min(4, all.length - 1)] ?? -120;
  const first = Math.min(...all.slice(0, Math.round(quietBefore * 100)));
  const begun = first > loud - clearOfRoom && loud >= faint && (first > room + overRoom || beginsWithTone(samples, rate));
  if (!begun && (loud < faint || loud < room + overRoom)) return [room > tooQuiet ? "noisy" : "nothing"];
  const sounding = all.filter((level) => level > Math.max(loud - 20, begun ? -120 : room + overRoom)).length / 100;
  return [
    ["clipped", isClipped(samples)],
    ["quiet", loud < tooQuiet],
    ["begun", begun],
    ["noisy", !begun && loud - room < clearOfRoom],
    ["short", sounding < leastSound],
  ].flatMap(([name, holds]) => (holds ? [name] : []));
}
