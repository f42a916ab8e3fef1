import type { UnitSystem } from "../../../units/system.ts";
import { step, type Working } from "../../../units/working.ts";
import { type Problem, statusOf } from "../../problem.ts";
import { estimateAirBend } from "../air-estimate.ts";
import { flangeProblem } from "./flange.ts";
import { forceProblems } from "./force.ts";
import { holeProblem } from "./hole.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";
import { openingProblem } from "./opening.ts";
import { overbendProblems } from "./overbend.ts";
import { radiusProblem } from "./radius.ts";
import { type Tooling, withRemedies } from "./remedy.ts";
import { roomProblems } from "./room.ts";

/**
 * Does this line bend on this brake, die and punch? Every check that finds something says so with its figure, its limit
 * and the nearest remedy of the shop's own tables. The machine's plate decides; a bracket's load rating is not checked.
 */
export function checkBend(
  line: BendLine,
  setup: Setup,
  tooling: Tooling,
  system: UnitSystem,
  work?: Working,
): Problem[] {
  const found = findProblems(line, setup, system, work);
  const problems = withRemedies(found, line, setup, tooling, (l, s) => problemsUntilStop(l, s, system), system);
  step(
    work,
    "status",
    "worst of all checks",
    statusOf(problems),
    "",
    "clear: no problem found against the tables given",
  );
  return problems;
}

/** The checks alone, in the order they are said. */
export const findProblems = (line: BendLine, setup: Setup, system: UnitSystem, work?: Working): Problem[] => [
  ...problemsOfTools(line, setup, system, work),
  ...problemsOfBend(line, setup, system),
];

/** For a change that is only tried: a set-up that stops anyway is not worth solving the bend for. */
function problemsUntilStop(line: BendLine, setup: Setup, system: UnitSystem): Problem[] {
  const problems = problemsOfTools(line, setup, system);
  return statusOf(problems) === "stop" ? problems : [...problems, ...problemsOfBend(line, setup, system)];
}

/** What tools, brake and flange say; cheap, since no bend is solved for it. */
export const problemsOfTools = (line: BendLine, setup: Setup, system: UnitSystem, work?: Working): Problem[] =>
  [
    ...forceProblems(line, setup, system, work),
    ...roomProblems(line, setup, system),
    flangeProblem(line, setup, system, work),
    openingProblem(line, setup, system),
  ].filter((problem) => problem !== undefined);

/** What the bend itself says: it is solved for this. */
export function problemsOfBend(line: BendLine, setup: Setup, system: UnitSystem): Problem[] {
  const estimate = estimateAirBend(line.material, line.thickness, sharpest(line), setup.die, setup.punch?.nose);
  return [
    radiusProblem(line, estimate, system),
    ...overbendProblems(line, setup, estimate),
    holeProblem(line, setup, estimate, system),
  ].filter((problem) => problem !== undefined);
}
