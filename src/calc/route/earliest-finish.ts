import { firstOf } from "../../units/certain.ts";
import { endsOf, type Opener } from "./openers.ts";
import { type Choice, type Machine, type MachineTimes, type Route, type RouteLine, routeOf } from "./problem.ts";
import { within } from "./within.ts";

export interface Earliest extends Route {
  /** No assignment finishes earlier. */
  readonly bound: number;
  readonly proved: boolean;
}

/** The earliest finish, by halving between one that is surely not too late and one that is known. */
export function earliestFinish(lines: readonly RouteLine[], shop: MachineTimes, first: readonly Opener[]): Earliest {
  const starts = firstPlans(lines).map((machines) => routeOf(lines, machines, shop));
  let best = starts.reduce((a, b) => (b.finish < a.finish ? b : a));
  // Every finish below `low` is impossible; `bound` only counts what is proved.
  let low = Math.floor(lowest(lines, shop, first));
  let bound = low;
  while (low < best.finish) {
    const middle = Math.floor((low + best.finish) / 2);
    const found = within(lines, shop, { by: middle, goal: "time", first });
    if (found.machines) best = routeOf(lines, found.machines, shop);
    else {
      low = middle + 1;
      if (found.proved) bound = Math.max(bound, low);
    }
  }
  return {
    ...best,
    bound: Math.min(bound, best.finish),
    proved: bound >= best.finish,
  };
}

/** Every line on the one machine, on the other, and on the one where it takes less. */
function firstPlans(lines: readonly RouteLine[]): Machine[][] {
  const on = (choose: (line: Choice) => Machine) =>
    lines.map(({ shear, waterjet }) => (!shear ? "waterjet" : !waterjet ? "shear" : choose({ shear, waterjet })));
  return [
    on(() => "shear"),
    on(() => "waterjet"),
    on(({ shear, waterjet }) => (shear.time <= waterjet.time ? "shear" : "waterjet")),
  ];
}

/** A finish that is surely not too late: of each line alone, without anything else in the way. */
function lowest(lines: readonly RouteLine[], shop: MachineTimes, first: readonly Opener[]): number {
  const bending = lines.reduce((sum, { brake }) => sum + brake, 0);
  const brake = bending > 0 ? shop.brake.finish(firstOf(first).at, bending) : 0;
  return lines.reduce((most, line) => Math.max(most, Math.min(...endsOf(line, shop).map(({ at }) => at))), brake);
}
