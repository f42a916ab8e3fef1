/** Rows of machines and tools that nobody has confirmed from the plate: what is worked out by them holds until it is read there. */
import type { LineAnswer } from "./line-answer.ts";

type PlateRow = { readonly name: string; readonly plate: string };

/** Their names, each once and in order. */
export const openPlates = (rows: readonly (PlateRow | undefined)[]): string[] =>
  [...new Set(rows.flatMap((row) => (row && row.plate === "" ? [row.name] : [])))].sort();

/** What a line is bent and cut with. */
export const rowsOfLine = ({ plan, cutter }: Pick<LineAnswer, "plan" | "cutter">): (PlateRow | undefined)[] => [
  plan?.tools?.brake,
  plan?.tools?.die,
  plan?.tools?.punch,
  cutter && plan?.cutting[cutter],
];
