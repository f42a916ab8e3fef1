/** A SHOP call as text: its name, its arguments, and whether its separators are those of this Excel. */

import { NAMESPACE } from "../../../cells/catalogue.ts";
import { itemAt } from "../../../units/certain.ts";

const CALL = new RegExp(`(?:\\[\\d+\\]!)?(?:_xldudf_${NAMESPACE}_|\\b${NAMESPACE}\\.)([A-Z0-9_.]+)\\s*\\(`, "i");
/** What is not touched when separators are exchanged: text and constant arrays. */
const WHOLE = /("(?:[^"]|"")*"|\{[^}]*\})/;

export interface TypedCall {
  /** With dots or underscores, as it was written. */
  readonly name: string;
  readonly arguments: readonly string[];
}

/** The first SHOP call of a formula, its arguments parted by commas as Excel's own form of a formula has them. */
export function typedCall(formula: string): TypedCall | undefined {
  const found = CALL.exec(formula);
  if (!found) return undefined;
  const given: string[] = [""];
  let depth = 0;
  for (const piece of formula.slice(found.index + found[0].length).split(WHOLE))
    for (const sign of WHOLE.test(piece) ? [piece] : piece) {
      if (sign === ")" && depth-- === 0) return { name: itemAt(found, 1), arguments: given.map((one) => one.trim()) };
      if (sign === "(") depth++;
      if (sign === "," && depth === 0) given.push("");
      else given[given.length - 1] += sign;
    }
  return undefined; // no closing bracket
}

/** A typed formula with the separators of another country put right, or undefined where they are this Excel's. */
export function withSeparators(typed: string, decimal: string): string | undefined {
  const pieces = typed.split(WHOLE);
  const outside = pieces.filter((piece) => !WHOLE.test(piece)).join("");
  const exchanged = (change: (piece: string) => string) =>
    pieces.map((piece) => (WHOLE.test(piece) ? piece : change(piece))).join("");
  if (decimal === "." && outside.includes(";"))
    return exchanged((piece) => piece.replace(/(\d),(\d)/g, "$1.$2").replaceAll(";", ","));
  if (decimal === "," && outside.includes(",") && !outside.includes(";"))
    return exchanged((piece) => piece.replaceAll(",", ";").replace(/(\d)\.(\d)/g, "$1,$2"));
  return undefined;
}

/** "0,16" typed where the comma parts arguments is 0 and 16: the first such pair, as it was meant. */
export function splitDecimal({ arguments: given }: TypedCall): string | undefined {
  const at = given.findIndex((one, i) => one === "0" && /^\d+$/.test(given[i + 1] ?? ""));
  return at < 0 ? undefined : `0.${given[at + 1]}`;
}
