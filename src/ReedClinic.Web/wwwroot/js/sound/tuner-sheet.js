// What sounds now, for eyes a metre away: the note and its cents as figures, and beside them a line that is written from left to right like words
// on paper, within a band about the note that is wanted; below it a thread for each octave, thick while it sounds.
const names = ["C", "C♯", "D", "E♭", "E", "F", "F♯", "G", "A♭", "A", "B♭", "B"];
const across = 8;
const reach = 60;
const saidEach = 2500;
const gap = 0.04;
// The figures change with each reading; the picture, which costs more to paint, takes three at a time: thirty times a second.
const together = 3;

/** The nearest note, how far from it, and how far from the nearest wanted note, with A4 as said. */
export function noteOf(hertz, a4, wanted) {
  const midi = 69 + 12 * Math.log2(hertz / a4);
  const nearest = Math.round(midi);
  const from = 100 * ((((midi - wanted) % 12) + 12) % 12);
  return {
    name: names[((nearest % 12) + 12) % 12],
    octave: Math.floor(nearest / 12) - 1,
    cents: Math.round(100 * (midi - nearest)),
    fromWanted: from > 600 ? from - 1200 : from,
  };
}

const signed = (cents) => `${cents < 0 ? "−" : cents > 0 ? "+" : "±"}${Math.abs(cents)}`;

export class TunerSheet {
  constructor(sheet) {
    this.sheet = sheet;
    this.words = sheet.dataset;
    this.canvas = sheet.querySelector("canvas");
    this.said = 0;
    this.still = matchMedia("(prefers-reduced-motion: reduce)");
    this.clear();
  }

  part(name) {
    return this.sheet.querySelector(`[data-${name}]`);
  }

  clear() {
    this.pen = 0;
    this.last = null;
    this.undrawn = [];
    this.tone(null, []);
    this.page();
  }

  /** Takes one reading from the worklet. */
  show({ hertz, octaves }) {
    const note = hertz > 0 ? noteOf(hertz, Number(this.words.a4), Number(this.words.wanted)) : null;
    this.tone(note, octaves);
    this.undrawn.push([note, octaves]);
    if (this.undrawn.length < together) return;
    for (const one of this.undrawn) this.draw(...one);
    this.undrawn = [];
  }

  tone(note, octaves) {
    const near = note && Math.abs(note.fromWanted) <= Number(this.words.within);
    const way = !note ? "none" : near ? "near" : note.fromWanted > 0 ? "sharp" : "flat";
    if (this.sheet.dataset.way !== way) this.sheet.dataset.way = way;
    this.write("note", note?.name ?? "–");
    this.write("octave", note ? String(note.octave) : "");
    this.write("cents", note ? signed(note.cents) : "");
    const from = note ? Math.round(note.fromWanted) : 0;
    const words = note ? this.words[way].replace("{0}", String(Math.abs(from))) : this.words.none;
    this.write("words", words);
    for (const octave of [4, 5, 6]) {
      const mark = this.part(`octave-${octave}`);
      const sounds = octaves.some((one) => one.octave === octave && one.present) ? "yes" : "no";
      if (mark.dataset.sounds !== sounds) {
        mark.dataset.sounds = sounds;
        mark.querySelector("span").textContent = this.words[sounds === "yes" ? "sounds" : "silent"];
      }
    }
    this.say(note, words, octaves);
  }

  write(name, words) {
    const part = this.part(name);
    if (part.textContent !== words) part.textContent = words;
  }

  // Aloud only now and then, and only what has come to rest.
  say(note, words, octaves) {
    const now = performance.now();
    if (!note || now - this.said < saidEach) return;
    this.said = now;
    const heard = octaves.filter((one) => one.present).map((one) => `C${one.octave}`).join(" ");
    this.write("said", `${note.name}${note.octave}, ${words}${heard ? `; ${heard}` : ""}`);
  }

