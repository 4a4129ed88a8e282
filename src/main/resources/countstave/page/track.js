// What sounds in a loop: a list of moments, in seconds at the written tempo from the loop's start. Made anew whenever something
// is set otherwise; every moment is worked out from its exact position, none from the one before it.
import { Fraction, ZERO } from './fraction.js';
import { Line } from './line.js';

const FIRST = 1;
const PLAYED = 0.8;
const UNPLAYED = 0.5;
const CLOSEST = 1 / 12;
const BEYOND = 5 / 4;

export class Track {

  // set: from, to, layers, system, pace, stage, swing, beats, silent, of, place, placeBeats, countIn, begin
  constructor(line, set) {
    this.line = line;
    this.set = set;
    this.zero = line.secondAt(set.from);
    this.seconds = line.secondAt(set.to).minus(this.zero).toNumber();
    this.bars = line.bars.filter((bar) => bar.end.compare(set.from) > 0 && bar.start.isBefore(set.to));
    this.perWhole = line.anchorAt(set.from).perWhole;
    this.gap = this.gapBeforeRepeat();
    this.cycle = line.secondAt(set.to).minus(this.zero).plus(this.gap.length.times(this.perWhole)).toNumber();
    this.begin = line.secondAt(set.begin || set.from).minus(this.zero).toNumber();
    this.events = this.inLoop();
    this.counts = this.countsInLoop();
    this.before = set.countIn ? this.countIn() : [];
    // where it begins: with the count-in, where there is one
    this.start = this.before.length ? this.before[0].second : this.begin;
  }

  secondOf(at) {
    return this.line.numberAt(at) - this.line.numberAt(this.set.from);
  }

  isIn(at) {
    return at.compare(this.set.from) >= 0 && at.isBefore(this.set.to);
  }

  sounds(beat) {
    return this.set.beats.length === 0 || this.set.beats.includes(beat);
  }

  inLoop() {
    const events = [];
    let whole = false;
    const add = (bar, at, what) => {
      if (whole || this.isIn(at)) {
        const sounding = this.line.swung(bar, at, this.set.swing);
        events.push({ at, second: this.secondOf(sounding), bar: bar.place - this.bars[0].place, ...what });
      }
    };
    for (const bar of this.bars) {
      whole = bar.start.compare(this.set.from) >= 0 && bar.end.compare(this.set.to) <= 0;
      if (bar.phase.equals(ZERO) && bar.length.n > 0n && this.sounds(1)) {
        add(bar, bar.start, { layer: 'bar' });
      }
      for (const beat of bar.beats) {
        if (beat.at.compare(bar.start) >= 0 && beat.at.isBefore(bar.end) && this.sounds(beat.number)) {
          add(bar, beat.at, { layer: 'beat' });
        }
      }
      for (const attack of bar.attacks) {
        add(bar, attack, { layer: 'rhythm', later: this.laterBy(bar, attack) });
      }
      for (const count of this.line.wayOf(bar, this.set.pace).counts) {
        if (this.isSaid(count)) {
          add(bar, count.at, { layer: 'grid' });
          add(bar, count.at, { layer: 'voice', say: this.say(count), onBeat: bar.beats.some((beat) => beat.at.equals(count.at)),
            played: count.played,
            gain: count.at.equals(bar.start) && bar.phase.equals(ZERO) ? FIRST : count.played ? PLAYED : UNPLAYED });
        }
      }
    }
    this.gap.beats.forEach((beat) => {
      const second = this.seconds + beat.at.times(this.perWhole).toNumber();
      events.push({ at: this.set.to, second, layer: 'beat', bar: -1 });
      events.push({ at: this.set.to, second, layer: 'voice', say: beat.say, gain: PLAYED, onBeat: true, played: true, bar: -1 });
    });
    return events.sort((a, b) => a.second - b.second);
  }

  laterBy(bar, attack) {
    const beat = Line.beatAt(bar, attack);
    const chosen = this.set.placeBeats;
    const moved = chosen.length === 0 || beat.at.equals(attack) && chosen.includes(beat.number);
    return moved ? this.set.place / 1000 : 0;
  }

  isSaid(count) {
    return (count.stages >> this.set.stage & 1) === 1;
  }

  say(count) {
    return this.set.words(count);
  }

  // What can be lit: all counts of the plan, whether they are said or not.
  countsInLoop() {
    const counts = [];
    for (const bar of this.bars) {
      for (const count of this.line.wayOf(bar, this.set.pace).counts) {
        if (this.isIn(count.at) && (count.stages & 1 || this.isSaid(count))) {
          counts.push({ count, second: this.secondOf(this.line.swung(bar, count.at, this.set.swing)) });
        }
      }
    }
    return counts.sort((a, b) => a.second - b.second);
  }

