import { atLeast } from "../../units/nearly.ts";
import { type Degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { message, Refusal } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { step, type Working } from "../../units/working.ts";
import { bendDeduction } from "../bend/deduction.ts";
import { beyondTangent } from "../bend/legs.ts";

type Strip = Omit<Parameters<typeof bendDeduction>[0], "bendAngle"> & {
  readonly flanges: readonly Millimeters[];
  readonly bendAngles: readonly Degrees[];
};

/**
 * Flat length of a strip with parallel bends of one radius: sum of flanges less the deduction of each bend. One bend
 * angle per bend, flanges one more than bends, measured as `legs` says. Refuses (#VALUE!) a flange shorter than the
 * bends at its ends take up. Source: geometry (derived); Groover 5e example 19.2 and FAA-H-8083-31 (read).
 */
export function flatLength({ flanges, bendAngles, ...bend }: Strip, work?: Working): Millimeters {
  const taken = bendAngles.map((angle) => beyondTangent(bend.thickness, bend.radius, angle, bend.legs));
  refuseOverlap(flanges, taken);
  const deductions = bendAngles.map((bendAngle) => bendDeduction({ ...bend, bendAngle }, work));
  return flatFromDeductions(flanges, deductions, work);
}

/** Sum of flanges less sum of deductions; for deductions that come from elsewhere too (air bend, test strip). */
export function flatFromDeductions(
  flanges: readonly Millimeters[],
  deductions: readonly Millimeters[],
  work?: Working,
): Millimeters {
  const legs = step(work, "sum L", "sum of the flanges", mm(sum(flanges)), "mm", "given");
  const taken = step(
    work,
    "sum BD",
    `sum of the deductions of ${deductions.length} bends`,
    mm(sum(deductions)),
    "mm",
    "derived",
  );
  return step(work, "flat", "flat length", mm(legs - taken), "mm", "sum of flanges less sum of deductions (derived)");
}

/** taken[i] is what bend i takes of the flange on either side. */
export function refuseOverlap(flanges: readonly Millimeters[], taken: readonly Millimeters[]): void {
  flanges.forEach((flange, i) => {
    const needed = mm((taken[i - 1] ?? 0) + (taken[i] ?? 0));
    if (!atLeast(flange, needed))
      throw new Refusal(
        "#VALUE!",
        message(
          "flanges",
          `at least what their bends take up, ${showBoth(needed, "length")} for flange ${i + 1}`,
          showBoth(flange, "length"),
          "check the flange, the radius and where the drawing measures to (legs)",
        ),
      );
  });
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
