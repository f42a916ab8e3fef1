/** BILL.PRICE: what to ask for every line, and for the order. */
import { charges } from "../../calc/cost/charges.ts";
import { labourCost } from "../../calc/cost/labour-cost.ts";
import { type LinePrice, linePrice } from "../../calc/cost/line-price.ts";
import type { ProfitBasis } from "../../calc/cost/price-for-margin.ts";
import { vendorDaysInWords } from "../../calc/schedule/working-days.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { type Money, money } from "../../units/quantity.ts";
import { show } from "../../units/show.ts";
import type { Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import type { BillLine, RouteName } from "../tables/bill.ts";
import type { Rates } from "../tables/rates.ts";
import { type MaterialFrom, materialCost, planAreas } from "./material.ts";
import { routeFor } from "./routes.ts";
import { isAnswered, type Outcome, outcomes, rowsOf } from "./rows.ts";
import type { Shop } from "./shop.ts";
import { type OutsideWork, Planner, type StationWork } from "./work.ts";

export interface PriceOptions extends MaterialFrom {
  readonly wanted: (line: BillLine) => RouteName | undefined;
  readonly rush: boolean;
  readonly basis: ProfitBasis;
}

interface Priced {
  readonly price: LinePrice;
  readonly note: string;
}

export function billPrice(shop: Shop, options: PriceOptions, work?: Working): CellMatrix {
  const { rates } = shop;
  const profit = { share: rates.get(options.basis === "margin" ? "margin" : "markup"), basis: options.basis };
  const overhead = rates.get("overhead");
  const rush = options.rush ? rates.get("rush") : 0;
  const planner = new Planner(shop, work);
  const planned = outcomes(shop.bill, (line) => {
    const plan = planner.plan(line);
    return { plan, route: routeFor(line, plan.possible, options.wanted(line)) };
  });
  const areas = planAreas(planned, options.plan);
  const found = planned.map((outcome): Outcome<Priced> => {
    if (!isAnswered(outcome)) return outcome;
    const { plan, route } = outcome.answer;
    return outcomes([outcome.line], (line): Priced => {
      const material = materialCost(plan, options, rates, areas, shop.system, work);
      const outside = planner.outside(plan);
      const works = planner.all(plan, route);
      const cost = {
        material,
        labour: money(works.reduce((sum, w) => sum + labour(w, w.run, rates), 0)),
        setUp: money(works.reduce((sum, w) => sum + labour(w, w.setUp, rates), 0)),
        outside: money(outside.reduce((sum, o) => sum + outsideCost(o, line.quantity), 0)),
      };
      return {
        price: linePrice(line.quantity, cost, overhead, profit, work),
        note: noteOf(route, outside, line, shop),
      };
    })[0]!;
  });
  const lines = found.filter(isAnswered).map(({ answer }) => answer.price.price);
  const missing = found.length - lines.length;
  const extra = charges(lines, money(rates.find("minimumCharge") ?? 0), rush, work);
  const rows: SpillRow[] = [
    ...rowsOf(found, (line, { price, note }) => ({
      Part: line.part,
      Quantity: line.quantity,
      Material: price.material,
      Labour: price.labour,
      "Set-up": price.setUp,
      Outside: price.outside,
      Overhead: price.overhead,
      Cost: price.cost,
      "Unit price": price.unitPrice,
      Price: price.price,
      Note: note,
    })),
    { Part: "Minimum charge", Price: extra.minimum, Note: "up to the least order the shop takes" },
    { Part: "Rush", Price: extra.rush, Note: options.rush ? "on the lines and the minimum" : "not asked for" },
    {
      Part: "Total",
      Price: extra.total,
      Message: missing === 0 ? "" : `${missing} of ${found.length} lines have no price and are not in the total`,
    },
  ];
  return spill("BILL.PRICE", rows, shop.system);
}

/** A second person's rate is asked for only where one is needed. */
const labour = ({ station, people }: StationWork, time: StationWork["run"], rates: Rates): Money =>
  labourCost(time, station.rate, people, money(people > 1 ? rates.get("secondPerson") : 0));

const outsideCost = ({ station, units }: OutsideWork, quantity: number): number =>
  Math.max(station.minimum ?? 0, units * quantity * station.priceEach!);

function noteOf(route: RouteName, outside: readonly OutsideWork[], line: BillLine, shop: Shop): string {
  const vendors = outside.map(({ station }) => {
    const days = station.vendorDays === undefined ? "" : `, ${vendorDaysInWords(station.vendorDays)}`;
    const closes =
      station.coat !== undefined && line.holes > 0
        ? `, holes close by ${show(2 * station.coat, "length", shop.system)}`
        : "";
    return `${station.name} outside${days}${closes}`;
  });
  return [`cut on the ${route}`, ...vendors].join("; ");
}
