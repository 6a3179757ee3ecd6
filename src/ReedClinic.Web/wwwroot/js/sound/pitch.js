// The pitch of what is heard now, and which octaves sound: the method of ReedClinic.Measurement (YIN, a check of the octave, refinement by the
// phase of the partials; octaves through a cosine bell), looking back only. docs/measurement/sound.md tells where the two differ.
export const Hop = 256;

const lowestHertz = 138;
const highestHertz = 2300;
const mostAperiodic = 0.3;
// The long window is steadier and reaches lower; the short one is soonest full of a new note, and counts where it is sure and the long one isn't, or
// holds two notes: then it says another one, or one of which both are partials, and repeats itself less.
const quickLowest = 240;
const quickSure = 0.15;
const slowSure = 0.2;
const surer = 0.03;
const firstLength = 640;
const oneStep = 1.03;
const faint = 3e-4;
const middleC = 261.6255653005986;
const longest = 8192;
const refined = 2048;
const partials = 8;
const highestPartial = 10_000;

// Every other sample after a half-band low pass: 23 weights under a Blackman window, every other of them nought.
const halfTaps = (() => {
  const weights = Array.from({ length: 6 }, (_, tap) => {
    const [x, edge] = [2 * tap + 1, (Math.PI * (2 * tap + 1)) / 12];
    return (Math.sin((Math.PI * x) / 2) / (Math.PI * x)) * (0.42 + 0.5 * Math.cos(edge) + 0.08 * Math.cos(2 * edge));
  });
  const sum = weights.reduce((all, one) => all + one, 0);
  return weights.map((weight) => weight / sum / 4);
})();

/** YIN (A. de Cheveigné and H. Kawahara, JASA 111, 2002, 1917–1930) at half the rate; a dip is taken at a multiple of the period. */
class Yin {
  /** Over so many samples of half the rate, for pitches down to so many hertz. */
  constructor(rate, window, lowest) {
    this.rate = rate / 2;
    this.window = window;
    this.lags = Math.ceil(this.rate / lowest) + 18;
    this.half = new Float32Array(window + this.lags);
    this.sum = new Float64Array(this.lags);
    this.dips = new Float64Array(this.lags);
  }

  /** Reads the newest samples, roughly: hertz and how far they are from repeating themselves. */
  read(kept) {
    this.halve(kept);
    const { half, lags, sum, dips, window } = this;
    let before = 0;
    dips[0] = 1;
    for (let lag = 1; lag < lags; lag++) {
      let all = 0;
      for (let i = 0; i < window; i++) {
        const apart = half[i] - half[i + lag];
        all += apart * apart;
      }
      sum[lag] = all;
      before += all;
      dips[lag] = before > 0 ? (all * lag) / before : 1;
    }
    return this.dip();
  }

  halve(kept) {
    const first = kept.length - 12 - 2 * this.half.length;
    for (let n = 0; n < this.half.length; n++) {
      const at = first + 2 * n;
      let all = kept[at] * 0.5;
      for (let tap = 0; tap < 6; tap++) all += (kept[at + 1 + 2 * tap] + kept[at - 1 - 2 * tap]) * halfTaps[tap];
      this.half[n] = all;
    }
  }

  dip() {
    const { dips, lags } = this;
    let lowest = Infinity;
    for (let lag = 5; lag < lags - 1; lag++) lowest = Math.min(lowest, dips[lag]);
    const enough = Math.max(0.1, lowest + 0.06);
    for (let lag = 5; lag < lags - 1; lag++) {
      if (dips[lag] <= enough + 20 / (lag * lag) && dips[lag] <= dips[lag + 1] && dips[lag] <= dips[lag - 1]) {
        return { hertz: this.rate / this.finer(lag), aperiodicity: dips[lag] };
      }
    }
    return { hertz: 0, aperiodicity: 1 };
  }

  finer(lag) {
    const { sum, dips, lags } = this;
    let period = this.bottom(lag);
    for (let times = 2; period * times < lags - 4; times *= 2) {
      const near = Math.round(period * times);
      let at = near;
      for (let other = near - 1; other <= near + 1; other++) at = sum[other] < sum[at] ? other : at;
      if (dips[at] > dips[lag] + 0.05 || sum[at] > sum[at - 1] || sum[at] > sum[at + 1]) break;
      period = this.bottom(at) / times;
    }
    return period;
  }

