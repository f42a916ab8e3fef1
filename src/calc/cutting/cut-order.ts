/** The cuts of a plan in the order of the floor, and what they take there: see floor-order.ts. */
import { sheetPart } from "./cut-tasks.ts";
import { gaugesOf, orderOnFloor } from "./floor-order.ts";
import { DEFAULT_PACE, floorTime } from "./floor-time.ts";
import type { Problem } from "./problem.ts";
import { stackLimit } from "./stacks.ts";
import type { Blank, Limits, Plan, PlannedPattern, PlanOptions, Stock } from "./types.ts";

export type OrderedCuts = Pick<
  Plan,
  "cuts" | "gauges" | "minutes" | "heavyLifts" | "leastHeavyLifts" | "stacks" | "longStacks" | "settings"
>;

export interface ToOrder {
  readonly problem: Problem;
  readonly blanks: readonly Blank[];
  readonly stock: readonly Stock[];
  readonly limits: Limits;
  readonly options: Pick<PlanOptions, "weightPerArea" | "pace">;
}

/** `tries`: ways looked at for each pattern; more where the floor is too full in all of them. */
export function orderCuts(
  patterns: readonly PlannedPattern[],
  { problem, blanks, stock, limits, options }: ToOrder,
  tries: number,
): OrderedCuts {
  const { weightPerArea = 0, pace = DEFAULT_PACE } = options;
  const sheets = patterns.map((pattern, p) => sheetPart(pattern, p, problem, blanks, stock, limits));
  const inOrder = blanks.some(({ due }) => due !== undefined);
  const floor = { limit: stackLimit(limits), weightPerArea, pace };
  const { cuts, most, leastHeavyLifts } = orderOnFloor(sheets, patterns, floor, { tries, inOrder });
  const { minutes, settings, heavyLifts } = floorTime(cuts, weightPerArea, pace);
  const standing = { stacks: most.all, longStacks: most.long };
  return { cuts, ...standing, leastHeavyLifts, minutes, settings, heavyLifts, gauges: gaugesOf(cuts) };
}
