/** A name for a plan: a fingerprint of everything it is made from. */
import { fingerprint } from "../units/fingerprint.ts";
import { type BillRow, isLine, type UnreadLine } from "./nouns/line.ts";
import type { Shop } from "./nouns/shop.ts";

/** The same inputs have the same one, on every machine and in whatever order lines and tables stand. */
export function planNumber(shop: Shop, rows: readonly BillRow[]): string {
  const sorted = (list: readonly unknown[]) => list.map((item) => JSON.stringify(item)).sort();
  const bare = rows.map((row) => (isLine(row) ? { ...row, row: 0 } : [row.part, saysWithoutPlace(row)]));
  const inputs = JSON.stringify([
    sorted(bare),
    ...[
      shop.brakes,
      shop.dies,
      shop.punches,
      shop.shears,
      shop.waterjets,
      shop.stations,
      shop.stock,
      shop.finished,
    ].map(sorted),
    sorted(shop.calendar),
    shop.rates.entries(),
    // A quote may be dated anew without another plan.
    { ...shop.job, quoteDay: undefined, goodUntil: undefined },
    shop.drawn ?? null,
  ]);
  return fingerprint(inputs);
}

/** A refusal begins with the place of its cell, which differs where the line is elsewhere. */
const saysWithoutPlace = ({ refusal }: UnreadLine): string => refusal.message.replace(/^line \d+ \([^)]*\)/, "");
