import { describe, expect, it } from "vitest";
import { instant, SECONDS_PER_DAY, type WorkCalendar } from "../../../src/calc/schedule/calendar.ts";
import { Deadline, type Place } from "../../../src/calc/schedule/what-if.ts";
import { afterWorkingDays } from "../../../src/calc/schedule/working-days.ts";
import { seconds } from "../../../src/calc/time/seconds.ts";

const H = 3600;
const MONDAY = 46083; // 2 March 2026
const at = (day: number, hour: number) => instant(day * SECONDS_PER_DAY + hour * H);
const shift = [{ from: 7 * H, to: 15 * H }];
const weekdays: WorkCalendar = {
  week: [[], shift, shift, shift, shift, shift, []],
  exceptions: new Map([[MONDAY + 1, []]]),
};
const place = (name: string, queue: number, vendorDays?: number): Place => ({
  name,
  calendar: weekdays,
  queue: seconds(queue * H),
  vendorDays,
});
const deadline = (day: number, hour: number) =>
  new Deadline(at(MONDAY, 7), at(day, hour), weekdays, { overtime: seconds(2 * H), secondShift: undefined });

describe("working days of a vendor", () => {
  it.each([
    ["over a holiday", MONDAY, 1, MONDAY + 2],
    ["over the weekend", MONDAY + 4, 1, MONDAY + 7],
    ["begun on a Sunday", MONDAY - 1, 1, MONDAY],
    ["none", MONDAY, 0, MONDAY],
  ])("%s", (_, from, days, back) => {
    expect(afterWorkingDays(at(from, 9), days, weekdays)).toBe(at(back, 9));
  });
});

describe("a deadline", () => {
  const brake = place("Brake", 2);
  const task = (hours: number, of: Place = brake) => [{ place: of, time: seconds(hours * H) }];

  it("lines wait for those before them: in time, then overtime, then too late", () => {
    const due = deadline(MONDAY, 17);
    // Queue 2 h and 4 h: 13:00. Another 3 h: 16:00, an hour over the shift. Another 3 h: past 17:00.
    expect(due.take(task(4), 0)).toMatchObject({ verdict: "in time", finish: at(MONDAY, 13) });
    expect(due.take(task(3), 0)).toMatchObject({ verdict: "overtime", finish: at(MONDAY, 16) });
    expect(due.take(task(3), 0)).toMatchObject({ verdict: "breaks it", place: "Brake" });
    expect(due.hours(brake)).toEqual({ available: 8 * H, overtime: 2 * H, short: 2 * H });
  });

  it("the slowest of its places decides", () => {
    const drill = place("Drill", 0);
    expect(deadline(MONDAY, 17).take([...task(3), ...task(6, drill)], 0)).toMatchObject({
      place: "Drill",
      finish: at(MONDAY, 13),
    });
  });

  it("what goes outside makes room for the next", () => {
    const jet = place("Waterjet", 0, 1);
    const due = deadline(MONDAY + 2, 8);
    // 20 h do not fit before Wednesday 8:00, Tuesday being a holiday; the vendor is back on Wednesday at 7:00.
    expect(due.take(task(20, jet), 0)).toMatchObject({ verdict: "outside", finish: at(MONDAY + 2, 7) });
    expect(due.take(task(8, jet), 0)).toMatchObject({ verdict: "in time", finish: at(MONDAY, 15) });
  });

  it("vendor days after the shop's own work", () => {
    expect(deadline(MONDAY + 3, 0).take(task(2), 1)).toMatchObject({
      verdict: "in time",
      finish: at(MONDAY + 2, 11),
      note: "then 1 vendor day",
    });
    expect(deadline(MONDAY + 2, 0).take(task(2), 1)).toMatchObject({ verdict: "breaks it" });
  });
});
