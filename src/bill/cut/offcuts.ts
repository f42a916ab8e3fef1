/** What goes back on the rack: one entry a kind of offcut, with the tag it bears and what it is worth. */

import { patternIdOf } from "../../calc/cutting/pattern-id.ts";
import type { Plan } from "../../calc/cutting/types.ts";
import { entryOf, firstOf, missing } from "../../units/certain.ts";
import { type Millimeters, type Money, money } from "../../units/quantity.ts";
import type { StockSheet } from "../nouns/stock.ts";
import type { CutGroup } from "./plan-cutting.ts";

export interface Offcut {
  /** "R3": as it is written on the metal. Alike offcuts of a pattern share one. */
  readonly tag: string;
  readonly group: CutGroup;
  /** Pattern and pieces of the cut plan. */
  readonly pattern: string;
  readonly pieces: readonly string[];
  readonly sheet: StockSheet;
  readonly length: Millimeters;
  readonly width: Millimeters;
  readonly count: number;
  /** Which of its two sides it was rolled along. */
  readonly grain: "length" | "width";
  /** What this job is credited for one of them, and the next job is charged; undefined where its sheet has no price. */
  readonly price: Money | undefined;
}

const CENTS = 100; // in a unit of money, by definition

export function offcutsOf(groups: readonly CutGroup[]): Offcut[] {
  const found = groups.flatMap((group) =>
    alike(group.plan?.remnants ?? []).map(({ pieces, w, h, count }) => {
      const pattern =
        (group.plan ?? missing()).patterns.find(({ id }) => id === patternIdOf(firstOf(pieces))) ?? missing();
      const sheet = entryOf(group.sheetOf, pattern.stock);
      const isLongWays = w >= h;
      const share = (w * h) / (sheet.length * sheet.width);
      return {
        group,
        pattern: pattern.id,
        pieces,
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

type Remnant = Plan["remnants"][number];

/** Of one pattern and size. */
function alike(remnants: readonly Remnant[]): (Omit<Remnant, "piece"> & { readonly pieces: readonly string[] })[] {
  const found = new Map<string, Omit<Remnant, "piece"> & { readonly pieces: readonly string[] }>();
  for (const { piece, w, h, count } of remnants) {
    const key = [patternIdOf(piece), w.toFixed(2), h.toFixed(2)].join(" ");
    const before = found.get(key) ?? { w, h, count: 0, pieces: [] };
    found.set(key, { ...before, count: before.count + count, pieces: [...before.pieces, piece] });
  }
  return [...found.values()];
}
