import { CellError, type CellValue } from "../../units/cell.ts";
import { toNumber } from "../evaluate/coerce.ts";
import { VALUE } from "../evaluate/value.ts";

const CLASSIC: readonly [number, string][] = [
  [1000, "M"],
  [900, "CM"],
  [500, "D"],
  [400, "CD"],
  [100, "C"],
  [90, "XC"],
  [50, "L"],
  [40, "XL"],
  [10, "X"],
  [9, "IX"],
  [5, "V"],
  [4, "IV"],
  [1, "I"],
];

/** Extra subtractive pairs that ROMAN's forms 1 to 4 allow (Microsoft's description of ROMAN, memory). */
const CONCISE: readonly (readonly [number, string])[][] = [
  [
    [950, "LM"],
    [450, "LD"],
    [95, "VC"],
    [45, "VL"],
  ],
  [
    [990, "XM"],
    [490, "XD"],
    [99, "IC"],
    [49, "IL"],
  ],
  [
    [995, "VM"],
    [495, "VD"],
  ],
  [
    [999, "IM"],
    [499, "ID"],
  ],
];

export function roman(x: number, form: CellValue | undefined): string | CellError {
  const level = form === true || form === undefined || form === null ? 0 : form === false ? 4 : toNumber(form);
  if (level instanceof CellError) return level;
  let rest = Math.trunc(x);
  if (rest < 0 || rest > 3999 || level < 0 || level > 4) return VALUE;
  const table = [...CLASSIC, ...CONCISE.slice(0, Math.trunc(level)).flat()].sort((a, b) => b[0] - a[0]);
  let text = "";
  for (const [value, letters] of table) {
    while (rest >= value) {
      text += letters;
      rest -= value;
    }
  }
  return text;
}

export function arabic(text: string): number | CellError {
  const trimmed = text.trim().toUpperCase();
  const negative = trimmed.startsWith("-");
  const letters = negative ? trimmed.slice(1) : trimmed;
  if (!/^[MDCLXVI]*$/.test(letters) || letters.length > 255) return VALUE;
  const worth: Record<string, number> = { M: 1000, D: 500, C: 100, L: 50, X: 10, V: 5, I: 1 };
  let sum = 0;
  for (let i = 0; i < letters.length; i++) {
    const value = worth[letters[i]!]!;
    const next = worth[letters[i + 1] ?? ""] ?? 0;
    sum += value < next ? -value : value;
  }
  return negative ? -sum : sum;
}
