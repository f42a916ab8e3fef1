import type { BentPart } from "../../../../src/calc/bend/order/part.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { deductionFor } from "./random-part.ts";

/** Deduction of a square bend of a 2 mm sheet, inside radius 2, K 0.42: 2 * 4 - (pi / 2) (2 + 0.84) = 3.5389 (derived). */
export const BD = deductionFor(90, 2, 2);

/** A part of such bends, each up (1) or down (-1). */
export const square = (flanges: number[], signs: number[]): BentPart => ({
  thickness: mm(2),
  flanges: flanges.map(mm),
  bends: signs.map((s) => ({ angle: degrees(90 * s), deduction: mm(BD), insideRadius: mm(2) })),
});
