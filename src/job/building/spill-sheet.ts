/** A sheet of one or several spills side by side, each under its header. */

import { SPILLS, type SpillName } from "../../cells/record/spill-columns.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import type { Emphasis, SheetCell, SheetModel } from "../xlsx/model.ts";
import { areaName, columnName } from "../xlsx/xml.ts";
import { headed } from "./cells.ts";
import { spillBlock, spillColumn, spillWidths, type Widths } from "./spill-block.ts";

export const HEADER_ROW = 4;
/** Rows that an emphasis covers: room for a longer bill. */
const LAST_EMPHASIS = 600;
const GAP = 3;

export interface Block {
  readonly spill: SpillName;
  readonly formula: string;
  readonly widths?: Widths;
  /** The column that says "date" where the figure before it is a day. */
  readonly days?: string;
  /** Words of a column that ask for attention. */
  readonly emphasis?: {
    readonly column: string;
    readonly stop?: readonly string[];
    readonly check?: readonly string[];
  };
}

interface SpillSheet {
  readonly name: string;
  readonly note: string;
  readonly blocks: readonly Block[];
  readonly others?: readonly SheetCell[];
  /** Row of the headers where cells of the sheet's own stand above. */
  readonly headerRow?: number;
  readonly landscape?: boolean;
  /** Over how many pages its columns are printed. */
  readonly pagesWide?: number;
}

export function spillSheet({
  name,
  note,
  blocks,
  others = [],
  headerRow = HEADER_ROW,
  landscape = true,
  pagesWide,
}: SpillSheet): SheetModel {
  const starts = blocks.map(
    (_, i) => 1 + blocks.slice(0, i).reduce((sum, { spill }) => sum + SPILLS[spill].length + 1, 0),
  );
  const widths = blocks.flatMap(({ spill, widths }, i) => [...(i > 0 ? [GAP] : []), ...spillWidths(spill, widths)]);
  return {
    name,
    widths,
    cells: [
      ...headed(name, note),
      ...others,
      ...blocks.map(({ spill, formula }, i) => spillBlock(headerRow, itemAt(starts, i), spill, formula)),
    ],
    emphasis: blocks.flatMap((block, i) => [
      ...emphasisOf(block, itemAt(starts, i), headerRow + 1),
      ...daysOf(block, itemAt(starts, i), headerRow + 1),
    ]),
    merges: [areaName(2, 1, 2, Math.min(widths.length, SPILLS[firstOf(blocks).spill].length))],
    frozen: { rows: headerRow, columns: 1 },
    print: { landscape, titleRows: `${headerRow}:${headerRow}`, ...(pagesWide ? { pagesWide } : {}) },
  };
}

function emphasisOf({ spill, emphasis }: Block, start: number, first: number): Emphasis[] {
  if (!emphasis) return [];
  const column = columnName(spillColumn(spill, emphasis.column, start));
  const area = `${column}${first}:${column}${LAST_EMPHASIS}`;
  const rule = (look: "stop" | "check", words: readonly string[] = []): Emphasis[] =>
    words.length === 0
      ? []
      : [{ area, look, formula: `OR(${words.map((word) => `${column}${first}="${word}"`).join(",")})` }];
  return [...rule("stop", emphasis.stop), ...rule("check", emphasis.check)];
}

function daysOf({ spill, days }: Block, start: number, first: number): Emphasis[] {
  if (days === undefined) return [];
  const at = spillColumn(spill, days, start);
  const area = areaName(first, at - 1, LAST_EMPHASIS, at - 1);
  return [{ area, look: "moment", formula: `$${columnName(at)}${first}="date"` }];
}
