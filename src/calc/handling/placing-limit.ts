import { type Degrees, type Kilograms, kilograms, type Millimeters, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { type Lift, liftLimit } from "./lift-limit.ts";

/** Where the load is put down with care. */
interface Destination {
  readonly horizontal: Millimeters;
  readonly vertical: Millimeters;
  readonly asymmetry: Degrees;
}

/**
 * Recommended weight limit of a lift whose load must be placed with control: the smaller of the limits where it is taken
 * up and where it is put down, each by the same equation; the travel is the difference of the heights.
 * Source: NIOSH 94-110, significant control at the destination (memory, unverified).
 */
export function placingLimit(lift: Omit<Lift, "travel">, destination: Destination, work?: Working): Kilograms {
  const travel = mm(Math.abs(destination.vertical - lift.vertical));
  step(work, "D", "height the load is moved", travel, "mm", "difference of the heights (derived)");
  const start = limitAt("origin", { ...lift, travel }, work);
  const end = limitAt("destination", { ...lift, ...destination, travel }, work);
  const source = "the smaller of the two: significant control at the destination, NIOSH 94-110 (memory)";
  return step(work, "RWL", "recommended weight limit", kilograms(Math.min(start, end)), "kg", source);
}

/** Every step by the place it is about. */
function limitAt(place: string, lift: Lift, work?: Working): Kilograms {
  const steps: Working = [];
  const limit = liftLimit(lift, work && steps);
  work?.push(...steps.map((each) => ({ ...each, symbol: `${each.symbol} ${place}` })));
  return limit;
}
