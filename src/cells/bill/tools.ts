/** Die and punch of a line: the ones it names, else the shop's own that come out best. */
import { problemsOfBend, problemsOfTools } from "../../calc/bend/check/check.ts";
import { flangeProblem } from "../../calc/bend/check/flange.ts";
import type { BendLine, Setup } from "../../calc/bend/check/line.ts";
import { openingProblem } from "../../calc/bend/check/opening.ts";
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import type { Die, Punch } from "../../calc/bend/tooling.ts";
import { type Problem, STATUSES, statusOf } from "../../calc/problem.ts";
import { OPENING_USUAL } from "../../data/bend-rules.ts";
import { degrees } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { BillLine, Strip } from "../tables/bill.ts";
import { findDie, findPunch } from "../tables/find-tool.ts";
import type { TimedBrake } from "../tables/shop-tables.ts";

export interface BendTools {
  readonly brakes: readonly TimedBrake[];
  readonly dies: readonly Die[];
  readonly punches: readonly Punch[];
}

export interface Chosen {
  readonly setup: Setup;
  /** Every bent strip of the line as the bending checks see it. */
  readonly bends: readonly BendLine[];
  readonly problems: readonly Problem[];
}

/** Strips with bends; the bill's grain is that of the main strip's bend lines, the cross strip's lie the other way. */
export function bendLines(line: BillLine): BendLine[] {
  const turned: Grain | undefined = line.grain === undefined ? undefined : line.grain === "across" ? "along" : "across";
  return [
    ...bent(line, line.main, line.grain, line.holes > 0 ? line.holeDistance : undefined),
    ...(line.cross ? bent(line, line.cross, turned, undefined) : []),
  ];
}

const bent = (
  { material, thickness }: BillLine,
  { flanges, angles, bendLength }: Strip,
  grain: Grain | undefined,
  holeDistance: BendLine["holeDistance"],
): BendLine[] =>
  angles.length === 0
    ? []
    : [
        {
          material,
          thickness,
          bendLength,
          flanges,
          bendAngles: angles.map((angle) => degrees(Math.abs(angle))),
          grain,
          holeDistance,
        },
      ];

/**
 * The dies in the order in which their opening is nearest to 8 thicknesses (common practice), with each punch in the
 * order of its table; the first pair without a problem is taken, else the one with the least. undefined for a flat part.
 */
export function chooseTools(line: BillLine, tools: BendTools, system: UnitSystem): Chosen | undefined {
  const bends = bendLines(line);
  if (bends.length === 0) return undefined;
  const wanted = OPENING_USUAL.value * line.thickness;
  const distance = (die: Die) => Math.abs(Math.log(die.opening / wanted));
  const dies =
    line.die === undefined
      ? [...tools.dies].sort((a, b) => distance(a) - distance(b))
      : [findDie(line.die, tools.dies, system)];
  const punches = line.punch === undefined ? tools.punches : [findPunch(line.punch, tools.punches)!];
  let best: Chosen | undefined;
  for (const die of dies) {
    // What die and flange say holds with any punch.
    const bare = { brake: tools.brakes[0]!, die };
    const ofDie = bends.flatMap((bend) => [openingProblem(bend, bare, system), flangeProblem(bend, bare, system)]);
    const least = rank(ofDie.filter((problem) => problem !== undefined));
    for (const punch of punches) {
      if (best && least >= rank(best.problems)) break;
      const setup = { ...bare, punch };
      const cheap = bends.flatMap((bend) => problemsOfTools(bend, setup, system));
      // A pair that stops anyway is not worth solving the bend for while there is one that is no worse.
      if (best && rank(cheap) >= rank(best.problems)) continue;
      const problems = [...cheap, ...bends.flatMap((bend) => problemsOfBend(bend, setup, system))];
      if (!best || rank(problems) < rank(best.problems)) best = { setup, bends, problems };
      if (rank(problems) === 0) return best;
    }
  }
  return best;
}

const rank = (problems: readonly Problem[]): number => STATUSES.indexOf(statusOf(problems));

/** Lines with the same key stand on the same tools. */
export const toolsKey = ({ setup: { die, punch } }: Chosen): string => `${die.name} | ${punch?.name ?? ""}`;
