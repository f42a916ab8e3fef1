import type { CellError } from "../../units/cell.ts";
import { finite } from "../evaluate/coerce.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { DIV0, NUM } from "../evaluate/value.ts";
import { alias, define } from "./define.ts";
import { roundTo } from "./round-to.ts";

/** x / step with the noise of the division taken off: CEILING(4.2, 0.1) must not see 42.00000000000001. */
const steps = (x: number, step: number): number => {
  const ratio = x / step;
  const nearest = Math.round(ratio);
  return Math.abs(ratio - nearest) < Math.abs(ratio) * 1e-15 * 4 ? nearest : ratio;
};

const tidy = (x: number): number => (x === 0 ? 0 : Number(x.toPrecision(15)));

/** CEILING and FLOOR: a positive number with a negative step has no answer. */
function toStep(x: number, step: number, up: boolean): number | CellError {
  if (step === 0) return x === 0 || up ? 0 : DIV0;
  if (x > 0 && step < 0) return NUM;
  const count = steps(x, step);
  return tidy((up ? Math.ceil(count) : Math.floor(count)) * step);
}

/** CEILING.MATH and FLOOR.MATH: the step's sign does not count, `away` turns the direction for negative numbers. */
function toStepMath(x: number, step: number, away: boolean, up: boolean): number {
  const size = Math.abs(step);
  if (size === 0) return 0;
  const count = steps(x, size);
  const upward = x < 0 && away ? !up : up;
  return tidy((upward ? Math.ceil(count) : Math.floor(count)) * size);
}

function nearestMultiple(x: number, multiple: number): number | CellError {
  if (x === 0 || multiple === 0) return 0;
  if (x < 0 !== multiple < 0) return NUM;
  return tidy(Math.sign(x) * Math.floor(steps(Math.abs(x), Math.abs(multiple)) + 0.5) * Math.abs(multiple));
}

/** Away from zero to the next even (0) or odd (1) whole number. */
function toParity(x: number, parity: 0 | 1): number {
  const size = Math.ceil(Math.abs(x));
  const whole = size % 2 === parity ? size : size + 1;
  return x < 0 ? -whole : whole || (parity === 1 ? 1 : 0);
}

const ceilingPrecise = define("CEILING.PRECISE", "number [number?]", (x, step) =>
  toStepMath(x, step ?? 1, false, true),
);

export const rounding: readonly WorksheetFunction[] = [
  define("INT", "number", (x) => Math.floor(x)),
  define("ROUND", "number number", (x, digits) => roundTo(x, digits, Math.round)),
  define("ROUNDUP", "number number", (x, digits) => roundTo(x, digits, Math.ceil)),
  define("ROUNDDOWN", "number number", (x, digits) => roundTo(x, digits, Math.floor)),
  define("TRUNC", "number [number]", (x, digits = 0) => roundTo(x, digits, Math.floor)),
  define("EVEN", "number", (x) => toParity(x, 0)),
  define("ODD", "number", (x) => toParity(x, 1)),
  define("MROUND", "number number", nearestMultiple),
  define("CEILING", "number number", (x, step) => toStep(x, step, true)),
  define("FLOOR", "number number", (x, step) => toStep(x, step, false)),
  define("CEILING.MATH", "number [number?] [number]", (x, step, mode = 0) =>
    toStepMath(x, step ?? 1, mode !== 0, true),
  ),
  define("FLOOR.MATH", "number [number?] [number]", (x, step, mode = 0) => toStepMath(x, step ?? 1, mode !== 0, false)),
  ceilingPrecise,
  alias("ISO.CEILING", ceilingPrecise),
  define("FLOOR.PRECISE", "number [number?]", (x, step) => toStepMath(x, step ?? 1, false, false)),
  define("QUOTIENT", "number number", (x, y) => (y === 0 ? DIV0 : Math.trunc(x / y))),
  define("MOD", "number number", (x, y) => {
    if (y === 0) return DIV0;
    // Excel gives up where the quotient has more digits than a double (documented as #NUM!, limit from memory).
    if (Math.abs(x / y) > 1.125e15) return NUM;
    return finite(x - y * Math.floor(x / y), NUM);
  }),
];
