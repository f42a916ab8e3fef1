import { OPENING_LEAST } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { show, showBoth } from "../../units/show.ts";
import { step, type Working } from "../../units/working.ts";
import { lineLoadLimit } from "./line-load.ts";
import { type AirBend, bendForce, type ForceMethod } from "./tonnage.ts";
import type { Brake } from "./tooling.ts";

const HALVINGS = 60; // numerical: 300 mm halved 60 times is below any rounding

/**
 * Thickest sheet that this brake bends at this length over this die: force within the rating and the beam's load per
 * length, and the opening at least 6 thicknesses (common practice). Found by bisection, since force rises with
 * thickness in every formula. #N/A where the formula has no range there, or the bend is longer than the bed.
 */
export function maximumThickness(
  bend: Omit<AirBend, "thickness">,
  brake: Brake,
  method: ForceMethod,
  work?: Working,
): Millimeters {
  if (bend.bendLength > brake.bedLength)
    throw noAnswer(
      "bend_length",
      `at most the bed of ${brake.name}, ${showBoth(brake.bedLength, "length")}`,
      showBoth(bend.bendLength, "length"),
    );
  const allowed = Math.min(brake.ratedForce, lineLoadLimit(brake, work) * bend.bendLength);
  const byDie = step(
    work,
    "t die",
    "thickest sheet for the opening, V / 6",
    mm(bend.dieOpening / OPENING_LEAST.value),
    "mm",
    cite(OPENING_LEAST),
  );
  const withinForce = (thickness: number) => bendForce({ ...bend, thickness: mm(thickness) }, method) <= allowed;
  let low = 0;
  let high: number = byDie;
  if (withinForce(high)) low = high;
  else
    for (let i = 0; i < HALVINGS; i++)
      [low, high] = withinForce((low + high) / 2) ? [(low + high) / 2, high] : [low, (low + high) / 2];
  if (low <= 0) throw noAnswer("bend_length", `short enough for ${brake.name}`, show(bend.bendLength, "length", "in"));
  bendForce({ ...bend, thickness: mm(low) }, method, work);
  return step(work, "t max", "thickest sheet", mm(low), "mm", "bisection on the force (derived)");
}
