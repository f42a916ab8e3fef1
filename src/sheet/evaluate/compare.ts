import { CellError, type CellValue } from "../../units/cell.ts";

// Excel orders types before values: numbers, then text, then booleans; text ignores case.
const rank = (value: CellValue): number => (typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2);

let collator: Intl.Collator | undefined;

export const sameText = (a: string, b: string): boolean => a === b || a.toLowerCase() === b.toLowerCase();

export function compareText(a: string, b: string): number {
  if (sameText(a, b)) return 0;
  collator ??= new Intl.Collator("en", { sensitivity: "accent" });
  return collator.compare(a, b) || (a < b ? -1 : 1);
}

/** Numbers are the same when their first 15 significant digits are (=0.1*3=0.3 is TRUE in Excel). */
function compareNumbers(a: number, b: number): number {
  if (a === b) return 0;
  const difference = a - b;
  if (Math.abs(difference) > Math.abs(a) * 1e-14) return difference < 0 ? -1 : 1;
  return Number(a.toPrecision(15)) === Number(b.toPrecision(15)) ? 0 : difference < 0 ? -1 : 1;
}

/** What an empty cell counts as beside another value. */
function blankBeside(other: CellValue): CellValue {
  return typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;
}

/** Negative, zero or positive like a sort callback, as the comparison operators see it. No errors here. */
export function compareValues(left: CellValue, right: CellValue): number {
  const a = left === null ? blankBeside(right) : left;
  const b = right === null ? blankBeside(left) : right;
  if (typeof a === "number" && typeof b === "number") return compareNumbers(a, b);
  if (typeof a === "string" && typeof b === "string") return compareText(a, b);
  if (typeof a === "boolean" && typeof b === "boolean") return Number(a) - Number(b);
  return rank(a) - rank(b);
}

/** Exact equality as lookups use it: same type, numbers bit by bit, text without case. */
export function sameValue(a: CellValue, b: CellValue): boolean {
  if (a === b) return true;
  if (typeof a === "string" && typeof b === "string") return sameText(a, b);
  return a instanceof CellError && b instanceof CellError && a.code === b.code;
}
