// The page: what its controls do.
import { Fraction, ZERO } from './fraction.js';
import { Line } from './line.js';
import { Voice, CLICKS } from './sounds.js';
import { Track } from './track.js';
import { Player, Desk, Pace, schedule } from './player.js';
import { Ladder, asked, nextTempo, CLEAN } from './ladder.js';
import { Chart } from './chart.js';
import { Marking, fillLoops, loopKey, stretch, readPlace } from './loops.js';

const data = JSON.parse(document.getElementById('data').textContent);
const byId = (id) => document.getElementById(id);
const text = (key, ...places) => (data.texts[key] || key).replace(/\{(\d)\}/g, (whole, i) => places[i]);
const SLOWEST = 5;
const LEVELS = ['all', ...Object.keys(CLICKS), 'voice'];
const FOREVER = 100000;

// What may be set; whatever was stored is held to its range.
function settings(stored) {
  const number = (value, least, most, otherwise) => (Number.isFinite(value) && value >= least && value <= most ? value : otherwise);
  const levels = {};
  for (const level of LEVELS) {
    levels[level] = number(stored.levels ? stored.levels[level] : undefined, 0, 100, { all: 30, voice: 100 }[level] ?? 70);
  }
  const beats = (list) => (Array.isArray(list) ? list.filter((beat) => Number.isInteger(beat) && beat > 0) : []);
  return {
    part: number(stored.part, 0, data.parts.length - 1, 0), system: number(stored.system, 0, data.systems.length - 1, 0),
    stage: number(stored.stage, 0, data.stages.length - 1, 0), size: ['fit', 'page', 'large'].includes(stored.size) ? stored.size : 'fit',
    light: ['auto', 'light', 'dark'].includes(stored.light) ? stored.light : 'auto',
    swing: ['', '3/5', '2/3', '3/4'].includes(stored.swing) ? stored.swing : '', beats: beats(stored.beats),
    silent: /^[0-8]\/(1|2|4|8|16)$/.test(stored.silent) ? stored.silent : '0/1', place: number(stored.place, -100, 100, 0),
    placeBeats: beats(stored.placeBeats), countIn: stored.countIn !== false, repeat: stored.repeat !== false,
    up: ['plan', 'percent'].includes(stored.up) ? stored.up : 'plan', percent: number(stored.percent, 1, 25, 5),
    clean: number(stored.clean, 1, 50, CLEAN), alone: stored.alone === true, levels,
    loop: typeof stored.loop === 'string' ? stored.loop : 'whole', from: String(stored.from), to: String(stored.to),
  };
}

class Page {

  constructor() {
    this.ladder = new Ladder(data.source + ' ' + data.title);
    this.set = settings(this.ladder.set);
    this.voice = new Voice(data.voice);
    this.player = new Player(this.voice, () => this.playChanged(), (repeat) => this.speedOf(repeat));
    this.taps = [];
    this.controls();
    this.choosePart();
    this.marking = new Marking(() => this.chart, byId('chart'), (count) => this.goTo(count),
      (first, last, done) => this.markLoop(first, last, done));
    this.keys();
    this.isOpen = true;
    requestAnimationFrame(() => this.frame());
  }

  // ---- what is played

  choosePart() {
    this.player.stop();
    this.line = new Line(data.parts[this.set.part]);
    this.cursor = null;
    if (this.chart) {
      this.chart.line = this.line;
      this.chart.index();
    } else {
      this.chart = new Chart(byId('chart'), this.line, this.set.size);
    }
    fillLoops(byId('loop'), this.line, text);
    this.fillBeats();
    const own = [readPlace(this.set.from), readPlace(this.set.to)];
    if (this.set.loop === 'own' && own[0] && own[1] && own[0].isBefore(own[1]) && own[1].compare(this.line.end) <= 0) {
      this.setLoop('own', own[0], own[1]);
    } else {
      this.chooseLoop(this.set.loop === 'own' ? 'whole' : this.set.loop);
    }
    this.write();
  }

