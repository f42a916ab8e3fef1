import { OPENING_USUAL } from "../../../data/bend-rules.ts";
import type { Degrees, Millimeters } from "../../../units/quantity.ts";
import type { UnitSystem } from "../../../units/system.ts";
import { type Finding, STATUSES, type Status, statusOf } from "../../finding.ts";
import { type AirEstimate, estimateAirBend } from "../air-estimate.ts";
import { checkBend } from "../check/check.ts";
import { leastFlange } from "../check/flange.ts";
import { type BendLine, sharpest, sharpestBend } from "../check/line.ts";
import { type ForceCases, forceCases } from "../force-cases.ts";
import type { Brake, Die, Punch } from "../tooling.ts";

interface DieAnswer {
  readonly die: Die;
  readonly status: Status;
  readonly estimate: AirEstimate;
  readonly leastFlange: Millimeters;
  readonly force: ForceCases;
  /** Room between the loaded sheet and the die's faces; undefined where springback is not known. */
  readonly faceRoom: Degrees | undefined;
  readonly findings: readonly Finding[];
}

/** How far the die's opening is from the usual one for the thickness: a ratio's logarithm, 0 at the usual. */
export const fromUsual = (die: Die, thickness: Millimeters): number =>
  Math.abs(Math.log(die.opening / (OPENING_USUAL.value * thickness)));

/**
 * Every die the shop owns for this bend, best first: by status, then by how near the opening is to 8 thicknesses
 * (common practice), then by name.
 */
export function rankDies(
  line: BendLine,
  dies: readonly Die[],
  brake: Brake,
  punch: Punch | undefined,
  system: UnitSystem,
): DieAnswer[] {
  const distance = ({ die }: DieAnswer) => fromUsual(die, line.thickness);
  return dies
    .map((die): DieAnswer => {
      const bend = sharpestBend(line, { die, punch });
      const estimate = estimateAirBend(bend);
      const findings = checkBend(line, { brake, die, punch }, system);
      return {
        die,
        findings,
        status: statusOf(findings),
        estimate,
        leastFlange: leastFlange(line, die.opening, die.shoulder, system),
        force: forceCases(bend, line.bendLength),
        faceRoom:
          estimate.springback === undefined
            ? undefined
            : ((180 - die.angle - sharpest(line) - estimate.springback) as Degrees),
      };
    })
    .sort(
      (a, b) =>
        STATUSES.indexOf(a.status) - STATUSES.indexOf(b.status) ||
        distance(a) - distance(b) ||
        (a.die.name < b.die.name ? -1 : 1),
    );
}
