/** One line of the engineer's list, and numbers by chance that are the same on every computer. */
import type { CellValue } from "../../../units/cell.ts";
import { itemAt } from "../../../units/certain.ts";

export interface ListLine {
  material: string;
  thickness: number | string;
  quantity: number;
  width: number;
  flanges: string;
  bendAngles: string;
  die: string;
  punch: string;
  grain: CellValue;
  holeDistance: CellValue;
  radius: CellValue;
  radiusTolerance: CellValue;
  tolerance: CellValue;
}

export interface Chance {
  /** From `from` to `to` in steps, both among them. */
  readonly step: (from: number, to: number, by: number) => number;
  readonly one: <T>(among: readonly T[]) => T;
}

/** Marsaglia's xorshift, 32 bits (Journal of Statistical Software 8(14), 2003; shifts 13, 17, 5, memory). */
export function chance(seed: number): Chance {
  let state = seed | 0;
  const below = (count: number): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % count;
  };
  return {
    step: (from, to, by) => from + by * below(Math.round((to - from) / by) + 1),
    one: (among) => itemAt(among, below(among.length)),
  };
}
