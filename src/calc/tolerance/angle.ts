import { ANGULAR, ANGULAR_SOURCE, type ToleranceClass } from "../../data/iso-2768.ts";
import { foundIn } from "../../units/certain.ts";
import { atMost } from "../../units/nearly.ts";
import { type Degrees, degrees, type Millimeters } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

const MINUTES_PER_DEGREE = 60; // by definition

/**
 * General tolerance of an angle, plus and minus, by its shorter leg. Tighter than a plain brake holds on long legs
 * (about 1 degree, memory): a drawing's wish, not a promise. Source: ISO 2768-1 Table 3.
 */
export function angleTolerance(shorterLeg: Millimeters, grade: ToleranceClass, work?: Working): Degrees {
  const row = foundIn(ANGULAR, ({ upTo }) => atMost(shorterLeg, upTo));
  return step(
    work,
    "tol",
    `class ${grade}, plus and minus`,
    degrees(row[grade] / MINUTES_PER_DEGREE),
    "deg",
    ANGULAR_SOURCE,
  );
}
