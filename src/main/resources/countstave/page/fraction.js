// Exact fractions: a position or length in whole notes, or seconds. Numbers with a point only where it sounds or is drawn.

export class Fraction {

  constructor(numerator, denominator = 1n) {
    let n = BigInt(numerator);
    let d = BigInt(denominator);
    let a = n < 0n ? -n : n;
    let b = d;
    while (b) {
      [a, b] = [b, a % b];
    }
    this.n = a > 1n ? n / a : n;
    this.d = a > 1n ? d / a : d;
  }

  // "13/16", or "3"
  static of(text) {
    const terms = String(text).split('/');
    return new Fraction(terms[0], terms[1] || 1);
  }

  plus(other) {
    return new Fraction(this.n * other.d + other.n * this.d, this.d * other.d);
  }

  minus(other) {
    return new Fraction(this.n * other.d - other.n * this.d, this.d * other.d);
  }

  times(other) {
    return new Fraction(this.n * other.n, this.d * other.d);
  }

  over(other) {
    const sign = other.n < 0n ? -1n : 1n;
    return new Fraction(sign * this.n * other.d, sign * other.n * this.d);
  }

  compare(other) {
    const difference = this.n * other.d - other.n * this.d;
    return difference < 0n ? -1 : difference > 0n ? 1 : 0;
  }

  isBefore(other) {
    return this.compare(other) < 0;
  }

  equals(other) {
    return this.compare(other) === 0;
  }

  // the nearest number: both terms may be larger than a number holds exactly
  toNumber() {
    const whole = this.n / this.d;
    const rest = this.n - whole * this.d;
    let shrink = 0n;
    for (let d = this.d; d > 9007199254740991n; d >>= 1n) {
      shrink += 1n;
    }
    return Number(whole) + Number(rest >> shrink) / Number(this.d >> shrink);
  }

  toString() {
    return this.n + '/' + this.d;
  }
}

export const ZERO = new Fraction(0n);
