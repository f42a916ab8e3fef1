/** Answers a bill line by line: a line that cannot be answered says why in its own row and leaves the others right. */
import { Refusal } from "../../units/refusal.ts";
import type { SpillRow } from "../record/spill-columns.ts";
import { type BillLine, type BillRow, isLine } from "../tables/bill.ts";

/** What one line has come to: its answer, or the sentence in its place. */
export type Outcome<T> =
  | { readonly line: BillLine; readonly answer: T }
  | { readonly part: string; readonly row: number; readonly message: string };

export function outcomes<T>(bill: readonly BillRow[], answer: (line: BillLine) => T): Outcome<T>[] {
  return bill.map((row) => {
    if (!isLine(row)) return { part: row.part, row: row.row, message: row.refusal.message };
    const found = orRefusal(() => answer(row));
    return found instanceof Refusal
      ? { part: row.part, row: row.row, message: found.message }
      : { line: row, answer: found };
  });
}

export function orRefusal<T>(action: () => T): T | Refusal {
  try {
    return action();
  } catch (problem) {
    if (problem instanceof Refusal) return problem;
    throw problem;
  }
}

export const isAnswered = <T>(outcome: Outcome<T>): outcome is Extract<Outcome<T>, { line: BillLine }> =>
  "line" in outcome;

/** One or more rows a line; a refused line is one row with its message. */
export const rowsOf = <T>(
  found: readonly Outcome<T>[],
  write: (line: BillLine, answer: T) => SpillRow | readonly SpillRow[],
): SpillRow[] =>
  found.flatMap((outcome) =>
    isAnswered(outcome)
      ? write(outcome.line, outcome.answer)
      : { Part: outcome.part === "" ? `row ${outcome.row}` : outcome.part, Message: outcome.message },
  );