  // One bar, two when there are fewer than 60 beats a minute; before a pickup the missing beats of its bar too.
  countIn() {
    const at = this.set.begin || this.set.from;
    const bar = this.line.barAt(at);
    const perWhole = this.line.anchorAt(at).perWhole;
    const full = Fraction.of(bar.full);
    const phase = bar.phase.plus(at.minus(bar.start));
    const beats = this.line.part.meters[bar.meter].map(Fraction.of);
    const beatSeconds = Line.beatAt(bar, at).length.times(perWhole).toNumber() / this.set.speed;
    const bars = beatSeconds > 1 ? 2 : 1;
    const length = full.times(new Fraction(BigInt(bars))).plus(phase);
    const events = [];
    for (let round = 0; round < bars + (phase.n > 0n ? 1 : 0); round++) {
      const start = full.times(new Fraction(BigInt(round)));
      beats.forEach((beat, index) => {
        const place = start.plus(beat);
        if (place.isBefore(length)) {
          const second = this.begin - length.minus(place).times(perWhole).toNumber();
          if (index === 0) {
            events.push({ second, layer: 'bar', countIn: true });
          }
          events.push({ second, layer: 'beat', countIn: true });
          events.push({ second, layer: 'voice', say: String(index + 1), gain: index ? PLAYED : FIRST, onBeat: true, played: true, countIn: true });
        }
      });
    }
    return events;
  }

  // The beats that a loop from a pickup lacks, so that the pickup falls on its own beat again.
  gapBeforeRepeat() {
    const none = { length: ZERO, beats: [] };
    const first = this.bars[0];
    if (!first || !first.start.equals(this.set.from) || first.phase.n === 0n || !this.set.countIn) {
      return none;
    }
    const last = this.bars[this.bars.length - 1];
    const full = Fraction.of(first.full);
    const reached = last.phase.plus(last.length);
    const from = last.meter !== first.meter || reached.compare(full) >= 0 ? ZERO : reached;
    let to = first.phase;
    if (to.isBefore(from)) {
      to = to.plus(full);
    }
    const beats = [];
    for (const bar of [ZERO, full]) {
      this.line.part.meters[first.meter].map(Fraction.of).forEach((beat, index) => {
        const at = bar.plus(beat);
        if (at.compare(from) >= 0 && at.isBefore(to)) {
          beats.push({ at: at.minus(from), say: String(index + 1) });
        }
      });
    }
    return { length: to.minus(from), beats };
  }

  // Of every so many bars the last ones are silent; the rounds go on through the repeats.
  isSilent(event, repeat) {
    if (!this.set.silent || event.bar < 0 || event.countIn) {
      return false;
    }
    return (repeat * this.bars.length + event.bar) % this.set.of >= this.set.of - this.set.silent;
  }

  // The moments from one second to another, at most `most` repeats on; each with `x`, its second from the loop's first start.
  between(from, to, repeats) {
    const found = [];
    for (const event of this.before) {
      if (event.second >= from && event.second < to) {
        found.push({ event, x: event.second, repeat: -1 });
      }
    }
    const first = Math.max(0, Math.floor((from - this.cycle) / this.cycle));
    for (let repeat = first; repeat < repeats && repeat * this.cycle < to; repeat++) {
      for (const event of this.events) {
        const x = repeat * this.cycle + event.second;
        const played = repeat > 0 || event.second >= this.begin;
        if (x >= from && x < to && played && !this.isSilent(event, repeat) && !(event.bar === -1 && repeat === repeats - 1)) {
          found.push({ event, x, repeat });
        }
      }
    }
    return found;
  }

  // The words around a moment that are said, closest first; what comes too close to be said is left out (see LegWords).
  wordsKept(found, speed) {
    const limit = 1 / (this.line.part.voiceLimit * BEYOND);
    const kept = [];
    for (const moment of found) {
      if (moment.event.layer !== 'voice') {
        continue;
      }
      const before = kept[kept.length - 1];
      const apart = before ? (moment.x - before.x) / speed : Infinity;
      const free = !moment.event.played && !moment.event.onBeat;
      if (apart < limit - 1e-9 && free || apart < CLOSEST && !moment.event.onBeat) {
        continue;
      }
      kept.push(moment);
    }
    return kept;
  }

  // Which count is on, at a second from the loop's first start; null in a count-in, a gap, and behind the end.
  countAt(x, repeats) {
    if (x < this.begin - 1e-9) {
      return null;
    }
    const repeat = Math.floor(x / this.cycle + 1e-12);
    if (repeat >= repeats) {
      return null;
    }
    const second = x - repeat * this.cycle;
    if (second >= this.seconds) {
      return null;
    }
    const begun = this.begunBy(second);
    return begun ? { ...this.counts[begun - 1], repeat } : null;
  }

  // How many counts of the loop have begun by a second of it.
  begunBy(second) {
    let low = 0;
    let high = this.counts.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.counts[middle].second <= second + 1e-9) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  // From which second on, after this one, another count is on, or none.
  changeAfter(x) {
    if (x < this.begin - 1e-9) {
      return this.begin;
    }
    const start = Math.floor(x / this.cycle + 1e-12) * this.cycle;
    const next = this.counts[this.begunBy(x - start)];
    return start + (next ? next.second : x - start < this.seconds ? this.seconds : this.cycle);
  }
}
