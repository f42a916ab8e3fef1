import { atMost } from "../../units/nearly.ts";
import type { Kilograms, Millimeters } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { type Seconds, seconds } from "./seconds.ts";

/** How long the shop takes to handle a piece once, and from when on one person is not enough. The workbook's figures. */
export interface HandlingRules {
  readonly perPiece: Seconds;
  readonly secondsPerKilogram: number;
  readonly secondsPerMillimeter: number;
  /** From the lifting equation or the shop's own rule, whichever is less; undefined: no rule given. */
  readonly onePersonLimit: Kilograms | undefined;
  readonly hoistAbove: Kilograms | undefined;
  readonly hoistTime: Seconds;
}

export interface Handling {
  readonly time: Seconds;
  readonly people: number;
  readonly how: "one person" | "two people" | "hoist";
}

/**
 * Handling a piece once: a base, more by weight and by its longest outside size, and the hoist's own time above its
 * limit. Above the one-person limit, and at the hoist, a second person is needed. Formula: shop practice, linear in
 * weight and size (common practice); figures: the workbook.
 */
export function handlePiece(weight: Kilograms, longest: Millimeters, rules: HandlingRules, work?: Working): Handling {
  const hoisted = rules.hoistAbove !== undefined && !atMost(weight, rules.hoistAbove);
  const alone = !hoisted && (rules.onePersonLimit === undefined || atMost(weight, rules.onePersonLimit));
  const time =
    rules.perPiece +
    rules.secondsPerKilogram * weight +
    rules.secondsPerMillimeter * longest +
    (hoisted ? rules.hoistTime : 0);
  step(work, "h", "handling a piece once", time, "s", "base, by weight, by longest size (common practice)");
  return {
    time: seconds(time),
    people: alone ? 1 : 2,
    how: hoisted ? "hoist" : alone ? "one person" : "two people",
  };
}
