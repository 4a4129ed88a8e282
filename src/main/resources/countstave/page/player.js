// Plays a track on the audio clock. A moment x of the track (seconds at the written tempo) sounds at
//   at + (x - from) / speed
// of the last point at which the speed was set; nothing is added up from one sound to the next.
import { clickSamples, CLICKS } from './sounds.js';

// Sounds are handed to the audio clock so long ahead: a tab in the background wakes once a second only.
export const AHEAD = 2.5;
const WAKE = 200;
const SOON = 0.005;
const LEAD = 0.25;
const BLEND = 0.006;

// The sounds of a context, live or offline.
export class Desk {

  constructor(context, voice, levels) {
    this.context = context;
    this.voice = voice;
    this.main = context.createGain();
    this.main.connect(context.destination);
    this.layers = {};
    this.clicks = {};
    for (const layer of [...Object.keys(CLICKS), 'voice']) {
      this.layers[layer] = context.createGain();
      this.layers[layer].connect(this.main);
      if (CLICKS[layer]) {
        this.setClick(layer, clickSamples(layer, context.sampleRate));
      }
    }
    this.setLevels(levels);
  }

  setClick(layer, samples) {
    const buffer = this.context.createBuffer(1, samples.length, this.context.sampleRate);
    buffer.copyToChannel(samples, 0);
    this.clicks[layer] = buffer;
  }

  // 0 to 1 each; in all never more than full scale
  setLevels(levels) {
    this.main.gain.value = levels.all;
    for (const layer of Object.keys(this.layers)) {
      this.layers[layer].gain.value = levels[layer] * (CLICKS[layer] ? CLICKS[layer][1] : 0.7);
    }
  }

  // On a whole sample: a click that begins between two would be blurred.
  sample(time) {
    return Math.round(time * this.context.sampleRate) / this.context.sampleRate;
  }

  click(layer, time) {
    const source = this.context.createBufferSource();
    source.buffer = this.clicks[layer];
    source.connect(this.layers[layer]);
    source.start(this.sample(time));
    return { source, time };
  }

  // The centre of the word comes at `time`; it is over `over` seconds after that.
  word(clip, time, gain, over) {
    let buffer = clip.buffers.get(this.context);
    if (!buffer) {
      buffer = this.context.createBuffer(1, clip.samples.length, clip.rate);
      buffer.copyToChannel(clip.samples, 0);
      clip.buffers.set(this.context, buffer);
    }
    const source = this.context.createBufferSource();
    const level = this.context.createGain();
    source.buffer = buffer;
    source.connect(level);
    level.connect(this.layers.voice);
    const begin = time - clip.centre;
    const now = this.context.currentTime;
    const late = Math.max(0, now - begin);
    level.gain.setValueAtTime(gain * this.voice.data.gain, Math.max(now, begin));
    if (over < clip.after) {
      level.gain.setValueAtTime(gain * this.voice.data.gain, Math.max(now, time + over - BLEND));
      level.gain.linearRampToValueAtTime(0, Math.max(now, time + over) + 0.001);
    }
    source.start(begin + late, late);
    return { source, time: begin };
  }
}

// When what comes, while the speed changes.
export class Pace {

  constructor(at, from, speed) {
    this.points = [{ at, from, speed }];
  }

  // From `at` on; what was set for later is void.
  set(at, speed) {
    while (this.points.length > 1 && this.points[this.points.length - 1].at >= at) {
      this.points.pop();
    }
    this.points.push({ at, from: this.trackAt(at), speed });
    // an earlier point is only asked for while its sound is still on the way
    while (this.points.length > 2 && this.points[1].at < at - 10) {
      this.points.shift();
    }
  }

  pointAt(time) {
    for (let i = this.points.length - 1; i > 0; i--) {
      if (this.points[i].at <= time) {
        return this.points[i];
      }
    }
    return this.points[0];
  }

  trackAt(time) {
    const point = this.pointAt(time);
    return point.from + (time - point.at) * point.speed;
  }

  // by the last point that is before it
  timeOf(x) {
    const point = this.points.filter((one) => one.from <= x).pop() || this.points[0];
    return point.at + (x - point.from) / point.speed;
  }

  get speed() {
    return this.points[this.points.length - 1].speed;
  }
}

// Hands the moments of a track from x = `from` to x = `to` to a desk.
export function schedule(desk, track, pace, system, from, to, repeats, done = new Set()) {
  const made = [];
  const speed = pace.speed;
  for (const { event, x, repeat } of track.between(from, to, repeats)) {
    const id = repeat + ':' + event.layer + ':' + event.second;
    if (event.layer !== 'voice' && !done.has(id)) {
      made.push({ id, ...desk.click(event.layer, pace.timeOf(x) + (event.later || 0)) });
    }
  }
  if (desk.voice.data) {
    // a word is fitted between its neighbours, so these are looked at beyond both ends
    const around = 3 * speed;
    const words = track.wordsKept(track.between(from - around, to + around, repeats), speed);
    words.forEach(({ event, x, repeat }, i) => {
      const id = repeat + ':voice:' + event.second;
      const word = desk.voice.word(system, event.say);
      if (x < from || x >= to || !word || done.has(id)) {
        return;
      }
      const other = (moment) => (moment ? desk.voice.word(system, moment.event.say) : null);
      const before = words[i - 1];
      const after = words[i + 1];
      const fitted = desk.voice.fitted(other(before), word, other(after), before ? (x - before.x) / speed : 0,
        after ? (after.x - x) / speed : 0);
      made.push({ id, ...desk.word(fitted.clip, pace.timeOf(x), event.gain, fitted.over) });
    });
  }
  return made;
}

