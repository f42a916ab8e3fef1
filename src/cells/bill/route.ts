/** BILL.ROUTE: which lines go to the shear and which to the waterjet. */
import { labourCost } from "../../calc/cost/labour-cost.ts";
import { type BestRoute, bestRoute } from "../../calc/route/best-route.ts";
import { type Cut, MACHINES, type Route, type RouteLine, routeOf } from "../../calc/route/problem.ts";
import type { Instant } from "../../calc/schedule/calendar.ts";
import { SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from "../../calc/time/seconds.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { money } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { asSerial } from "../parameters/instant.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import type { BillLine, RouteName } from "../tables/bill.ts";
import type { CalendarRow } from "../tables/calendar.ts";
import { routeFor } from "./routes.ts";
import { isAnswered, type Outcome, outcomes, rowsOf } from "./rows.ts";
import type { Shop } from "./shop.ts";
import { routeShop } from "./station-time.ts";
import { toolsKey } from "./tools.ts";
import { type PlannedLine, Planner, type StationWork } from "./work.ts";

/** Costs are compared as whole ten-thousandths of the money, so that "cheapest" is exact. */
const COST_UNITS = 10_000;

interface RoutedLine {
  readonly plan: PlannedLine;
  readonly cuts: RouteLine;
}

export interface RouteQuestion {
  readonly calendar: readonly CalendarRow[];
  readonly start: Instant;
  readonly due: Instant | undefined;
  readonly summary: boolean;
}

export function billRoute(shop: Shop, { calendar, start, due, summary }: RouteQuestion, work?: Working): CellMatrix {
  const planner = new Planner(shop);
  const found = outcomes(shop.bill, (line): RoutedLine => {
    const plan = planner.plan(line);
    return { plan, cuts: cutsOf(plan, planner, shop) };
  });
  const lines = found.filter(isAnswered).map(({ answer }) => answer);
  const time = routeShop(shop.stations, calendar, start);
  const cuts = lines.map((line) => line.cuts);
  const best = lines.length === 0 ? EMPTY : bestRoute(cuts, time, due);
  step(
    work,
    "finish",
    "latest station's queue and load",
    asSerial(best.finish as Instant),
    "date",
    "exact search (derived)",
  );
  step(work, "cost", "cutting, over all lines", best.cost / COST_UNITS, "money", "exact search (derived)");
  if (!summary) return spill("BILL.ROUTE", lineRows(found, best), shop.system);
  const allOnWaterjet = routeOf(
    cuts,
    cuts.map(({ waterjet }) => (waterjet ? "waterjet" : "shear")),
    time,
  );
  return spill("BILL.ROUTE summary", summaryRows(lines, best, allOnWaterjet, due, start), shop.system);
}

const EMPTY: BestRoute = {
  machines: [],
  cost: 0,
  finish: 0,
  finishBound: 0,
  costBound: 0,
  proved: true,
  meetsDue: true,
};

/** Whole seconds and cost of a line on each machine that may cut it; what a bench must add by that route costs too. */
function cutsOf(plan: PlannedLine, planner: Planner, shop: Shop): RouteLine {
  const { line, possible } = plan;
  routeFor(line, possible, undefined); // refuses what no machine can cut, and a pin that cannot be kept
  const cost = (works: readonly StationWork[]) =>
    works.reduce((sum, { station, setUp, run, people }) => {
      const second = money(people > 1 ? shop.rates.get("secondPerson") : 0);
      return sum + labourCost((setUp + run) as StationWork["run"], station.rate, people, second);
    }, 0);
  const cut = (route: RouteName): Cut | undefined => {
    if (!possible[route].can || (line.pin !== undefined && line.pin !== route)) return undefined;
    const cutting = planner.cutting(plan, route);
    const all = [cutting, ...planner.benches(plan, route)];
    return { time: cutting.setUp + cutting.run, cost: Math.round(cost(all) * COST_UNITS) };
  };
  const [shear, waterjet] = [cut("shear"), cut("waterjet")];
  const bending = planner.bending(plan);
  return { shear, waterjet, brake: bending ? bending.setUp + bending.run : 0 };
}

function lineRows(found: readonly Outcome<RoutedLine>[], best: Route): SpillRow[] {
  let next = 0;
  return rowsOf(found, (line, { cuts }) => {
    const machine = best.machines[next++]!;
    return {
      Part: line.part,
      Route: machine,
      Why: whyOf(line, cuts, machine),
      "On shear": minutes(cuts.shear?.time),
      "On waterjet": minutes(cuts.waterjet?.time),
      "On brake": cuts.brake / SECONDS_PER_MINUTE,
      Cost: cuts[machine]!.cost / COST_UNITS,
    };
  });
}

const minutes = (time: number | undefined) => (time === undefined ? undefined : time / SECONDS_PER_MINUTE);
const whyOf = ({ pin }: BillLine, { shear, waterjet }: RouteLine, machine: RouteName): string => {
  if (pin !== undefined) return "pinned";
  if (shear && waterjet) return "chosen";
  return `needs the ${machine}`;
};

function summaryRows(
  lines: readonly RoutedLine[],
  best: BestRoute,
  allOnWaterjet: Route,
  due: Instant | undefined,
  start: Instant,
): SpillRow[] {
  const row = (Item: string, Value: string | number, Unit: string, Note = ""): SpillRow => ({
    Item,
    Value,
    Unit,
    Note,
  });
  const date = (at: number) => asSerial((lines.length === 0 ? start : at) as Instant);
  const load = (machine: RouteName) =>
    lines.reduce((sum, { cuts }, i) => sum + (best.machines[i] === machine ? cuts[machine]!.time : 0), 0) /
    SECONDS_PER_HOUR;
  const tools = new Set(lines.flatMap(({ plan }) => (plan.chosen ? [toolsKey(plan.chosen)] : [])));
  const saved = (allOnWaterjet.cost - best.cost) / COST_UNITS;
  return [
    row(
      "Finish",
      date(best.finish),
      "date",
      best.meetsDue ? "" : "no assignment meets the due time; this is the earliest",
    ),
    row("Earliest possible finish", date(best.finishBound), "date", "bound: no assignment finishes before it"),
    row(
      "Cutting cost",
      best.cost / COST_UNITS,
      "money",
      due === undefined ? "cheapest that finishes first" : "cheapest that meets the due time",
    ),
    row("Least possible cost", best.costBound / COST_UNITS, "money", "bound: no assignment by then costs less"),
    row("Proved", best.proved ? "yes" : "no", "text", best.proved ? "" : "the search ended before the proof"),
    ...MACHINES.map((machine) => row(`Load of the ${machine}`, load(machine), "h")),
    row("Load of the brake", lines.reduce((sum, { cuts }) => sum + cuts.brake, 0) / SECONDS_PER_HOUR, "h"),
    row(
      "All on the waterjet: finish",
      date(allOnWaterjet.finish),
      "date",
      "lines that are pinned or that it cannot cut stay on the shear",
    ),
    row("All on the waterjet: cost", allOnWaterjet.cost / COST_UNITS, "money"),
    row("Saved against all on the waterjet", saved, "money"),
    row("Tooling changes", tools.size, "count", "sets of die and punch, each set up once"),
  ];
}
