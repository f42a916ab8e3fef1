import { atMost } from "../../units/nearly.ts";
import { type Millimetres, mm } from "../../units/quantity.ts";
import { show } from "../../units/show.ts";
import { MM_PER_INCH, type UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import type { RadiusBand } from "./air-radius.ts";

export const ACCEPTANCES = ["accept", "ask", "other tool"] as const;
export type Acceptance = (typeof ACCEPTANCES)[number];

/** A callout of 0.060 to 0.25 in on a plain bracket is usually waived, in writing (common practice, memory). */
const WAIVED_UP_TO = mm(0.25 * MM_PER_INCH); // common practice, memory

/**
 * What the drawing asks for against what the die gives: accept within the tolerance; ask where a small callout is
 * usually waived; other tool where it is not. With the sentence to send.
 */
export function acceptRadius(
  drawing: Millimetres,
  tolerance: Millimetres,
  gives: RadiusBand,
  share: number,
  system: UnitSystem,
  work?: Working,
): { verdict: Acceptance; sentence: string } {
  const off = step(work, "dR", "die's radius less the drawing's", mm(gives.expected - drawing), "mm", "derived");
  const verdict = atMost(Math.abs(off), tolerance)
    ? "accept"
    : off > 0 && atMost(drawing, WAIVED_UP_TO)
      ? "ask"
      : "other tool";
  step(work, "verdict", "drawing's radius against the die's", verdict, "", "common practice");
  const says = (value: number) => show(value, "length", system, 2);
  const band = `${says(gives.low)} to ${says(gives.high)}`;
  const wanted = says(drawing);
  const sentence = {
    accept: `The die gives about ${says(gives.expected)} (${band}); the drawing's ${wanted} is within its tolerance.`,
    ask: `The drawing asks for an inside radius of ${wanted}; our tooling gives about ${says(gives.expected)} (${band}). Please confirm in writing that this is acceptable.`,
    "other tool":
      off > 0
        ? `The die gives about ${says(gives.expected)}, the drawing asks for ${wanted}: it needs an opening of about ${says(drawing / share)}, if that is at least 6 thicknesses.`
        : `The die gives about ${says(gives.expected)}, the drawing asks for ${wanted}: it needs a punch nose of ${wanted} or an opening of about ${says(drawing / share)}.`,
  }[verdict];
  return { verdict, sentence };
}
