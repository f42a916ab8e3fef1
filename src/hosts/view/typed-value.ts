/** What a person types into a cell becomes a value; fractions, gauges and lists stay text, which the functions read. */

import type { CellValue } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { Refusal, wrong } from "../../units/refusal.ts";

const NUMBER = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?$/i;
const LONGEST = 32_767; // what a cell of a workbook holds

/** `isText`: the cell's format keeps what is typed as text. Throws Refusal on a formula and on text too long. */
export function typedValue(typed: string, isText: boolean): CellValue {
  const text = typed.trim();
  if (text === "") return null;
  if (typed.length > LONGEST) throw wrong("cell", `text of at most ${LONGEST} characters`, typed.slice(0, 40));
  if (text.startsWith("=")) throw wrong("cell", "a number or text", text, "edit formulas in Excel");
  if (isText) return text;
  if (text.startsWith("'")) return text.slice(1);
  if (/^(?:true|false)$/i.test(text)) return text.toLowerCase() === "true";
  const percent = /^(.*\S)\s*%$/.exec(text);
  if (percent && NUMBER.test(itemAt(percent, 1))) return finite(Number(percent[1]) / 100, text);
  return NUMBER.test(text) ? finite(Number(text), text) : text;
}

/** What would have to be typed for this value: the inverse, for taking an edit back. Without a value for an error. */
export function asTyped(value: CellValue | undefined, isText: boolean): string | undefined {
  if (value === null || value === undefined) return "";
  if (typeof value !== "string") return typeof value === "object" ? undefined : String(value);
  return isText || typedValueOrNone(value) === value ? value : `'${value}`;
}

const typedValueOrNone = (text: string): CellValue | undefined => {
  try {
    return typedValue(text, false);
  } catch (problem) {
    if (problem instanceof Refusal) return undefined;
    throw problem;
  }
};

function finite(value: number, text: string): number {
  if (Number.isFinite(value)) return value;
  throw wrong("cell", "a number that a cell can hold", text);
}
