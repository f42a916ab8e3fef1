/** Everything that can be wrong with a bill line: bends, cut, drawing's radius and tolerance. */

import type { MaterialTable } from "../../bill/material-table.ts";
import { checkBend } from "../../calc/bend/check/check.ts";
import { forceCases } from "../../calc/bend/force-cases.ts";
import type { Acceptance } from "../../calc/bend/radius-acceptance.ts";
import { type Problem, STATUSES, sentences, statusOf } from "../../calc/problem.ts";
import { judgeStack, type StackVerdict, toleranceStack } from "../../calc/tolerance/stack.ts";
import type { CellMatrix } from "../../units/cell.ts";
import type { Degrees, Millimetres, Newtons } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { spill } from "../record/spill-columns.ts";
import type { BillLine } from "../tables/bill.ts";
import type { Rates } from "../tables/rates.ts";
import type { TimedShear } from "../tables/shop-tables.ts";
import type { Waterjet } from "../tables/waterjet.ts";
import { type Blank, blankOf } from "./blank.ts";
import { drawingRadius } from "./drawing-radius.ts";
import { shearProblems } from "./routes.ts";
import { isAnswered, outcomes, rowsOf } from "./rows.ts";
import { type BendTools, type Chosen, chooseTools } from "./tools.ts";

/** What is checked against: tools, and where they are there shear, waterjet and the shop's own spreads. */
export interface CheckShop extends BendTools {
  readonly shears: readonly TimedShear[];
  readonly waterjets: readonly Waterjet[];
  readonly rates: Rates;
  readonly materials: MaterialTable;
  readonly system: UnitSystem;
}

export interface LineCheck {
  readonly problems: readonly Problem[];
  readonly chosen: Chosen | undefined;
  readonly blank: Blank;
  readonly force: { readonly expected: Newtons; readonly worst: Newtons } | undefined;
  readonly acceptance: Acceptance | undefined;
  readonly stack: { readonly verdict: StackVerdict | undefined; readonly worst: Millimetres | undefined } | undefined;
}

export function checkLine(line: BillLine, shop: CheckShop, work?: Working): LineCheck {
  const { system } = shop;
  const chosen = chooseTools(line, shop, system);
  const blank = blankOf(line, chosen, system);
  const bending = chosen ? bendProblems(chosen, shop, work) : [];
  const radius = chosen && drawingRadius(line, chosen.setup, system);
  const tolerance = toleranceFinding(line, shop, work);
  const problems = [
    ...bending,
    ...cutProblems(line, blank, shop),
    ...(radius?.problem ? [radius.problem] : []),
    ...(tolerance?.problem ? [tolerance.problem] : []),
  ];
  step(work, "status", `${line.part}: worst of all checks`, statusOf(problems), "", "clear: no problem found");
  return {
    problems,
    chosen,
    blank,
    force: chosen && largestForce(chosen),
    acceptance: radius?.verdict,
    stack: tolerance && { verdict: tolerance.verdict, worst: tolerance.worst },
  };
}

/** Both directions of a tray may find the same thing: the worse of two that say the same check is kept. */
function bendProblems({ setup, bends }: Chosen, shop: CheckShop, work?: Working): Problem[] {
  const all = bends.map((bend) => checkBend(bend, setup, shop, shop.system, work));
  const [main = [], cross = []] = all;
  const found = new Map(main.map((problem) => [problem.check, problem]));
  for (const problem of cross) {
    const known = found.get(problem.check);
    if (!known || rank(problem) > rank(known)) found.set(problem.check, problem);
  }
  return [...found.values()];
}

const rank = (problem: Problem): number => STATUSES.indexOf(statusOf([problem]));

/** A cut that only the waterjet can make is no stop in a shop that has one, unless the line is pinned to the shear. */
function cutProblems(line: BillLine, blank: Blank, shop: CheckShop): Problem[] {
  if (shop.shears.length === 0 || line.pin === "waterjet") return [];
  const jet = line.pin === "shear" ? undefined : shop.waterjets[0];
  return shearProblems(line, blank, shop).map((problem) =>
    problem.severity === "stop" && jet
      ? { ...problem, severity: "check", remedy: `Cut it on the waterjet ${jet.name}.` }
      : problem,
  );
}

function toleranceFinding(
  line: BillLine,
  shop: CheckShop,
  work?: Working,
): { verdict: StackVerdict | undefined; worst: Millimetres | undefined; problem: Problem | undefined } | undefined {
  if (line.tolerance === undefined) return undefined;
  try {
    return judgeTolerance(line, line.tolerance, shop, work);
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    // The shop has not said how well it holds a size: that is no fault of the part.
    const message = `The drawing's tolerance is not judged: ${problem.message}.`;
    return { verdict: undefined, worst: undefined, problem: { check: "tolerance", severity: "check", message } };
  }
}

function judgeTolerance(line: BillLine, tolerance: Millimetres, { rates, system }: CheckShop, work?: Working) {
  const bends = line.main.angles.length;
  const spread = {
    edge: rates.get(line.pin === "waterjet" ? "cutEdge" : "shearedEdge") as Millimetres,
    deduction: (bends > 0 ? rates.get("deductionSpread") : 0) as Millimetres,
    angle: (bends > 0 ? rates.get("angleSpread") : 0) as Degrees,
  };
  const stack = toleranceStack(bends, Math.max(...line.main.flanges) as Millimetres, spread, work);
  const verdict = judgeStack(stack, tolerance);
  const atRisk = verdict === "at risk";
  const says = (value: Millimetres) => show(value, "length", system, 2);
  const problem: Problem = {
    check: "tolerance",
    severity: atRisk ? "check" : "stop",
    value: atRisk ? stack.worst : stack.expected,
    limit: tolerance,
    quantity: "length",
    message: `The drawing allows plus and minus ${says(tolerance)}; edge, bends and angle come to ${says(stack.expected)} as a rule, ${says(stack.worst)} at worst.`,
    remedy: atRisk
      ? "Measure the first pieces and correct the gauge."
      : "Ask for a wider tolerance, or measure and sort.",
  };
  return { verdict, worst: stack.worst, problem: verdict === "holds" ? undefined : problem };
}

/** The bend that needs the most. */
export function largestForce({ bends, setup }: Chosen): { expected: Newtons; worst: Newtons } {
  const cases = bends.map(({ material, thickness, bendLength }) =>
    forceCases(material, thickness, bendLength, setup.die.opening),
  );
  return cases.reduce((a, b) => (b.expected > a.expected ? b : a));
}

export function billCheck(shop: CheckShop, work?: Working): CellMatrix {
  const found = outcomes(shop.bill, (line) => checkLine(line, shop, work));
  const all = found.filter(isAnswered).flatMap(({ answer }) => answer.problems);
  step(work, "status", "worst of all lines", statusOf(all), "", "clear: no problem found against the tables given");
  const rows = rowsOf(found, (line, { problems, chosen, blank, force, acceptance, stack }) => ({
    Part: line.part,
    Status: statusOf(problems),
    Sentence: sentences(problems),
    Die: chosen?.setup.die.name,
    Punch: chosen?.setup.punch?.name,
    Radius: blank.radius,
    Force: force?.expected,
    "Worst force": force?.worst,
    "Drawing radius": acceptance,
    Tolerance: stack?.verdict,
    "Worst spread": stack?.worst,
    "Drawing tolerance": line.tolerance,
  }));
  return spill("BILL.CHECK", rows, shop.system);
}
