// The chart on the page: its words, what is lit, what is marked, and where a finger is.

import { Line } from './line.js';
import { SVG, WayDrawing, emptyPlace } from './ways.js';

const NARROW = 620;
// Widths in sizes of a letter, of the bold text of the chart, and the least between two words.
const THIN = 0.42;
const FULL = 0.62;
const BROAD = 0.95;
const BETWEEN = 0.12;
const LEAST_SHARE_SHOWN = 0.5;

export class Chart {

  constructor(root, line, size) {
    this.root = root;
    this.line = line;
    this.size = size;
    this.show();
  }

  // The narrow drawing on a narrow page, or where large print is wanted.
  wantsNarrow() {
    return this.size === 'large' || this.size === 'fit' && this.root.clientWidth < NARROW;
  }

  show(printing = false) {
    const narrow = !printing && this.wantsNarrow();
    const shown = this.root.querySelector('.pages');
    const other = document.getElementById(narrow ? 'narrow' : 'wide');
    if (!shown || shown.dataset.drawing !== other.id) {
      const pages = document.createElement('div');
      pages.className = 'pages';
      pages.dataset.drawing = other.id;
      // a drawing that nobody looks at is never read: where scripts run, it is a text
      pages.innerHTML = other.textContent;
      if (shown) {
        shown.remove();
      }
      this.root.append(pages);
    }
    this.index();
  }

  // Finds what belongs to each count, in the part that is played; the pages of other parts are put aside.
  index() {
    this.bars = new Map();
    this.places = new Map();
    this.printed = new Map();
    this.other = new Map();
    this.rights = new Map();
    const id = this.line.part.id;
    for (const page of this.root.querySelectorAll('svg.countstave-page')) {
      const bars = page.querySelectorAll('rect.bar');
      const mine = [...bars].some((bar) => bar.dataset.part === id);
      page.hidden = !mine && bars.length > 0;
      page.style.display = page.hidden ? 'none' : '';
      page.setAttribute('aria-hidden', 'true');
      if (mine) {
        this.indexPage(page, bars, id);
      }
    }
    (this.light || []).forEach((frame) => frame.remove());
    this.light = [];
    this.now = null;
    this.wasOther = false;
    this.litBar = null;
    for (const bar of this.line.bars) {
      bar.ways[0].counts.filter((count) => !(count.stages & 1)).forEach((count) => this.addPlace(count));
    }
  }

  indexPage(page, bars, id) {
    this.rights.set(page, Math.max(...[...bars].map((bar) => Number(bar.getAttribute('x')) + Number(bar.getAttribute('width')))));
    for (const bar of bars) {
      const found = this.bars.get(bar.dataset.bar) || [];
      found.push(bar);
      this.bars.set(bar.dataset.bar, found);
    }
    for (const shape of page.querySelectorAll('[data-at]')) {
      if (shape.dataset.part === id) {
        const key = shape.dataset.bar + ':' + shape.dataset.at;
        const place = this.places.get(key) || emptyPlace();
        // parentheses round a notehead belong to the note, those round a word to the count
        const kind = shape.matches('use.parenthesis') ? 5
          : ['felt', 'count', 'parenthesis', 'tick', 'mark', 'note'].findIndex((name) => shape.classList.contains(name));
        place[['dots', 'words', 'signs', 'ticks', 'marks', 'notes'][kind]].push(shape);
        this.places.set(key, place);
        const bar = this.printed.get(shape.dataset.bar) || new Map();
        this.printed.set(shape.dataset.bar, bar.set(shape.dataset.at, place));
      }
    }
  }

  // A beat inside a tuplet that is counted through has no word on paper; when it is said, it needs one: between its neighbours.
  addPlace(count) {
    const near = count.bar.ways[0].counts.filter((other) => this.wordOf(other));
    const before = near.filter((other) => other.at.isBefore(count.at)).pop();
    const after = near.find((other) => other.at.compare(count.at) > 0);
    if (!before || this.places.has(count.key)) {
      return;
    }
    const left = this.wordOf(before);
    const right = after ? this.wordOf(after) : null;
    const from = Number(left.getAttribute('x'));
    const same = right && right.ownerSVGElement === left.ownerSVGElement && Number(right.getAttribute('x')) > from;
    const share = after ? count.at.minus(before.at).over(after.at.minus(before.at)).toNumber() : 0.5;
    const word = left.cloneNode(true);
    word.setAttribute('x', same ? from + (Number(right.getAttribute('x')) - from) * share : from + 20);
    word.dataset.at = count.inBar;
    left.parentNode.append(word);
    const place = { ...emptyPlace(), words: [word] };
    this.places.set(count.key, place);
    this.printed.get(String(count.bar.index)).set(count.inBar, place);
  }

