import {
  DIN_BASE,
  DIN_LARGEST,
  DIN_LIMIT,
  DIN_SLOPE,
  HANDBOOK_HARD,
  HANDBOOK_MEDIUM,
  HANDBOOK_SOFT,
  K_DEFAULT,
  K_GROOVER_LIMIT,
  K_GROOVER_TIGHT,
  K_GROOVER_WIDE,
} from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { atLeast } from "../../units/nearly.ts";
import type { Millimeters, Ratio } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { step, type Working } from "../../units/working.ts";

/** How the neutral axis is found: a number of one's own, or a published rule by name. */
export const K_RULES = ["Groover", "DIN 6935", "FAA", "Handbook soft", "Handbook medium", "Handbook hard"] as const;
type KRule = (typeof K_RULES)[number];
export type KChoice = Ratio | KRule;

/**
 * Where is the neutral axis, as a share K of the thickness from the inside face? Not for "FAA", whose two constants are
 * not a K (see allowance.ts). `numberFrom` says where a number comes from. DIN's k is 2K. Refuses DIN below the radius where its k turns negative.
 */
export function neutralAxis(
  thickness: Millimeters,
  radius: Millimeters,
  k: Exclude<KChoice, "FAA">,
  work?: Working,
  numberFrom = "given",
): Ratio {
  const record = (value: Ratio, source: string) =>
    step(work, "K", "neutral axis, share of the thickness from the inside", value, "", source);
  if (typeof k === "number") return record(k, k === K_DEFAULT.value ? cite(K_DEFAULT) : numberFrom);
  switch (k) {
    case "Groover":
      return atLeast(radius, K_GROOVER_LIMIT.value * thickness)
        ? record(K_GROOVER_WIDE.value, cite(K_GROOVER_WIDE))
        : record(K_GROOVER_TIGHT.value, cite(K_GROOVER_TIGHT));
    case "DIN 6935":
      return record(dinFactor(thickness, radius) / 2, cite(DIN_BASE));
    case "Handbook soft":
      return record((2 * HANDBOOK_SOFT.value) / Math.PI, cite(HANDBOOK_SOFT));
    case "Handbook medium":
      return record((2 * HANDBOOK_MEDIUM.value) / Math.PI, cite(HANDBOOK_MEDIUM));
    case "Handbook hard":
      return record((2 * HANDBOOK_HARD.value) / Math.PI, cite(HANDBOOK_HARD));
  }
}

/** DIN 6935: k = 0.65 + 0.5 lg(r/s) for r/s <= 5, else 1. */
function dinFactor(thickness: Millimeters, radius: Millimeters): Ratio {
  if (radius > DIN_LIMIT.value * thickness) return DIN_LARGEST.value;
  const factor = DIN_BASE.value + DIN_SLOPE.value * Math.log10(radius / thickness);
  if (!(factor > 0))
    throw noAnswer(
      "radius",
      'more than 0.05 of the thickness for k "DIN 6935"',
      showBoth(radius, "length"),
      'give k a number or "Groover"',
    );
  return factor;
}