  words(count) {
    const words = this.line.part.words[this.set.system];
    if (!words.split) {
      words.split = words.rows.map((row) => row.split(' '));
    }
    return words.split[Number(words.bars[count.bar.place])][count.index];
  }

  write() {
    this.chart.write((count) => this.words(count), this.set.stage);
    this.showMarks();
  }

  chooseLoop(value) {
    const ready = this.line.loops[Number(value)];
    if (value !== 'whole' && ready) {
      this.setLoop(value, ready.from, ready.to, ready);
    } else {
      this.setLoop('whole', ZERO, this.line.end);
    }
  }

  setLoop(value, from, to, ready = null) {
    const was = this.player.playing;
    this.player.stop();
    Object.assign(this.set, { loop: value, from: from.toString(), to: to.toString() });
    this.from = from;
    this.to = to;
    this.ready = ready;
    this.key = loopKey(this.line.part, from, to);
    byId('loop').value = value;
    if (this.cursor && (this.cursor.at.isBefore(from) || this.cursor.at.compare(to) >= 0)) {
      this.cursor = null;
    }
    this.written = this.line.anchorAt(from).tempo;
    const known = this.ladder.of(this.key).perMinute;
    const first = ready && ready.steps ? ready.steps[0].perMinute : this.written.perMinute;
    this.perMinute = Number.isFinite(known) && known >= SLOWEST && known <= this.most() ? known : first;
    this.stepsChanged();
    this.tempoShown();
    this.showMarks();
    this.store();
    this.say(text('said.loop', this.loopName()));
    if (was) {
      this.play();
    }
  }

  loopName() {
    const chosen = byId('loop').selectedOptions[0];
    return this.set.loop === 'own' ? this.placeName(this.from) + ' – ' + this.placeName(this.to, true) : chosen ? chosen.textContent : '';
  }

  placeName(at, end = false) {
    const bar = end ? this.line.bars.filter((one) => one.start.isBefore(at)).pop() || this.line.bars[0] : this.line.barAt(at);
    const last = end ? bar.counts.filter((count) => count.at.isBefore(at)).pop() : bar.counts.find((count) => count.at.compare(at) >= 0);
    return text('at', bar.number, last ? this.words(last) : '');
  }

  markLoop(first, last, done) {
    const [from, to] = stretch(this.line, first, last);
    if (done) {
      this.setMarking(false);
      this.setLoop('own', from, to);
    } else {
      this.chart.mark(from, to, this.cursor);
    }
  }

  goTo(count) {
    if (count) {
      this.cursor = count;
      if (count.at.isBefore(this.from) || count.at.compare(this.to) >= 0) {
        this.chooseLoop('whole');
        this.cursor = count;
      }
      this.showMarks();
      this.say(text('said.from', this.placeName(count.at)));
      if (this.player.playing) {
        this.play();
      }
    }
  }

  showMarks() {
    const whole = this.set.loop === 'whole';
    this.chart.mark(whole ? null : this.from, whole ? null : this.to, this.cursor);
    const from = byId('from');
    from.textContent = this.cursor ? text('from', this.placeName(this.cursor.at)) : text('from.start');
  }

  track() {
    const set = this.set;
    const [silent, of] = set.silent.split('/').map(Number);
    return new Track(this.line, {
      from: this.from, to: this.to, begin: this.cursor ? this.cursor.at : null, stage: set.stage,
      swing: set.swing ? Fraction.of(set.swing) : null, beats: set.beats, silent, of, place: set.place,
      placeBeats: set.placeBeats, countIn: set.countIn, speed: this.speed(), words: (count) => this.words(count),
    });
  }

  speed() {
    return this.perMinute / this.written.perMinute;
  }

  async play() {
    await this.player.open(this.levels());
    this.begunAt = this.perMinute;
    this.player.play(this.track(), this.set.system, this.speed(), this.set.repeat ? FOREVER : 1);
  }

