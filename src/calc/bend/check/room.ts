import { atMost } from "../../../units/nearly.ts";
import { show } from "../../../units/show.ts";
import type { UnitSystem } from "../../../units/system.ts";
import type { Problem, Severity } from "../../problem.ts";
import type { BendLine, Setup } from "./line.ts";

/** Is there bed, tool and frame enough for the length of the bend? */
export function roomProblems({ bendLength }: BendLine, { brake, die, punch }: Setup, system: UnitSystem): Problem[] {
  const longer = (check: string, severity: Severity, limit: number | undefined, what: string): Problem | undefined =>
    limit === undefined || atMost(bendLength, limit)
      ? undefined
      : {
          check,
          severity,
          value: bendLength,
          limit,
          quantity: "length",
          message: `The bend is ${show(bendLength, "length", system)} long; ${what} ${show(limit, "length", system)}.`,
        };
  const bed = longer("bed length", "stop", brake.bedLength, `the bed of ${brake.name} has`);
  return [
    bed,
    bed
      ? undefined
      : longer(
          "between housings",
          "check",
          brake.betweenHousings,
          `its ends load ${brake.name} outside the housings, which stand`,
        ),
    longer("die length", "stop", die.length, `die ${die.name} has`),
    longer("punch length", "stop", punch?.length, `punch ${punch?.name} has`),
  ].filter((problem) => problem !== undefined);
}