  bottom(lag) {
    const [before, here, after] = [this.sum[lag - 1], this.sum[lag], this.sum[lag + 1]];
    const bend = before - 2 * here + after;
    return lag + (bend > 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0);
  }
}

/** Half of YIN’s pitch is taken where partials that only the lower octave has rise above the noise between them. */
class OctaveCheck {
  static length = 4096;

  constructor(rate) {
    this.line = rate / OctaveCheck.length;
    const n = OctaveCheck.length;
    this.cos = Float64Array.from({ length: n / 2 }, (_, i) => Math.cos((2 * Math.PI * i) / n));
    this.sin = Float64Array.from({ length: n / 2 }, (_, i) => -Math.sin((2 * Math.PI * i) / n));
    this.re = new Float64Array(n);
    this.im = new Float64Array(n);
  }

  /** Whether the newest samples, so many of them, are an octave lower than they seem. */
  isLower(kept, hertz, length) {
    const half = hertz / 2;
    if (half < lowestHertz) return false;
    this.transform(kept, length);
    let strongest = 0;
    for (let partial = 1; partial <= 4; partial++) strongest = Math.max(strongest, this.peak(partial * hertz));
    let risen = 0;
    for (let odd = 0; odd < 4; odd++) {
      const at = (2 * odd + 1) * half;
      if (at > 12_000) break;
      const noise = Math.max(this.between(at - half / 2), this.between(at + half / 2));
      risen += this.peak(at) > 12 * noise && this.peak(at) > 3e-4 * strongest ? (odd === 0 ? 2 : 1) : 0;
    }
    return risen >= 2;
  }

  transform(kept, length) {
    const { re, im, cos, sin } = this;
    const n = re.length;
    const [from, bell] = [kept.length - length, (2 * Math.PI) / length];
    im.fill(0);
    for (let i = 0, j = 0; i < n; i++) {
      re[j] = i < length ? kept[from + i] * (0.5 - 0.5 * Math.cos(bell * (i + 0.5))) : 0;
      let bit = n >> 1;
      for (; j & bit; bit >>= 1) j ^= bit;
      j ^= bit;
    }
    for (let size = 2; size <= n; size *= 2) {
      const step = n / size;
      for (let start = 0; start < n; start += size) {
        for (let k = 0, a = start, b = start + size / 2; k < size / 2; k++, a++, b++) {
          const [c, s] = [cos[k * step], sin[k * step]];
          const x = re[b] * c - im[b] * s;
          const y = re[b] * s + im[b] * c;
          re[b] = re[a] - x;
          im[b] = im[a] - y;
          re[a] += x;
          im[a] += y;
        }
      }
    }
  }

  power(line) {
    return this.re[line] * this.re[line] + this.im[line] * this.im[line];
  }

  peak(hertz) {
    const line = Math.round(hertz / this.line);
    let most = 0;
    for (let at = Math.max(0, line - 2); at <= line + 2; at++) most = Math.max(most, this.power(at));
    return most;
  }

  between(hertz) {
    const line = Math.round(hertz / this.line);
    let all = 0;
    for (let at = Math.max(0, line - 2); at <= line + 2; at++) all += this.power(at);
    return all / 5 + 1e-12;
  }
}

/** Finds the small change of pitch at which the partials add up to the most power, by Newton steps on their phase. */
class Refinement {
  constructor(rate) {
    this.rate = rate;
    this.sums = new Float64Array(6);
  }

  refine(kept, hertz, length, most) {
    const count = Math.max(1, Math.min(most, Math.floor(highestPartial / hertz)));
    let [pull, bend] = [0, 0];
    for (let k = 1; k <= count; k++) {
      const noise = this.turn(kept, (k + 0.5) * hertz, length);
      const power = this.turn(kept, k * hertz, length);
      if (power < 6 * noise) continue;
      const [re0, im0, re1, im1, re2, im2] = this.sums;
      const itsBend = re0 * re2 + im0 * im2 - (re1 * re1 + im1 * im1);
      if (itsBend < 0.4 * power * this.spread) continue;
      pull += k * (re0 * im1 - im0 * re1);
      bend += k * k * itsBend;
    }
    const shift = bend > 0 ? ((pull / bend) * this.rate) / (2 * Math.PI) : 0;
    return hertz + Math.max(-0.03 * hertz, Math.min(0.03 * hertz, shift));
  }

