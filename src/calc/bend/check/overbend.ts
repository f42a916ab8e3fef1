import { BOTTOMING_HIGH, BOTTOMING_LOW, FACE_CLEARANCE, FACE_CLEARANCE_SAFE } from "../../../data/bend-rules.ts";
import { atLeast } from "../../../units/nearly.ts";
import type { Degrees } from "../../../units/quantity.ts";
import { showNumber } from "../../../units/show.ts";
import type { Problem } from "../../problem.ts";
import type { AirEstimate } from "../air-estimate.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/**
 * The sheet must be bent further than wanted by its springback, and must stay 1-2 degrees short of the faces of die and
 * punch: else it bottoms, needs 3-5 times the force, and the angle is never reached (common practice).
 */
export function overbendProblems(line: BendLine, { die, punch }: Setup, { springback }: AirEstimate): Problem[] {
  if (springback === undefined)
    return [
      {
        check: "overbend",
        severity: "note",
        message: `Springback of ${line.material.name} is not known: its strength or modulus is missing.`,
      },
    ];
  const loaded = (sharpest(line) + springback) as Degrees;
  const against = (check: string, what: string, toolAngle: Degrees): Problem | undefined => {
    const room = 180 - toolAngle - loaded;
    if (atLeast(room, FACE_CLEARANCE_SAFE.value)) return undefined;
    const stops = room < FACE_CLEARANCE.value;
    const included = `${showNumber(180 - loaded, 3)} deg included under load (springback about ${showNumber(springback, 2)} deg)`;
    return {
      check,
      severity: stops ? "stop" : "check",
      value: loaded,
      limit: 180 - toolAngle - FACE_CLEARANCE_SAFE.value,
      quantity: "angle",
      message: stops
        ? `Bends to ${included}; ${what} has ${showNumber(toolAngle)} deg: the sheet bottoms, needs ${BOTTOMING_LOW.value}-${BOTTOMING_HIGH.value} times the force and does not reach its angle.`
        : `Bends to ${included}, within 2 deg of ${what} (${showNumber(toolAngle)} deg): it may bottom.`,
    };
  };
  return [
    against("die angle", `die ${die.name}`, die.angle),
    punch && against("punch angle", `punch ${punch.name}`, punch.angle),
  ].filter((problem) => problem !== undefined);
}
