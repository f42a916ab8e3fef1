import { LINEAR, LINEAR_FROM_MM, LINEAR_SOURCE, type ToleranceClass } from "../../data/iso-2768.ts";
import { lastOf } from "../../units/certain.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { step, type Working } from "../../units/working.ts";

/** General tolerance of a length, plus and minus. Rows are "over ... up to and including". Source: ISO 2768-1 Table 1. */
export function lengthTolerance(nominal: Millimeters, grade: ToleranceClass, work?: Working): Millimeters {
  const row = atLeast(nominal, LINEAR_FROM_MM) ? LINEAR.find(({ upTo }) => atMost(nominal, upTo)) : undefined;
  if (!row)
    throw noAnswer(
      "nominal",
      `${showBoth(LINEAR_FROM_MM, "length")} to ${showBoth(lastOf(LINEAR).upTo, "length")} for ISO 2768-1`,
      showBoth(nominal, "length"),
      "write the tolerance on the drawing",
    );
  const value = row[grade];
  if (value === null)
    throw noAnswer(
      "class",
      `one that ISO 2768-1 gives for ${showBoth(nominal, "length")}`,
      `"${grade}"`,
      "take m or c",
    );
  return step(work, "tol", `class ${grade}, plus and minus`, mm(value), "mm", LINEAR_SOURCE);
}