  // The empty page: its size, its colours, the band.
  page() {
    const { canvas } = this;
    const scale = globalThis.devicePixelRatio || 1;
    const [width, height] = [canvas.clientWidth, canvas.clientHeight];
    if (width === 0) return;
    if (canvas.width !== Math.round(width * scale)) canvas.width = Math.round(width * scale);
    if (canvas.height !== Math.round(height * scale)) canvas.height = Math.round(height * scale);
    const style = getComputedStyle(canvas);
    const colour = (name) => style.getPropertyValue(name).trim();
    this.ink = { line: colour("--ink"), far: colour("--clay"), band: colour("--moss-wash"), rule: colour("--rule"), edge: colour("--edge"), thread: colour("--slate"), sheet: colour("--sheet") };
    this.size = { width, height, threads: height * 0.36, scale };
    this.paper = canvas.getContext("2d");
    this.paper.setTransform(scale, 0, 0, scale, 0, 0);
    this.blank(0, width);
  }

  blank(from, to) {
    const { paper, ink, size } = this;
    const width = to - from;
    paper.fillStyle = ink.sheet;
    paper.fillRect(from, 0, width, size.height);
    paper.fillStyle = ink.band;
    const [top, foot] = [this.at(Number(this.words.within)), this.at(-Number(this.words.within))];
    paper.fillRect(from, top, width, foot - top);
    paper.fillStyle = ink.rule;
    for (const y of [top, foot]) paper.fillRect(from, Math.round(y), width, 1);
    paper.fillRect(from, Math.round(this.at(0)) - 1, width, 2);
    paper.fillStyle = ink.edge;
    for (const octave of [4, 5, 6]) paper.fillRect(from, Math.round(this.thread(octave)), width, 1);
  }

  at(cents) {
    const room = this.size.height - this.size.threads;
    return room / 2 - (Math.max(-reach, Math.min(reach, cents)) / reach) * (room / 2 - 6);
  }

  thread(octave) {
    const { height, threads } = this.size;
    return height - threads + (threads / 3) * (6 - octave + 0.5);
  }

  draw(note, octaves) {
    if (!this.paper) this.page();
    if (!this.paper) return;
    const { width } = this.size;
    // Without motion there is one stroke across, where the pitch is.
    const step = this.still.matches ? width : width / ((across * 48_000) / 512);
    if (this.pen >= width || this.still.matches) {
      this.pen = 0;
      this.last = null;
      if (this.canvas.clientWidth !== width || this.still.matches) this.page();
    }
    // Whole columns only: what is painted over half a column would shine through.
    const [from, to] = [Math.round(this.pen), Math.min(width, Math.round(this.pen + step))];
    this.pen += step;
    if (to === from) return;
    if (!this.still.matches) this.blank(from, Math.min(width, to + Math.round(width * gap)));
    if (note) this.stroke(from, to, note.fromWanted);
    else this.last = null;
    this.paper.strokeStyle = this.ink.thread;
    for (const one of octaves.filter((octave) => octave.present)) {
      this.paper.lineWidth = Math.max(2, 9 + one.level / 4);
      this.path(from, this.thread(one.octave), to, this.thread(one.octave));
    }
  }

  // Beyond the edge of the page the line runs along it; what is outside the band is dotted as well as of another colour.
  stroke(from, to, cents) {
    const isFar = Math.abs(cents) > Number(this.words.within);
    const y = this.at(cents);
    this.paper.strokeStyle = isFar ? this.ink.far : this.ink.line;
    this.paper.lineWidth = 3.5;
    if (!isFar || this.still.matches || Math.floor(from / 5) % 2 === 0) this.path(from, this.last ?? y, to, y);
    this.last = y;
  }

  path(fromX, fromY, toX, toY) {
    this.paper.beginPath();
    this.paper.moveTo(fromX, fromY);
    this.paper.lineTo(toX, toY);
    this.paper.stroke();
  }
}