export class Player {

  // changed: called when it begins or ends; next: which speed a repeat has, or null for the same
  constructor(voice, changed, next) {
    this.voice = voice;
    this.changed = changed;
    this.next = next;
    this.playing = false;
    this.made = [];
    this.later = [];
  }

  get context() {
    return this.desk ? this.desk.context : null;
  }

  // Before the first sound: browsers want a person to have asked for it.
  open(levels) {
    if (!this.desk) {
      this.desk = new Desk(new AudioContext({ latencyHint: 'interactive' }), this.voice, levels);
    }
    return this.desk.context.resume();
  }

  play(track, system, speed, repeats) {
    this.stop();
    this.track = track;
    this.later = [];
    this.system = system;
    this.repeats = repeats;
    this.pace = new Pace(this.context.currentTime + LEAD, track.start, speed);
    this.until = track.start;
    this.done = new Set();
    this.playing = true;
    this.wake();
    this.timer = setInterval(() => this.wake(), WAKE);
    this.changed();
  }

  wake() {
    const now = this.context.currentTime;
    this.made = this.made.filter((sound) => sound.time > now - 1);
    while (this.pace.timeOf(this.until) < now + AHEAD && this.until < this.repeats * this.track.cycle) {
      // up to the next repeat, where the speed may become another
      const repeat = Math.max(0, Math.floor(this.until / this.track.cycle + 1e-9));
      const bound = (repeat + 1) * this.track.cycle;
      const ahead = this.until + (now + AHEAD - this.pace.timeOf(this.until)) * this.pace.speed;
      const to = Math.min(bound, ahead + 1e-6);
      this.made.push(...schedule(this.desk, this.trackOf(repeat), this.pace, this.system, this.until, to, this.repeats, this.done));
      this.until = to;
      if (to === bound) {
        const speed = this.next ? this.next(repeat + 1) : null;
        if (speed && speed !== this.pace.speed) {
          this.pace.set(this.pace.timeOf(bound), speed);
        }
      }
    }
    if (this.trackNow() >= this.repeats * this.track.cycle) {
      this.stop();
    }
  }

  // The track of a repeat: where steps go by themselves, it may be counted otherwise from one of them on.
  trackOf(repeat) {
    return this.later.filter((one) => one.repeat <= repeat).map((one) => one.track).pop() || this.track;
  }

  // As long as the first, and from a repeat on that has not been handed over yet.
  setTrackFrom(repeat, track) {
    this.later.push({ repeat, track });
  }

  // Takes back what has not begun to sound.
  takeBack() {
    const now = this.context.currentTime + SOON;
    this.done = new Set(this.made.filter((sound) => sound.time < now).map((sound) => sound.id));
    for (const sound of this.made) {
      if (sound.time >= now) {
        sound.source.stop();
        sound.source.disconnect();
      }
    }
    this.made = this.made.filter((sound) => sound.time < now);
    return now;
  }

  // At once, and from the very place.
  setSpeed(speed) {
    if (this.playing && speed !== this.pace.speed) {
      const now = this.takeBack();
      this.until = this.pace.trackAt(now);
      this.pace.set(now, speed);
      this.wake();
    }
  }

  // The same loop with other settings, and perhaps at another speed.
  setTrack(track, system, speed = null) {
    if (this.playing) {
      const now = this.takeBack();
      this.pace.set(now, speed || this.pace.pointAt(now).speed);
      this.track = track;
      this.later = [];
      this.system = system;
      this.until = this.pace.trackAt(now);
      this.wake();
    }
  }

  stop() {
    if (this.playing) {
      this.takeBack();
      this.made.forEach((sound) => {
        try {
          sound.source.stop();
        } catch (e) {
          // it is over already
        }
      });
      this.made = [];
      clearInterval(this.timer);
      this.playing = false;
      this.changed();
    }
  }

  // What is heard now left the audio clock a while ago.
  get latency() {
    const context = this.context;
    return context.outputLatency || context.baseLatency || 0;
  }

  heardAt() {
    return this.context.currentTime - this.latency;
  }

  trackNow() {
    return this.pace.trackAt(this.heardAt());
  }

  // The count that is heard, or null.
  count() {
    if (!this.playing) {
      return null;
    }
    const now = this.trackNow();
    return this.trackAt(now).countAt(now, this.repeats);
  }

  // Seconds until another count is heard than at this place of the track; negative where that is so already.
  untilChange(place) {
    return this.pace.timeOf(this.trackAt(place).changeAfter(place)) - this.heardAt();
  }

  trackAt(now) {
    return this.trackOf(Math.max(0, Math.floor(now / this.track.cycle + 1e-12)));
  }

  speedHeard() {
    return this.pace.pointAt(this.heardAt()).speed;
  }
}
