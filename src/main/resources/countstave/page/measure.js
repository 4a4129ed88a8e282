// For measuring.
import { Voice, CLICKS } from './sounds.js';
import { Desk, Pace, schedule } from './player.js';
import { LEVELS } from './settings.js';

// The same track and the same scheduling, into memory instead of the loudspeaker

// layer: which sound; without one all clicks, each a single sample of its own power of two, so that one sound tells them apart:
// bars 1, beats 2, counts 4, notes 8. speeds: for each repeat
export async function render(page, data, { seconds, rate, layer, speeds }) {
  const context = new OfflineAudioContext(1, Math.ceil(seconds * rate), rate);
  const levels = Object.fromEntries(LEVELS.map((level) => [level, level === 'all' || level === layer ? 1 : 0]));
  const desk = new Desk(context, new Voice(layer === 'voice' ? data.voice : null), levels);
  if (!layer) {
    Object.keys(CLICKS).forEach((click, i) => {
      desk.setClick(click, new Float32Array([2 ** i]));
      desk.layers[click].gain.value = 1;
    });
  }
  const track = page.track();
  const pace = new Pace(0, track.start, speeds[0]);
  schedule(desk, track, pace, page.set.system, track.start, track.cycle, speeds.length);
  for (let repeat = 1; repeat < speeds.length; repeat++) {
    pace.set(pace.timeOf(repeat * track.cycle), speeds[repeat]);
    schedule(desk, track, pace, page.set.system, repeat * track.cycle, (repeat + 1) * track.cycle, speeds.length);
  }
  return (await context.startRendering()).getChannelData(0);
}