  // A bar that is counted otherwise than it is printed: what is printed of the count gives way to what is said now.
  showWay(bar) {
    const shown = this.other.get(bar.index);
    const number = shown ? shown.number : 0;
    const printed = this.printed.get(String(bar.index));
    if (number === bar.way.number || !printed) {
      return;
    }
    if (shown) {
      shown.shapes.forEach((shape) => shape.remove());
      shown.places.forEach((place, key) => this.places.delete(key));
      this.other.delete(bar.index);
    }
    let asPrinted = true;
    if (bar.way.number) {
      const drawing = new WayDrawing(bar, printed, this.bars.get(String(bar.index)) || [], (page) => this.rights.get(page));
      if (!drawing.isPossible) {
        return;
      }
      const drawn = drawing.draw(bar.way, printed);
      drawn.places.forEach((place, key) => this.places.set(key, place));
      this.other.set(bar.index, { number: bar.way.number, ...drawn });
      asPrinted = drawn.asPrinted;
    }
    for (const place of printed.values()) {
      for (const kind of ['words', 'signs', 'ticks', 'dots']) {
        place[kind].forEach((shape) => shape.classList.toggle('otherwise', !asPrinted));
      }
      place.marks.forEach((shape) => shape.classList.toggle('otherwise', bar.way.number > 0));
    }
  }

  wordOf(count) {
    const place = this.places.get(count.key);
    return place ? place.words[0] : undefined;
  }

  // other: whether these are other words than those that the chart was laid out for
  // The words of a system at a stage: what is not said is not printed, its tick stays.
  write(words, stage, other) {
    this.isOther = other;
    this.line.bars.forEach((bar) => this.showWay(bar));
    for (const count of this.line.counts) {
      const place = this.places.get(count.key);
      if (place) {
        const said = (count.stages >> stage & 1) === 1;
        for (const word of place.words) {
          const say = place.inParentheses ? this.embraced(count, words(count), stage) : words(count);
          if (word.firstChild && word.firstChild.nodeValue !== say) {
            word.firstChild.nodeValue = say;
          }
          word.classList.toggle('silent', !said);
          word.classList.toggle('breath', said && this.line.breaths.has(count.at.toString()));
        }
        place.signs.forEach((sign) => sign.classList.toggle('silent', !said));
      }
    }
    for (const drawn of this.other.values()) {
      drawn.marks.forEach((mark) => this.moveMark(mark));
    }
    if (other || this.wasOther || this.other.size || this.hadOther) {
      this.fit();
    }
    this.hadOther = this.other.size > 0;
    if (other || this.wasOther) {
      this.embrace();
    }
    this.wasOther = other;
    this.breathe();
  }

  // Words that are not played stand in parentheses, several in a row in one pair.
  embraced(count, say, stage) {
    const said = count.bar.counts.filter((one) => one.stages >> stage & 1);
    const i = said.indexOf(count);
    const before = said[i - 1];
    const after = said[i + 1];
    return (before && !before.played ? '' : '(') + say + (after && !after.played ? '' : ')');
  }

  // The bar of a mark stands left of its word, however long that is.
  moveMark(mark) {
    const place = this.places.get(mark.key);
    const letters = place && place.words[0] ? [...place.words[0].textContent].length : 1;
    mark.shapes.forEach((shape) => shape.setAttribute('transform', 'translate(' + (1 - letters) * mark.size * 0.27 + ' 0)'));
  }

