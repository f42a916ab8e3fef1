import type { CellError } from "../../units/cell.ts";
import { NUM } from "../evaluate/value.ts";

/**
 * x where a growing function reaches p, between two bounds: bisection widened by secant steps (the Illinois variant of
 * regula falsi), until the interval no longer shrinks.
 */
export function invert(grow: (x: number) => number, p: number, low: number, high: number): number | CellError {
  let [a, b] = [low, high];
  let [fa, fb] = [grow(a) - p, grow(b) - p];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa < 0 && fb > 0)) return NUM;
  let side = 0;
  for (let i = 0; i < 500; i++) {
    let x = i % 3 === 2 ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
    if (!(x > Math.min(a, b) && x < Math.max(a, b))) x = (a + b) / 2;
    if (x === a || x === b) break;
    const fx = grow(x) - p;
    if (fx === 0) return x;
    if (fx < 0) {
      a = x;
      fa = fx;
      if (side === -1) fb /= 2;
      side = -1;
    } else {
      b = x;
      fb = fx;
      if (side === 1) fa /= 2;
      side = 1;
    }
    if (Math.abs(b - a) <= Math.abs(a) * 2 ** -52) break;
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

/** Like invert, for a range without upper end: the upper bound doubles until it lies above. */
export function invertAbove(grow: (x: number) => number, p: number, low: number, start: number): number | CellError {
  let high = start;
  for (let i = 0; i < 1000 && grow(high) < p; i++) high *= 2;
  return invert(grow, p, low, high);
}
