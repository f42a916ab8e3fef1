import type { Degrees, Megapascals, Millimeters, Ratio } from "../../../units/quantity.ts";
import { Refusal } from "../../../units/refusal.ts";
import { showBoth, showNumber } from "../../../units/show.ts";
import { type Hardening, LARGEST_EXPONENT } from "./hardening.ts";

/** A sheet over an open V die under a punch: everything the mechanics of an air bend needs. */
export interface AirBendInput {
  readonly hardening: Hardening;
  /** Young's modulus E. */
  readonly modulus: Megapascals;
  /** Poisson's ratio nu. */
  readonly poisson: Ratio;
  /** Normal anisotropy r (Lankford); 1, isotropic, when left out. */
  readonly anisotropy?: Ratio;
  readonly thickness: Millimeters;
  /** Die opening V between the theoretical corners, where face and top would meet without the shoulder radius. */
  readonly dieOpening: Millimeters;
  readonly dieShoulder: Millimeters;
  /** Included angle of the V. */
  readonly dieAngle: Degrees;
  readonly punchNose: Millimeters;
  /** Coulomb friction between sheet and die shoulder. */
  readonly friction: Ratio;
}

/** What the solver can take; wider than what was checked, see nearestBend. */
const LIMITS: ReadonlyArray<readonly [string, (input: AirBendInput) => number, number, number, string]> = [
  ["hardening strength", (i) => i.hardening.strength, 10, 5000, " MPa"],
  ["hardening exponent", (i) => i.hardening.exponent, 0.02, LARGEST_EXPONENT, ""],
  ["prestrain", (i) => i.hardening.prestrain ?? 0.001, 1e-6, 0.5, ""],
  ["modulus", (i) => i.modulus, 1e4, 1e6, " MPa"],
  ["poisson", (i) => i.poisson, 0, 0.49, ""],
  ["anisotropy", (i) => i.anisotropy ?? 1, 0.2, 4, ""],
  ["thickness", (i) => i.thickness, 0.05, 100, " mm"],
  ["die_opening over thickness", (i) => i.dieOpening / i.thickness, 2.5, 100, ""],
  ["die_shoulder", (i) => i.dieShoulder, 0, 200, " mm"],
  ["die_angle", (i) => i.dieAngle, 20, 160, " deg"],
  ["punch_nose", (i) => i.punchNose, 0, 500, " mm"],
  ["friction", (i) => i.friction, 0, 0.5, ""],
];

/** Refuses (#VALUE!) the first input that is not a number within what the solver can take. */
export function checkAirBendInput(input: AirBendInput): void {
  for (const [name, read, least, most, unit] of LIMITS) {
    const value = read(input);
    if (!(typeof value === "number" && value >= least && value <= most)) {
      const say = (figure: number) => (unit === " mm" ? showBoth(figure, "length") : `${showNumber(figure)}${unit}`);
      throw new Refusal("#VALUE!", `${name} must be from ${say(least)} to ${say(most)}; got ${say(value)}`);
    }
  }
}
