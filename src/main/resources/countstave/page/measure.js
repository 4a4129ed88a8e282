// For measuring.
import { Voice } from './sounds.js';
import { Desk, Pace, schedule } from './player.js';
import { LEVELS } from './settings.js';

// The same track and the same scheduling, into memory instead of the loudspeaker

// layers: which click; speeds: for each repeat
export async function render(page, data, { seconds, rate, layer, speeds, impulse }) {
  const context = new OfflineAudioContext(1, Math.ceil(seconds * rate), rate);
  const levels = Object.fromEntries(LEVELS.map((level) => [level, level === 'all' || level === layer ? 1 : 0]));
  const desk = new Desk(context, new Voice(layer === 'voice' ? data.voice : null), levels);
  if (impulse) {
    desk.setClick(layer, new Float32Array([1]));
  }
  const track = page.track();
  const start = track.before.length ? track.before[0].second : track.begin;
  const pace = new Pace(0, start, speeds[0]);
  schedule(desk, track, pace, page.set.system, start, track.cycle, speeds.length);
  for (let repeat = 1; repeat < speeds.length; repeat++) {
    pace.set(pace.timeOf(repeat * track.cycle), speeds[repeat]);
    schedule(desk, track, pace, page.set.system, repeat * track.cycle, (repeat + 1) * track.cycle, speeds.length);
  }
  return (await context.startRendering()).getChannelData(0);
}
