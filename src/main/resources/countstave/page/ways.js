// A bar as it is counted at another tempo than the one for which the chart was drawn: its words, ticks and marks, set between
// what is printed in it.
import { Fraction } from './fraction.js';

export const SVG = 'http://www.w3.org/2000/svg';
const TO_MIDDLE = 5.9;
const GRAY = '#595959';
// in sizes of a word, as the chart has them: words of a mark, how far below, its bar from where to where
const MARK = 0.825;
const BELOW = 1.19;
const FOOT = 1.27;
const HEAD = -0.89;
const LETTER = 0.55;
const WIDE = 0.52;

// What the chart has of a moment.
export function emptyPlace() {
  return { words: [], signs: [], ticks: [], dots: [], notes: [], marks: [] };
}

// Where a shape stands: its middle, which for noteheads is half a head to the right.
function middle(shape, kind) {
  if (kind === 'ticks') {
    return Number(/^M([-\d.]+)/.exec(shape.getAttribute('d'))[1]);
  }
  const x = shape.getAttribute('x');
  return x === null ? null : Number(x) + (kind === 'notes' ? TO_MIDDLE : 0);
}

export class WayDrawing {

  // printed: what the chart has of each moment of the bar, by moments: { words, signs, ticks, dots, notes }
  // frames: the bar's own; rightOf(page): where lines end
  constructor(bar, printed, frames, rightOf) {
    this.rightOf = rightOf;
    this.bar = bar;
    this.frames = frames;
    this.anchors = [];
    for (const [at, place] of printed) {
      for (const kind of ['words', 'dots', 'ticks', 'notes']) {
        const shape = place[kind].find((one) => middle(one, kind) !== null);
        if (shape) {
          this.anchors.push({ at: Fraction.of(at), x: middle(shape, kind), word: place.words[0] || place.dots[0] || null,
            tick: place.ticks[0] || null, page: shape.ownerSVGElement });
          break;
        }
      }
    }
    this.anchors.sort((a, b) => a.at.compare(b.at));
  }

  get isPossible() {
    return this.anchors.some((anchor) => anchor.word);
  }

  // Where a moment stands, and the word beside it, which says on which line.
  placeOf(at) {
    let index = 0;
    while (index + 1 < this.anchors.length && this.anchors[index + 1].at.compare(at) <= 0) {
      index++;
    }
    const left = this.anchors[index];
    const right = this.anchors[index + 1];
    const near = this.wordNear(index);
    let x = left.x;
    if (left.at.isBefore(at)) {
      const ahead = right && right.page === left.page && right.x > left.x ? right : this.edge(left);
      x += (ahead.x - left.x) * at.minus(left.at).over(ahead.at.minus(left.at)).toNumber();
    }
    return { x, word: near.word, near };
  }

  // before a line's end: the edge of the bar there
  edge(left) {
    const frame = this.frames.find((one) => one.ownerSVGElement === left.page && Number(one.getAttribute('x')) <= left.x
      && Number(one.getAttribute('x')) + Number(one.getAttribute('width')) > left.x);
    const after = this.anchors.find((anchor) => anchor.at.compare(left.at) > 0);
    return { x: frame ? Number(frame.getAttribute('x')) + Number(frame.getAttribute('width')) : left.x + 40,
      at: after ? after.at : this.bar.length };
  }

  // The nearest word before that is on the same line, else the next one.
  wordNear(index) {
    for (let i = index; i >= 0 && this.anchors[i].x <= this.anchors[index].x && this.anchors[i].page === this.anchors[index].page; i--) {
      if (this.anchors[i].word) {
        return this.anchors[i];
      }
    }
    return this.anchors.slice(index).find((anchor) => anchor.word) || this.anchors.find((anchor) => anchor.word);
  }

  // The shapes of a way, put into the page, the places of its counts, its marks: { key, size, shapes }, and whether only these differ.
  draw(way, printed) {
    const shapes = [];
    const places = new Map();
    const put = (beside, shape) => {
      beside.parentNode.append(shape);
      shapes.push(shape);
    };
    const marks = this.marks(way);
    marks.forEach((mark) => mark.shapes.forEach((shape) => put(mark.word, shape)));
    const asPrinted = isCountedAs(way, this.bar.ways[0]);
    if (asPrinted) {
      way.counts.forEach((count) => printed.has(count.inBar) && places.set(count.key, printed.get(count.inBar)));
      return { shapes, places, marks, asPrinted };
    }
    for (const count of way.counts) {
      const { x, word, near } = this.placeOf(Fraction.of(count.inBar));
      const said = this.word(word, x, count.played ? 'played' : 'unplayed');
      said.dataset.at = way.number + ':' + count.inBar;
      const ticks = count.stages & 1 ? this.ticks(near, x, this.isBeat(count)) : [];
      put(word, said);
      ticks.forEach((tick) => put(word, tick));
      places.set(count.key, { ...emptyPlace(), words: [said], ticks, inParentheses: !count.played });
    }
    for (const at of way.felt) {
      const { x, word } = this.placeOf(Fraction.of(at));
      const dot = this.word(word, x, 'felt');
      dot.textContent = '·';
      put(word, dot);
    }
    return { shapes, places, marks, asPrinted };
  }