  /** Turns the newest samples back by one pitch under a cosine bell: sums of them, times their distance, times its square. */
  turn(kept, hertz, length) {
    const first = kept.length - length;
    const middle = (length - 1) / 2;
    const step = (-2 * Math.PI * hertz) / this.rate;
    const [turnRe, turnIm] = [Math.cos(step), Math.sin(step)];
    const bellStep = (2 * Math.PI) / length;
    const [bellRe, bellIm] = [Math.cos(bellStep), Math.sin(bellStep)];
    let [re, im] = [Math.cos(-step * middle), Math.sin(-step * middle)];
    let [c, s] = [Math.cos(bellStep / 2), Math.sin(bellStep / 2)];
    let [re0, im0, re1, im1, re2, im2, all, wide] = [0, 0, 0, 0, 0, 0, 0, 0];
    for (let i = 0; i < length; i++) {
      const weight = 0.5 - 0.5 * c;
      const far = i - middle;
      const x = kept[first + i] * weight;
      const [a, b] = [x * re, x * im];
      re0 += a;
      im0 += b;
      re1 += a * far;
      im1 += b * far;
      re2 += a * far * far;
      im2 += b * far * far;
      all += weight;
      wide += weight * far * far;
      const nextRe = re * turnRe - im * turnIm;
      im = re * turnIm + im * turnRe;
      re = nextRe;
      const nextC = c * bellRe - s * bellIm;
      s = c * bellIm + s * bellRe;
      c = nextC;
    }
    this.spread = wide / all;
    this.sums.set([re0, im0, re1, im1, re2, im2]);
    return re0 * re0 + im0 * im0;
  }
}

/** The sizes of the octaves near C4, C5 and C6, and of the noise half way to their neighbours, over the last readings of one tone. */
class Octaves {
  static places = [1, 2, 4, 0.5, 1.5, 2.5, 3.5, 4.5];
  static reach = 8;

  constructor(rate) {
    this.rate = rate;
    this.clear();
  }

  clear() {
    this.rows = [];
  }

  read(kept, hertz) {
    const cents = 1200 * Math.log2(hertz / middleC);
    const lowest = middleC * 2 ** ((cents - 1200 * Math.round(cents / 1200)) / 1200);
    const length = Math.round((4 * this.rate) / lowest);
    if (this.rows.length === Octaves.reach) this.rows.shift();
    this.rows.push(Octaves.places.map((place) => this.size(kept, place * lowest, length)));
    const sorted = Octaves.places.map((_, at) => this.rows.map((row) => row[at]).sort((a, b) => a - b));
    const upper = (at) => sorted[at][Math.floor((sorted[at].length * 3) / 4)];
    const middle = (at) => (sorted[at][Math.floor((sorted[at].length - 1) / 2)] + sorted[at][Math.floor(sorted[at].length / 2)]) / 2;
    const sizes = [upper(0), upper(1), upper(2)];
    const noise = [middle(3) + middle(4), middle(4) + middle(5), middle(6) + middle(7)].map((both) => both / 2);
    const strongest = Math.max(...sizes);
    return sizes.map((size, at) => ({
      octave: at + 4,
      present: size > 0 && size >= 3.2 * noise[at] && size >= 0.032 * strongest,
      level: 20 * Math.log10(size / strongest),
    }));
  }

  size(kept, hertz, length) {
    const first = kept.length - length;
    const [step, bellStep] = [(2 * Math.PI * hertz) / this.rate, (2 * Math.PI) / length];
    const [turnRe, turnIm, bellRe, bellIm] = [Math.cos(step), Math.sin(step), Math.cos(bellStep), Math.sin(bellStep)];
    let [re, im, c, s] = [1, 0, Math.cos(bellStep / 2), Math.sin(bellStep / 2)];
    let [sumRe, sumIm] = [0, 0];
    for (let i = 0; i < length; i++) {
      const x = kept[first + i] * (1 - c);
      sumRe += x * re;
      sumIm += x * im;
      const nextRe = re * turnRe - im * turnIm;
      im = re * turnIm + im * turnRe;
      re = nextRe;
      const nextC = c * bellRe - s * bellIm;
      s = c * bellIm + s * bellRe;
      c = nextC;
    }
    return (2 / length) * Math.hypot(sumRe, sumIm);
  }
}

const isMultiple = (one, other) => {
  const times = one > other ? one / other : other / one;
  return isOneStep(times, Math.round(times));
};

const isOneStep = (one, other) => one > 0 && other > 0 && one / other < oneStep && other / one < oneStep;