  playChanged() {
    const playing = this.player.playing;
    byId('play').textContent = text(playing ? 'stop' : 'play');
    byId('play').setAttribute('aria-pressed', String(playing));
    document.body.classList.toggle('playing', playing);
    if (playing) {
      byId('said').textContent = '';
    } else {
      this.chart.lit(null);
      this.say(text('said.stopped'));
    }
  }

  // Something that is heard was set otherwise.
  changed() {
    this.player.setTrack(this.player.playing ? this.track() : null, this.set.system);
    this.store();
  }

  levels() {
    const levels = {};
    for (const level of LEVELS) {
      // by ear: half way is a quarter
      levels[level] = (this.set.levels[level] / 100) ** 2;
    }
    return levels;
  }

  frame() {
    const count = this.player.count();
    this.chart.lit(count ? count.count : null);
    const now = this.player.playing ? this.player.pace.pointAt(this.player.heardAt()).speed * this.written.perMinute : this.perMinute;
    if (Math.abs(now - this.shown) > 1e-9) {
      this.tempoShown(now);
    }
    requestAnimationFrame(() => this.frame());
  }

  // ---- tempo and steps

  most() {
    return Math.min(400, Math.max(20, Math.ceil(this.written.perMinute * 2)));
  }

  setTempo(perMinute, said = true) {
    const held = Math.max(SLOWEST, Math.min(this.most(), Math.round(perMinute * 100) / 100));
    this.perMinute = held;
    this.player.setSpeed(this.speed());
    this.ladder.setTempo(this.key, held);
    this.tempoShown();
    this.stepsChanged();
    if (said) {
      this.say(text('said.tempo', this.tempoName(held)));
    }
  }

  tempoName(perMinute) {
    return this.written.sign + String(Math.round(perMinute * 100) / 100).replace('.', data.texts.decimal);
  }

  tempoShown(now = this.perMinute) {
    this.shown = now;
    byId('tempo-now').textContent = this.tempoName(now);
    const slider = byId('tempo');
    slider.min = SLOWEST;
    slider.max = this.most();
    slider.value = now;
    slider.setAttribute('aria-valuetext', this.tempoName(now));
  }

  tap() {
    const now = performance.now();
    this.taps = this.taps.filter((tap) => now - tap < 8000);
    if (this.taps.length && now - this.taps[this.taps.length - 1] > 2500) {
      this.taps = [];
    }
    this.taps.push(now);
    if (this.taps.length > 2) {
      const beats = this.taps.length - 1;
      this.setTempo(Math.round(60000 * beats / (now - this.taps[0])));
    }
  }

  asked() {
    return this.set.up === 'plan' ? asked(this.ready, this.perMinute, this.set.clean) : this.set.clean;
  }

  next(perMinute) {
    return nextTempo(this.ready, perMinute, this.set.up === 'plan' ? null : this.set.percent, this.most());
  }

  // The tempo of a repeat that is about to be handed to the clock: with steps by themselves every repeat counts as clean.
  speedOf() {
    if (!this.set.alone) {
      return null;
    }
    const clean = this.ladder.cleanAt(this.key, this.perMinute) + 1;
    this.ladder.setClean(this.key, this.perMinute, clean);
    if (clean < this.asked()) {
      this.stepsChanged();
      return null;
    }
    this.perMinute = this.next(this.perMinute);
    this.ladder.setClean(this.key, this.perMinute, 0);
    this.ladder.setTempo(this.key, this.perMinute);
    this.stepsChanged();
    return this.speed();
  }

  clean() {
    const clean = this.ladder.cleanAt(this.key, this.perMinute) + 1;
    this.ladder.setClean(this.key, this.perMinute, clean);
    this.errors = 0;
    if (clean >= this.asked()) {
      const next = this.next(this.perMinute);
      this.say(next > this.perMinute ? text('said.up', this.tempoName(next)) : text('said.done'));
      if (next > this.perMinute) {
        this.setTempo(next, false);
      }
    } else {
      this.say(text('said.clean', clean, this.asked()));
    }
    this.stepsChanged();
  }

