/** What goes back to the rack of a sheet that the waterjet has cut: whole rectangles beside and above what was laid. */

import type { JetSheet } from "../../calc/cutting/jet-sheets.ts";
import { LEAST_REMNANT_IN } from "../../data/remnants.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { atLeast } from "../../units/nearly.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { webOf } from "../lines/cutting.ts";
import type { Rates } from "../nouns/rates.ts";

export interface Remnant {
  readonly length: Millimeters;
  readonly width: Millimeters;
}

const areaOf = ({ length, width }: Remnant): number => length * width;

/** Of all copies of one layout. The larger rectangle is cut off whole, across the sheet or along it; the other is what is left. */
export function jetRemnants({ w, h, placed, repeats }: JetSheet, rates: Rates): Remnant[] {
  const web = webOf(rates);
  const least = rates.find("leastRemnant") ?? LEAST_REMNANT_IN.value * MM_PER_INCH;
  const [right, top] = [
    Math.max(...placed.map((p) => p.x + p.w)) + web,
    Math.max(...placed.map((p) => p.y + p.h)) + web,
  ];
  const rectangle = (length: number, width: number): Remnant => ({ length: mm(length), width: mm(width) });
  const across = [rectangle(w - right, h), rectangle(right, h - top)];
  const along = [rectangle(w, h - top), rectangle(w - right, top)];
  const kept = [across, along].map((both) =>
    both.filter(({ length, width }) => atLeast(length, least) && atLeast(width, least)),
  );
  // One large piece is worth more than two small ones.
  const largest = (of: readonly Remnant[]) => Math.max(0, ...of.map(areaOf));
  const best = largest(firstOf(kept)) >= largest(itemAt(kept, 1)) ? firstOf(kept) : itemAt(kept, 1);
  return Array.from({ length: repeats }, () => best).flat();
}
