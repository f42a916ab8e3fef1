import { describe, expect, it } from "vitest";
import { instant } from "../../../../src/calc/schedule/calendar.ts";
import { finish, latestStart } from "../../../../src/calc/schedule/finish.ts";
import { vendorClock, WorkClock } from "../../../../src/calc/schedule/floor/work-clock.ts";
import { seconds } from "../../../../src/calc/time/seconds.ts";
import { randomFrom } from "../../../../src/tools/random/random.ts";
import { START, weekly } from "./random-floor.ts";

describe("a work clock", () => {
  it("says what the calendar says, forward and back", () => {
    const next = randomFrom(7);
    for (let round = 0; round < 300; round++) {
      const calendar = weekly(6 + 2 * next(), 12 + 14 * next());
      const clock = new WorkClock(calendar, START);
      const at = Math.round(START + next() * 2e6);
      const work = 1 + Math.round(next() * 2e5);
      const done = clock.finish(at, work);
      expect(done).toBe(finish(instant(at), seconds(work), calendar));
      expect(clock.latest(done, work)).toBe(latestStart(instant(done), seconds(work), calendar));
    }
  });
});

describe("a vendor", () => {
  it("is never back sooner with what comes later", () => {
    const clock = vendorClock(weekly(7, 15));
    let last = -Infinity;
    for (let hour = 0; hour < 14 * 24; hour++) {
      const back = clock.finish(START + hour * 3600, 2);
      expect(back).toBeGreaterThanOrEqual(last);
      last = back;
    }
  });
});
