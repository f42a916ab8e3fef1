/** In which order the brake is set up: every set of tools once, with the fewest tools changed from one to the next. */
import { orderSets } from "../../calc/time/order-sets.ts";
import type { QuotedLine } from "../line-answer.ts";
import { setKey, type Tools } from "../lines/tools.ts";

export interface SetUp {
  readonly tools: Tools;
  /** In the order of the bill. */
  readonly lines: readonly QuotedLine[];
}

/** One brake after another, by name. */
export function planSetUps(quoted: readonly QuotedLine[]): SetUp[] {
  const sets = new Map<string, { tools: Tools; lines: QuotedLine[] }>();
  for (const line of quoted) {
    const { tools } = line.plan;
    if (!tools) continue;
    const known = sets.get(setKey(tools));
    if (known) known.lines.push(line);
    else sets.set(setKey(tools), { tools, lines: [line] });
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
