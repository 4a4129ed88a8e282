// The sounds: four clicks, and the words of the voice.

// frequency in hertz, and share of the whole level: as in the guide tracks
export const CLICKS = { bar: [1760, 0.30], beat: [1175, 0.25], grid: [784, 0.15], rhythm: [440, 0.30] };
const CLICK_SECONDS = 0.030;
const DECAY = 0.007;

const STEPS = [7, 8, 9, 10, 11, 12, 13, 14, 16, 17, 19, 21, 23, 25, 28, 31, 34, 37, 41, 45, 50, 55, 60, 66, 73, 80, 88, 97, 107, 118,
  130, 143, 157, 173, 190, 209, 230, 253, 279, 307, 337, 371, 408, 449, 494, 544, 598, 658, 724, 796, 876, 963, 1060, 1166, 1282, 1411,
  1552, 1707, 1878, 2066, 2272, 2499, 2749, 3024, 3327, 3660, 4026, 4428, 4871, 5358, 5894, 6484, 7132, 7845, 8630, 9493, 10442, 11487,
  12635, 13899, 15289, 16818, 18500, 20350, 22385, 24623, 27086, 29794, 32767];
const STEP_BY_CODE = [-1, -1, -1, -1, 2, 4, 6, 8];

// A short sine that begins at once: its first sample is not zero.
export function clickSamples(layer, rate) {
  const hertz = CLICKS[layer][0];
  const samples = new Float32Array(Math.floor(CLICK_SECONDS * rate));
  for (let i = 0; i < samples.length; i++) {
    const t = (i + 1) / rate;
    samples[i] = Math.sin(2 * Math.PI * hertz * t) * Math.exp(-t / DECAY) * (1 - i / samples.length);
  }
  return samples;
}

// The light coding of the bank (IMA ADPCM): four bits a sample, the lower half of a byte first.
export function decode(clip) {
  const code = atob(clip.code);
  const samples = new Float32Array(clip.samples);
  let value = 0;
  let index = clip.beginning;
  for (let i = 0; i < samples.length; i++) {
    const both = code.charCodeAt(i >> 1);
    const four = i % 2 ? both >> 4 : both & 15;
    const step = STEPS[index];
    const change = (step >> 3) + (four & 4 ? step : 0) + (four & 2 ? step >> 1 : 0) + (four & 1 ? step >> 2 : 0);
    value = Math.max(-32768, Math.min(32767, four & 8 ? value - change : value + change));
    index = Math.max(0, Math.min(STEPS.length - 1, index + STEP_BY_CODE[four & 7]));
    samples[i] = value / 32768;
  }
  return samples;
}

// Shortens a sound at its own pitch: waveform similarity overlap-add (Verhelst and Roelands 1993), as the guide tracks do.
export function shortened(sound, share, rate) {
  const hop = Math.floor(rate * 0.012);
  const length = Math.round(sound.length * share);
  if (length >= sound.length || sound.length <= 2 * hop) {
    return sound;
  }
  const sample = (at) => (at < sound.length ? sound[at] : 0);
  const search = (next, from, to, stride) => {
    let best = from;
    let most = -Infinity;
    for (let place = from; place <= to; place += stride) {
      let alike = 0;
      let power = 1e-9;
      for (let i = 0; i < hop; i++) {
        const here = sample(place + i);
        alike += here * sample(next + i);
        power += here * here;
      }
      if (alike / Math.sqrt(power) > most) {
        most = alike / Math.sqrt(power);
        best = place;
      }
    }
    return best;
  };
  const reach = Math.floor(rate * 0.008);
  const out = new Float32Array(length);
  out.set(sound.subarray(0, Math.min(hop, length)));
  let taken = 0;
  for (let at = hop; at < length; at += hop) {
    const next = taken + hop;
    const wanted = Math.round((at - hop) / share) + hop;
    let best = next;
    if (Math.min(sound.length, wanted) > next) {
      const from = Math.max(next, wanted - reach);
      const to = Math.max(from, Math.min(sound.length - hop, wanted + reach));
      const near = search(next, from, to, 4);
      best = search(next, Math.max(from, near - 4), Math.min(to, near + 4), 1);
    }
    for (let i = 0; i < hop && at + i < length; i++) {
      const part = (i + 0.5) / hop;
      out[at + i] = (1 - part) * sample(next + i) + part * sample(best + i);
    }
    taken = best;
  }
  return out;
}

// Silence between two words, in seconds, and the least share that a word is shortened to: as in the guide tracks.
const APART = 0.008;
const LEAST_SHARE = 0.4;
const SHARES = 32;

export class Voice {

  constructor(data) {
    this.data = data;
    this.words = new Map();
  }

  // A word of a system; null where nobody speaks.
  word(system, say) {
    const number = this.data ? this.data.said[system][say] : undefined;
    return number === undefined ? null : this.clip(number, 1);
  }

  clip(number, share) {
    const key = number + ':' + share;
    let clip = this.words.get(key);
    if (!clip) {
      const coded = this.data.clips[number];
      const rate = this.data.rate;
      const whole = share === 1 ? decode(coded) : this.clip(number, 1).samples;
      const samples = share === 1 ? whole : shortened(whole, share, rate);
      const centre = coded.centre * samples.length / coded.samples / rate;
      clip = { number, samples, rate, centre, before: Math.max(0, centre), after: samples.length / rate - Math.max(0, centre), buffers: new Map() };
      this.words.set(key, clip);
    }
    return clip;
  }

  // To which share two words have to be shortened whose centres lie so many seconds apart.
  static share(before, after, between) {
    if (!before || !after) {
      return 1;
    }
    const share = (between - APART) / (before.after + after.before);
    return share >= 1 ? 1 : Math.max(LEAST_SHARE, Math.floor(share * SHARES) / SHARES);
  }

  // A word between its neighbours: the clip, and after how many seconds from its centre it has to be over.
  fitted(before, word, after, sinceBefore, untilAfter) {
    const share = Math.min(Voice.share(before, word, sinceBefore), Voice.share(word, after, untilAfter));
    return { clip: this.clip(word.number, share), over: after ? Math.max(0.015, untilAfter - APART - after.before) : Infinity };
  }
}
