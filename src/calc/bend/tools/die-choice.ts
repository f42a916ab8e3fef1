import type { Degrees, Millimetres } from "../../../units/quantity.ts";
import type { UnitSystem } from "../../../units/system.ts";
import { type Problem, STATUSES, type Status, statusOf } from "../../problem.ts";
import { type AirEstimate, estimateAirBend } from "../air-estimate.ts";
import { findProblems } from "../check/check.ts";
import { type BendLine, sharpest } from "../check/line.ts";
import { type ForceCases, forceCases } from "../force-cases.ts";
import { safeFlange } from "../minimum-flange.ts";
import type { Brake, Die, Punch } from "../tooling.ts";
import { fromUsual } from "./choose-tools.ts";

export interface DieAnswer {
  readonly die: Die;
  readonly status: Status;
  readonly estimate: AirEstimate;
  readonly leastFlange: Millimetres;
  readonly force: ForceCases;
  /** Room between the loaded sheet and the die's faces; undefined where springback is not known. */
  readonly faceRoom: Degrees | undefined;
  readonly problems: readonly Problem[];
}

/**
 * Every die the shop owns for this bend, best first: by status, then by how near the opening is to 8 thicknesses
 * (common practice).
 */
export function rankDies(
  line: BendLine,
  dies: readonly Die[],
  brake: Brake,
  punch: Punch | undefined,
  system: UnitSystem,
): DieAnswer[] {
  const distance = ({ die }: DieAnswer) => fromUsual(die, line);
  return dies
    .map((die): DieAnswer => {
      const estimate = estimateAirBend(line.material, line.thickness, sharpest(line), die, punch?.nose);
      const problems = findProblems(line, { brake, die, punch }, system);
      return {
        die,
        problems,
        status: statusOf(problems),
        estimate,
        leastFlange: safeFlange(line.thickness, die.opening, sharpest(line), die.shoulder, system),
        force: forceCases(line.material, line.thickness, line.bendLength, die.opening),
        faceRoom:
          estimate.springback === undefined
            ? undefined
            : ((180 - die.angle - sharpest(line) - estimate.springback) as Degrees),
      };
    })
    .sort((a, b) => STATUSES.indexOf(a.status) - STATUSES.indexOf(b.status) || distance(a) - distance(b));
}