  // Once more: what was clean at this tempo no longer counts. Two of it in a row, and it goes two steps back.
  again() {
    this.ladder.setClean(this.key, this.perMinute, 0);
    this.errors = (this.errors || 0) + 1;
    if (this.errors >= 2) {
      this.errors = 0;
      const steps = this.ready && this.ready.steps ? this.ready.steps.map((step) => step.perMinute) : [];
      const below = steps.filter((step) => step < this.perMinute - 1e-9);
      const back = this.set.up === 'plan' && below.length ? below[Math.max(0, below.length - 2)]
        : Math.max(SLOWEST, Math.round(this.perMinute / (1 + this.set.percent / 100) ** 2));
      this.setTempo(back, false);
    }
    this.say(text('said.again', this.tempoName(this.perMinute)));
    this.stepsChanged();
  }

  stepsChanged() {
    const done = Math.min(this.asked(), this.ladder.cleanAt(this.key, this.perMinute));
    const ticks = byId('ticks');
    ticks.textContent = '|'.repeat(done) + '·'.repeat(Math.max(0, this.asked() - done));
    ticks.setAttribute('aria-label', text('said.clean', done, this.asked()));
    const list = byId('steps');
    list.replaceChildren();
    for (const step of this.ready && this.ready.steps ? this.ready.steps : []) {
      const item = document.createElement('li');
      const button = document.createElement('button');
      const clean = Math.min(step.clean, this.ladder.cleanAt(this.key, step.perMinute));
      button.type = 'button';
      button.textContent = this.tempoName(step.perMinute) + '  ' + '|'.repeat(clean) + '·'.repeat(step.clean - clean)
        + (step.stage ? '  ' + data.stages[step.stage] : '');
      if (step.perMinute === this.perMinute) {
        button.setAttribute('aria-current', 'step');
      }
      button.addEventListener('click', () => this.setTempo(step.perMinute));
      item.append(button);
      list.append(item);
    }
    byId('steps-none').hidden = list.children.length > 0;
    byId('not-kept').hidden = !this.ladder.isOff;
  }

  store() {
    this.ladder.kept.set = { ...this.set };
    this.ladder.keep();
  }

  export() {
    const link = document.createElement('a');
    link.href = 'data:application/json;charset=utf-8,' + encodeURIComponent(this.ladder.text());
    link.download = 'ticks.json';
    document.body.append(link);
    link.click();
    link.remove();
  }

  // ---- controls

  say(words) {
    if (this.isOpen && !this.player.playing) {
      byId('said').textContent = words;
    }
  }

