/** A spill about a bill as a block of a sheet: its columns get look and width from what they hold. */

import { headers, SPILLS, type SpillKind, type SpillName } from "../../cells/record/spill-columns.ts";
import { itemAt } from "../../units/certain.ts";
import type { SheetCell } from "../xlsx/model.ts";
import { isRightAligned, type StyleName } from "../xlsx/styles.ts";

const LOOKS: Readonly<Record<SpillKind, readonly [style: StyleName, width: number]>> = {
  text: ["wrapped", 12],
  list: ["wrapped", 16],
  count: ["count", 9],
  share: ["percent", 8],
  number: ["offer", 12],
  money: ["money", 11],
  date: ["moment", 17],
  h: ["inchShort", 9],
  min: ["tenth", 9],
  length: ["inch", 10],
  mass: ["tenth", 10],
  force: ["tenth", 9],
  angle: ["tenth", 8],
  lineLoad: ["tenth", 10],
  stress: ["tenth", 10],
  feed: ["tenth", 10],
  massFlow: ["inch", 10],
  density: ["figure", 10],
};

/** Widths by header for columns that need another than their kind has. */
export type Widths = Readonly<Record<string, number>>;

const kinds = (name: SpillName): readonly SpillKind[] => SPILLS[name].map(({ kind }) => kind);

export const spillBlock = (row: number, column: number, name: SpillName, formula: string): SheetCell => ({
  row,
  column,
  formula,
  heads: kinds(name).map((kind) => (isRightAligned(LOOKS[kind][0]) ? "headerRight" : "header")),
  spills: kinds(name).map((kind, i) => (i === 0 && kind === "text" ? "label" : LOOKS[kind][0])),
});

export function spillWidths(name: SpillName, own: Widths = {}): number[] {
  const unknown = Object.keys(own).filter((header) => !headers(name).includes(header));
  if (unknown.length > 0) throw new Error(`width must be for a column of ${name}; got ${unknown.join(", ")}`);
  return headers(name).map((header, i) => own[header] ?? LOOKS[itemAt(kinds(name), i)][1]);
}

/** Where a column of a spill stands that begins in `first`. */
export function spillColumn(name: SpillName, header: string, first = 1): number {
  const at = headers(name).indexOf(header);
  if (at < 0) throw new Error(`column must be one of ${name}; got ${header}`);
  return first + at;
}
