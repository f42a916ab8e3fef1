/** The last stage: what every quoted line costs and what is asked for it, and for the order. */
import { type Charges, charges, type OrderTerms } from "../../calc/cost/charges.ts";
import { laborCost } from "../../calc/cost/labor-cost.ts";
import { type LinePrice, linePrice } from "../../calc/cost/line-price.ts";
import { type Money, money } from "../../units/quantity.ts";
import { noAnswer, Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import type { CutGroup } from "../cut/plan-cutting.ts";
import { shareCharged } from "../lines/blanks-to-cut.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import type { Shop } from "../nouns/shop.ts";
import type { OutsideWork, StationWork } from "../time/station-work.ts";
import { extrasOf } from "./extras.ts";
import { outsideShares } from "./finish-lots.ts";
import { atCommonWorth, metalShares } from "./metal.ts";

export interface WorkedLine {
  readonly plan: LinePlan;
  readonly works: readonly StationWork[];
  readonly outside: readonly OutsideWork[];
}

export interface MoneyPlan {
  /** A Refusal where a line's own figures are missing; the others have theirs. */
  readonly lines: ReadonlyMap<LinePlan, LinePrice | Refusal>;
  readonly charges: Charges;
  /** Lines whose remnants count what is common practice: Stock does not say. */
  readonly commonWorth: ReadonlySet<LinePlan>;
}

/** Throws the Refusal of a rate that every line needs. */
export function planMoney(
  lines: readonly WorkedLine[],
  groups: readonly CutGroup[],
  shop: Pick<Shop, "rates" | "job" | "stations">,
  work?: Working,
): MoneyPlan {
  const { rates, job } = shop;
  const asked = {
    overhead: rates.get("overhead"),
    profit: { share: rates.get(job.profit === "margin" ? "margin" : "markup"), basis: job.profit },
    minimum: money(rates.find("lineMinimum") ?? 0),
  };
  const wholeSheets = rates.find("wholeSheets") === 1;
  const metal = metalShares(groups, wholeSheets);
  const outside = outsideShares(lines, job);
  const onMetal = 1 + (rates.find("materialMarkUp") ?? 0);
  const onOutside = 1 + (rates.find("outsideMarkUp") ?? 0);
  const priced = new Map(
    lines.map(({ plan, works }) => [
      plan,
      refusalOr((): LinePrice => {
        const { quantity, part } = plan.line;
        const sheets = metal.get(plan);
        if (sheets === undefined) throw noAnswer("stock", `a table with a price for the sheets of ${part}`, "none");
        const share = step(
          work,
          "s",
          `${part}: pieces that are charged over blanks that are cut`,
          shareCharged(plan.line, rates),
          "",
          "scrap as a share of the cost (common practice)",
        );
        const material = step(
          work,
          "material",
          `${part}: its area's share of the sheets that are pulled, less remnants`,
          money(sheets * share * onMetal),
          "money",
          "price x area share x s x (1 + material mark-up)",
        );
        const cost = {
          material,
          labor: money(share * works.reduce((sum, each) => sum + labor(each, each.run, rates), 0)),
          setUp: money(works.reduce((sum, each) => sum + labor(each, each.setUp, rates), 0)),
          outside: money((outside.get(plan) ?? 0) * onOutside),
          extras: extrasOf(plan, shop),
        };
        return linePrice(quantity, cost, asked, work);
      }),
    ]),
  );
  const prices = [...priced.values()].flatMap((found) => (found instanceof Refusal ? [] : [found.price]));
  const commonWorth = wholeSheets ? new Set<LinePlan>() : atCommonWorth(groups);
  return { lines: priced, charges: charges(prices, orderTerms(shop), work), commonWorth };
}

/** What the shop asks of any order beside its lines. */
export const orderTerms = ({ rates, job }: Pick<Shop, "rates" | "job">): OrderTerms => ({
  minimum: money(rates.find("minimumCharge") ?? 0),
  rush: job.isRush ? rates.get("rush") : 0,
  crate: money(rates.find("crate") ?? 0),
  truck: money(rates.find("truck") ?? 0),
  tax: rates.find("tax") ?? 0,
});

/** A second person's rate is asked for only where one is needed. */
const labor = ({ station, people }: StationWork, time: StationWork["run"], rates: Shop["rates"]): Money =>
  laborCost(time, station.rate, people, money(people > 1 ? rates.get("secondPerson") : 0));
