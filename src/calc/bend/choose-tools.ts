import { OPENING_USUAL } from "../../data/bend-rules.ts";
import type { UnitSystem } from "../../units/system.ts";
import { type Problem, STATUSES, statusOf } from "../problem.ts";
import { problemsOfBend, problemsOfTools } from "./check/check.ts";
import { flangeProblem } from "./check/flange.ts";
import type { BendLine, Setup } from "./check/line.ts";
import { openingProblem } from "./check/opening.ts";
import type { Brake, Die, Punch } from "./tooling.ts";

export interface Chosen {
  readonly setup: Setup;
  /** Every bent strip of the part: one, or two where it is bent both ways. */
  readonly bends: readonly BendLine[];
  readonly problems: readonly Problem[];
}

/**
 * Die and punch for a part: dies in the order in which their opening is nearest to 8 thicknesses (common practice), with
 * each punch in the order given; the first pair without a problem, else the one whose problems are least. undefined where
 * there is nothing to bend or nothing to bend it with.
 */
export function chooseTools(
  bends: readonly BendLine[],
  brake: Brake,
  dies: readonly Die[],
  punches: readonly Punch[],
  system: UnitSystem,
): Chosen | undefined {
  if (bends.length === 0) return undefined;
  const wanted = OPENING_USUAL.value * bends[0]!.thickness;
  const distance = (die: Die) => Math.abs(Math.log(die.opening / wanted));
  let best: Chosen | undefined;
  for (const die of [...dies].sort((a, b) => distance(a) - distance(b))) {
    // What die and flange say holds with any punch.
    const bare = { brake, die };
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
