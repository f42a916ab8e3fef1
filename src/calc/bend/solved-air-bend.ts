import type { Material, StripCorrection } from "../../data/materials/material.ts";
import type { Degrees, Millimeters } from "../../units/quantity.ts";
import { remember } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import { type AirTools, mechanicsInput } from "./air-bend.ts";
import { refusePastFaces } from "./loaded-faces.ts";
import type { AirBend } from "./mechanics/air-bend.ts";
import type { AirBendInput } from "./mechanics/air-bend-input.ts";
import { airBendToAngle } from "./mechanics/air-bend-to-angle.ts";
import { type NearestBend, nearestBend } from "./mechanics/nearest-bend.ts";
import { recordBend } from "./mechanics/record-bend.ts";
import { calibrated, STRIPS, stripFor, stripWords } from "./strip-correction.ts";

/** One bend that is asked about. Its material may carry the shop's own test strips. */
export interface AskedBend {
  readonly material: Material;
  readonly thickness: Millimeters;
  readonly bendAngle: Degrees;
  readonly tools: AirTools;
}

export interface SolvedAirBend {
  readonly input: AirBendInput;
  /** With the strength and springback that the shop's strips found, where they hold for it. */
  readonly bend: AirBend;
  /** Without them: what an offset of the neutral axis is counted from. */
  readonly predicted: AirBend;
  readonly strip: StripCorrection | undefined;
  readonly nearest: NearestBend;
}

/** What to do where nobody has compared a bend like this one. */
export const TRY_FIRST = "cut one, bend, measure";

/**
 * One air bend solved by the mechanics, with everything its answer rests on in the working: each input and where it is
 * from, the contact, the shop's own strips and the nearest bend that was compared. Refuses as the solver does; the faces
 * of die and punch are not part of it.
 */
export const solvedAirBend = (asked: AskedBend, work?: Working): SolvedAirBend =>
  work ? solve(asked, work) : solvedKnown(asked);

const MOST_KNOWN = 4096; // chosen: about two megabytes
/** Line after line of a bill asks about the same bend, and so does every check of it. */
const solvedKnown = remember(MOST_KNOWN, (asked: AskedBend) => solve(asked));

function solve({ material, thickness, bendAngle, tools }: AskedBend, work?: Working): SolvedAirBend {
  const plain = mechanicsInput(material, thickness, tools, work);
  const predicted = airBendToAngle(plain, bendAngle);
  const strip = stripFor(material, { thickness, dieOpening: tools.dieOpening, regime: predicted.regime });
  if (strip) step(work, "strips", "the shop's own correction", stripWords(strip), "", STRIPS);
  const input = strip ? calibrated(plain, strip, work) : plain;
  const bend = input === plain ? predicted : airBendToAngle(input, bendAngle, predicted.solution);
  step(work, "A", "bend angle wanted", bendAngle, "deg", "given");
  recordBend(bend, work);
  const nearest = nearestBend(input, bend, notGiven(tools));
  recordNearest(nearest, work);
  return { input, bend, predicted, strip, nearest };
}

/** The same where the tools can make it: #N/A past the faces of die or punch. */
export function feasibleAirBend(asked: AskedBend, work?: Working): SolvedAirBend {
  const solved = solvedAirBend(asked, work);
  refusePastFaces(solved.bend.loadedAngle, asked.tools, work);
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
