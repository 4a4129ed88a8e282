// The ready loops as a list, and how one is marked on the chart: by dragging, by touch, by keys.
import { Fraction } from './fraction.js';

// The end of a count: where the next one begins, or its bar ends.
export function endOf(count) {
  const next = count.bar.ways[count.way].counts[count.index + 1];
  return next ? next.at : count.bar.end;
}

export function fillLoops(select, line, text) {
  select.replaceChildren();
  const option = (parent, value, label) => {
    const one = document.createElement('option');
    one.value = value;
    one.textContent = label;
    parent.append(one);
  };
  option(select, 'whole', text('loop.whole'));
  option(select, 'own', text('loop.own'));
  for (const kind of ['passage', 'seam', 'letter']) {
    const group = document.createElement('optgroup');
    group.label = text('loop.' + kind + 's');
    line.loops.forEach((loop, i) => {
      if (loop.kind === kind) {
        option(group, String(i), loop.name ? loop.name + ': ' + loop.title : loop.title);
      }
    });
    if (group.children.length) {
      select.append(group);
    }
  }
}

// What a loop is remembered by.
export function loopKey(part, from, to) {
  return part.id + ' ' + from + ' ' + to;
}

export class Marking {

  // found(count): a place was chosen; marked(first, last): a stretch was
  constructor(chart, root, found, marked) {
    this.chart = chart;
    this.found = found;
    this.marked = marked;
    this.byTouch = false;
    this.waiting = null;
    root.addEventListener('pointerdown', (event) => this.down(event));
    root.addEventListener('pointermove', (event) => this.move(event));
    root.addEventListener('pointerup', (event) => this.up(event));
    root.addEventListener('pointercancel', () => {
      this.first = null;
    });
  }

  // With a mouse one drags at any time; a finger scrolls, unless a loop is being marked.
  drags(event) {
    return event.pointerType === 'mouse' || this.byTouch;
  }

  down(event) {
    this.first = this.chart().countUnder(event.clientX, event.clientY);
    this.last = this.first;
    this.dragging = false;
    this.x = event.clientX;
    this.y = event.clientY;
  }

  move(event) {
    if (this.first && this.drags(event) && event.buttons & 1) {
      const count = this.chart().countUnder(event.clientX, event.clientY);
      if (count && count !== this.last && Math.abs(event.clientX - this.x) + Math.abs(event.clientY - this.y) > 6) {
        this.dragging = true;
        this.last = count;
        this.marked(this.first, count, false);
        event.preventDefault();
      }
    }
  }

  up() {
    if (!this.first) {
      return;
    }
    if (this.dragging) {
      this.waiting = null;
      this.marked(this.first, this.last, true);
    } else if (this.byTouch && this.waiting) {
      this.marked(this.waiting, this.first, true);
      this.waiting = null;
    } else {
      this.waiting = this.byTouch ? this.first : null;
      this.found(this.first);
    }
    this.first = null;
  }
}

// From the earlier of two counts to the end of the later one.
export function stretch(one, other) {
  const [first, last] = one.at.compare(other.at) <= 0 ? [one, other] : [other, one];
  return [first.at, endOf(last)];
}

export function readPlace(text) {
  return /^\d+\/\d+$/.test(text) ? Fraction.of(text) : undefined;
}
