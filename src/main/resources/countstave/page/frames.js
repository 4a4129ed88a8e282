// When the page looks what is on: around the moments at which that changes, and not in between, where there is nothing to draw.

// Seconds before a change from which on each frame is looked at (the audio clock of a phone goes in steps of some hundredths), and the
// longest time without looking.
const AWAKE = 0.05;
const LONGEST = 0.25;

export class Frames {

  // draw: called for each frame that is looked at, while the player plays
  constructor(player, draw) {
    this.player = player;
    this.draw = draw;
  }

  // What is on may be another now. Only while it plays: a page that stands still costs nothing.
  soon() {
    clearTimeout(this.asleep);
    cancelAnimationFrame(this.pending);
    if (this.player.playing) {
      this.pending = requestAnimationFrame(() => {
        const seen = this.player.trackNow();
        this.draw();
        this.next(seen);
      });
    }
  }

  // seen: what was on before it was drawn; a change while that was done has to be drawn, too
  next(seen) {
    const rest = Math.min(this.player.untilChange(seen) - AWAKE, LONGEST);
    if (rest > 0) {
      this.asleep = setTimeout(() => this.soon(), rest * 1000);
    } else {
      this.soon();
    }
  }
}