  isBeat(count) {
    return this.bar.beats.some((beat) => beat.at.equals(count.at));
  }

  word(beside, x, kind) {
    const word = document.createElementNS(SVG, 'text');
    word.setAttribute('class', 'count ' + kind);
    word.setAttribute('x', x);
    word.setAttribute('y', beside.getAttribute('y'));
    word.setAttribute('font-size', beside.dataset.size || beside.getAttribute('font-size'));
    word.setAttribute('text-anchor', 'middle');
    if (kind === 'unplayed') {
      word.setAttribute('fill', GRAY);
    } else {
      word.setAttribute('font-weight', 'bold');
    }
    word.textContent = ' ';
    return word;
  }

  // a printed tick of the same kind, moved to its place
  ticks(near, x, onBeat) {
    const printed = this.anchors.filter((anchor) => anchor.tick && anchor.word);
    const like = printed.find((anchor) => anchor.tick.classList.contains('beat') === onBeat) || printed[0];
    if (!like) {
      return [];
    }
    const tick = like.tick.cloneNode(false);
    const down = Number(near.word.getAttribute('y')) - Number(like.word.getAttribute('y'));
    tick.setAttribute('transform', 'translate(' + (x - like.x) + ' ' + down + ')');
    tick.removeAttribute('data-at');
    return [tick];
  }

  // What is told where the count changes, in as many lines as it takes to the next mark or the end of the line.
  marks(way) {
    const marks = way.marks.map((mark) => {
      const { x, word } = this.placeOf(Fraction.of(mark.at));
      const size = Number(word.dataset.size || word.getAttribute('font-size'));
      return { ...mark, key: (way.counts.find((count) => count.inBar === mark.at) || {}).key, word, size, left: x - size * LETTER,
        y: Number(word.getAttribute('y')), shapes: [] };
    });
    marks.forEach((mark, i) => {
      const next = marks[i + 1];
      const right = next && next.y === mark.y && next.left > mark.left ? next.left : this.rightOf(mark.word.ownerSVGElement);
      const lines = wrapped(mark.text.replace(/\u2044/g, '/'), (right - mark.left) / (mark.size * MARK * WIDE));
      const line = mark.size * MARK;
      const bar = document.createElementNS(SVG, 'path');
      bar.setAttribute('class', 'mark');
      bar.setAttribute('stroke', '#000');
      bar.setAttribute('stroke-width', mark.ofUnit ? 2.8 : 1.3);
      bar.setAttribute('d', 'M' + mark.left + ' ' + (mark.y + FOOT * mark.size) + 'L' + mark.left + ' ' + (mark.y + HEAD * mark.size));
      mark.shapes.push(bar);
      lines.forEach((text, number) => {
        const words = document.createElementNS(SVG, 'text');
        words.setAttribute('class', 'mark');
        words.setAttribute('x', mark.left + 3.5);
        words.setAttribute('y', mark.y + BELOW * mark.size + number * line);
        words.setAttribute('font-size', line);
        if (mark.ofUnit) {
          words.setAttribute('font-weight', 'bold');
        }
        words.textContent = text;
        mark.shapes.push(words);
      });
    });
    return marks;
  }
}

// Whether the same is said and felt at the same moments, so that only what is told of it is another.
function isCountedAs(way, other) {
  const same = (count, i) => count.inBar === other.counts[i].inBar && count.played === other.counts[i].played
    && count.stages === other.counts[i].stages;
  return way.counts.length === other.counts.length && way.counts.every(same) && way.felt.join() === other.felt.join();
}

// Broken after commas and semicolons only, else between words, and never within one.
function wrapped(text, letters) {
  const lines = [];
  for (const piece of text.replace(/([;,]) /g, '$1\n').split('\n')) {
    const parts = piece.length > letters ? piece.split(' ') : [piece];
    for (const part of parts) {
      const last = lines[lines.length - 1];
      if (last && last.length + 1 + part.length <= letters) {
        lines[lines.length - 1] = last + ' ' + part;
      } else {
        lines.push(part);
      }
    }
  }
  return lines;
}
