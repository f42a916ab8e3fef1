/**
 * The assignment that finishes first, or the cheapest that meets a due time, exactly. A finish can be kept when the
 * loads fit what each machine can do by then and some line opens the brake early enough; the earliest such finish is
 * found by halving, the cheapest assignment within it by cheapestWithin.
 */
import { earliestFinish } from "./earliest-finish.ts";
import { openers } from "./openers.ts";
import { type MachineTimes, type Route, type RouteLine, routeOf } from "./problem.ts";
import { within } from "./within.ts";

export interface BestRoute extends Route {
  /** No assignment finishes earlier. */
  readonly finishBound: number;
  /** No assignment that finishes by then (the due time, or the earliest finish) costs less. */
  readonly costBound: number;
  readonly proved: boolean;
  /** False: even the earliest finish misses the due time, and it is the earliest finish that is given. */
  readonly meetsDue: boolean;
}

export function bestRoute(lines: readonly RouteLine[], shop: MachineTimes, due?: number): BestRoute {
  const first = openers(lines, shop);
  const earliest = earliestFinish(lines, shop, first);
  const meetsDue = due === undefined || earliest.finish <= due;
  const by = due !== undefined && meetsDue ? due : earliest.finish;
  // The earliest plan finishes by then too: nothing dearer need be looked for.
  const cheapest = within(lines, shop, { by, goal: "cost", first, most: earliest.cost });
  const route = routeOf(lines, cheapest.machines ?? earliest.machines, shop);
  return {
    ...route,
    finishBound: earliest.bound,
    costBound: Math.min(cheapest.bound, route.cost),
    proved: earliest.proved && cheapest.proved,
    meetsDue,
  };
}
