/** A plan at its very edge: done on the stroke of the due time, one thing outside and the rest in overtime. */
import { describe, expect, it } from "vitest";
import {
  instant,
  intervalsFrom,
  SECONDS_PER_DAY,
  type WorkCalendar,
  withOvertime,
} from "../../../src/calc/schedule/calendar.ts";
import { finish, latestStart, slack, workBetween } from "../../../src/calc/schedule/finish.ts";
import { Deadline, type Place } from "../../../src/calc/schedule/what-if.ts";
import { afterWorkingDays } from "../../../src/calc/schedule/working-days.ts";
import { seconds } from "../../../src/calc/time/seconds.ts";

const H = 3600;
const MONDAY = 46083; // 2 March 2026
const at = (day: number, hour: number) => instant(day * SECONDS_PER_DAY + hour * H);
const hours = (count: number) => seconds(count * H);
const shift = [{ from: 7 * H, to: 15 * H }];
const week: WorkCalendar = { week: [[], shift, shift, shift, shift, shift, []], exceptions: new Map() };
const never: WorkCalendar = { week: [[], [], [], [], [], [], []], exceptions: new Map() };
const place = (name: string, vendorDays?: number): Place => ({ name, calendar: week, queue: hours(0), vendorDays });
const task = (of: Place, time: number) => ({ place: of, time: hours(time) });
const due = (day: number, hour: number) =>
  new Deadline(at(MONDAY, 7), at(day, hour), week, { overtime: hours(2), secondShift: undefined });

describe("on the stroke of the due time", () => {
  const brake = place("Brake");
  it.each([
    [8, "in time", 15],
    [9, "overtime", 16],
  ])("%d hours: %s", (work, verdict, done) => {
    expect(due(MONDAY, done).take([task(brake, work)], 0)).toMatchObject({ verdict, finish: at(MONDAY, done) });
  });

  it("no slack is none, neither left nor missing", () => {
    expect(slack(at(MONDAY, 7), at(MONDAY, 15), hours(8), week)).toBe(0);
    expect(slack(at(MONDAY, 7), at(MONDAY, 14), hours(8), week)).toBe(-H);
    expect(workBetween(at(MONDAY, 7), at(MONDAY, 7), week)).toBe(0);
    expect(workBetween(at(MONDAY, 15), at(MONDAY + 1, 7), week)).toBe(0);
  });

  it("the latest start of exactly what fits is the first hour looked at", () => {
    expect(latestStart(at(MONDAY, 15), hours(8), week)).toBe(at(MONDAY, 7));
    expect(latestStart(at(MONDAY, 15), hours(0), week)).toBe(at(MONDAY, 15));
    // Two weeks of forty hours: the whole stretch that is looked at first.
    expect(latestStart(at(MONDAY, 7), hours(80), week)).toBe(at(MONDAY - 14, 7));
  });
});

describe("one task goes outside", () => {
  const saw = place("Saw", 1);
  const drill = place("Drill");

  it("alone, it is back when the vendor says, in the vendor's name", () => {
    const found = due(MONDAY + 1, 7).take([task(saw, 30)], 0);
    expect(found).toMatchObject({
      verdict: "outside",
      place: "Saw",
      finish: at(MONDAY + 1, 7),
      note: "Saw outside, 1 vendor day",
    });
  });

  it("the rest decides where it ends later, and works overtime only where it must", () => {
    const regular = due(MONDAY + 1, 8).take([task(saw, 30), task(drill, 9)], 0);
    expect(regular).toMatchObject({
      verdict: "outside",
      place: "Drill",
      finish: at(MONDAY + 1, 8),
      note: "Saw outside, 1 vendor day",
    });
    const longer = due(MONDAY + 1, 7).take([task(saw, 30), task(drill, 10)], 0);
    expect(longer).toMatchObject({
      verdict: "outside",
      place: "Saw",
      finish: at(MONDAY + 1, 7),
      note: "Saw outside, 1 vendor day, the rest in overtime",
    });
    expect(due(MONDAY + 1, 7).take([task(saw, 30), task(drill, 11)], 0).verdict).toBe("breaks it");
  });

  it("where the rest ends as the vendor brings it back, the vendor's is named", () => {
    const plan = new Deadline(at(MONDAY, 9), at(MONDAY + 1, 9), week, { overtime: hours(2), secondShift: undefined });
    expect(plan.take([task(saw, 30), task(drill, 8)], 0)).toMatchObject({
      verdict: "outside",
      place: "Saw",
      finish: at(MONDAY + 1, 9),
    });
  });

  it("what went outside leaves its place free for the next line", () => {
    const plan = due(MONDAY + 1, 7);
    plan.take([task(saw, 30), task(drill, 2)], 0);
    expect(plan.load(saw)).toBe(0);
    expect(plan.load(drill)).toBe(2 * H);
  });

  it("of two places the one that ends last is named", () => {
    expect(due(MONDAY, 15).take([task(saw, 3), task(drill, 2)], 0).place).toBe("Saw");
    expect(due(MONDAY, 15).take([task(drill, 2), task(saw, 3)], 0).place).toBe("Saw");
    expect(due(MONDAY, 15).take([task(drill, 2), task(saw, 2)], 0).place).toBe("Drill");
  });
});

describe("a calendar", () => {
  it("without work is refused in hours, and counts no vendor days for ever", () => {
    expect(() => finish(at(MONDAY, 7), hours(3), never)).toThrow(
      expect.objectContaining({ message: expect.stringContaining("less than 3 h in 20000 days") }),
    );
    expect(() => latestStart(at(MONDAY, 7), hours(3), never)).toThrow();
    expect(latestStart(at(MONDAY, 7), hours(0), never)).toBe(at(MONDAY, 7));
    expect(() => finish(at(MONDAY, 7), seconds(Infinity), week)).toThrow(
      expect.objectContaining({ message: expect.stringContaining("got less than can be counted in 20000 days") }),
    );
    expect(afterWorkingDays(at(MONDAY, 9), 1, never)).toBe(at(MONDAY + 20_000, 9));
  });

  it("overtime follows the last shift of a day with one, two or three, and makes no day of rest a working day", () => {
    const two = [
      { from: 6 * H, to: 10 * H },
      { from: 11 * H, to: 14 * H },
    ];
    const three = [...two, { from: 15 * H, to: 17 * H }];
    const longer = withOvertime(
      { week: [shift, two, [], three, [], [], []], exceptions: new Map([[MONDAY + 1, two]]) },
      2 * H,
    );
    expect(longer.week[0]).toEqual([{ from: 7 * H, to: 17 * H }]);
    expect(longer.week[1]).toEqual([two[0], { from: 11 * H, to: 16 * H }]);
    expect(longer.week[3]).toEqual([...two, { from: 15 * H, to: 19 * H }]);
    expect(longer.week[2]).toEqual([]);
    expect(longer.exceptions.get(MONDAY + 1)).toEqual([two[0], { from: 11 * H, to: 16 * H }]);
  });

  it("has no interval of no length, and no shift on a day it does not know", () => {
    expect([...intervalsFrom(week, at(MONDAY, 15), MONDAY)]).toEqual([]);
    expect([...intervalsFrom({ week: [], exceptions: new Map() }, at(MONDAY, 7), MONDAY + 2)]).toEqual([]);
  });
});
