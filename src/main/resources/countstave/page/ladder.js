// What is remembered of the work on a loop: its tempo, its clean repeats, in the browser's own storage. Nothing of it leaves
// the machine unless the person exports it.

const STORE = 'countstave.practice.';
const FORMAT = 'countstave-ticks/1';

// clean repeats asked for on a step where the plan says nothing
export const CLEAN = 3;

export class Ladder {

  constructor(title) {
    this.key = STORE + title;
    this.kept = { loops: {}, set: {} };
    try {
      const text = localStorage.getItem(this.key);
      const read = text ? JSON.parse(text) : null;
      if (read && typeof read.loops === 'object' && typeof read.set === 'object') {
        this.kept = read;
      }
    } catch (e) {
      // storage may be forbidden, or hold something else: then nothing is remembered
      this.isOff = true;
    }
  }

  keep() {
    try {
      localStorage.setItem(this.key, JSON.stringify(this.kept));
      this.isOff = false;
    } catch (e) {
      this.isOff = true;
    }
  }

  // How the page was set when it was left.
  get set() {
    return this.kept.set;
  }

  of(loop) {
    const known = this.kept.loops[loop];
    return known && typeof known === 'object' && known.clean ? known : { perMinute: null, clean: {} };
  }

  cleanAt(loop, perMinute) {
    return this.of(loop).clean[perMinute] || 0;
  }

  setTempo(loop, perMinute) {
    this.kept.loops[loop] = { ...this.of(loop), perMinute };
    this.keep();
  }

  setClean(loop, perMinute, clean) {
    const known = this.of(loop);
    this.kept.loops[loop] = { ...known, clean: { ...known.clean, [perMinute]: clean } };
    this.keep();
  }

  forget() {
    this.kept.loops = {};
    this.keep();
  }

  text() {
    return JSON.stringify({ format: FORMAT, ...this.kept }, null, 2);
  }

  // Takes the loops of such a text over those that are here; settings stay. How many there were, or null if it is none.
  read(text) {
    let loops;
    try {
      const read = JSON.parse(text);
      loops = read.format === FORMAT && read.loops && typeof read.loops === 'object' ? Object.entries(read.loops) : null;
    } catch (e) {
      loops = null;
    }
    const sound = loops && loops.every(([, loop]) => loop && typeof loop.clean === 'object' && loop.clean
      && Object.values(loop.clean).every((clean) => Number.isInteger(clean) && clean >= 0));
    if (!sound) {
      return null;
    }
    this.kept.loops = { ...this.kept.loops, ...Object.fromEntries(loops) };
    this.keep();
    return loops.length;
  }
}

// How many clean repeats a tempo asks for.
export function asked(loop, perMinute, otherwise) {
  const step = loop && loop.steps ? loop.steps.find((one) => one.perMinute === perMinute) : null;
  return step ? step.clean : otherwise;
}

// The tempo after this one: that of the plan's steps, else by so many percent, a whole number and at least one more.
export function nextTempo(loop, perMinute, percent, most) {
  if (loop && loop.steps && percent === null) {
    const step = loop.steps.find((one) => one.perMinute > perMinute + 1e-9);
    return step ? step.perMinute : perMinute;
  }
  const up = Math.max(Math.floor(perMinute) + 1, Math.round(perMinute * (1 + (percent === null ? 5 : percent) / 100)));
  return Math.min(most, up);
}
