import { OPENING_USUAL } from "../../../data/bend-rules.ts";
import type { UnitSystem } from "../../../units/system.ts";
import { type Problem, STATUSES, statusOf } from "../../problem.ts";
import { problemsOfBend, problemsOfTools } from "../check/check.ts";
import { flangeProblem } from "../check/flange.ts";
import type { BendLine, Setup } from "../check/line.ts";
import { openingProblem } from "../check/opening.ts";
import type { Brake, Die, Punch } from "../tooling.ts";

export interface Chosen {
  readonly setup: Setup;
  /** Every bent strip of the part: one, or two where it is bent both ways. */
  readonly bends: readonly BendLine[];
  readonly problems: readonly Problem[];
}

export const offUsual = ({ setup, bends }: Chosen): number => fromUsual(setup.die, bends[0]!);

/** How far the die's opening is from the usual one for the thickness: a ratio's logarithm, 0 at the usual. */
export const fromUsual = (die: Die, { thickness }: Pick<BendLine, "thickness">): number =>
  Math.abs(Math.log(die.opening / (OPENING_USUAL.value * thickness)));

/**
 * The pairs of die and punch that a part can be bent with: dies in the order in which their opening is nearest to 8
 * thicknesses (common practice), with each punch in the order given. All pairs without a problem, where there is one; else the
 * one pair whose problems are least. Empty where there is nothing to bend or nothing to bend it with.
 * @param more what else is to be asked of a pair, such as the drawing's radius; decides between pairs without a problem.
 */
export function toolOptions(
  bends: readonly BendLine[],
  brake: Brake,
  dies: readonly Die[],
  punches: readonly Punch[],
  system: UnitSystem,
  more: (setup: Setup) => boolean = () => true,
): readonly Chosen[] {
  if (bends.length === 0) return [];
  const clear: Chosen[] = [];
  let best: Chosen | undefined;
  for (const die of [...dies].sort((a, b) => fromUsual(a, bends[0]!) - fromUsual(b, bends[0]!))) {
    // What die and flange say holds with any punch.
    const bare = { brake, die };
    const ofDie = bends.flatMap((bend) => [openingProblem(bend, bare, system), flangeProblem(bend, bare, system)]);
    const least = rank(ofDie.filter((problem) => problem !== undefined));
    for (const punch of punches) {
      if (best && least > 0 && least >= rank(best.problems)) break;
      const setup = { ...bare, punch };
      const cheap = bends.flatMap((bend) => problemsOfTools(bend, setup, system));
      // A pair with a problem is not worth solving the bend for while there is one that is no worse.
      if (best && rank(cheap) > 0 && rank(cheap) >= rank(best.problems)) continue;
      const problems = [...cheap, ...bends.flatMap((bend) => problemsOfBend(bend, setup, system))];
      const chosen = { setup, bends, problems };
      if (!best || rank(problems) < rank(best.problems)) best = chosen;
      if (rank(problems) === 0) clear.push(chosen);
    }
  }
  const wanted = clear.filter(({ setup }) => more(setup));
  if (wanted.length > 0) return wanted;
  if (clear.length > 0) return clear;
  return best ? [best] : [];
}

const rank = (problems: readonly Problem[]): number => STATUSES.indexOf(statusOf(problems));
