/** Which blanks no sheet can give, and the limit that forbids each: the one that, lifted alone, would let it be cut. */
import { mm } from "../../units/quantity.ts";
import { showBoth } from "../../units/show.ts";
import { buildProblem } from "./build-problem.ts";
import { patternAlone } from "./pattern-alone.ts";
import type { Problem } from "./problem.ts";
import type { Blank, Limits, PlanOptions, Stock } from "./types.ts";

const fitsSomewhere = (problem: Problem, item: number): boolean =>
  problem.sheets.some((kind, s) => kind.available >= 1 && patternAlone(problem, item, s) !== null);

const LIFTED: readonly { name: string; lift: Partial<Limits> }[] = [
  { name: "longest cut", lift: { longestCut: mm(Infinity) } },
  { name: "gauge reach", lift: { reach: mm(Infinity), cutToMark: true } },
  { name: "least drop", lift: { leastDrop: mm(0), nearestGauge: mm(0) } },
  { name: "least hold-down", lift: { leastHold: mm(0) } },
  { name: "least trim", lift: { leastTrim: mm(0), thickness: mm(0) } },
  { name: "twist limit", lift: { twistWidth: 0, twistLength: 0 } },
  { name: "heaviest lift", lift: { heaviestLift: Infinity } },
];
const NO_SHEAR = Object.assign({}, ...LIFTED.map(({ lift }) => lift)) as Partial<Limits>;

/** Reason per blank, null where it can be cut. */
export function impossibleReasons(
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
  options: PlanOptions,
): (string | null)[] {
  const problem = buildProblem(blanks, stock, limits, options);
  return blanks.map((blank, i) => {
    if (fitsSomewhere(problem, i)) return null;
    const possible = (change: Partial<Limits>, grain = blank.grain) =>
      fitsSomewhere(buildProblem([{ ...blank, grain }], stock, { ...limits, ...change }, options), 0);
    const size = `${showBoth(blank.w, "length")} x ${showBoth(blank.h, "length")}`;
    if (!possible(NO_SHEAR, "free")) return `${size} is larger than every sheet on stock after its edge trims`;
    if (!possible(NO_SHEAR)) return `${size} fits its sheet only across the grain it must keep`;
    const guilty = LIFTED.find(({ lift }) => possible(lift));
    return guilty
      ? `${size} breaks the shear's ${guilty.name}`
      : `${size} breaks several limits of the shear at once: ${LIFTED.map(({ name }) => name).join(", ")}`;
  });
}
