import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { finite, toNumber, toText } from "./coerce.ts";
import { compareValues } from "./compare.ts";
import { lift } from "./lift.ts";
import { DIV0, isMatrix, NUM } from "./value.ts";

export type Scalar = (a: CellValue, b: CellValue) => CellValue;

function arithmetic(compute: (a: number, b: number) => number | CellError): Scalar {
  return (left, right) => {
    const a = typeof left === "number" ? left : toNumber(left);
    if (a instanceof CellError) return a;
    const b = typeof right === "number" ? right : toNumber(right);
    if (b instanceof CellError) return b;
    return compute(a, b);
  };
}

function comparison(holds: (order: number) => boolean): Scalar {
  return (a, b) => {
    if (a instanceof CellError) return a;
    if (b instanceof CellError) return b;
    return holds(compareValues(a, b));
  };
}

export function power(base: number, exponent: number): number | CellError {
  if (base === 0 && exponent === 0) return NUM;
  if (base === 0 && exponent < 0) return DIV0;
  return finite(base ** exponent, NUM);
}

/** A sum that cancels to rounding noise is zero, but only as the last operation of a formula, like in Excel. */
export const cancels = (result: number, a: number, b: number): boolean =>
  result !== 0 && Math.abs(result) < Math.max(Math.abs(a), Math.abs(b)) * 2 ** -49;

export const binaryOperators: Readonly<Record<string, Scalar>> = {
  "+": arithmetic((a, b) => finite(a + b, NUM)),
  "-": arithmetic((a, b) => finite(a - b, NUM)),
  "*": arithmetic((a, b) => finite(a * b, NUM)),
  "/": arithmetic((a, b) => (b === 0 ? DIV0 : finite(a / b, NUM))),
  "^": arithmetic(power),
  "&": (left, right) => {
    const a = toText(left);
    if (a instanceof CellError) return a;
    const b = toText(right);
    return b instanceof CellError ? b : a + b;
  },
  "=": comparison((order) => order === 0),
  "<>": comparison((order) => order !== 0),
  "<": comparison((order) => order < 0),
  ">": comparison((order) => order > 0),
  "<=": comparison((order) => order <= 0),
  ">=": comparison((order) => order >= 0),
};

export const unaryOperators: Readonly<Record<string, (value: CellValue) => CellValue>> = {
  // Unary plus changes nothing, not even the type.
  "+": (value) => value,
  "-": (value) => {
    const n = toNumber(value);
    return n instanceof CellError ? n : n === 0 ? 0 : -n;
  },
  "%": (value) => {
    const n = toNumber(value);
    return n instanceof CellError ? n : n / 100;
  },
};

export function applyBinary(
  operate: Scalar,
  a: CellValue | CellMatrix,
  b: CellValue | CellMatrix,
): CellValue | CellMatrix {
  if (!isMatrix(a) && !isMatrix(b)) return operate(a, b);
  return lift([a, b], ([x, y]) => operate(x, y));
}
