import {
  FORCE_GROOVER,
  FORCE_LANGE,
  FORCE_US_SHOP,
  FORCE_US_SHOP_TENSILE,
  LANGE_OPENING,
  LANGE_THICKNESS_MM,
} from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type Megapascals, type Millimeters, type Newtons, newtons } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showBoth, showNumber } from "../../units/show.ts";
import { MM_PER_INCH, MPA_PER_KSI, NEWTONS_PER_US_TON } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";

export const FORCE_METHODS = ["Lange", "Groover", "US shop", "highest"] as const;
export type ForceMethod = (typeof FORCE_METHODS)[number];

export interface AirBend {
  readonly thickness: Millimeters;
  readonly bendLength: Millimeters;
  readonly dieOpening: Millimeters;
  readonly tensile: Megapascals;
  /** Lange's formula is for steel; on other metals it is an extrapolation, and the working says so. */
  readonly isSteel: boolean;
}

/**
 * Largest force of an air bend in a V die, all three of the form factor x UTS L t^2 / V:
 * "Groover" factor 1.33 (5e eq. 19.8, read); "Lange" factor 1 + 4 t/V (Umformtechnik Bd. 3 after Oehler, read in
 * restatement; steel 0.5-10 mm, V/t 5-20, else #N/A); "US shop" 575 t^2/V tons per foot at 60 ksi (common practice,
 * memory); "highest" the greatest of them, Lange continued past its range so that no thicker sheet ever needs less.
 */
export function bendForce(bend: AirBend, method: ForceMethod, work?: Working): Newtons {
  if (method === "highest") {
    const all = [continuedLangeForce, grooverForce, shopForce].map((formula) => formula(bend, work));
    return step(work, "F max", "highest of the formulas", newtons(Math.max(...all)), "N", "derived");
  }
  return { Lange: langeForce, Groover: grooverForce, "US shop": shopForce }[method](bend, work);
}

function grooverForce(bend: AirBend, work?: Working): Newtons {
  const factor = step(work, "Kbf", "factor for a V die", FORCE_GROOVER.value, "", cite(FORCE_GROOVER));
  return force(bend, factor, cite(FORCE_GROOVER), work);
}

function langeForce(bend: AirBend, work?: Working): Newtons {
  const { thickness, dieOpening } = bend;
  const { from, to } = LANGE_THICKNESS_MM;
  if (!atLeast(thickness, from) || !atMost(thickness, to))
    throw noAnswer(
      "thickness",
      `${from} to ${to} mm (${showNumber(from / MM_PER_INCH)} to ${showNumber(to / MM_PER_INCH)} in) for method "Lange"`,
      showBoth(thickness, "length"),
      'use method "Groover", "US shop" or "highest"',
    );
  const openings = dieOpening / thickness;
  if (!atLeast(openings, LANGE_OPENING.from) || !atMost(openings, LANGE_OPENING.to))
    throw noAnswer(
      "die_opening",
      `${LANGE_OPENING.from} to ${LANGE_OPENING.to} times the thickness for method "Lange"`,
      `${showNumber(openings)} times`,
      'use another die, or method "Groover", "US shop" or "highest"',
    );
  return continuedLangeForce(bend, work);
}

/**
 * Lange's factor 1 + 4t/V, past its range too, where the working says so: a formula that ends would let the force fall
 * when the sheet gets thicker. Finite elements of a 1.5 mm sheet over 50.8 mm (V/t 33, case W) give a factor of 1.11.
 */
export function continuedLangeForce(bend: AirBend, work?: Working): Newtons {
  const { thickness, dieOpening } = bend;
  const { from, to } = LANGE_THICKNESS_MM;
  const openings = dieOpening / thickness;
  const within =
    atLeast(thickness, from) &&
    atMost(thickness, to) &&
    atLeast(openings, LANGE_OPENING.from) &&
    atMost(openings, LANGE_OPENING.to);
  const source = [
    cite(FORCE_LANGE),
    ...(bend.isSteel ? [] : ["stated for steel, an extrapolation here"]),
    ...(within ? [] : ["continued beyond its range"]),
  ].join("; ");
  const factor = step(
    work,
    "1 + 4t/V",
    "factor for a V die",
    1 + (FORCE_LANGE.value * thickness) / dieOpening,
    "",
    source,
  );
  return force(bend, factor, source, work);
}

function shopForce(bend: AirBend, work?: Working): Newtons {
  // 575 t^2/V [US ton per foot, in] at 60 ksi is the same form with this factor, 1.597.
  const perInch = (FORCE_US_SHOP.value * NEWTONS_PER_US_TON) / 12; // 12 in in a foot, by definition
  const stress = FORCE_US_SHOP_TENSILE.value * MPA_PER_KSI * MM_PER_INCH ** 2;
  const factor = step(
    work,
    "575 rule",
    "factor for a V die, 575 t^2/V tons a foot at 60 ksi",
    perInch / stress,
    "",
    cite(FORCE_US_SHOP),
  );
  return force(bend, factor, cite(FORCE_US_SHOP), work);
}

function force(
  { thickness, bendLength, dieOpening, tensile }: AirBend,
  factor: number,
  source: string,
  work?: Working,
): Newtons {
  const value = (factor * tensile * bendLength * thickness ** 2) / dieOpening;
  return step(work, "F", "air-bend force", newtons(value), "N", `factor UTS L t^2 / V, ${source}`);
}
