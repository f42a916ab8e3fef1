/** What goes back on the rack: one entry a kind of offcut, with the tag it bears and what it is worth. */
import { patternIdOf } from "../../calc/cutting/pattern-id.ts";
import { type Millimetres, type Money, money } from "../../units/quantity.ts";
import type { StockSheet } from "../nouns/stock.ts";
import type { CutGroup } from "./plan-cutting.ts";

export interface Offcut {
  /** "R3": as it is written on the metal. Copies of a pattern leave alike offcuts, which share one. */
  readonly tag: string;
  readonly group: CutGroup;
  /** Pattern and piece of the cut plan. */
  readonly pattern: string;
  readonly piece: string;
  readonly sheet: StockSheet;
  readonly length: Millimetres;
  readonly width: Millimetres;
  readonly count: number;
  /** Which of its two sides it was rolled along. */
  readonly grain: "length" | "width";
  /** What this job is credited for one of them and the next is charged; undefined where its sheet has no price. */
  readonly price: Money | undefined;
}

const CENTS = 100; // in a unit of money, by definition

export function offcutsOf(groups: readonly CutGroup[]): Offcut[] {
  const found = groups.flatMap((group) =>
    (group.plan?.remnants ?? []).map(({ piece, w, h, count }) => {
      const pattern = group.plan!.patterns.find(({ id }) => id === patternIdOf(piece))!;
      const sheet = group.sheetOf.get(pattern.stock)!;
      const isLongWays = w >= h;
      const share = (w * h) / (sheet.length * sheet.width);
      return {
        group,
        pattern: pattern.id,
        piece,
        sheet,
        length: isLongWays ? w : h,
        width: isLongWays ? h : w,
        count,
        // A sheet lies with its long side along the plan's w.
        grain: (sheet.grain === "long") === isLongWays ? ("length" as const) : ("width" as const),
        price:
          sheet.price === undefined
            ? undefined
            : money(Math.round(sheet.price * sheet.remnantWorth * share * CENTS) / CENTS),
      };
    }),
  );
  return found.map((offcut, i) => ({ tag: `R${i + 1}`, ...offcut }));
}
