/** What the metal of every line costs: its share of the sheets that its plan pulls, less what is kept of them. */
import { remnantCredit } from "../../calc/cost/remnant-credit.ts";
import { type Money, money } from "../../units/quantity.ts";
import type { CutGroup, SheetUse } from "../cut/plan-cutting.ts";
import type { LinePlan } from "../lines/plan-line.ts";

/**
 * Shared among the lines of a group by the area of their blanks. A line without an entry has sheets without a price.
 * @param wholeSheets the shop charges what is pulled and keeps what is left for nothing.
 */
export function metalShares(groups: readonly CutGroup[], wholeSheets: boolean): Map<LinePlan, Money> {
  const shares = new Map<LinePlan, Money>();
  for (const { uses, lines } of groups) {
    if (!uses.every(isPriced)) continue;
    const price = uses.reduce((sum, use) => sum + use.price - (wholeSheets ? 0 : creditOf(use)), 0);
    const area = ({ blank, blanks }: LinePlan) => blank.length * blank.width * blanks;
    const all = lines.reduce((sum, line) => sum + area(line), 0);
    for (const line of lines) shares.set(line, money((price * area(line)) / all));
  }
  return shares;
}

/** Lines that are credited with what is left at common practice's worth, because Stock does not say another. */
export const atCommonWorth = (groups: readonly CutGroup[]): ReadonlySet<LinePlan> =>
  new Set(
    groups.flatMap(({ uses, lines }) =>
      uses.some(({ sheet, remnants }) => remnants.length > 0 && !sheet.saysRemnantWorth) ? lines : [],
    ),
  );

type PricedUse = SheetUse & { readonly price: Money; readonly sheet: { readonly price: Money } };
const isPriced = (use: SheetUse): use is PricedUse => use.price !== undefined && use.sheet.price !== undefined;

const creditOf = ({ sheet, remnants }: PricedUse): number =>
  remnants.reduce(
    (sum, { length, width }) =>
      sum + remnantCredit(sheet.price, (length * width) / (sheet.length * sheet.width), sheet.remnantWorth),
    0,
  );
