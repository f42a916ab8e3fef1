import { describe, expect, it } from "vitest";
import { type MovedBar, movedJobs, movedSays, pinsOf, stoodOf, withPins } from "../../../src/bill/week/move-bar.ts";
import { planWeek } from "../../../src/bill/week/plan-week.ts";
import { replanWeek } from "../../../src/bill/week/replan-week.ts";
import { clocksOf } from "../../../src/bill/week/ruling-shop.ts";
import type { WeekJob } from "../../../src/bill/week/steps.ts";
import { instant, SECONDS_PER_DAY } from "../../../src/calc/schedule/calendar.ts";
import { BRACKET, HOUR, job, MONDAY } from "../../cells/example/tables.ts";
import { planned, shopOf } from "../shop.ts";

const at = (days: number) => instant(Math.round((MONDAY + days) * SECONDS_PER_DAY));
const NOW = at(7 * HOUR);
const options = { now: NOW, units: 2e5 };
const open = (name: string, parts: readonly string[]): WeekJob => ({
  name,
  plan: planned(
    parts.map((Part) => ({ ...BRACKET, Part })),
    shopOf({ job: job({ Due: MONDAY + 20 }) }),
  ),
  marks: new Map(),
});
const jobs = [open("one", ["A", "B"]), open("two", ["C"])];
const week = planWeek(jobs, options);
const moved = (bar: MovedBar) => pinsOf(week, bar, jobs[0]!.plan.shop);
const firstOf = (name: string, part: string, of = week) =>
  of.steps.find((step) => of.jobs[step.job]!.name === name && step.line.part === part && step.after.length === 0)!;

describe("a bar that is moved", () => {
  it("of a line pins that line at that station, and it begins there at the earliest", () => {
    const { line, station } = firstOf("one", "A");
    const to = at(2 + 9 * HOUR);
    const pins = moved({ job: "one", step: { row: line.row, station: station.name }, to });
    expect(pins).toEqual([{ row: line.row, part: "A", station: station.name, at: to, isClosed: false }]);
    const after = replanWeek(withPins(jobs, "one", pins), options, week);
    expect(firstOf("one", "A", after).ready).toBeGreaterThanOrEqual(to);
    expect(firstOf("one", "A", after).pin).toBe(to);
    const one = movedJobs(stoodOf(week), after).find(({ name }) => name === "one")!;
    const { steps, finish, late } = one;
    expect(finish[1]).toBeGreaterThan(finish[0]);
    expect(movedSays(one, String)).toBe(
      `one: ${steps} steps move; done ${finish[1]}, was ${finish[0]}${late[1] > 0 ? `, late by ${late[1] / 3600} h` : ""}.`,
    );
    const alone = movedJobs(stoodOf(planWeek(jobs.slice(1), options)), after);
    expect(alone.map(({ name }) => name)).not.toContain("one");
  });

  it("of a job pins the first step of each of its lines, as much later as the bar", () => {
    const begins = Math.min(firstOf("one", "A").begins, firstOf("one", "B").begins);
    const pins = moved({ job: "one", step: undefined, to: instant(begins + SECONDS_PER_DAY) });
    expect(pins.map(({ part }) => part).sort()).toEqual(["A", "B"]);
    for (const { part, at: pin } of pins)
      expect(Math.abs(pin - firstOf("one", part).begins - SECONDS_PER_DAY)).toBeLessThanOrEqual(30);
  });

  it("of a job moved by half a day pins within the shifts, and says which pins were moved to the next one", () => {
    const { begins } = firstOf("one", "A");
    const pins = moved({ job: "one", step: undefined, to: instant(begins + SECONDS_PER_DAY / 2) });
    expect(pins.some(({ isClosed }) => isClosed)).toBe(true);
    const shifts = { now: NOW };
    for (const { station, at: pin } of pins)
      expect(clocksOf(jobs[0]!.plan.shop, shifts)(station)!.opens(pin), station).toBe(pin);
    const after = replanWeek(withPins(jobs, "one", pins), options, week);
    expect(after.faults.map(({ kind }) => kind)).not.toContain("pin closed");
  });

  it("is never moved before now, and a second pin replaces the first", () => {
    const { line, station } = firstOf("two", "C");
    const step = { row: line.row, station: station.name };
    expect(moved({ job: "two", step, to: at(-3) })[0]!.at).toBe(NOW);
    const once = withPins(jobs, "two", moved({ job: "two", step, to: at(2 + 9 * HOUR) }));
    const twice = withPins(once, "two", moved({ job: "two", step, to: at(3 + 9 * HOUR) }));
    expect(twice[1]!.marks.get(line.row)!.pins).toEqual([{ station: station.name, at: at(3 + 9 * HOUR) }]);
    expect(twice[0]).toBe(once[0]);
  });

  it("moves nothing where the week is the same", () => {
    expect(movedJobs(stoodOf(week), week)).toEqual([]);
  });
});