  controls() {
    const fill = (id, labels, values = labels.map((label, i) => i)) => {
      labels.forEach((label, i) => {
        const option = document.createElement('option');
        option.value = values[i];
        option.textContent = label;
        byId(id).append(option);
      });
    };
    fill('part', data.parts.map((part) => part.name));
    byId('part-row').hidden = data.parts.length < 2;
    fill('system', data.systems.map((system) => system.title));
    fill('stage', data.stages);
    this.choice('part', Number, () => this.choosePart());
    this.choice('system', Number, () => {
      this.write();
      this.changed();
    });
    this.choice('stage', Number, () => {
      this.write();
      this.changed();
    });
    this.choice('size', String, () => {
      this.chart.size = this.set.size;
      this.redraw();
    });
    this.choice('light', String, () => this.lightChanged());
    ['swing', 'silent'].forEach((id) => this.choice(id, String, () => this.changed()));
    ['place', 'percent', 'clean-times'].forEach((id) => this.choice(id, Number, () => {
      this.stepsChanged();
      this.changed();
    }, id === 'clean-times' ? 'clean' : id));
    this.choice('up', String, () => this.stepsChanged());
    for (const id of ['countIn', 'repeat', 'alone']) {
      byId(id).checked = this.set[id];
      byId(id).addEventListener('change', () => {
        this.set[id] = byId(id).checked;
        this.player.repeats = this.set.repeat ? FOREVER : 1;
        this.changed();
      });
    }
    for (const level of LEVELS) {
      const slider = byId('level-' + level);
      slider.value = this.set.levels[level];
      slider.addEventListener('input', () => {
        this.set.levels[level] = Number(slider.value);
        if (this.player.desk) {
          this.player.desk.setLevels(this.levels());
        }
        this.store();
      });
    }
    byId('voice-row').hidden = !data.voice;
    byId('loop').addEventListener('change', () => {
      if (byId('loop').value === 'own') {
        this.setMarking(true);
      } else {
        this.cursor = null;
        this.chooseLoop(byId('loop').value);
      }
    });
    const click = (id, what) => byId(id).addEventListener('click', what);
    click('play', () => this.toggle());
    click('slower', () => this.setTempo(this.perMinute - 1));
    click('faster', () => this.setTempo(this.perMinute + 1));
    click('tap', () => this.tap());
    click('clean', () => this.clean());
    click('again', () => this.again());
    click('mark', () => this.setMarking(byId('mark').getAttribute('aria-pressed') !== 'true'));
    click('start', () => {
      this.cursor = null;
      this.showMarks();
    });
    click('export', () => this.export());
    click('forget', () => {
      this.ladder.forget();
      this.stepsChanged();
    });
    click('print', () => window.print());
    byId('tempo').addEventListener('input', () => this.setTempo(Number(byId('tempo').value), false));
    window.addEventListener('beforeprint', () => this.redraw(true));
    window.addEventListener('afterprint', () => this.redraw());
    window.addEventListener('resize', () => {
      clearTimeout(this.resizing);
      this.resizing = setTimeout(() => this.redraw(), 150);
    });
    this.lightChanged();
  }

  choice(id, type, then, name = id) {
    byId(id).value = this.set[name];
    byId(id).addEventListener('change', () => {
      const value = type(byId(id).value);
      if (type !== Number || Number.isFinite(value)) {
        this.set[name] = value;
        this.set = settings(this.set);
        byId(id).value = this.set[name];
        then();
        this.store();
      }
    });
  }

  // For each beat that a bar has: whether it clicks, and whether it is placed.
  fillBeats() {
    const most = Math.max(...this.line.bars.map((bar) => Math.max(...bar.beats.map((beat) => beat.number))));
    const all = Array.from({ length: Math.min(most, 32) }, (_, i) => i + 1);
    for (const [id, name] of [['beats', 'beats'], ['place-beats', 'placeBeats']]) {
      byId(id).querySelectorAll('label').forEach((label) => label.remove());
      this.set[name] = this.set[name].filter((beat) => beat <= most);
      for (const beat of all) {
        const label = document.createElement('label');
        const box = document.createElement('input');
        box.type = 'checkbox';
        box.checked = this.set[name].length === 0 || this.set[name].includes(beat);
        label.append(box, ' ' + beat);
        byId(id).append(label);
        box.addEventListener('change', () => {
          const boxes = [...byId(id).querySelectorAll('input')];
          const chosen = boxes.map((one, i) => (one.checked ? i + 1 : 0)).filter(Boolean);
          // none: no beat at all is chosen, which no bar has
          this.set[name] = chosen.length === boxes.length ? [] : chosen.length ? chosen : [999];
          this.changed();
        });
      }
    }
  }

  redraw(printing = false) {
    this.chart.show(printing);
    this.write();
  }

  lightChanged() {
    document.documentElement.dataset.light = this.set.light;
  }

  setMarking(on) {
    byId('mark').setAttribute('aria-pressed', String(on));
    this.marking.byTouch = on;
    this.marking.waiting = null;
    byId('chart').classList.toggle('marking', on);
    this.say(text(on ? 'said.mark' : 'said.marked'));
    byId('loop').value = this.set.loop;
  }

  toggle() {
    if (this.player.playing) {
      this.player.stop();
    } else {
      this.play();
    }
  }

