/** What a bill comes to in one line: counted once, wherever it is said. */
import type { Status } from "../calc/finding.ts";
import { type Kilograms, kilograms } from "../units/quantity.ts";
import type { CutGroup } from "./cut/plan-cutting.ts";
import { isQuoted, type LineAnswer, type QuotedLine } from "./line-answer.ts";

export interface BillTotals {
  readonly lines: number;
  readonly of: Readonly<Record<Status, number>>;
  readonly quoted: number;
  /** Lines that the price is without: not quoted, or a figure of their price is missing. */
  readonly unpriced: number;
  /** Pieces and weight that are wanted of all quoted lines; extras are the shop's own. */
  readonly pieces: number;
  readonly weight: Kilograms;
  /** Sheets to pull. */
  readonly sheets: number;
}

export function totalsOf(
  lines: readonly LineAnswer[],
  groups: readonly CutGroup[],
  isPriced: (line: QuotedLine) => boolean,
): BillTotals {
  const quoted = lines.filter(isQuoted);
  const withStatus = (status: Status) => lines.filter((line) => line.status === status).length;
  return {
    lines: lines.length,
    of: { clear: withStatus("clear"), check: withStatus("check"), stop: withStatus("stop") },
    quoted: quoted.length,
    unpriced: lines.length - quoted.filter(isPriced).length,
    pieces: quoted.reduce((sum, { plan: { line } }) => sum + line.quantity, 0),
    weight: kilograms(quoted.reduce((sum, { plan: { line, blank } }) => sum + line.quantity * blank.weight, 0)),
    sheets: groups.flatMap(({ uses }) => uses).reduce((sum, { count }) => sum + count, 0),
  };
}
