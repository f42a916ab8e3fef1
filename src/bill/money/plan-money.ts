/** The last stage: what every quoted line costs and what is asked for it, and for the order. */
import { type Charges, charges } from "../../calc/cost/charges.ts";
import { laborCost } from "../../calc/cost/labor-cost.ts";
import { type LinePrice, linePrice } from "../../calc/cost/line-price.ts";
import { type Money, money } from "../../units/quantity.ts";
import { noAnswer, Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import type { CutGroup, SheetUse } from "../cut/plan-cutting.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import type { Shop } from "../nouns/shop.ts";
import type { OutsideWork, StationWork } from "../time/station-work.ts";

export interface WorkedLine {
  readonly plan: LinePlan;
  readonly works: readonly StationWork[];
  readonly outside: readonly OutsideWork[];
}

export interface MoneyPlan {
  /** A Refusal where a line's own figures are missing; the others have theirs. */
  readonly lines: ReadonlyMap<LinePlan, LinePrice | Refusal>;
  readonly charges: Charges;
}

/** Throws the Refusal of a rate that every line needs. */
export function planMoney(
  lines: readonly WorkedLine[],
  groups: readonly CutGroup[],
  { rates, job }: Pick<Shop, "rates" | "job">,
  work?: Working,
): MoneyPlan {
  const profit = { share: rates.get(job.profit === "margin" ? "margin" : "markup"), basis: job.profit };
  const overhead = rates.get("overhead");
  const rush = job.isRush ? rates.get("rush") : 0;
  const shares = metalShares(groups);
  const priced = new Map(
    lines.map(({ plan, works, outside }) => [
      plan,
      refusalOr((): LinePrice => {
        const { quantity, part } = plan.line;
        const material = shares.get(plan);
        if (material === undefined) throw noAnswer("stock", `a table with a price for the sheets of ${part}`, "none");
        step(
          work,
          "material",
          `${part}: its area's share of the sheets that are pulled`,
          material,
          "money",
          "price x area share",
        );
        const cost = {
          material,
          labor: money(works.reduce((sum, each) => sum + labor(each, each.run, rates), 0)),
          setUp: money(works.reduce((sum, each) => sum + labor(each, each.setUp, rates), 0)),
          outside: money(outside.reduce((sum, each) => sum + outsideCost(each, quantity), 0)),
        };
        return linePrice(quantity, cost, overhead, profit, work);
      }),
    ]),
  );
  const prices = [...priced.values()].flatMap((found) => (found instanceof Refusal ? [] : [found.price]));
  return { lines: priced, charges: charges(prices, money(rates.find("minimumCharge") ?? 0), rush, work) };
}

/** The price of a group's sheets less what its remnants are worth, shared among its lines by the area of their blanks. */
function metalShares(groups: readonly CutGroup[]): Map<LinePlan, Money> {
  const shares = new Map<LinePlan, Money>();
  for (const { uses, lines } of groups) {
    if (uses.some(({ price }) => price === undefined)) continue;
    const price = uses.reduce((sum, use) => sum + use.price! - creditOf(use), 0);
    const area = ({ blank, blanks }: LinePlan) => blank.length * blank.width * blanks;
    const all = lines.reduce((sum, line) => sum + area(line), 0);
    for (const line of lines) shares.set(line, money((price * area(line)) / all));
  }
  return shares;
}

/** Remnants that go back to the rack, at their share of the price of a new sheet's area. */
function creditOf({ sheet, remnants }: SheetUse): number {
  const area = remnants.reduce((sum, { length, width }) => sum + length * width, 0);
  return (sheet.remnantWorth * sheet.price! * area) / (sheet.length * sheet.width);
}

/** A second person's rate is asked for only where one is needed. */
const labor = ({ station, people }: StationWork, time: StationWork["run"], rates: Shop["rates"]): Money =>
  laborCost(time, station.rate, people, money(people > 1 ? rates.get("secondPerson") : 0));

const outsideCost = ({ station, units }: OutsideWork, quantity: number): number =>
  Math.max(station.minimum ?? 0, units * quantity * station.priceEach!);
