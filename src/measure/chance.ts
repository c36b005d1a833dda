/** Seeded chance: xorshift on 32 bits (G. Marsaglia, "Xorshift RNGs", J. Statistical Software 8, 2003). */
export class Chance {
  private state: number;

  constructor(seed: number) {
    this.state = (Math.imul(seed ^ 0x5bd1e995, 0x9e3779b1) ^ 0x2545f491) | 1;
    for (let i = 0; i < 8; i++) this.next();
  }

  /** A whole number in [0, 2^31). */
  next(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return x & 0x7fffffff;
  }

  /** A whole number in [0, n). */
  below(n: number): number {
    return Math.floor((this.next() / 0x80000000) * n);
  }

  /** A number in [0, 1). */
  share(): number {
    return this.next() / 0x80000000;
  }
}
