/** BILL.BREAKS: what one line is asked for by quantity. */
import type { planBreaks } from "../../bill/breaks/plan-breaks.ts";
import { type BillPlan, isQuoted, type QuotedLine } from "../../bill/plan.ts";
import { noQuoteSays } from "../../bill/says.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
import { noAnswer, Refusal, wrong } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";

/** The one line of this part. Throws a Refusal where there is none, or several, or it is not quoted. */
export function quotedLine({ lines, shop: { system } }: BillPlan, part: string): QuotedLine {
  const found = lines.filter((line) => line.part.trim().toLowerCase() === part.toLowerCase());
  const [line] = found;
  if (!line) {
    const parts = lines.map((each) => each.part);
    throw noAnswer("part", "a part of the bill", showGiven(part), `nearest is ${showGiven(nearest(part, parts))}`);
  }
  if (found.length > 1)
    throw wrong("part", "a part that stands in the bill once", part, `${found.length} lines have it`);
  if (isQuoted(line)) return line;
  throw noAnswer("part", "a line that is quoted", showGiven(part), noQuoteSays(line.findings, system));
}

export function billBreaks(
  { part }: QuotedLine,
  breaks: ReturnType<typeof planBreaks>,
  system: UnitSystem,
): CellMatrix {
  const rows = breaks.map(([quantity, found]): SpillRow<"BILL.BREAKS"> => {
    if (found instanceof Refusal) return { Part: part, Quantity: quantity, Message: found.message };
    const { unitPrice, price, order, isInBill, isHeld } = found;
    return {
      Part: part,
      Quantity: quantity,
      "Unit price": unitPrice,
      Price: price,
      Order: order,
      Note: isInBill ? "as in the bill" : isHeld ? "held: never dearer each, never less in all, than fewer" : "",
    };
  });
  return spill("BILL.BREAKS", rows, system);
}