  // ---- keys

  keys() {
    document.addEventListener('keydown', (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) {
        return;
      }
      const on = event.target;
      const writes = /^(INPUT|SELECT|TEXTAREA)$/.test(on.tagName);
      const own = writes || event.key === ' ' && /^(BUTTON|SUMMARY|A)$/.test(on.tagName);
      const what = own ? null : this.keyed(event.key);
      if (what) {
        event.preventDefault();
        what();
      }
    });
    byId('chart').addEventListener('keydown', (event) => {
      const what = event.ctrlKey || event.metaKey || event.altKey ? null : this.keyedOnChart(event.key);
      if (what) {
        event.preventDefault();
        event.stopPropagation();
        what();
      }
    });
  }

  keyed(key) {
    return {
      ' ': () => this.toggle(), '+': () => this.setTempo(this.perMinute + 1), '=': () => this.setTempo(this.perMinute + 1),
      '-': () => this.setTempo(this.perMinute - 1), t: () => this.tap(), c: () => this.clean(), a: () => this.again(),
      m: () => this.setMarking(byId('mark').getAttribute('aria-pressed') !== 'true'),
      Escape: () => {
        this.cursor = null;
        this.setMarking(false);
        this.chooseLoop('whole');
      },
    }[key];
  }

  keyedOnChart(key) {
    const counts = this.line.counts.filter((count) => count.stages & 1);
    const here = this.cursor ? counts.indexOf(this.cursor) : -1;
    const to = (count) => () => {
      if (count) {
        this.goTo(count);
        const found = this.chart.boxOf(count);
        if (found) {
          this.chart.follow(found.bar || found.shape);
        }
      }
    };
    const bar = this.cursor ? this.cursor.bar.place : -1;
    const firstOf = (place) => (this.line.bars[place] ? counts.find((count) => count.bar.place === place) : null);
    return {
      ArrowRight: to(counts[here + 1]), ArrowLeft: to(counts[here - 1]), ArrowDown: to(firstOf(bar + 1)), ArrowUp: to(firstOf(bar - 1)),
      Home: to(counts[0]), End: to(counts[counts.length - 1]),
      Enter: () => this.play(),
      '[': () => this.cursor && this.edge(this.cursor, true), ']': () => this.cursor && this.edge(this.cursor, false),
    }[key];
  }

  // One edge of the loop is put where the next start is; the other stays, if it lies on the right side.
  edge(count, first) {
    const [from, to] = stretch(this.line, count, count);
    if (first) {
      this.setLoop('own', from, from.isBefore(this.to) ? this.to : this.line.end);
    } else {
      this.setLoop('own', this.from.isBefore(to) ? this.from : ZERO, to);
    }
  }

  // ---- for measuring: the same track and the same scheduling, into memory instead of the loudspeaker

  // layers: which click; speeds: for each repeat
  async render({ seconds, rate, layer, speeds, impulse }) {
    const context = new OfflineAudioContext(1, Math.ceil(seconds * rate), rate);
    const levels = Object.fromEntries(LEVELS.map((level) => [level, level === 'all' || level === layer ? 1 : 0]));
    const desk = new Desk(context, new Voice(layer === 'voice' ? data.voice : null), levels);
    if (impulse) {
      desk.setClick(layer, new Float32Array([1]));
    }
    const track = this.track();
    const start = track.before.length ? track.before[0].second : track.begin;
    const pace = new Pace(0, start, speeds[0]);
    schedule(desk, track, pace, this.set.system, start, track.cycle, speeds.length);
    for (let repeat = 1; repeat < speeds.length; repeat++) {
      pace.set(pace.timeOf(repeat * track.cycle), speeds[repeat]);
      schedule(desk, track, pace, this.set.system, repeat * track.cycle, (repeat + 1) * track.cycle, speeds.length);
    }
    return (await context.startRendering()).getChannelData(0);
  }
}

window.practice = new Page();
