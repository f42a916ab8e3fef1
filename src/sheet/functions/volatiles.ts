import type { CellMatrix } from "../../units/cell.ts";
import { withinLimit } from "../evaluate/array-limit.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import { NUM, VALUE, type Value } from "../evaluate/value.ts";
import { defineIn } from "./define.ts";

/** A recalculation must give the same result twice: random numbers keep their value unless the host brings dice. */
const dice = (frame: Frame, name: string): (() => number) => frame.grid.random ?? keep("volatile", `${name} is random`);

export const volatiles: readonly WorksheetFunction[] = [
  defineIn("RAND", "", (frame) => dice(frame, "RAND")()),
  defineIn("RANDBETWEEN", "number number", (frame, low, high) => {
    const roll = dice(frame, "RANDBETWEEN");
    const [from, to] = [Math.ceil(low), Math.floor(high)];
    return from > to ? NUM : from + Math.floor(roll() * (to - from + 1));
  }),
  defineIn(
    "RANDARRAY",
    "[number?] [number?] [number?] [number?] [boolean?]",
    (frame, rows = 1, columns = 1, low = 0, high = 1, whole = false): Value => {
      const roll = dice(frame, "RANDARRAY");
      const [height, width] = [Math.trunc(rows), Math.trunc(columns)];
      if (height < 1 || width < 1 || low > high) return VALUE;
      withinLimit(height, width);
      const one = (): number => (whole ? low + Math.floor(roll() * (high - low + 1)) : low + roll() * (high - low));
      return Array.from({ length: height }, () => Array.from({ length: width }, one)) as CellMatrix;
    },
  ),
];
