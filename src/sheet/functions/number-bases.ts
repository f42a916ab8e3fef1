import { CellError, type CellValue } from "../../units/cell.ts";
import { toNumber, toText } from "../evaluate/coerce.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { NUM, VALUE } from "../evaluate/value.ts";
import { define } from "./define.ts";

interface Base {
  readonly radix: number;
  /** Ten digits at most; the numbers are two's complement over them. */
  readonly span: number;
}

const BASES: Readonly<Record<string, Base>> = {
  BIN: { radix: 2, span: 2 ** 10 },
  OCT: { radix: 8, span: 8 ** 10 },
  HEX: { radix: 16, span: 16 ** 10 },
};

function fromDigits(value: CellValue, base: Base): number | CellError {
  if (typeof value === "boolean") return VALUE;
  const text = toText(value);
  if (text instanceof CellError) return text;
  const digits = text.trim();
  if (digits === "") return 0;
  if (digits.length > 10 || ![...digits].every((d) => Number.parseInt(d, 36) < base.radix)) return NUM;
  const number = Number.parseInt(digits, base.radix);
  return number >= base.span / 2 ? number - base.span : number;
}

function toDigits(number: number, base: Base, places: number | undefined): string | CellError {
  const whole = Math.trunc(number);
  if (whole < -base.span / 2 || whole >= base.span / 2) return NUM;
  if (whole < 0) return (whole + base.span).toString(base.radix).toUpperCase();
  const digits = whole.toString(base.radix).toUpperCase();
  if (places === undefined) return digits;
  const width = Math.trunc(places);
  return width < digits.length || width > 10 ? NUM : digits.padStart(width, "0");
}

const conversions: WorksheetFunction[] = [];
for (const [from, base] of Object.entries(BASES)) {
  conversions.push(
    define(`${from}2DEC`, "value", (value) => fromDigits(value, base)),
    define(`DEC2${from}`, "value [number?]", (value, places) => {
      const number = typeof value === "boolean" ? VALUE : toNumber(value);
      return number instanceof CellError ? number : toDigits(number, base, places);
    }),
  );
  for (const [to, target] of Object.entries(BASES)) {
    if (to === from) continue;
    conversions.push(
      define(`${from}2${to}`, "value [number?]", (value, places) => {
        const number = fromDigits(value, base);
        return number instanceof CellError ? number : toDigits(number, target, places);
      }),
    );
  }
}

/** Bit functions work on whole numbers below 2^48. */
const bits = (name: string, combine: (a: bigint, b: bigint) => bigint): WorksheetFunction =>
  define(name, "number number", (a, b) =>
    [a, b].some((n) => n < 0 || n >= 2 ** 48 || !Number.isInteger(n)) ? NUM : Number(combine(BigInt(a), BigInt(b))),
  );

function shift(x: number, by: number): number | CellError {
  if (x < 0 || x >= 2 ** 48 || !Number.isInteger(x) || Math.abs(by) > 53) return NUM;
  const result = Math.floor(x * 2 ** Math.trunc(by));
  return result >= 2 ** 48 ? NUM : result;
}

export const numberBases: readonly WorksheetFunction[] = [
  ...conversions,
  bits("BITAND", (a, b) => a & b),
  bits("BITOR", (a, b) => a | b),
  bits("BITXOR", (a, b) => a ^ b),
  define("BITLSHIFT", "number number", (x, by) => shift(x, by)),
  define("BITRSHIFT", "number number", (x, by) => shift(x, -by)),
];
