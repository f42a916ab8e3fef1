import type { Newtons, NewtonsPerMillimetre } from "../../../units/quantity.ts";
import { show, showForce } from "../../../units/show.ts";
import type { UnitSystem } from "../../../units/system.ts";
import type { Working } from "../../../units/working.ts";
import type { Problem } from "../../problem.ts";
import { type ForceCases, forceCases } from "../force-cases.ts";
import { lineLoadLimit } from "../line-load.ts";
import type { BendLine, Setup } from "./line.ts";

/** Three verdicts: within; worst case over ("check"); over ("stop"). Against the rating, the beam, punch and die. */
export function forceProblems(
  line: BendLine,
  { brake, die, punch }: Setup,
  system: UnitSystem,
  work?: Working,
): Problem[] {
  const cases = forceCases(line.material, line.thickness, line.bendLength, die.opening, work);
  const load = { expected: cases.expected / line.bendLength, worst: cases.worst / line.bendLength };
  const perLength = (check: string, what: string, limit: NewtonsPerMillimetre | undefined): Problem | undefined =>
    limit === undefined ? undefined : lineLoadProblem(check, what, load, limit, system);
  return [
    totalProblem(cases, brake.name, brake.ratedForce, system),
    perLength(
      "force per length",
      `the beam of ${brake.name} (rating over 60 % of the distance between its housings)`,
      lineLoadLimit(brake, work),
    ),
    perLength("punch rating", `punch ${punch?.name}`, punch?.rating),
    perLength("die rating", `die ${die.name}`, die.rating),
  ].filter((problem) => problem !== undefined);
}

function totalProblem(
  { expected, worst }: ForceCases,
  brake: string,
  rated: Newtons,
  system: UnitSystem,
): Problem | undefined {
  if (worst <= rated) return undefined;
  const over = expected > rated;
  return {
    check: "force",
    severity: over ? "stop" : "check",
    value: over ? expected : worst,
    limit: rated,
    quantity: "force",
    message: `Needs about ${showForce(expected, system)}, ${showForce(worst, system)} with a strong and thick sheet; ${brake} is rated ${showForce(rated, system)}.`,
  };
}

function lineLoadProblem(
  check: string,
  what: string,
  load: { expected: number; worst: number },
  limit: number,
  system: UnitSystem,
): Problem | undefined {
  if (load.worst <= limit) return undefined;
  const over = load.expected > limit;
  return {
    check,
    severity: over ? "stop" : "check",
    value: over ? load.expected : load.worst,
    limit,
    quantity: "lineLoad",
    message: `Loads ${what} with about ${show(load.expected, "lineLoad", system, 2)}, ${show(load.worst, "lineLoad", system, 2)} at worst; the limit is ${show(limit, "lineLoad", system, 2)}.`,
  };
}
