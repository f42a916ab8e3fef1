import { radians } from "../../../units/quantity.ts";
import { type AirBendInput, checkAirBendInput } from "./air-bend-input.ts";
import { type Section, type SectionPath, section } from "./section.ts";

/** What stays the same through one bend's stroke, in millimeters and radians. Half of the symmetric bend. */
export interface BendSetup {
  readonly section: Section;
  /** Section path to the curvature of the sheet's middle line wrapped around the nose. */
  readonly nosePath: SectionPath;
  /** Radius of the middle line around the punch nose. */
  readonly noseRadius: number;
  /** Radius of the middle line around the die shoulder. */
  readonly shoulderRadius: number;
  readonly dieOpening: number;
  readonly dieShoulder: number;
  /** From the center of the die to the center of its shoulder arc. */
  readonly shoulderCenter: number;
  readonly friction: number;
  readonly frictionAngle: number;
  /** Loaded half angle no pose reaches: there nose and shoulder would nip the sheet, or the flanges stand upright. */
  readonly largestHalfAngle: number;
}

// Keeps the free arm from vanishing, where a beam says nothing any more: 2 % of the way to the nip, 2 degrees to upright.
export const LEAST_ARM = 0.02;
const NIP = 1 - LEAST_ARM;
export const UPRIGHT = (88 * Math.PI) / 180;

/** Reads an input, refusing (#VALUE!) what the solver cannot take. Shoulder arc center V/2 + rd tan(45 - dieAngle/4). */
export function bendSetup(input: AirBendInput): BendSetup {
  checkAirBendInput(input);
  const sheet = section(input);
  const noseRadius = input.punchNose + input.thickness / 2;
  const shoulderRadius = input.dieShoulder + input.thickness / 2;
  const shoulderCenter = input.dieOpening / 2 + input.dieShoulder * Math.tan(Math.PI / 4 - radians(input.dieAngle) / 4);
  const nip = (NIP * shoulderCenter) / (noseRadius + shoulderRadius);
  return {
    section: sheet,
    nosePath: sheet.pathTo(1 / noseRadius),
    noseRadius,
    shoulderRadius,
    dieOpening: input.dieOpening,
    dieShoulder: input.dieShoulder,
    shoulderCenter,
    friction: input.friction,
    frictionAngle: Math.atan(input.friction),
    largestHalfAngle: Math.min(UPRIGHT, nip < 1 ? Math.asin(nip) : UPRIGHT),
  };
}
