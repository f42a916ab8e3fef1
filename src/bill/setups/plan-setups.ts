/** In which order the brake is set up: every set of tools once, with the fewest tools changed from one to the next. */
import { orderSets } from "../../calc/time/order-sets.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import { setKey, type Tools } from "../lines/tools.ts";

export interface SetUp {
  readonly tools: Tools;
  /** In the order of the bill. */
  readonly lines: readonly LinePlan[];
}

/** One brake after another, by name. */
export function planSetUps(plans: readonly LinePlan[]): SetUp[] {
  const sets = new Map<string, { tools: Tools; lines: LinePlan[] }>();
  for (const plan of plans) {
    if (!plan.tools) continue;
    const key = setKey(plan.tools);
    const known = sets.get(key);
    if (known) known.lines.push(plan);
    else sets.set(key, { tools: plan.tools, lines: [plan] });
  }
  const brakes = [...new Set([...sets.values()].map(({ tools }) => tools.brake.name))].sort();
  return brakes.flatMap((brake) => {
    const own = [...sets].filter(([, { tools }]) => tools.brake.name === brake).sort(([a], [b]) => (a < b ? -1 : 1));
    const order = orderSets(
      own.map(([key, { tools }]) => ({ key, die: tools.die.name, punch: tools.punch?.name ?? "" })),
    );
    return order.map((key) => sets.get(key)!);
  });
}
