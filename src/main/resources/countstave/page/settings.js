// How the page is set, and what it may be set to.
import { CLICKS } from './sounds.js';
import { CLEAN } from './ladder.js';

export const SLOWEST = 5;
export const LEVELS = ['all', ...Object.keys(CLICKS), 'voice'];
export const FOREVER = 100000;

// What may be set; whatever was stored is held to its range.
export function settings(stored, data) {
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