  // Words of another system may be wider than the room that was left for them.
  fit() {
    if (!this.line.counts.length) {
      return;
    }
    for (const bar of this.line.bars) {
      const words = bar.counts.map((count) => ({ word: this.wordOf(count), beat: Line.beatAt(bar, count.at) }))
        .filter(({ word }) => word && !word.classList.contains('silent'));
      // one size a beat, where all of it has room
      const shares = new Map();
      words.forEach(({ word, beat }, i) => {
        word.dataset.size = word.dataset.size || word.getAttribute('font-size');
        const next = words[i + 1] ? words[i + 1].word : null;
        const room = next && next.ownerSVGElement === word.ownerSVGElement ? Number(next.getAttribute('x')) - Number(word.getAttribute('x')) : 0;
        if (room > 0) {
          const signs = this.signsOf(bar, word).length + this.signsOf(bar, next).length;
          const wide = (widthOf(word.textContent) + widthOf(next.textContent)) / 2 + signs * 0.3 * FULL + BETWEEN;
          const share = room / (wide * Number(word.dataset.size));
          [beat, words[i + 1].beat].forEach((one) => shares.set(one, Math.min(share, shares.has(one) ? shares.get(one) : 1)));
        }
      });
      const own = this.other.get(bar.index);
      const tight = this.isOther || own && !own.asPrinted;
      for (const { word, beat } of words) {
        // and none that nobody can read
        const share = tight && shares.has(beat) ? Math.max(LEAST_SHARE_SHOWN, shares.get(beat)) : 1;
        word.setAttribute('font-size', (Number(word.dataset.size) * share).toFixed(1));
        this.signsOf(bar, word).forEach((sign) => sign.setAttribute('font-size', word.getAttribute('font-size')));
      }
    }
  }

  // The explanation at the foot of a page begins with the name of the system, and how its words are said.
  rename(titles, system) {
    for (const line of this.root.querySelectorAll('svg.countstave-page text:not([data-at])')) {
      const first = line.dataset.first || line.textContent;
      if (first.startsWith(titles[0])) {
        line.dataset.first = first;
        const end = first.indexOf('. ', titles[0].length);
        line.textContent = system === 0 ? first : titles[system] + (end < 0 ? '' : first.slice(end));
      }
    }
  }

  signsOf(bar, word) {
    const place = this.places.get(bar.index + ':' + word.dataset.at);
    return place ? place.signs : [];
  }

  // Parentheses stand around the words as they are now.
  embrace() {
    const moves = [];
    for (const place of this.places.values()) {
      const word = place.words[0];
      for (const sign of word ? place.signs : []) {
        sign.dataset.x = sign.dataset.x || sign.getAttribute('x');
        const middle = Number(word.getAttribute('x'));
        const left = Number(sign.dataset.x) < middle;
        const size = Number(sign.getAttribute('font-size'));
        const far = word.getComputedTextLength() / 2 + size * 0.04;
        moves.push([sign, this.isOther ? middle + (left ? -far : far) : sign.dataset.x]);
      }
    }
    moves.forEach(([sign, x]) => sign.setAttribute('x', x));
  }

  breathe() {
    this.root.querySelectorAll('text.breathe').forEach((sign) => sign.remove());
    this.root.querySelectorAll('text.breath:not(.otherwise)').forEach((word) => {
      const sign = document.createElementNS(SVG, 'text');
      sign.setAttribute('class', 'breathe');
      const size = Number(word.dataset.size || word.getAttribute('font-size'));
      // above the ruled line, where nothing else stands
      sign.setAttribute('x', Number(word.getAttribute('x')));
      sign.setAttribute('y', Number(word.getAttribute('y')) - size * 1.15);
      sign.setAttribute('text-anchor', 'middle');
      sign.setAttribute('font-size', size);
      sign.setAttribute('font-weight', 'bold');
      sign.textContent = '^';
      word.parentNode.append(sign);
    });
  }

  // Where a count stands, in units of its page: its words, else its tick.
  boxOf(count) {
    const place = this.places.get(count.key);
    if (!place) {
      return null;
    }
    const shape = place.words[0] || place.ticks[0];
    if (!shape) {
      return null;
    }
    const bar = (this.bars.get(String(count.bar.index)) || []).find((one) => one.ownerSVGElement === shape.ownerSVGElement);
    return { shape, box: shape.getBBox(), page: shape.ownerSVGElement, bar };
  }

  frame(kind, found, pad) {
    const frame = document.createElementNS(SVG, 'rect');
    frame.setAttribute('class', kind);
    frame.setAttribute('x', found.box.x - pad);
    frame.setAttribute('y', found.box.y - pad / 2);
    frame.setAttribute('width', Math.max(8, found.box.width) + 2 * pad);
    frame.setAttribute('height', Math.max(14, found.box.height) + pad);
    frame.setAttribute('rx', 3);
    // behind the ink, in front of the paper
    found.page.insertBefore(frame, found.page.querySelector('g'));
    return frame;
  }

