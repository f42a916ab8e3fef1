/**
 * Sheets of the waterjet: rectangles of the blanks in rows, a web between any two and a margin all round. No gauge, no
 * hold-down, any depth of rows in rows: each blank grows by the web and each sheet's usable area too, and the same search
 * lays them out. Common cuts are a web of 0, where the shop says so.
 */
import { itemAt } from "../../units/certain.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { checkInput } from "./check-input.ts";
import { isPiece, type PartsNode } from "./cut-tree.ts";
import { fromGrid } from "./grid.ts";
import { searchPlan } from "./search-plan.ts";
import { sizeOf } from "./shear-check.ts";
import type { Blank, LeftOut, PlanOptions, Stock } from "./types.ts";

export interface JetLimits {
  readonly web: Millimeters;
  readonly margin: Millimeters;
}

/** Where a blank lies; x along the sheet's w, from its lower left corner. */
export interface Placed {
  readonly blank: string;
  readonly x: Millimeters;
  readonly y: Millimeters;
  readonly w: Millimeters;
  readonly h: Millimeters;
  /** Its first size lies along the sheet's h. */
  readonly turned: boolean;
}

export interface JetSheet {
  readonly stock: string;
  readonly w: Millimeters;
  readonly h: Millimeters;
  readonly repeats: number;
  readonly placed: readonly Placed[];
}

export interface JetPlan {
  readonly sheets: readonly JetSheet[];
  readonly leftOut: readonly LeftOut[];
  /** What the plan counts (area or money) and the least any plan in whole sheets can count. */
  readonly value: number;
  readonly bound: number;
}

const NO_SHEAR = {
  longestCut: mm(Infinity),
  reach: mm(Infinity),
  nearestGauge: mm(0),
  leastDrop: mm(0),
  leastHold: mm(0),
  leastRemnant: mm(0),
  remnantWorth: 0,
  // Rows in rows as deep as they fit: a jet needs no straight cut.
  stages: 10,
};

export function planJetSheets(
  blanks: readonly Blank[],
  stock: readonly Stock[],
  { web, margin }: JetLimits,
  options: PlanOptions = {},
): JetPlan {
  for (const [name, value] of [
    ["web", web],
    ["margin", margin],
  ] as const) {
    if (!(value >= 0 && value < Infinity)) throw new Refusal("#VALUE!", `${name} must be 0 or more; got ${value}`);
  }
  checkInput(blanks, stock, NO_SHEAR);
  const grown = blanks.map((blank) => ({ ...blank, w: mm(blank.w + web), h: mm(blank.h + web) }));
  const room = (side: Millimeters) => mm(Math.max(web, side - 2 * margin + web));
  const inside = stock.map((sheet) => ({ ...sheet, w: room(sheet.w), h: room(sheet.h), trim: mm(0) }));
  const { uses, leftOut, problem, countOf, bound, asked } = searchPlan(grown, inside, NO_SHEAR, options, stock);
  const sheets = uses.map(({ pattern, repeats }): JetSheet => {
    const { id, w, h } = itemAt(stock, pattern.sheet);
    const placed: Placed[] = [];
    const lay = (node: PartsNode, x: number, y: number): void => {
      let at = node.direction === 0 ? x : y;
      for (const part of node.parts) {
        const [left, low] = node.direction === 0 ? [at, y] : [x, at];
        if (isPiece(part)) {
          const {
            id: blank,
            w: first,
            h: second,
          } = blanks.find((line) => line.id === itemAt(asked, part.item).id) as Blank;
          const [across, up] = part.turned ? [second, first] : [first, second];
          placed.push({
            blank,
            x: mm(margin + fromGrid(left)),
            y: mm(margin + fromGrid(low)),
            w: across,
            h: up,
            turned: part.turned,
          });
        } else lay(part, left, low);
        at += sizeOf(problem, part)[node.direction];
      }
    };
    lay(pattern.root, 0, 0);
    return { stock: id, w, h, repeats, placed };
  });
  return { sheets, leftOut, value: countOf(uses), bound };
}
