// The page: what its controls do.
import { Fraction, ZERO } from './fraction.js';
import { Line } from './line.js';
import { Voice } from './sounds.js';
import { Track } from './track.js';
import { Player } from './player.js';
import { Ladder, asked, nextTempo } from './ladder.js';
import { Chart } from './chart.js';
import { Marking, fillLoops, loopKey, stretch, readPlace } from './loops.js';
import { settings, LEVELS, SLOWEST, FOREVER } from './settings.js';
import { wireControls, fillBeats } from './controls.js';
import { wireKeys } from './keys.js';
import { Taps } from './taps.js';
import { Frames } from './frames.js';
import { render } from './measure.js';

const data = JSON.parse(document.getElementById('data').textContent);
const byId = (id) => document.getElementById(id);
const text = (key, ...places) => (data.texts[key] || key).replace(/\{(\d)\}/g, (whole, i) => places[i]);

// Milliseconds after which a device that gives no sound is told of.
const PATIENCE = 3000;

class Page {

  constructor() {
    this.ladder = new Ladder(data.source + ' ' + data.title);
    this.set = settings(this.ladder.set, data);
    this.voice = new Voice(data.voice);
    this.player = new Player(this.voice, () => this.playChanged(), (repeat) => this.speedOf(repeat));
    this.frames = new Frames(this.player, () => this.frame());
    this.taps = new Taps();
    wireControls(this, data, text);
    this.choosePart();
    this.marking = new Marking(() => this.chart, byId('chart'), (count) => this.goTo(count),
      (first, last, done) => this.markLoop(first, last, done));
    wireKeys(this);
    this.isOpen = true;
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
    fillBeats(this);
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
      words.ways = words.bars.map((bar) => bar.split(' ').map(Number));
    }
    return words.split[words.ways[count.bar.place][count.way]][count.index];
  }

  write() {
    this.chart.write((count) => this.words(count), this.set.stage, this.set.system > 0);
    this.chart.rename(data.systems.map((system) => system.title), this.set.system);
    this.showMarks();
  }

  paceOf(speed) {
    const step = this.steps.find((one) => Math.abs(one.perMinute - speed * this.written.perMinute) < 1e-6);
    return step ? this.line.paceOfStep(this.ready, step, speed) : this.line.paceOf(speed);
  }

  // The counts of a speed, on the page and in what sounds from now on.
  countAs(speed = this.speed()) {
    const pace = this.paceOf(speed);
    if (pace === this.line.pace) {
      return false;
    }
    this.line.choose(pace);
    this.cursor = this.cursor && this.line.countOn(this.cursor.at);
    this.write();
    return true;
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
    this.steps = ready && ready.steps ? ready.steps : [];
    this.key = loopKey(this.line.part, from, to);
    byId('loop').value = value;
    if (this.cursor && (this.cursor.at.isBefore(from) || this.cursor.at.compare(to) >= 0)) {
      this.cursor = null;
    }
    this.written = this.line.anchorAt(from).tempo;
    const known = this.ladder.of(this.key).perMinute;
    const first = this.steps.length ? this.steps[0].perMinute : this.written.perMinute;
    this.perMinute = Number.isFinite(known) && known >= SLOWEST && known <= this.most() ? known : first;
    this.stepsChanged();
    this.tempoShown();
    if (!this.countAs()) {
      this.showMarks();
    }
    this.store();
    this.say(text('said.loop', this.loopName()));
    if (was) {
      this.play();
    } else if (this.isOpen && value !== 'whole') {
      this.showStart();
    }
  }

  // Where it begins is looked at before it sounds: while it is counted in, one reads the first bar.
  showStart() {
    this.chart.showCount(this.cursor || this.line.countOn(this.from));
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
    const [from, to] = stretch(first, last);
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
      from: this.from, to: this.to, begin: this.cursor ? this.cursor.at : null, pace: this.paceOf(this.speed()), stage: set.stage,
      swing: set.swing ? Fraction.of(set.swing) : null, beats: set.beats, silent, of, place: set.place,
      placeBeats: set.placeBeats, countIn: set.countIn, speed: this.speed(), words: (count) => this.words(count),
    });
  }

  speed() {
    return this.perMinute / this.written.perMinute;
  }

  async play() {
    const opened = this.player.open(this.levels());
    await Promise.race([opened, new Promise((done) => setTimeout(done, PATIENCE))]);
    byId('no-sound').hidden = this.player.context.state === 'running';
    if (!byId('no-sound').hidden) {
      return;
    }
    this.showStart();
    this.player.play(this.track(), this.set.system, this.speed(), this.set.repeat ? FOREVER : 1);
  }

  playChanged() {
    const playing = this.player.playing;
    byId('play').textContent = text(playing ? 'stop' : 'play');
    byId('play').setAttribute('aria-pressed', String(playing));
    document.body.classList.toggle('playing', playing);
    this.frames.soon();
    if (playing) {
      byId('said').textContent = '';
    } else {
      this.chart.lit(null);
      this.countAs();
      this.tempoShown();
      this.say(text('said.stopped'));
    }
  }

  // Something that is heard was set otherwise.
  changed() {
    this.player.setTrack(this.player.playing ? this.track() : null, this.set.system);
    this.frames.soon();
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
    const speed = this.player.speedHeard();
    if (this.set.alone) {
      // what is handed over already may be a step further than what is heard
      this.countAs(speed);
    }
    this.chart.lit(count ? count.count : null);
    const now = speed * this.written.perMinute;
    if (Math.abs(now - this.shown) > 1e-9) {
      this.tempoShown(now);
    }
  }

  // ---- tempo and steps

  most() {
    return Math.min(400, Math.max(20, Math.ceil(this.written.perMinute * 2)));
  }

  setTempo(perMinute, said = true) {
    const held = Math.max(SLOWEST, Math.min(this.most(), Math.round(perMinute * 100) / 100));
    this.perMinute = held;
    if (this.countAs() && this.player.playing) {
      this.player.setTrack(this.track(), this.set.system, this.speed());
    } else {
      this.player.setSpeed(this.speed());
    }
    this.frames.soon();
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
    const perMinute = this.taps.add(performance.now());
    if (perMinute) {
      this.setTempo(perMinute);
    }
  }

  asked() {
    return this.set.up === 'plan' ? asked(this.ready, this.perMinute, this.set.clean) : this.set.clean;
  }

  next(perMinute) {
    return nextTempo(this.ready, perMinute, this.set.up === 'plan' ? null : this.set.percent, this.most());
  }

  // The tempo of a repeat that is about to be handed to the clock: with steps by themselves every repeat counts as clean.
  speedOf(repeat) {
    if (!this.set.alone) {
      return null;
    }
    const clean = this.ladder.cleanAt(this.key, this.perMinute) + 1;
    this.ladder.setClean(this.key, this.perMinute, clean);
    if (clean < this.asked()) {
      this.stepsChanged();
      return null;
    }
    const pace = this.paceOf(this.speed());
    this.perMinute = this.next(this.perMinute);
    if (this.paceOf(this.speed()) !== pace) {
      this.player.setTrackFrom(repeat, this.track());
    }
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
      const below = this.steps.map((step) => step.perMinute).filter((step) => step < this.perMinute - 1e-9);
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
    for (const step of this.steps) {
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

  // What was saved as a file, perhaps on another machine.
  async import(file) {
    const loops = file ? this.ladder.read(await file.text()) : undefined;
    if (loops === null) {
      this.say(text('said.no-ticks'));
    } else if (loops !== undefined) {
      this.stepsChanged();
      this.say(text('said.ticks', loops));
    }
  }

  // ---- controls

  say(words) {
    if (this.isOpen && !this.player.playing) {
      byId('said').textContent = words;
    }
  }

  redraw(printing = false) {
    this.chart.show(printing);
    this.write();
  }

  setMarking(on) {
    byId('mark').setAttribute('aria-pressed', String(on));
    this.marking.byTouch = on;
    this.marking.waiting = null;
    byId('chart').classList.toggle('marking', on);
    this.say(text(on ? 'said.mark' : 'said.marked'));
    byId('loop').value = this.set.loop;
  }

  toggleMarking() {
    this.setMarking(!this.marking.byTouch);
  }

  toggle() {
    if (this.player.playing) {
      this.player.stop();
    } else {
      this.play();
    }
  }
}

window.practice = new Page();
// Milliseconds after the page was asked for.
window.practice.opened = performance.now();
window.practice.render = (what) => render(window.practice, data, what);
