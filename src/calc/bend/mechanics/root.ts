/** Where the function was asked, and what it answered. */
type Point = readonly [at: number, value: number];

/**
 * Root of `f` between two ends where it has opposite signs: false position after Illinois (the kept end's value is
 * halved, so neither end can stay for ever), with a bisection every eighth step. Ends when the bracket or the last step
 * is within `tolerance`: for a smooth `f` that is where the root is, for a kinked one it need not be. Dowell & Jarratt
 * 1971 (memory, unverified).
 */
export function rootBetween(
  f: (x: number) => number,
  [low, fLow]: Point,
  [high, fHigh]: Point,
  tolerance: number,
): number {
  let x = low;
  let kept = 0;
  for (let turn = 0; turn < 100 && Math.abs(high - low) > tolerance; turn++) {
    const width = high - low;
    const falsePosition = low - (fLow * width) / (fHigh - fLow);
    const next = turn % 8 === 7 ? low + width / 2 : falsePosition;
    const fNext = f(next);
    const settled = Math.abs(next - x) < tolerance;
    x = next;
    if (fNext === 0 || settled) return x;
    if (fNext > 0 === fHigh > 0) {
      [high, fHigh] = [next, fNext];
      if (kept < 0) fLow /= 2;
      kept = -1;
    } else {
      [low, fLow] = [next, fNext];
      if (kept > 0) fHigh /= 2;
      kept = 1;
    }
  }
  return x;
}
