/** Xorshift (Marsaglia, J. Stat. Software 8(14), 2003; memory, unverified): a seeded stream, the same on every machine. */
export class Random {
  private state: number;

  constructor(seed: number) {
    this.state = (Math.imul(seed | 0, 0x9e3779b1) ^ 0x85ebca6b) | 0 || 1;
    for (let i = 0; i < 8; i++) this.bits();
  }

  private bits(): number {
    let x = this.state;
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    this.state = x;
    return x >>> 0;
  }

  /** Whole number from 0 up to, not including, `count`. */
  below(count: number): number {
    return Math.floor((this.bits() / 4294967296) * count);
  }

  /** From 0 up to, not including, 1. */
  unit(): number {
    return this.bits() / 4294967296;
  }
}
