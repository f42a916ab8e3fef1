/** The cuts of a plan in the order of the floor, and what they take there: see floor-order.ts. */
import { type Part, sheetPart } from "./cut-tasks.ts";
import { gaugesOf, orderOnFloor } from "./floor-order.ts";
import { DEFAULT_PACE, floorTime } from "./floor-time.ts";
import type { Problem } from "./problem.ts";
import { stackLimit } from "./stacks.ts";
import type { Blank, Limits, Plan, PlannedPattern, PlanOptions, Stock } from "./types.ts";

export type OrderedCuts = Pick<
  Plan,
  "cuts" | "gauges" | "minutes" | "heavyLifts" | "leastHeavyLifts" | "stacks" | "longStacks" | "settings"
>;

/** What a heavy lift counts beside its time, in seconds; where they are many, so many tries more and so many times that: chosen. */
const HEAVY_LIFT = 30;
const MANY_LIFTS = 1.45;
const MORE_TRIES = 2;
const MORE_COUNT = 4;

export interface ToOrder {
  readonly problem: Problem;
  readonly blanks: readonly Blank[];
  readonly stock: readonly Stock[];
  readonly limits: Limits;
  readonly options: Pick<PlanOptions, "weightPerArea" | "pace">;
}

/** Each pattern's sheet with all that is to be done to it: made once, since what is known of the work is kept with it. */
export const sheetParts = (patterns: readonly PlannedPattern[], { problem, blanks, stock, limits }: ToOrder): Part[] =>
  patterns.map((pattern) => sheetPart(pattern, problem, blanks, stock, limits));

/** `tries`: ways looked at for each pattern; more where the floor is too full in all of them. */
export function orderCuts(
  patterns: readonly PlannedPattern[],
  sheets: readonly Part[],
  { blanks, limits, options }: ToOrder,
  tries: number,
): OrderedCuts {
  const { weightPerArea = 0, pace = DEFAULT_PACE } = options;
  const inOrder = blanks.some(({ due }) => due !== undefined);
  const floor = { limit: stackLimit(limits), weightPerArea, pace };
  const inWay = (way: { readonly tries: number; readonly heavyLift: number }) => {
    const ordered = orderOnFloor(sheets, patterns, floor, { ...way, inOrder });
    return { ...ordered, ...floorTime(ordered.cuts, weightPerArea, pace) };
  };
  const first = inWay({ tries, heavyLift: HEAVY_LIFT });
  const isHard = tries > 1 && first.heavyLifts > MANY_LIFTS * first.leastHeavyLifts;
  const { cuts, most, leastHeavyLifts, minutes, settings, heavyLifts } = isHard
    ? inWay({ tries: MORE_TRIES * tries, heavyLift: MORE_COUNT * HEAVY_LIFT })
    : first;
  const standing = { stacks: most.all, longStacks: most.long };
  return { cuts, ...standing, leastHeavyLifts, minutes, settings, heavyLifts, gauges: gaugesOf(cuts) };
}
