/** In which order the brake is set up: every set of tools once, with the fewest tools changed from one to the next. */
import { orderSets } from "../../calc/time/order-sets.ts";
import { entryOf } from "../../units/certain.ts";
import type { QuotedLine } from "../line-answer.ts";
import { type BentPlan, isBent } from "../lines/plan-line.ts";
import { setKey, type Tools } from "../lines/tools.ts";

export type BentLine = QuotedLine & { readonly plan: BentPlan };
const isBentLine = (line: QuotedLine): line is BentLine => isBent(line.plan);

export interface SetUp {
  readonly tools: Tools;
  /** In the order of the bill. */
  readonly lines: readonly BentLine[];
}

/** One brake after another, by name. */
export function planSetUps(quoted: readonly QuotedLine[]): SetUp[] {
  const sets = new Map<string, { tools: Tools; lines: BentLine[] }>();
  for (const line of quoted.filter(isBentLine)) {
    const { tools } = line.plan;
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
    return order.map((key) => entryOf(sets, key));
  });
}
