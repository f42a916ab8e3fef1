import { type Millimeters, mm, newtonsPerMillimeter } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { show } from "../../units/show.ts";
import { step, type Working } from "../../units/working.ts";
import { lineLoadLimit } from "./line-load.ts";
import { type AirBend, bendForce, type ForceMethod } from "./tonnage.ts";
import type { Brake } from "./tooling.ts";

const UNIT_LENGTH = mm(1);

/**
 * Longest bend of this sheet over this die that stays within the brake's rating and bed. #N/A where even a short bend
 * loads the beam above rating / (0.6 x distance between housings). Source: force formulas of tonnage.ts, common practice.
 */
export function maximumLength(
  bend: Omit<AirBend, "bendLength">,
  brake: Brake,
  method: ForceMethod,
  work?: Working,
): Millimeters {
  const perLength = newtonsPerMillimeter(bendForce({ ...bend, bendLength: UNIT_LENGTH }, method, work));
  const limit = lineLoadLimit(brake, work);
  if (perLength > limit)
    throw noAnswer(
      "die_opening",
      `wide enough for a force per length of at most ${show(limit, "lineLoad", "in")} on ${brake.name}`,
      show(perLength, "lineLoad", "in"),
      "take a wider die or a bigger brake",
    );
  const byForce = step(
    work,
    "L force",
    "length at the rated force",
    mm(brake.ratedForce / perLength),
    "mm",
    "rating / force per length (derived)",
  );
  return step(
    work,
    "L max",
    "longest bend, never above the bed",
    mm(Math.min(byForce, brake.bedLength)),
    "mm",
    "the smaller of force and bed",
  );
}
