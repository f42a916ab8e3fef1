import { atMost } from "../../units/nearly.ts";
import { type Degrees, type Millimetres, mm, radians } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/** What the shop's own measuring says about its edges, bends and angles, plus and minus. */
export interface Spread {
  readonly edge: Millimetres;
  /** Of one bend's deduction. */
  readonly deduction: Millimetres;
  readonly angle: Degrees;
}

export const STACK_VERDICTS = ["holds", "at risk", "will not hold"] as const;
export type StackVerdict = (typeof STACK_VERDICTS)[number];

/**
 * Will a bent dimension keep its tolerance? Edge, deduction of each bend and angle times leg, added up for the worst case
 * and as the root of squares for what is to be expected of independent deviations: worst case within: holds; only the
 * expected within: at risk; else it will not hold. Which deviations count: shop stack (memory); sums: statistics (derived).
 */
export function toleranceStack(
  bends: number,
  leg: Millimetres,
  spread: Spread,
  work?: Working,
): { readonly worst: Millimetres; readonly expected: Millimetres } {
  const tilt = bends > 0 ? leg * Math.tan(radians(spread.angle)) : 0;
  const parts = [spread.edge, ...Array.from({ length: bends }, () => spread.deduction), tilt];
  const worst = step(
    work,
    "worst",
    "all deviations added",
    mm(parts.reduce((a, b) => a + b, 0)),
    "mm",
    "sum (derived)",
  );
  const expected = mm(Math.hypot(...parts));
  step(work, "expected", "deviations as independent", expected, "mm", "root of the sum of squares (derived)");
  return { worst, expected };
}

export const judgeStack = (
  { worst, expected }: { readonly worst: Millimetres; readonly expected: Millimetres },
  tolerance: Millimetres,
): StackVerdict => (atMost(worst, tolerance) ? "holds" : atMost(expected, tolerance) ? "at risk" : "will not hold");
