import { cite } from "../../data/fact.ts";
import { COMMON_SHARE } from "../../data/tolerance-rules.ts";
import { atMost } from "../../units/nearly.ts";
import { type Degrees, type Millimeters, mm, radians } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/** What the shop's own measuring says about its edges, bends and angles, plus and minus. */
export interface Spread {
  readonly edge: Millimeters;
  /** Of one bend's deduction. */
  readonly deduction: Millimeters;
  readonly angle: Degrees;
}

const STACK_VERDICTS = ["holds", "at risk", "will not hold"] as const;
export type StackVerdict = (typeof STACK_VERDICTS)[number];

/**
 * Will a bent dimension keep its tolerance? Edge, deduction of each bend and angle times leg, added up for the worst case.
 * For what is to be expected, the part that the bends of one sheet share adds from bend to bend, and that sum, the
 * bends' own parts, edge and angle add by squares. Worst case within: holds; only the expected within: at risk; else it
 * will not hold. Which deviations count: shop stack (memory); sums: statistics (derived).
 */
export function toleranceStack(
  bends: number,
  leg: Millimeters,
  spread: Spread,
  work?: Working,
): { readonly worst: Millimeters; readonly expected: Millimeters } {
  step(work, "edge", "deviation of a cut edge", spread.edge, "mm", "the shop's own figure (given)");
  step(work, "one", "deviation of one deduction", spread.deduction, "mm", "the shop's own figure (given)");
  step(work, "bends", "bends in the dimension", bends, "", "given");
  const swing = bends > 0 ? leg * Math.tan(radians(spread.angle)) : 0;
  const tilt = step(
    work,
    "tilt",
    "deviation of the angle times the leg it swings",
    mm(swing),
    "mm",
    "leg tan (derived)",
  );
  const parts = [spread.edge, ...Array.from({ length: bends }, () => spread.deduction), tilt];
  const worst = step(
    work,
    "worst",
    "all deviations added: edge, bends x one, tilt",
    mm(parts.reduce((a, b) => a + b, 0)),
    "mm",
    "sum (derived)",
  );
  step(work, "c", "share of a deduction's variance that is the sheet's", COMMON_SHARE.value, "", cite(COMMON_SHARE));
  const shared = bends * Math.sqrt(COMMON_SHARE.value) * spread.deduction;
  const own = Math.sqrt(bends * (1 - COMMON_SHARE.value)) * spread.deduction;
  step(
    work,
    "shared",
    "deductions, what the bends of one sheet have in common",
    mm(shared),
    "mm",
    "bends x sqrt(c) x one (derived)",
  );
  step(work, "own", "deductions, what each bend has for itself", mm(own), "mm", "sqrt(bends (1 - c)) x one (derived)");
  const expected = mm(Math.hypot(spread.edge, shared, own, tilt));
  step(work, "expected", "edge, shared, own and tilt together", expected, "mm", "root of the sum of squares (derived)");
  return { worst, expected };
}

export const judgeStack = (
  { worst, expected }: { readonly worst: Millimeters; readonly expected: Millimeters },
  tolerance: Millimeters,
): StackVerdict => (atMost(worst, tolerance) ? "holds" : atMost(expected, tolerance) ? "at risk" : "will not hold");
