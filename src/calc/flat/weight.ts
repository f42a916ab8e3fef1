import { type Kilograms, type KilogramsPerCubicMillimeter, kilograms, type Millimeters } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

interface BlankSize {
  readonly thickness: Millimeters;
  readonly length: Millimeters;
  readonly width: Millimeters;
}

/**
 * What does a rectangular blank weigh? length x width x thickness x density x quantity. Holes and corners are not
 * deducted: what is lifted, bought and freighted is the blank. Source: geometry (derived).
 */
export function blankWeight(
  { thickness, length, width }: BlankSize,
  density: KilogramsPerCubicMillimeter,
  quantity: number,
  work?: Working,
): Kilograms {
  const one = step(
    work,
    "w",
    "weight of one blank",
    kilograms(length * width * thickness * density),
    "kg",
    "L B t rho (derived)",
  );
  return step(work, "W", "weight of all", kilograms(one * quantity), "kg", "quantity x weight of one (derived)");
}
