// A part laid out from the start of its first bar: where each bar, beat, attack and count stands, and at which second at the
// written tempo it comes. All of it is exact.
import { Fraction, ZERO } from './fraction.js';

const HALVES = [new Fraction(0n), new Fraction(1n, 4n), new Fraction(1n, 2n), new Fraction(3n, 4n)];

export class Line {

  constructor(part) {
    this.part = part;
    this.bars = [];
    this.anchors = [];
    this.counts = [];
    let at = ZERO;
    part.bars.forEach((bar, place) => {
      const laid = { ...bar, place, start: at, length: Fraction.of(bar.length), phase: Fraction.of(bar.phase) };
      laid.end = at.plus(laid.length);
      laid.beats = bar.beats.map((beat) => ({ ...beat, at: at.plus(Fraction.of(beat.at)), length: Fraction.of(beat.length) }));
      laid.attacks = bar.attacks.map((attack) => at.plus(Fraction.of(attack)));
      laid.ways = bar.ways.map((way, number) => ({ ...way, number, counts: way.counts.map((count, index) => ({
        key: bar.index + ':' + (number ? number + ':' : '') + count.at, at: at.plus(Fraction.of(count.at)), inBar: count.at,
        played: count.played, stages: count.stages, bar: laid, index, way: number,
      })) }));
      bar.tempi.forEach((tempo) => this.addTempo(at.plus(Fraction.of(tempo.at)), tempo));
      this.bars.push(laid);
      at = laid.end;
    });
    this.end = at;
    this.paces = part.paces.map((pace) => ({ upTo: pace.upTo, ways: pace.ways.map(Number) }));
    this.choose(this.paceOf(1));
    this.loops = part.loops.map((loop) => ({ ...loop, from: Fraction.of(loop.from), to: Fraction.of(loop.to) }));
    this.breaths = new Set(part.breaths.map((at) => Fraction.of(at).toString()));
  }

  // How it is counted at a speed, 1 being the written one: as at the next faster one for which there is a plan.
  paceOf(speed) {
    const found = this.paces.findIndex((pace) => pace.upTo >= speed - 1e-6);
    return found < 0 ? this.part.paces.length - 1 : found;
  }

  // At a step of a loop's plan it is counted as the plan has it, to the very tempo; around the loop as elsewhere at that speed.
  paceOfStep(loop, step, speed) {
    if (step.pace === undefined) {
      const ways = [...this.paces[this.paceOf(speed)].ways];
      const own = step.ways.split(' ').map(Number);
      ways.splice(this.barAt(loop.from).place, own.length, ...own);
      const known = this.paces.findIndex((pace) => pace.ways.join() === ways.join());
      // no speed has it by itself
      step.pace = known < 0 ? this.paces.push({ upTo: 0, ways }) - 1 : known;
    }
    return step.pace;
  }

  wayOf(bar, pace) {
    return bar.ways[this.paces[pace].ways[bar.place]];
  }

  // From now on the counts of all bars are those of this pace.
  choose(pace) {
    this.pace = pace;
    this.counts = [];
    for (const bar of this.bars) {
      bar.way = this.wayOf(bar, pace);
      bar.counts = bar.way.counts;
      this.counts.push(...bar.counts);
    }
  }

  // The count that is on at a place.
  countOn(at) {
    const counts = this.barAt(at).counts.filter((count) => count.stages & 1);
    return counts.filter((count) => count.at.compare(at) <= 0).pop() || counts[0] || null;
  }

  addTempo(at, tempo) {
    const last = this.anchors[this.anchors.length - 1];
    const second = last ? last.second.plus(at.minus(last.at).times(last.perWhole)) : ZERO;
    this.anchors.push({ at, second, perWhole: Fraction.of(tempo.secondsPerWhole), tempo });
  }

  anchorAt(at) {
    let low = 0;
    let high = this.anchors.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.anchors[middle].at.compare(at) > 0) {
        high = middle - 1;
      } else {
        low = middle;
      }
    }
    return this.anchors[low];
  }

  // at the written tempo; a fraction
  secondAt(at) {
    const anchor = this.anchorAt(at);
    return anchor.second.plus(at.minus(anchor.at).times(anchor.perWhole));
  }

  // The same as a number, worked out once for a place.
  numberAt(at) {
    if (at.number === undefined) {
      at.number = this.secondAt(at).toNumber();
    }
    return at.number;
  }

  barAt(at) {
    let low = 0;
    let high = this.bars.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.bars[middle].start.compare(at) > 0) {
        high = middle - 1;
      } else {
        low = middle;
      }
    }
    return this.bars[low];
  }

  static beatAt(bar, at) {
    let found = bar.beats[0];
    for (const beat of bar.beats) {
      if (beat.at.compare(at) <= 0) {
        found = beat;
      }
    }
    return found;
  }

  // Where what stands at a place sounds when pairs are played long and short. Only in bars that the score leaves straight, and
  // only in beats of which nothing lies but on their quarters; `long` is the share of the first half.
  swung(bar, at, long) {
    const beat = Line.beatAt(bar, at);
    if (!long || !bar.straight || beat.length.n % 3n === 0n || !this.isHalved(bar, beat)) {
      return at;
    }
    const half = new Fraction(1n, 2n);
    const place = at.minus(beat.at).over(beat.length);
    const two = new Fraction(2n);
    const moved = place.compare(half) <= 0 ? place.times(two).times(long)
      : long.plus(place.minus(half).times(two).times(new Fraction(1n).minus(long)));
    return beat.at.plus(moved.times(beat.length));
  }

  isHalved(bar, beat) {
    if (beat.halved === undefined) {
      const end = beat.at.plus(beat.length);
      beat.halved = [...bar.attacks, ...bar.ways[0].counts.map((count) => count.at)].every((at) => {
        const inside = at.compare(beat.at) >= 0 && at.isBefore(end);
        return !inside || HALVES.some((half) => half.equals(at.minus(beat.at).over(beat.length)));
      });
    }
    return beat.halved;
  }
}
