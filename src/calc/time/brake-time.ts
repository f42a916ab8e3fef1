import { itemAt } from "../../units/certain.ts";
import type { Degrees, Millimeters, MillimetersPerMinute } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { punchTravel } from "./punch-travel.ts";
import { SECONDS_PER_MINUTE, type Seconds, seconds } from "./seconds.ts";

/** How the brake moves. The workbook's figures. */
export interface BrakeMotion {
  /** From the open height down to the sheet. */
  readonly openStroke: Millimeters;
  readonly approachSpeed: MillimetersPerMinute;
  readonly bendSpeed: MillimetersPerMinute;
  readonly returnSpeed: MillimetersPerMinute;
  readonly gaugeSpeed: MillimetersPerMinute;
}

/** Handling at the first hit of a piece, from the stack to the stack, and at each one after it, turned in the hands. */
interface BrakeHandling {
  readonly first: Seconds;
  readonly next: Seconds;
}

interface TimedHit {
  readonly bendAngle: Degrees;
  /** Of the back gauge. */
  readonly stop: Millimeters;
}

/**
 * Brake time of one piece: every hit comes down, bends by its actual travel, goes up and is handled; between hits the
 * gauge moves to the next stop and at the end back to the first. Speeds are means (derived from distances and speeds).
 * @param hits in order.
 */
export function brakeTime(
  dieOpening: Millimeters,
  hits: readonly TimedHit[],
  motion: BrakeMotion,
  handling: BrakeHandling,
  work?: Working,
): Seconds {
  const moving = hits.reduce((sum, { bendAngle }) => {
    const travel = punchTravel(dieOpening, bendAngle, work);
    const down = motion.openStroke / motion.approachSpeed + travel / motion.bendSpeed;
    const up = (motion.openStroke + travel) / motion.returnSpeed;
    return (
      sum + step(work, "ram", "ram down and up", (down + up) * SECONDS_PER_MINUTE, "s", "distance / speed (derived)")
    );
  }, 0);
  const gauge = hits.reduce((sum, { stop }, i) => sum + Math.abs(stop - itemAt(hits, (i || hits.length) - 1).stop), 0);
  const gauging = (gauge / motion.gaugeSpeed) * SECONDS_PER_MINUTE;
  step(work, "g", "back gauge to all stops and back", gauging, "s", "distance / speed (derived)");
  return step(
    work,
    "T brake",
    "brake, one piece",
    seconds(moving + gauging + handling.first + (hits.length - 1) * handling.next),
    "s",
    "ram, gauge and handling of every hit (derived)",
  );
}
