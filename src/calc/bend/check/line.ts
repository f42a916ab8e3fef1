/** One line of a bill as the bending checks see it, and the set-up it is to be bent with. */
import type { Material } from "../../../data/materials/material.ts";
import { type Degrees, degrees, type Millimeters } from "../../../units/quantity.ts";
import type { OwnThresholds } from "../../limit-of.ts";
import { askedOver } from "../air-estimate.ts";
import type { Grain } from "../minimum-radius.ts";
import type { AskedBend } from "../solved-air-bend.ts";
import type { Brake, Die, Punch } from "../tooling.ts";

export interface BendLine {
  readonly material: Material;
  readonly thickness: Millimeters;
  readonly bendLength: Millimeters;
  /** Outside flanges, one more than bend angles. */
  readonly flanges: readonly Millimeters[];
  /** Signed: a bend the other way needs the same force and gives the same radius. */
  readonly bendAngles: readonly Degrees[];
  /** undefined: not known, judged along. */
  readonly grain?: Grain | undefined;
  /** From the inside face of the other flange to the nearest hole's edge; undefined: no hole, or drilled after. */
  readonly holeDistance?: Millimeters | undefined;
  /** Of the middle of the bend from the middle of the bed; undefined: none. */
  readonly offCenter?: Millimeters | undefined;
}

export interface Setup {
  readonly brake: Brake;
  readonly die: Die;
  /** undefined: the punch, and so its nose, is not known. */
  readonly punch?: Punch | undefined;
  /** What the shop has set for itself; undefined: common practice throughout. */
  readonly own?: OwnThresholds | undefined;
}

/** The sharpest bend decides about flange, springback and faces. */
export const sharpest = ({ bendAngles }: BendLine): Degrees => degrees(Math.max(...bendAngles.map(Math.abs)));

const bends = new WeakMap<BendLine, Map<Die, Map<Punch | undefined, AskedBend>>>();

/**
 * It is what the line's tools are judged by: the same object each time, since every check asks for it again and what is
 * remembered of a bend is found by its content, which of an object that was seen before is known.
 */
export function sharpestBend(line: BendLine, { die, punch }: Pick<Setup, "die" | "punch">): AskedBend {
  const overDies = bends.get(line) ?? new Map<Die, Map<Punch | undefined, AskedBend>>();
  const byPunch = overDies.get(die) ?? new Map<Punch | undefined, AskedBend>();
  const known = byPunch.get(punch);
  if (known) return known;
  const asked = askedOver(line.material, line.thickness, sharpest(line), die, punch?.nose);
  bends.set(line, overDies.set(die, byPunch.set(punch, asked)));
  return asked;
}
