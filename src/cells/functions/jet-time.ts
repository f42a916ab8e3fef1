import { jetTime as time, timedFeed } from "../../calc/time/jet-time.ts";
import { SECONDS_PER_MINUTE, seconds } from "../../calc/time/seconds.ts";
import type { Millimeters, MillimetersPerMinute } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { step } from "../../units/working.ts";
import { length } from "../parameters/length.ts";
import { number } from "../parameters/number.ts";
import { quantity } from "../parameters/stress.ts";
import { units } from "../parameters/units.ts";

import { defineFunction } from "../record/record.ts";

const DAY_MINUTES = 24 * 60; // a timed cut is a matter of minutes

export const jetTime = defineFunction({
  name: "JET.TIME",
  question: "How long does the waterjet take for one piece?",
  parameters: {
    path: length({ description: "Cut path of one piece, holes included" }),
    pierces: number({
      description: "Pierces: one for the outline and one a hole",
      rule: { from: 0, to: 100_000, whole: true },
    }),
    highestFeed: quantity<MillimetersPerMinute>({
      description: "Highest feed of the machine",
      quantity: "feed",
      noun: "feed",
    }),
    pierceTime: number({ description: "Seconds one pierce takes", rule: { from: 0, to: 3600 } }),
    feed: quantity<MillimetersPerMinute, MillimetersPerMinute | undefined>({
      description: "Cutting speed, as JET.FEED gives it; blank where a timed cut is given",
      quantity: "feed",
      noun: "feed",
      fallback: undefined,
    }),
    timedPath: length({
      description: "Path of a cut the shop has timed",
      fallback: undefined as Millimeters | undefined,
    }),
    timedMinutes: number({
      description: "Minutes that cut took",
      rule: { from: 0, above: true, to: DAY_MINUTES },
      fallback: undefined,
    }),
    units: units(),
  },
  result: { kind: "min" },
  example: {
    formula: "=SHOP.JET.TIME(60,3,100,10,12)",
    answer: 5.5,
  },
  source: "path / feed and pierces (derived); a timed cut of the shop comes before any formula",
  calculate: ({ path, pierces, highestFeed, pierceTime, feed, timedPath, timedMinutes }, { work }) => {
    if ((timedPath === undefined) !== (timedMinutes === undefined))
      throw wrong(timedPath === undefined ? "timed_path" : "timed_minutes", "given where the other one is", null);
    const timed =
      timedPath === undefined || timedMinutes === undefined
        ? feed
        : timedFeed({ path: timedPath, time: seconds(timedMinutes * SECONDS_PER_MINUTE) }, work);
    if (timed === undefined) throw wrong("timed_path", "given with timed_minutes where there is no feed", null);
    const each = time({ path, pierces, feed: timed }, { highestFeed, pierceTime: seconds(pierceTime) }, work);
    return step(work, "T", "waterjet, one piece, in minutes", each / SECONDS_PER_MINUTE, "min", "by definition");
  },
});
