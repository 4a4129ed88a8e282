// A tempo by tapping.

// Milliseconds after which a tap is forgotten, and after which the next one begins anew.
const KEPT = 8000;
const BROKEN_OFF = 2500;

export class Taps {

  constructor() {
    this.times = [];
  }

  // Beats a minute by the taps up to this one, a whole number; null while there are too few.
  add(now) {
    this.times = this.times.filter((tap) => now - tap < KEPT);
    if (this.times.length && now - this.times[this.times.length - 1] > BROKEN_OFF) {
      this.times = [];
    }
    this.times.push(now);
    const beats = this.times.length - 1;
    return beats > 1 ? Math.round(60000 * beats / (now - this.times[0])) : null;
  }
}
