/** BILL.PRICE: what to ask for every line, and for the order. */
import { knownOrNot } from "../../calc/bend/air-estimate.ts";
import { charges } from "../../calc/cost/charges.ts";
import { labourCost } from "../../calc/cost/labour-cost.ts";
import { type LinePrice, linePrice } from "../../calc/cost/line-price.ts";
import { materialByArea } from "../../calc/cost/material-cost.ts";
import type { ProfitBasis } from "../../calc/cost/price-for-margin.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { atMost } from "../../units/nearly.ts";
import { type Millimetres, type Money, money } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../spill-columns.ts";
import type { BillLine, BillRow, RouteName } from "../tables/bill.ts";
import type { Rates } from "../tables/rates.ts";
import { type StockSheet, sheetsFor } from "../tables/stock.ts";
import { blankOf } from "./blank.ts";
import { type PlanRow, planPrice } from "./plan-range.ts";
import { routeFor } from "./routes.ts";
import { isAnswered, type Outcome, outcomes, rowsOf } from "./rows.ts";
import type { Shop } from "./shop.ts";
import { type OutsideWork, type PlannedLine, Planner, type StationWork } from "./work.ts";

export interface PriceOptions {
  readonly stock: readonly StockSheet[];
  /** What CUT.PLAN spills; empty: material by area at the stated yield. */
  readonly plan: readonly PlanRow[];
  readonly wanted: (line: BillLine) => RouteName | undefined;
  readonly rush: boolean;
  readonly basis: ProfitBasis;
}

interface Priced {
  readonly price: LinePrice;
  readonly note: string;
}

export function billPrice(bill: readonly BillRow[], shop: Shop, options: PriceOptions, work?: Working): CellMatrix {
  const { rates } = shop;
  const profit = { share: rates.get(options.basis === "margin" ? "margin" : "markup"), basis: options.basis };
  const overhead = rates.get("overhead");
  const rush = options.rush ? rates.get("rush") : 0;
  const planner = new Planner(shop, work);
  const planned = outcomes(bill, (line) => {
    const plan = planner.plan(line);
    return { plan, route: routeFor(line, plan.possible, options.wanted(line)) };
  });
  const areas = planAreas(planned);
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

const areaOf = ({ blank, blanks }: PlannedLine): number => blank.length * blank.width * blanks;
const sheetKey = ({ line }: PlannedLine): string => `${line.material.name} ${line.nominal.toFixed(3)}`;

/** Area of all blanks by material and thickness: a plan's price is shared out by it. */
function planAreas(planned: readonly Outcome<{ plan: PlannedLine }>[]): Map<string, number> {
  const areas = new Map<string, number>();
  for (const { answer } of planned.filter(isAnswered))
    areas.set(sheetKey(answer.plan), (areas.get(sheetKey(answer.plan)) ?? 0) + areaOf(answer.plan));
  return areas;
}

function materialCost(
  plan: PlannedLine,
  { stock, plan: cutPlan }: PriceOptions,
  rates: Rates,
  areas: ReadonlyMap<string, number>,
  system: UnitSystem,
  work?: Working,
): Money {
  const { line, blank, blanks } = plan;
  if (cutPlan.length > 0) {
    const share = areaOf(plan) / areas.get(sheetKey(plan))!;
    const price = money(planPrice(cutPlan, line.material, line.nominal) * share);
    return step(work, "material", "share of the cut plan by area", price, "money", "price of its sheets x area share");
  }
  const sheet = sheetToCutFrom(line, blank, stock);
  const sheetArea = sheet.length * sheet.width;
  const area = areaFrom(sheet, plan, system);
  return materialByArea(blanks, area, sheet.price, sheetArea, rates.get("materialYield"), work);
}

/**
 * Area of one blank in the sheet it is cut from. Where the line's own figure differs (measured, or between two sheets),
 * the sheet's thickness rules: it is what is bought, and a line that is a little thicker is not cheaper for it.
 */
function areaFrom(sheet: StockSheet, { line, chosen, blank }: PlannedLine, system: UnitSystem): number {
  if (sheet.thickness === line.thickness) return blank.length * blank.width;
  const cut = knownOrNot(() => blankOf({ ...line, thickness: sheet.thickness }, chosen, system)) ?? blank;
  return cut.length * cut.width;
}

/** The cheapest sheet by area that the blank fits on, turned or not. */
export function sheetToCutFrom(
  line: BillLine,
  blank: { readonly length: Millimetres; readonly width: Millimetres },
  stock: readonly StockSheet[],
): StockSheet {
  const [long, short] = [Math.max(blank.length, blank.width), Math.min(blank.length, blank.width)];
  const fitting = sheetsFor(line.material, line.nominal, stock).filter(
    (sheet) => atMost(long, sheet.length) && atMost(short, sheet.width),
  );
  if (fitting.length === 0)
    throw noAnswer(
      "stock",
      "a table with a sheet that the blank fits on",
      `a blank of ${show(long, "length", "in")} x ${show(short, "length", "in")} (${show(long, "length", "mm")} x ${show(short, "length", "mm")})`,
    );
  const perArea = ({ price, length, width }: StockSheet) => price / (length * width);
  return fitting.reduce((a, b) => (perArea(b) < perArea(a) ? b : a));
}

function noteOf(route: RouteName, outside: readonly OutsideWork[], line: BillLine, shop: Shop): string {
  const vendors = outside.map(({ station }) => {
    const days = station.vendorDays === undefined ? "" : `, ${station.vendorDays} vendor days`;
    const closes =
      station.coat !== undefined && line.holes > 0
        ? `, holes close by ${show(2 * station.coat, "length", shop.system)}`
        : "";
    return `${station.name} outside${days}${closes}`;
  });
  return [`cut on the ${route}`, ...vendors].join("; ");
}
