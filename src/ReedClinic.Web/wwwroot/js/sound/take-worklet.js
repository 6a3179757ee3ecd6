// Hands on what the microphone hears, 1,024 samples at a time.
class Taker extends AudioWorkletProcessor {
  constructor() {
    super();
    this.chunk = new Float32Array(1024);
    this.at = 0;
  }

  process([[samples]]) {
    if (!samples) return true;
    this.chunk.set(samples, this.at);
    this.at += samples.length;
    if (this.at === this.chunk.length) {
      this.port.postMessage(this.chunk, [this.chunk.buffer]);
      this.chunk = new Float32Array(1024);
      this.at = 0;
    }
    return true;
  }
}

registerProcessor("reedclinic-take", Taker);
