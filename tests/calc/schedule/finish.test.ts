import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  dayOf,
  instant,
  SECONDS_PER_DAY,
  type Shift,
  shiftsOf,
  type WorkCalendar,
  withOvertime,
} from "../../../src/calc/schedule/calendar.ts";
import { finish, latestStart, slack, workBetween } from "../../../src/calc/schedule/finish.ts";
import { seconds } from "../../../src/calc/time/seconds.ts";

const H = 3600;
const DAY_SHIFT: Shift = { from: 7 * H, to: 15 * H };
const week = (...days: (readonly Shift[])[]): WorkCalendar["week"] => days;
const weekdays: WorkCalendar = {
  week: week([], [DAY_SHIFT], [DAY_SHIFT], [DAY_SHIFT], [DAY_SHIFT], [DAY_SHIFT], []),
  exceptions: new Map(),
};
const at = (day: number, hour: number) => instant(day * SECONDS_PER_DAY + hour * H);
/** Day numbers as worksheets count them; 2 March 2026 is a Monday (perpetual calendar). */
const MONDAY = 46083;

describe("working dates worked by hand", () => {
  it.each([
    ["within a shift", at(MONDAY, 8), 3, at(MONDAY, 11)],
    ["before the shift begins", at(MONDAY, 0), 3, at(MONDAY, 10)],
    ["the end of a shift is a finish", at(MONDAY, 7), 8, at(MONDAY, 15)],
    ["over the weekend", at(MONDAY + 4, 14), 2, at(MONDAY + 7, 8)],
    ["a week of 40 hours", at(MONDAY, 9), 40, at(MONDAY + 7, 9)],
    ["nothing to do", at(MONDAY + 5, 3), 0, at(MONDAY + 5, 3)],
  ])("%s", (_, start, hours, done) => {
    expect(finish(start, seconds(hours * H), weekdays)).toBe(done);
  });

  it("a holiday, and a day that ends at noon", () => {
    const exceptions = new Map<number, readonly Shift[]>([
      [MONDAY + 1, []],
      [MONDAY + 2, [{ from: 7 * H, to: 12 * H }]],
    ]);
    expect(finish(at(MONDAY, 7), seconds(14 * H), { ...weekdays, exceptions })).toBe(at(MONDAY + 3, 8));
  });

  it("a night shift runs into the next day", () => {
    const night: Shift = { from: 22 * H, to: 30 * H };
    const nights: WorkCalendar = { ...weekdays, week: week([], [night], [night], [], [], [], []) };
    expect(finish(at(MONDAY, 23), seconds(10 * H), nights)).toBe(at(MONDAY + 2, 1));
    expect(finish(at(MONDAY + 2, 3), seconds(2 * H), nights)).toBe(at(MONDAY + 2, 5));
  });

  it("slack in both directions", () => {
    expect(slack(at(MONDAY, 7), at(MONDAY + 1, 9), seconds(6 * H), weekdays)).toBe(4 * H);
    expect(slack(at(MONDAY, 7), at(MONDAY, 12), seconds(10 * H), weekdays)).toBe(-5 * H);
  });

  it("overtime makes a working day longer and leaves holidays alone", () => {
    expect(workBetween(at(MONDAY, 0), at(MONDAY + 7, 0), withOvertime(weekdays, 2 * H))).toBe(50 * H);
  });

  it("a calendar without work is refused", () => {
    const never: WorkCalendar = { week: week([], [], [], [], [], [], []), exceptions: new Map() };
    expect(() => finish(at(MONDAY, 7), seconds(1), never)).toThrow(
      expect.objectContaining({
        code: "#N/A",
        message: expect.stringMatching(/^calendar must be one with working time enough/),
      }),
    );
    expect(() => latestStart(at(MONDAY, 7), seconds(1), never)).toThrow();
  });
});

/** Minute by minute: a minute is worked when some shift of its day, or of the day before, covers it. */
function byTheMinute(start: number, minutes: number, calendar: WorkCalendar): number {
  let left = minutes;
  for (let minute = start; ; minute++) {
    if (left === 0) return minute;
    const second = minute * 60;
    const day = dayOf(instant(second));
    const worked = [day - 1, day].some((d) =>
      shiftsOf(calendar, d).some(
        ({ from, to }) => second >= d * SECONDS_PER_DAY + from && second < d * SECONDS_PER_DAY + to,
      ),
    );
    if (worked) left--;
  }
}

const shift = fc
  .record({ from: fc.integer({ min: 0, max: 1439 }), length: fc.integer({ min: 30, max: 700 }) })
  .map(({ from, length }) => ({ from: from * 60, to: (from + length) * 60 }));
const day = fc.array(shift, { maxLength: 2 }).map((shifts) => [...shifts].sort((a, b) => a.from - b.from));
const calendars = fc
  .record({
    week: fc.array(day, { minLength: 7, maxLength: 7 }),
    exceptions: fc.array(fc.tuple(fc.integer({ min: MONDAY, max: MONDAY + 20 }), day), { maxLength: 4 }),
  })
  .filter(({ week: days }) => days.some((shifts) => shifts.length > 0))
  .map(({ week: days, exceptions }): WorkCalendar => ({ week: days, exceptions: new Map(exceptions) }));

describe("against the minutes one by one", () => {
  it("finish, for any shifts, overlapping ones too", () => {
    fc.assert(
      fc.property(
        calendars,
        fc.integer({ min: 0, max: 20_000 }),
        fc.integer({ min: 1, max: 4000 }),
        (calendar, offset, minutes) => {
          const start = MONDAY * 1440 + offset;
          // The walk gives the first minute after the work; that is the end of the last minute worked.
          const done = byTheMinute(start, minutes - 1, calendar);
          const last = byTheMinute(done, 1, calendar);
          expect(finish(instant(start * 60), seconds(minutes * 60), calendar)).toBe(last * 60);
        },
      ),
      { numRuns: 150 },
    );
  });

  it("the latest start is the last that still finishes in time", () => {
    fc.assert(
      fc.property(
        calendars,
        fc.integer({ min: 30_000, max: 50_000 }),
        fc.integer({ min: 1, max: 3000 }),
        (calendar, offset, minutes) => {
          const due = instant((MONDAY * 1440 + offset) * 60);
          const work = seconds(minutes * 60);
          const start = latestStart(due, work, calendar);
          expect(finish(start, work, calendar)).toBeLessThanOrEqual(due);
          expect(finish(instant(start + 1), work, calendar)).toBeGreaterThan(due - 1);
          expect(workBetween(start, due, calendar)).toBe(work);
        },
      ),
      { numRuns: 150 },
    );
  });
});
