import { describe, expect, it } from "vitest";
import { NO_MARKS } from "../../../src/bill/nouns/marks.ts";
import { planWeek } from "../../../src/bill/week/plan-week.ts";
import { type Rescue, rescuesOf } from "../../../src/bill/week/rescue.ts";
import type { WeekJob } from "../../../src/bill/week/steps.ts";
import { takeBill } from "../../../src/bill/week/take-bill.ts";
import type { WeekOptions } from "../../../src/bill/week/week.ts";
import { instant, SECONDS_PER_DAY } from "../../../src/calc/schedule/calendar.ts";
import type { CellValue } from "../../../src/units/cell.ts";
import type { Refusal } from "../../../src/units/refusal.ts";
import { BRACKET, HOUR, job, type Line, MONDAY, SHOP } from "../../cells/example/tables.ts";
import { planned, shopOf } from "../shop.ts";

const NOW = instant(Math.round((MONDAY + 7 * HOUR) * SECONDS_PER_DAY));
const OPTIONS: WeekOptions = { now: NOW, units: 1e5 };
const OWN: readonly (readonly CellValue[])[] = [
  ["Second shift", 8, "h"],
  ["Overtime premium", 0.5, null],
];

const RATES = [...SHOP.rates.filter(([name]) => !OWN.some(([own]) => own === name)), ...OWN.map((row) => [...row])];

const open = (name: string, lines: readonly Line[], due: number): WeekJob => ({
  name,
  plan: planned(lines, shopOf({ job: job({ Due: due }), rates: RATES })),
  marks: new Map(),
});
const part = (name: string, changed: Line = {}): Line => ({ ...BRACKET, Part: name, ...changed });
const of = (found: readonly Rescue[], kind: Rescue["kind"], station?: string) =>
  found.find((each) => each.kind === kind && (station === undefined || each.station === station));

