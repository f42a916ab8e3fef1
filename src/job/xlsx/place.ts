/** Spreads a sheet's model over its cells: where every value, formula and spilled value stands. */

import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { topLeft, widthOf } from "../../units/certain.ts";
import type { SheetCell, SheetModel } from "./model.ts";
import type { StyleName } from "./styles.ts";
import { areaName } from "./xml.ts";

export interface PlacedCell {
  readonly style: StyleName;
  readonly value: CellValue;
  readonly formula?: { readonly text: string; readonly ref?: string };
}

/** What a formula answers, by its cell; undefined before anything is calculated. */
export type Answers = (cell: SheetCell) => CellMatrix | undefined;

/** Rows in order, and in each its cells in order. */
export type Placed = Map<number, Map<number, PlacedCell>>;

export function placeCells(sheet: SheetModel, answers: Answers): Placed {
  const placed: Placed = new Map();
  const put = (row: number, column: number, cell: PlacedCell) => {
    const cells = placed.get(row) ?? new Map<number, PlacedCell>();
    if (cells.has(column)) throw new Error(`${sheet.name}!${areaName(row, column, row, column)} is written twice`);
    placed.set(row, cells.set(column, cell));
  };
  for (const cell of sheet.cells) {
    const { row, column, formula, style = "plain", value = null, spills, heads = [] } = cell;
    if (formula === undefined) {
      put(row, column, { style, value });
      continue;
    }
    const answer = answers(cell) ?? [[null]];
    if (!spills) {
      put(row, column, { style, value: topLeft(answer), formula: { text: formula } });
      continue;
    }
    const ref = areaName(row, column, row + answer.length - 1, column + widthOf(answer) - 1);
    answer.forEach((values, down) => {
      values.forEach((found, across) => {
        const look = spills[across] ?? style;
        const isAnchor = down === 0 && across === 0;
        put(row + down, column + across, {
          style: down === 0 ? (heads[across] ?? look) : look,
          value: found,
          ...(isAnchor ? { formula: { text: formula, ref } } : {}),
        });
      });
    });
  }
  return sorted(placed);
}

const sorted = (placed: Placed): Placed =>
  new Map(
    [...placed]
      .sort(([a], [b]) => a - b)
      .map(([row, cells]) => [row, new Map([...cells].sort(([a], [b]) => a - b))] as const),
  );
