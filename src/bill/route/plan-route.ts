/** The second stage: which machine cuts which line, to finish first, or cheapest by the time it must leave. */
import { laborCost } from "../../calc/cost/labor-cost.ts";
import { type BestRoute, bestRoute } from "../../calc/route/best-route.ts";
import { type Route, type RouteLine, routeOf, type TimeAndCost } from "../../calc/route/problem.ts";
import { itemAt } from "../../units/certain.ts";
import { money } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr, remember } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import { lineKey } from "../lines/line-key.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import type { Cutter } from "../nouns/line.ts";
import { hasTable, type Shop } from "../nouns/shop.ts";
import { bendingWorks } from "../time/bending-work.ts";
import { benchWork, cuttingWork, shearShares } from "../time/cutting-work.ts";
import { type StationWork, timeOf } from "../time/station-work.ts";
import { routeShop } from "./clock.ts";

/** Costs are compared as whole ten-thousandths of the money, so that "cheapest" is exact. */
export const COST_UNITS = 10_000;

type RouteShop = Pick<Shop, "stations" | "rates" | "calendar" | "job" | "finished" | "given">;

export interface RoutePlan {
  /** By line, in the order given. */
  readonly cutters: readonly Cutter[];
  /** What each line takes on each machine; undefined where the tables do not say, and `untimed` why. */
  readonly cuts: readonly RouteLine[] | undefined;
  readonly untimed: Refusal | undefined;
  /** The search's own answer; undefined without stations, calendar and a start. */
  readonly best: BestRoute | undefined;
  readonly allOnWaterjet: Route | undefined;
}

/** @param plans lines that some machine cuts. */
export const planRoute = remember(8, (plans: readonly LinePlan[], shop: RouteShop) => route(plans, shop));
export const planRouteAnew = (plans: readonly LinePlan[], shop: RouteShop, work: Working) => route(plans, shop, work);

function route(plans: readonly LinePlan[], shop: RouteShop, work?: Working): RoutePlan {
  const cuts = refusalOr(() => cutsOf(plans, shop));
  if (cuts instanceof Refusal || cuts === undefined || plans.length === 0)
    return {
      cutters: plans.map(simplest),
      cuts: cuts instanceof Refusal ? undefined : cuts,
      untimed: cuts instanceof Refusal ? cuts : undefined,
      best: undefined,
      allOnWaterjet: undefined,
    };
  const { start, due } = shop.job;
  if (!hasTable(shop, "calendar") || start === undefined)
    return { cutters: cuts.map(cheapest), cuts, untimed: undefined, best: undefined, allOnWaterjet: undefined };
  const time = routeShop(shop.stations, shop.calendar, start);
  // By content: the order of the bill decides nothing.
  const order = cuts
    .map((cut, i) => ({ cut, key: lineKey(itemAt(plans, i).line) }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
  const found = bestRoute(
    order.map(({ cut }) => cut),
    time,
    due,
  );
  const machines = cuts.map((cut) =>
    itemAt(
      found.machines,
      order.findIndex((each) => each.cut === cut),
    ),
  );
  step(work, "cost", "cutting, over all lines", found.cost / COST_UNITS, "money", "exact search (derived)");
  const allOnWaterjet = routeOf(
    cuts,
    cuts.map(({ waterjet }) => (waterjet ? "waterjet" : "shear")),
    time,
  );
  return { cutters: machines, cuts, untimed: undefined, best: { ...found, machines }, allOnWaterjet };
}

const simplest = ({ cutting }: LinePlan): Cutter => (cutting.shear ? "shear" : "waterjet");
const cheapest = ({ shear, waterjet }: RouteLine): Cutter =>
  shear && (!waterjet || shear.cost <= waterjet.cost) ? "shear" : "waterjet";

/** Whole seconds and cost of each line on each machine that may cut it; what a bench must add by that route costs too. */
function cutsOf(plans: readonly LinePlan[], shop: RouteShop): RouteLine[] | undefined {
  if (!hasTable(shop, "stations")) return undefined;
  const bending = bendingWorks(plans, shop);
  // As if every line that can be sheared were sheared: who shares a set-up is known only once the route is.
  const shares = shearShares(
    plans.filter(({ cutting }) => cutting.shear),
    shop,
  );
  return plans.map((plan): RouteLine => {
    const cut = (cutter: Cutter): TimeAndCost | undefined => {
      if (plan.cutting[cutter] === undefined) return undefined;
      const cutting = cuttingWork(plan, cutter, shares.get(plan) ?? 0, shop);
      const works = [cutting, ...benchWork(plan, cutter, shop)];
      const cost = works.reduce((sum, each) => sum + costOf(each, shop), 0);
      return { time: timeOf(cutting), cost: Math.round(cost * COST_UNITS) };
    };
    const atBrake = bending.get(plan);
    return { shear: cut("shear"), waterjet: cut("waterjet"), brake: atBrake ? timeOf(atBrake) : 0 };
  });
}

/** A second person's rate is asked for only where one is needed. */
export const costOf = (work: StationWork, { rates }: Pick<Shop, "rates">): number =>
  laborCost(timeOf(work), work.station.rate, work.people, money(work.people > 1 ? rates.get("secondPerson") : 0));