describe("what saves a late job", () => {
  const jobs = [
    open("plates", [part("P", { Route: "waterjet", Quantity: 300 })], MONDAY + 12 * HOUR),
    open("welded", [part("W", { Operations: "Weld 4", Quantity: 150 })], MONDAY + 5),
  ];
  const week = planWeek(jobs, OPTIONS);

  it("is planned, so that a plan with it has the late hours that it names", () => {
    const found = rescuesOf(jobs, OPTIONS, week, "plates");
    expect(week.jobs[0]!.late).toBeGreaterThan(0);
    for (const rescue of found) {
      expect(rescue.saves).toBe(week.jobs[0]!.late - rescue.late);
      expect(rescue.saves).toBeGreaterThan(0);
    }
    const overtime = of(found, "overtime", "")!;
    const extra = 3600 * shopOf().rates.get("overtimePerDay");
    const again = planWeek(jobs, { ...OPTIONS, overtime: new Map([["", extra]]), tried: [week.orders] });
    expect(again.jobs[0]!.late).toBeLessThanOrEqual(overtime.late);
  });

  it("is the least of its kind that saves: less overtime would not, nor another order alone", () => {
    const found = rescuesOf(jobs, OPTIONS, week, "plates").filter(({ kind }) => kind === "overtime");
    expect(found.length).toBeGreaterThan(0);
    const most = shopOf().rates.get("overtimePerDay");
    for (const { station, perDay, days, late } of found) {
      expect(perDay).toBeLessThanOrEqual(most);
      expect(days).toBeGreaterThan(0);
      // Without it its own orders leave more late.
      const extra = new Map([[station, perDay * 3600]]);
      const again = planWeek(jobs, { ...OPTIONS, overtime: extra, tried: [week.orders] });
      const bare = planWeek(jobs, { ...OPTIONS, units: 0, tried: [again.orders] });
      expect(bare.worth.late).toBeGreaterThan(again.worth.late);
      if (late > 0) expect(perDay).toBe(most);
    }
  });

  it("another order names who gives way and harms nobody else, and no order harms less", () => {
    const three = [
      open("first", [part("A", { Quantity: 700 })], MONDAY + 12 * HOUR),
      open("aside", [part("X", { Operations: "Weld 6", Quantity: 60 })], MONDAY + 2),
      open("wanted", [part("W", { Quantity: 700, Material: "A1011 CS", Thickness: "10 ga" })], MONDAY + 13 * HOUR),
    ];
    const all = planWeek(three, OPTIONS);
    const late = all.jobs.reduce((a, b) => (b.late > a.late ? b : a)).name;
    const found = of(rescuesOf(three, OPTIONS, all, late), "order")!;
    expect(["", "first", "wanted"]).toContain(found.before);
    expect(found.harmed.map(({ job }) => job)).toEqual([found.before]);
    const told = found.harmed.reduce((sum, each) => sum + each.late, 0);
    expect(told).toBeGreaterThan(0);
    expect(Math.abs(told - found.others)).toBeLessThan(60);
  });

  it("overtime and a second shift are paid by the hours beyond the shifts, at the station's rate; overtime with its premium", () => {
    const overtime = of(rescuesOf(jobs, OPTIONS, week, "plates"), "overtime", "Waterjet")!;
    expect(overtime.hours).toBeGreaterThan(0);
    expect(overtime.money).toBeCloseTo(overtime.hours! * 105 * (1 + 0.5), 6);
    const shift = of(rescuesOf(jobs, OPTIONS, week, "plates"), "second shift", "Waterjet")!;
    expect(shift.hours).toBeGreaterThan(0);
    expect(shift.money).toBeCloseTo(shift.hours! * 105, 6);
  });

  it("names the missing figure where the rates have no premium", () => {
    const bare = jobs.map((each) => ({
      ...each,
      plan: planned(
        [part("P", { Route: "waterjet", Quantity: 300 })],
        shopOf({ job: job({ Due: MONDAY + 12 * HOUR }) }),
      ),
    }));
    const overtime = of(rescuesOf(bare, OPTIONS, planWeek(bare, OPTIONS), "plates"), "overtime")!;
    expect((overtime.money as Refusal).message).toContain('a row "Overtime premium"');
  });

  it("moves lines from a busy shear to the waterjet, with what the machines cost more", () => {
    const begun = new Map([[2, { ...NO_MARKS, started: [{ station: "Shear", at: undefined }] }]]);
    const busy = { ...open("busy", [part("B", { Quantity: 3000, Route: "shear" })], MONDAY + 9), marks: begun };
    const free = open("plates", [part("P", { Quantity: 60 })], MONDAY + 14 * HOUR);
    expect(free.plan.quoted[0]!.cutter).toBe("shear");
    const both = planWeek([busy, free], OPTIONS);
    const moved = of(rescuesOf([busy, free], OPTIONS, both, "plates"), "route")!;
    expect([moved.station, moved.lines]).toEqual(["Waterjet", 1]);
    expect(moved.saves).toBeGreaterThan(0);
    expect(moved.money).toBeGreaterThan(0);
    expect(moved.others).toBeLessThanOrEqual(0);
  });

  it("sends work to a vendor, for its days and its price less what the work costs here", () => {
    const jet = [open("plates", [part("P", { Route: "waterjet", Quantity: 900 })], MONDAY + 2)];
    const found = of(rescuesOf(jet, OPTIONS, planWeek(jet, OPTIONS), "plates"), "outside")!;
    expect(found.station).toBe("Waterjet");
    const { plan } = jet[0]!;
    const [work] = plan.workOf(plan.quoted[0]!).works;
    const here = ((work!.setUp + work!.run) / 3600) * 105;
    const marked = 1 + (plan.shop.rates.find("outsideMarkUp") ?? 0);
    expect(found.money).toBeCloseTo(3.5 * plan.quoted[0]!.plan.blanks * marked - here, 6);
    expect(found.hours).toBeCloseTo((-(work!.setUp + work!.run) * work!.people) / 3600, 9);
  });

  it("adds a second person where work waits at a bench", () => {
    const benches = [
      open("a", [part("A", { Operations: "Weld 9", Quantity: 100 })], MONDAY + 2),
      open("b", [part("B", { Operations: "Weld 9", Quantity: 100 })], MONDAY + 2),
    ];
    const both = planWeek(benches, OPTIONS);
    const late = both.jobs.findIndex((each) => each.late === Math.max(...both.jobs.map((one) => one.late)));
    const found = of(rescuesOf(benches, OPTIONS, both, benches[late]!.name), "further")!;
    expect(found.station).toBe("Weld");
    expect(found.saves).toBeGreaterThan(0);
    expect(found.money).toBeCloseTo(found.hours! * shopOf().rates.get("secondPerson"), 6);
  });

  it("adds one more person where the work waits for people, paid in every shift until it is done", () => {
    const calendar = SHOP.calendar.map((row, i) => [...row, i === 0 ? "People" : 1]);
    const single = (name: string): WeekJob => {
      const lines = [part(name, { Holes: null, "Hole diameter": null, Quantity: 900 })];
      return {
        name,
        plan: planned(lines, shopOf({ job: job({ Due: MONDAY + 14 * HOUR }), calendar })),
        marks: new Map(),
      };
    };
    const both = [single("a"), single("b")];
    const alone = planWeek(both, OPTIONS);
    const { name } = alone.jobs.reduce((a, b) => (b.late > a.late ? b : a));
    const found = of(rescuesOf(both, OPTIONS, alone, name), "further", "")!;
    const again = planWeek(both, { ...OPTIONS, further: new Map([["", 1]]), tried: [alone.orders] });
    expect(found.saves).toBeGreaterThan(0);
    expect(again.jobs.find((each) => each.name === name)!.late).toBeLessThan(
      alone.jobs.find((each) => each.name === name)!.late,
    );
    expect(found.money).toBeCloseTo(found.hours! * shopOf().rates.get("secondPerson"), 6);
  });
});

describe("can we take this bill", () => {
  const jobs = [
    open("first", [part("A", { Quantity: 400 })], MONDAY + 12 * HOUR),
    open("second", [part("B", { Quantity: 100 })], MONDAY + 5),
  ];

  it("answers the earliest date at which no other leaves later than without it, or than it is due", () => {
    const bill = open("new", [part("N", { Quantity: 150 })], MONDAY + 9);
    const alone = planWeek(jobs, OPTIONS);
    const { earliest, week } = takeBill(jobs, bill, OPTIONS);
    jobs.forEach((_, i) => {
      const { due, finish } = alone.jobs[i]!;
      expect(week.jobs[i]!.finish).toBeLessThanOrEqual(Math.max(due!, finish!));
    });
    expect(week.jobs[2]!.finish).toBe(earliest);
  });

  it("says what it would cost to be done when it is wanted", () => {
    const bill = open("new", [part("N", { Quantity: 150 })], MONDAY + 15 * HOUR);
    const { earliest, wanted, earlier } = takeBill(jobs, bill, OPTIONS);
    expect(wanted).toBe(Math.round((MONDAY + 15 * HOUR) * SECONDS_PER_DAY));
    expect(earliest).toBeGreaterThan(wanted!);
    expect(earlier.length).toBeGreaterThan(0);
  });
});