/** Hears samples as they come, and says at any time what sounds. */
export class PitchReader {
  /** @param {number} rate Samples a second. */
  constructor(rate) {
    this.rate = rate;
    this.kept = new Float32Array(longest);
    this.slow = new Yin(rate, 768, lowestHertz);
    this.quick = new Yin(rate, 224, quickLowest);
    this.check = new OctaveCheck(rate);
    this.refinement = new Refinement(rate);
    this.octaves = new Octaves(rate);
    this.samples = 0;
    this.looks = [];
    this.looked = 0;
    this.seemed = 0;
    this.own = 0;
    this.voiced = -longest;
    this.begin(0, 0);
  }

  /** Hears some more samples, at most a few thousand at once. */
  hear(samples) {
    this.kept.copyWithin(0, samples.length);
    this.kept.set(samples, longest - samples.length);
    this.samples += samples.length;
  }

  /**
   * What sounds now.
   * @returns {{hertz: number, shown: number, aperiodicity: number, octaves: {octave: number, present: boolean, level: number}[]}}
   *   The pitch as it is and as it is shown, calmed as far as it is steady; 0 where there is none; and the octaves, in decibels under the strongest.
   */
  read() {
    const { rough, heard } = this.rough();
    let hertz = rough.aperiodicity < mostAperiodic && this.loudness() > faint && rough.hertz >= lowestHertz ? rough.hertz : 0;
    if (hertz > 0) hertz = this.inItsOctave(hertz, heard);
    else this.looks = [];
    if (hertz === 0 || hertz > highestHertz) {
      this.begin(0, 0);
      return { hertz: 0, shown: 0, aperiodicity: rough.aperiodicity, octaves: [] };
    }
    if (!isOneStep(hertz, this.last)) this.begin(hertz, heard);
    const length = Math.min(refined, this.samples - this.since);
    hertz = this.refinement.refine(this.kept, hertz, Math.min(1024, length), 2);
    hertz = this.refinement.refine(this.kept, hertz, length, 4);
    hertz = this.refinement.refine(this.kept, hertz, length, partials);
    this.last = hertz;
    return { hertz, shown: this.calm(hertz), aperiodicity: rough.aperiodicity, octaves: this.octaves.read(this.kept, hertz) };
  }

  rough() {
    const slow = this.slow.read(this.kept);
    const quick = this.quick.read(this.kept);
    const isOther = !isOneStep(quick.hertz, slow.hertz) && (!isMultiple(quick.hertz, slow.hertz) || (quick.hertz > slow.hertz && quick.aperiodicity < slow.aperiodicity - surer));
    return quick.aperiodicity < quickSure && (slow.aperiodicity > slowSure || isOther) ? { rough: quick, heard: firstLength } : { rough: slow, heard: 1024 };
  }

  begin(hertz, heard) {
    this.last = hertz;
    this.since = this.samples - heard;
    this.calmed = [];
    this.octaves.clear();
  }

  loudness() {
    let all = 0;
    for (let i = longest - 512; i < longest; i++) all += this.kept[i] * this.kept[i];
    return Math.sqrt(all / 512);
  }

  // Noise looks like a partial now and then, but not twice of three times. A look is about the pitch that YIN reads, and about nothing that sounded
  // before it: what is left of another note would count as partials of the lower octave.
  inItsOctave(rough, heard) {
    if (!isOneStep(rough, this.seemed)) {
      this.looks = [];
      this.own = this.samples - (this.samples - this.voiced < OctaveCheck.length ? heard : OctaveCheck.length);
    }
    [this.seemed, this.voiced] = [rough, this.samples];
    if (this.looks.length === 0 || this.samples - this.looked >= 4 * Hop) {
      this.looked = this.samples;
      this.looks.push({ hertz: rough, lower: this.check.isLower(this.kept, rough, Math.min(OctaveCheck.length, this.samples - this.own)) });
      if (this.looks.length > 3) this.looks.shift();
    }
    return this.looks.filter((look) => look.lower).length >= 2 ? rough / 2 : rough;
  }

  // The mean of as many readings as agree with the newest: twice as many while that changes it by no more than two cents.
  calm(hertz) {
    this.calmed.push(Math.log2(hertz));
    if (this.calmed.length > 8) this.calmed.shift();
    const mean = (count) => this.calmed.slice(-count).reduce((all, one) => all + one, 0) / count;
    let made = mean(1);
    for (let count = 2; count <= this.calmed.length && Math.abs(mean(count) - made) * 1200 <= 2; count *= 2) made = mean(count);
    return 2 ** made;
  }
}