  // Lights a count, and nothing else.
  lit(count) {
    if (this.now === count) {
      return;
    }
    this.now = count;
    this.light.forEach((frame) => frame.remove());
    this.light = [];
    const found = count ? this.boxOf(count) : null;
    if (found) {
      this.light = [this.frame('lit', found, 6)];
      if (found.bar !== this.litBar) {
        this.litBar = found.bar;
        this.follow(found.bar || found.shape);
      }
    } else {
      this.litBar = null;
    }
  }

  showCount(count) {
    const found = count ? this.boxOf(count) : null;
    if (found) {
      this.follow(found.bar || found.shape);
    }
  }

  // Keeps the line that is played in sight.
  follow(shape) {
    const box = shape.getBoundingClientRect();
    const low = document.getElementById('stand').getBoundingClientRect().top;
    if (box.top < 8 || box.bottom > low - 8) {
      const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
      window.scrollTo({ top: window.scrollY + box.top - Math.min(80, low / 5), behavior: calm ? 'auto' : 'smooth' });
    }
  }

  // Shows what is looped, and where the next start is.
  mark(from, to, cursor) {
    this.root.querySelectorAll('rect.looped, rect.cursor').forEach((frame) => frame.remove());
    if (from) {
      for (const bar of this.line.bars) {
        if (bar.end.compare(from) > 0 && bar.start.isBefore(to)) {
          this.markBar(bar, from, to);
        }
      }
    }
    const found = cursor ? this.boxOf(cursor) : null;
    if (found) {
      this.frame('cursor', found, 9);
    }
  }

  markBar(bar, from, to) {
    for (const shape of this.bars.get(String(bar.index)) || []) {
      const left = Number(shape.getAttribute('x'));
      const width = Number(shape.getAttribute('width'));
      let start = left;
      let end = left + width;
      const inside = bar.counts.filter((count) => {
        const word = this.wordOf(count);
        return word && word.ownerSVGElement === shape.ownerSVGElement && Number(word.getAttribute('x')) >= left
          && Number(word.getAttribute('x')) < left + width;
      });
      const first = inside.find((count) => count.at.compare(from) >= 0);
      const after = inside.find((count) => count.at.compare(to) >= 0);
      if (bar.start.isBefore(from)) {
        if (!first) {
          continue;
        }
        start = Number(this.wordOf(first).getAttribute('x')) - 8;
      }
      if (after) {
        end = Number(this.wordOf(after).getAttribute('x')) - 8;
      }
      if (end > start) {
        const frame = document.createElementNS(SVG, 'rect');
        frame.setAttribute('class', 'looped');
        frame.setAttribute('x', start);
        frame.setAttribute('y', shape.getAttribute('y'));
        frame.setAttribute('width', end - start);
        frame.setAttribute('height', shape.getAttribute('height'));
        const page = shape.ownerSVGElement;
        page.insertBefore(frame, page.querySelector('g'));
      }
    }
  }

  // The count under a point of the window, or null.
  countUnder(x, y) {
    const shape = document.elementsFromPoint(x, y).find((one) => one.classList && one.classList.contains('bar') && one.dataset.bar);
    if (!shape || shape.dataset.part !== this.line.part.id) {
      return null;
    }
    const page = shape.ownerSVGElement;
    const point = new DOMPoint(x, y).matrixTransform(page.getScreenCTM().inverse());
    const bar = this.line.bars.find((one) => String(one.index) === shape.dataset.bar);
    let best = null;
    let least = Infinity;
    for (const count of bar ? bar.counts : []) {
      const word = this.wordOf(count);
      if (word && word.ownerSVGElement === page) {
        const far = Math.abs(Number(word.getAttribute('x')) - point.x) + Math.abs(Number(word.getAttribute('y')) - point.y) / 50;
        if (far < least) {
          least = far;
          best = count;
        }
      }
    }
    return best;
  }
}

// How wide a word is, in sizes of its letters; an estimate, for the letters are not drawn yet.
function widthOf(word) {
  return [...word].reduce((sum, letter) => sum + ('fijlrt()'.includes(letter) ? THIN : 'mw'.includes(letter) ? BROAD : FULL), 0);
}
