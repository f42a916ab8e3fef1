import type { Millimeters, MillimetersPerMinute } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { SECONDS_PER_MINUTE, type Seconds, seconds } from "./seconds.ts";

/** A cut the shop has timed: prefer it to any formula for the same material, thickness and quality. */
interface TimedCut {
  readonly path: Millimeters;
  readonly time: Seconds;
}

export const timedFeed = ({ path, time }: TimedCut, work?: Working): MillimetersPerMinute =>
  step(
    work,
    "u",
    "feed of the shop's timed cut",
    ((path / time) * SECONDS_PER_MINUTE) as MillimetersPerMinute,
    "mm/min",
    "path / time, given",
  );

/**
 * Waterjet time of one piece: cut path at the feed, never above what the machine drives, and its pierces. Corners and
 * leads come on top unless the feed is from a timed cut of the same kind (derived).
 */
export function jetTime(
  {
    path,
    pierces,
    feed,
  }: { readonly path: Millimeters; readonly pierces: number; readonly feed: MillimetersPerMinute },
  { highestFeed, pierceTime }: { readonly highestFeed: MillimetersPerMinute; readonly pierceTime: Seconds },
  work?: Working,
): Seconds {
  const driven = step(
    work,
    "u used",
    "feed, never above the machine's",
    Math.min(feed, highestFeed) as MillimetersPerMinute,
    "mm/min",
    "the smaller of the two",
  );
  const cutting = step(work, "T cut", "cutting", (path / driven) * SECONDS_PER_MINUTE, "s", "path / feed (derived)");
  const piercing = step(work, "T pierce", "piercing", pierces * pierceTime, "s", "pierces x time each (derived)");
  return step(work, "T jet", "waterjet, one piece", seconds(cutting + piercing), "s", "cutting and piercing (derived)");
}
