import type { Material } from "../../data/materials/material.ts";
import type { Degrees, Millimetres } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { type AirTools, mechanicsInput } from "./air-bend.ts";
import { refusePastFaces } from "./loaded-faces.ts";
import type { AirBend } from "./mechanics/air-bend.ts";
import type { AirBendInput } from "./mechanics/air-bend-input.ts";
import { airBendToAngle } from "./mechanics/air-bend-to-angle.ts";
import { type NearestBend, nearestBend } from "./mechanics/nearest-bend.ts";
import { recordBend } from "./mechanics/record-bend.ts";

export interface SolvedAirBend {
  readonly input: AirBendInput;
  readonly bend: AirBend;
  readonly nearest: NearestBend;
}

/** What to do where nobody has compared a bend like this one. */
export const TRY_FIRST = "cut one, bend, measure";

/**
 * One air bend solved by the mechanics, with everything its answer rests on in the working: each input and where it is
 * from, the contact, and the nearest bend that was compared. Refuses as the solver does; the faces of die and punch are
 * not part of it.
 */
export function solvedAirBend(
  material: Material,
  thickness: Millimetres,
  bendAngle: Degrees,
  tools: AirTools,
  work?: Working,
  asMeasured: (input: AirBendInput) => AirBendInput = (input) => input,
): SolvedAirBend {
  const input = asMeasured(mechanicsInput(material, thickness, tools, work));
  const bend = airBendToAngle(input, bendAngle);
  step(work, "A", "bend angle wanted", bendAngle, "deg", "given");
  recordBend(bend, work);
  const nearest = nearestBend(input, bendAngle, notGiven(tools));
  recordNearest(nearest, work);
  return { input, bend, nearest };
}

/** The same where the tools can make it: #N/A past the faces of die or punch. */
export function feasibleAirBend(...bend: Parameters<typeof solvedAirBend>): SolvedAirBend {
  const solved = solvedAirBend(...bend);
  const [, , , tools, work] = bend;
  refusePastFaces(solved.bend.loadedAngle, tools, work);
  return solved;
}

const notGiven = ({ dieShoulder, dieAngle, friction }: AirTools) => ({
  shoulder: dieShoulder === undefined,
  dieAngle: dieAngle === undefined,
  friction: friction === undefined,
});

export const nearestWords = ({ id, distance, inside, difference }: NearestBend): string =>
  `${inside ? "inside" : `outside, ${TRY_FIRST}`}: distance ${distance.toFixed(2)} to ${id} (${difference})`;

export function recordNearest(nearest: NearestBend, work: Working | undefined): void {
  const source = "joint distance to the nearest compared bend, inside up to 1 (scales chosen)";
  step(work, "d", `compared, ${nearestWords(nearest)}`, nearest.distance, "", source);
}
