// Reads what the microphone hears each 512 samples, a hundredth of a second, and tells what sounds. Nothing of the sound itself is handed on.
import { Hop, PitchReader } from "./pitch.js";

class Tuner extends AudioWorkletProcessor {
  constructor() {
    super();
    this.reader = new PitchReader(sampleRate);
    this.chunk = new Float32Array(2 * Hop);
    this.at = 0;
  }

  process([[samples]]) {
    if (!samples) return true;
    this.chunk.set(samples, this.at);
    this.at += samples.length;
    if (this.at === this.chunk.length) {
      this.at = 0;
      this.reader.hear(this.chunk);
      const { shown, octaves } = this.reader.read();
      this.port.postMessage({ hertz: shown, octaves });
    }
    return true;
  }
}

registerProcessor("reedclinic-tuner", Tuner);
