import { atLeast, atMost } from "../../units/nearly.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { show } from "../../units/show.ts";
import { MM_PER_INCH, type UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import type { RadiusBand } from "./air-radius.ts";

export type Acceptance = "accept" | "measure" | "ask" | "other tool";

/** A callout of 0.060 to 0.25 in on a plain bracket is usually waived, in writing (common practice, memory). */
const WAIVED_UP_TO = mm(0.25 * MM_PER_INCH); // common practice, memory

/**
 * What the drawing asks for against the whole band of what the die gives: accept where all of it is within the tolerance;
 * measure where the expected radius is and an end of the band is not; ask where only an end is, or where a small callout
 * is usually waived; other tool where none of this is so. With the sentence to send.
 */
export function acceptRadius(
  { radius, tolerance }: { readonly radius: Millimeters; readonly tolerance: Millimeters },
  gives: RadiusBand,
  share: number,
  system: UnitSystem,
  work?: Working,
): { verdict: Acceptance; sentence: string } {
  const off = step(work, "dR", "die's radius less the drawing's", mm(gives.expected - radius), "mm", "derived");
  const least = step(work, "R-", "least that the drawing allows", mm(radius - tolerance), "mm", "given");
  const most = step(work, "R+", "most that the drawing allows", mm(radius + tolerance), "mm", "given");
  step(work, "R low", "least that the die gives", gives.low, "mm", "band of the die's radius");
  step(work, "R high", "most that the die gives", gives.high, "mm", "band of the die's radius");
  const isWithin = atLeast(gives.low, least) && atMost(gives.high, most);
  const isPartly = atMost(gives.low, most) && atLeast(gives.high, least);
  const isWaived = off > 0 && atMost(radius, WAIVED_UP_TO);
  const isExpected = atMost(Math.abs(off), tolerance);
  const verdict = isWithin ? "accept" : isExpected ? "measure" : isPartly || isWaived ? "ask" : "other tool";
  step(work, "verdict", "drawing's radius against the die's band", verdict, "", "common practice");
  const says = (value: number) => show(value, "length", system, 2);
  const band = `${says(gives.low)} to ${says(gives.high)}`;
  const wanted = says(radius);
  const asks = isPartly ? `${wanted}, plus or minus ${says(tolerance)}` : wanted;
  const sentence = {
    accept: `The die gives about ${says(gives.expected)} (${band}); all of it is within the tolerance of the drawing's ${wanted}.`,
    measure: `The die gives about ${says(gives.expected)} (${band}), not all of it within the drawing's ${asks}: measure the first piece.`,
    ask: `The drawing asks for an inside radius of ${asks}; our tooling gives about ${says(gives.expected)} (${band}). Please confirm in writing that this is acceptable.`,
    "other tool":
      off > 0
        ? `The die gives about ${says(gives.expected)}, the drawing asks for ${wanted}: it needs an opening of about ${says(radius / share)}, if that is at least 6 thicknesses.`
        : `The die gives about ${says(gives.expected)}, the drawing asks for ${wanted}: it needs a punch nose of ${wanted} or an opening of about ${says(radius / share)}.`,
  }[verdict];
  return { verdict, sentence };
}
