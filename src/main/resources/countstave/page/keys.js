// What the keys do.
import { ZERO } from './fraction.js';
import { stretch } from './loops.js';

export function wireKeys(page) {
  document.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) {
      return;
    }
    const on = event.target;
    const writes = /^(INPUT|SELECT|TEXTAREA)$/.test(on.tagName);
    const own = writes || event.key === ' ' && /^(BUTTON|SUMMARY|A)$/.test(on.tagName);
    const what = own ? null : keyed(page, event.key);
    if (what) {
      event.preventDefault();
      what();
    }
  });
  document.getElementById('chart').addEventListener('keydown', (event) => {
    const what = event.ctrlKey || event.metaKey || event.altKey ? null : keyedOnChart(page, event.key);
    if (what) {
      event.preventDefault();
      event.stopPropagation();
      what();
    }
  });
}

function keyed(page, key) {
  return {
    ' ': () => page.toggle(), '+': () => page.setTempo(page.perMinute + 1), '=': () => page.setTempo(page.perMinute + 1),
    '-': () => page.setTempo(page.perMinute - 1), t: () => page.tap(), c: () => page.clean(), a: () => page.again(),
    m: () => page.toggleMarking(),
    Escape: () => {
      page.cursor = null;
      page.setMarking(false);
      page.chooseLoop('whole');
    },
  }[key];
}

function keyedOnChart(page, key) {
  const counts = page.line.counts.filter((count) => count.stages & 1);
  const here = page.cursor ? counts.indexOf(page.cursor) : -1;
  const to = (count) => () => {
    if (count) {
      page.goTo(count);
      page.chart.showCount(count);
    }
  };
  const bar = page.cursor ? page.cursor.bar.place : -1;
  const firstOf = (place) => (page.line.bars[place] ? counts.find((count) => count.bar.place === place) : null);
  return {
    ArrowRight: to(counts[here + 1]), ArrowLeft: to(counts[here - 1]), ArrowDown: to(firstOf(bar + 1)), ArrowUp: to(firstOf(bar - 1)),
    Home: to(counts[0]), End: to(counts[counts.length - 1]),
    Enter: () => page.play(),
    '[': () => page.cursor && edge(page, page.cursor, true), ']': () => page.cursor && edge(page, page.cursor, false),
  }[key];
}

// One edge of the loop is put where the next start is; the other stays, if it lies on the right side.
function edge(page, count, first) {
  const [from, to] = stretch(count, count);
  if (first) {
    page.setLoop('own', from, from.isBefore(page.to) ? page.to : page.line.end);
  } else {
    page.setLoop('own', page.from.isBefore(to) ? page.from : ZERO, to);
  }
}
