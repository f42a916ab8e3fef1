import { describe, expect, it } from "vitest";
import { calendarOf } from "../../../src/bill/nouns/calendar.ts";
import { type Marks, NO_MARKS } from "../../../src/bill/nouns/marks.ts";
import type { Shop } from "../../../src/bill/nouns/shop.ts";
import { emptySays, faultSays, weekWithoutSays } from "../../../src/bill/week/faults.ts";
import { latestStarts } from "../../../src/bill/week/latest-starts.ts";
import { planWeek } from "../../../src/bill/week/plan-week.ts";
import { replanWeek } from "../../../src/bill/week/replan-week.ts";
import { rescuesOf } from "../../../src/bill/week/rescue.ts";
import { setUpSays } from "../../../src/bill/week/set-up-says.ts";
import type { WeekJob } from "../../../src/bill/week/steps.ts";
import type { PlannedStep, Week, WeekOptions } from "../../../src/bill/week/week.ts";
import { instant, SECONDS_PER_DAY } from "../../../src/calc/schedule/calendar.ts";
import { workBetween } from "../../../src/calc/schedule/finish.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";
import type { CellValue } from "../../../src/units/cell.ts";
import { BRACKET, HOUR, job, type Line, MONDAY, SHOP, withCell } from "../../cells/example/tables.ts";
import { planned, shopOf } from "../shop.ts";

const at = (days: number) => instant(Math.round((MONDAY + days) * SECONDS_PER_DAY));
const NOW = at(7 * HOUR);
const UNITS = 2e5;

const open = (name: string, lines: readonly Line[], entries: Record<string, CellValue> = {}, shop?: Shop): WeekJob => ({
  name,
  plan: planned(lines, shop ?? shopOf({ job: job(entries) })),
  marks: new Map(),
});
const mark = (job: WeekJob, row: number, marks: Partial<Marks>): WeekJob => ({
  ...job,
  marks: new Map([...job.marks, [row, { ...NO_MARKS, ...marks }]]),
});
const part = (name: string, changed: Line = {}): Line => ({ ...BRACKET, Part: name, ...changed });
const stepsOf = ({ steps }: Week, name: string): PlannedStep[] => steps.filter(({ line }) => line.part === name);
const says = ({ faults }: Week): string[] => faults.map((fault) => faultSays(fault, (day) => String(day)));

describe("the steps of a line", () => {
  const week = planWeek([open("one", [part("A", { Operations: "Weld 2; Deburr; Coating; Pack" })])], {
    now: NOW,
    units: UNITS,
  });

  it("are cut, deburr, bend, drill, weld, coat outside, pack, each when the one before is done", () => {
    const steps = stepsOf(week, "A");
    const names = steps.map(({ station }) => station.name);
    expect(names[0]).toBe("Shear");
    expect(names.indexOf("Deburr")).toBeLessThan(names.indexOf("Brake"));
    expect(names.indexOf("Brake")).toBeLessThan(names.indexOf("Weld"));
    expect(names.indexOf("Weld")).toBeLessThan(names.indexOf("Coating"));
    expect(names.at(-1)).toBe("Pack");
    for (const [i, step] of steps.entries()) if (i > 0) expect(step.ready).toBeGreaterThanOrEqual(steps[i - 1]!.finish);
  });

  it("take the minutes that the plan of the bill has, in the shifts of the station", () => {
    for (const { work, finish, ready, setUp, station } of stepsOf(week, "A")) {
      if (!work) continue;
      expect(setUp).toBe(work.setUp + 0);
      expect(workBetween(ready, finish, calendarOf(shopOf().calendar, station.name))).toBe(work.run);
    }
  });

  it("of a vendor take its working days", () => {
    const coating = stepsOf(week, "A").find(({ station }) => station.name === "Coating")!;
    expect((coating.finish - coating.ready) / SECONDS_PER_DAY).toBeGreaterThanOrEqual(coating.station.vendorDays!);
  });
});

describe("set-ups", () => {
  it("of one set of tools and one sheet are shared by lines of two jobs where they meet", () => {
    const alone = planWeek([open("one", [part("A")])], { now: NOW, units: UNITS });
    const both = planWeek([open("one", [part("A")]), open("two", [part("B")])], { now: NOW, units: UNITS });
    const [cutA, bentA] = stepsOf(alone, "A");
    expect(both.worth.setUp).toBe(2 * alone.worth.setUp - cutA!.change - bentA!.change);
    expect(both.isProved).toBe(true);
  });
});

describe("set-up against the bills", () => {
  const billed = (week: Week) =>
    week.steps.reduce((sum, { work, lot }) => sum + (lot > 1 ? 0 : (work?.setUp ?? 0)), 0) / 3600;

  it("is the same for a single job in time, whose tools and sheet are set up once in both", () => {
    const week = planWeek([open("one", [part("A"), part("B"), part("C")], { Due: MONDAY + 20 })], {
      now: NOW,
      units: UNITS,
    });
    expect(Math.abs(week.worth.setUp / 3600 - billed(week))).toBeLessThan(0.01);
    expect(setUpSays(week)).toBe("");
  });

  it("is said by station where jobs that meet share it: what is less is what the week has less", () => {
    const week = planWeek([open("one", [part("A")]), open("two", [part("B")])], { now: NOW, units: UNITS });
    const said = [...setUpSays(week).matchAll(/([\d.]+) h less/g)].reduce((sum, [, hours]) => sum + Number(hours), 0);
    expect(said).toBeGreaterThan(0);
    expect(Math.abs(billed(week) - week.worth.setUp / 3600 - said)).toBeLessThan(0.02);
    expect(setUpSays(week)).toMatch(/^Set-up compared with the bills, .*: (Brake|Shear) [\d.]+ h less/);
  });
});

describe("what is due first", () => {
  const big = part("BIG", { Quantity: 400 });
  const small = part("SMALL", { Quantity: 20, Material: "A1011 CS", Thickness: "10 ga" });

  it("goes first, and the late hours are those of the clock past the due time", () => {
    const jobs = [open("late", [big], { Due: MONDAY + 3 }), open("soon", [small], { Due: MONDAY + 9 * HOUR })];
    const week = planWeek(jobs, { now: NOW, units: UNITS });
    const [late, soon] = week.jobs;
    expect(soon!.finish).toBeLessThan(late!.finish!);
    expect(soon!.late).toBe(Math.max(0, soon!.finish! - at(9 * HOUR)));
    expect(week.isProved).toBe(true);
  });

  it("has a latest start, from which it is done when it is due, and a chain that ends with it", () => {
    const { jobs, steps } = planWeek([open("one", [part("A", { Quantity: 300 })], { Due: MONDAY + 9 })], {
      now: NOW,
      units: UNITS,
    });
    const [first] = steps;
    const shifts = calendarOf(shopOf().calendar, "Shear");
    expect(workBetween(jobs[0]!.latestStart!, first!.latest!, shifts)).toBe(first!.setUp);
    expect(first!.latest).toBeGreaterThan(first!.ready);
    expect(first!.slack).toBe(workBetween(first!.ready, first!.latest!, shifts));
    expect(jobs[0]!.chain.map((i) => steps[i]!.station.name)).toEqual(steps.map(({ station }) => station.name));
  });

  it("may wait as long as its own date allows, whoever is late behind it", () => {
    const jobs = [open("soon", [small], { Due: MONDAY + 9 }), open("late", [big], { Due: MONDAY + 9 * HOUR })];
    const [soon, late] = planWeek(jobs, { now: NOW, units: UNITS }).jobs;
    expect(late!.late).toBeGreaterThan(0);
    expect(soon!.latestStart).toBeGreaterThan(NOW);
    expect(late!.latestStart).toBeLessThan(NOW);
    expect([soon!.isStartPast, late!.isStartPast]).toEqual([false, true]);
  });

  it("marks what a late job waits for, whosever it is, and nothing of a job with time to spare", () => {
    const hurried = open("hurried", [part("H", { Quantity: 300 })], { Due: MONDAY + 8 * HOUR, Pace: "rush" });
    const jobs = [hurried, open("late", [big], { Due: MONDAY + 9 * HOUR }), open("idle", [small], { Due: MONDAY + 9 })];
    const { jobs: dates, steps } = planWeek(jobs, { now: NOW, units: UNITS });
    const waited = dates.flatMap(({ late, chain }) => (late > 0 ? chain : []));
    expect(new Set(waited.map((i) => steps[i]!.job)).size).toBe(2);
    for (const i of waited) expect(steps[i]!.isCritical).toBe(true);
    for (const { slack, isCritical } of steps) if (slack! <= 0) expect(isCritical).toBe(true);
    const alone = planWeek(jobs.slice(2), { now: NOW, units: UNITS });
    expect(alone.steps.some(({ isCritical }) => isCritical)).toBe(false);
  });

  it("held back as long as it may wait, nobody is later; a day longer, and it is", () => {
    const jobs = [
      open("a", [part("A", { Quantity: 300 })], { Due: MONDAY + 3 }),
      open("b", [small], { Due: MONDAY + 4 }),
    ];
    const options = { now: NOW, units: UNITS };
    const week = planWeek(jobs, options);
    latestStarts(jobs, options, week).forEach((start, i) => {
      const { name, late, due } = week.jobs[i]!;
      expect(start, name).toBeGreaterThan(NOW);
      const held = (from: number) => replanWeek(jobs, { ...options, starts: new Map([[name, instant(from)]]) }, week);
      const kept = held(start!);
      for (const step of kept.steps.filter(({ job }) => job === i)) expect(step.ready).toBeGreaterThanOrEqual(start!);
      for (const [k, job] of kept.jobs.entries()) expect(job.late).toBeLessThan(week.jobs[k]!.late + 60);
      expect(held(due!).jobs[i]!.late).toBeGreaterThan(late);
    });
    const begun = mark(jobs[0]!, 2, { started: [{ station: "Shear", at: NOW }] });
    expect(latestStarts([begun], options, planWeek([begun], options))).toEqual([undefined]);
  });

  it("a rush counts for more than the others", () => {
    const due = { Due: MONDAY + 7 * HOUR };
    const jobs = (pace: string) => [open("a", [big], due), open("b", [big], { ...due, Pace: pace })];
    const [a, b] = planWeek(jobs("rush"), { now: NOW, units: UNITS }).jobs;
    expect(b!.finish).toBeLessThan(a!.finish!);
  });
});

describe("marks of the floor", () => {
  const jobs = [
    open("one", [part("A", { Operations: "Deburr" }), part("B", { Material: "304", Thickness: "14 ga" })]),
    open("two", [part("C", { Quantity: 200 })]),
  ];

  it("what is done is gone, and so is what comes before it", () => {
    const week = planWeek([mark(jobs[0]!, 2, { done: ["Deburr"] }), jobs[1]!], { now: NOW, units: UNITS });
    expect(stepsOf(week, "A").map(({ station }) => station.name)).toEqual(["Brake", "Drill"]);
    const all = planWeek([mark(jobs[0]!, 2, { isDone: true }), jobs[1]!], { now: NOW, units: UNITS });
    expect(stepsOf(all, "A")).toEqual([]);
  });

  it("what has begun goes on at once and is set up already", () => {
    const week = planWeek([jobs[0]!, mark(jobs[1]!, 2, { started: [{ station: "Shear", at: undefined }] })], {
      now: NOW,
      units: UNITS,
    });
    const [cut] = stepsOf(week, "C");
    expect([cut!.begins, cut!.setUp]).toEqual([NOW, 0]);
  });

  it("what is pinned stands at its time", () => {
    const time = at(1 + 10 * HOUR);
    const week = planWeek([mark(jobs[0]!, 2, { pins: [{ station: "Brake", at: time }] }), jobs[1]!], {
      now: NOW,
      units: UNITS,
    });
    expect(stepsOf(week, "A").find(({ station }) => station.name === "Brake")!.ready).toBe(time);
  });

  it("what has begun at a time keeps what is done: planned again later it ends when it did", () => {
    const whole = planWeek([jobs[1]!], { now: NOW, units: UNITS });
    const [cut] = stepsOf(whole, "C");
    const marked = mark(jobs[1]!, 2, { started: [{ station: "Shear", at: cut!.begins }] });
    const done = cut!.finish - cut!.begins;
    for (const share of [0, 0.3, 0.9]) {
      const now = instant(Math.round(cut!.begins + share * done));
      const [rest, bend] = stepsOf(planWeek([marked], { now, units: UNITS }), "C");
      expect([rest!.begins, rest!.finish, rest!.setUp], `${share}`).toEqual([now, cut!.finish, 0]);
      // Its brake is set up from now on.
      const free = stepsOf(whole, "C")[1]!;
      expect(bend!.finish, `${share}`).toBeLessThanOrEqual(free.finish + free.setUp);
    }
    const over = planWeek([marked], { now: at(2 + 9 * HOUR), units: UNITS });
    expect(stepsOf(over, "C")[0]!.finish).toBe(at(2 + 9 * HOUR));
    expect(says(over)).toEqual([
      expect.stringContaining('two, C (row 2, column "Started"): the hours of "Shear" are over'),
    ]);
  });

  it("two lines that have begun where there is room for one are named", () => {
    const begun = { started: [{ station: "Drill", at: NOW }] };
    const week = planWeek([mark(jobs[0]!, 2, begun), mark(jobs[1]!, 2, begun)], { now: NOW, units: UNITS });
    expect(says(week)).toEqual([
      'two, C (row 2, column "Started"): "Drill" has begun beside A of one, and 1 can be there at once; one is planned behind the other, correct a mark',
    ]);
  });

  it("of lots the first ones are done first, and nights are no work", () => {
    const lots = shopOf({ job: job(), rates: [...SHOP.rates, ["Transfer lot", 50, null]] });
    const line = [part("L", { Quantity: 200 })];
    const whole = planWeek([open("lots", line, {}, lots)], { now: NOW, units: UNITS });
    const cuts = stepsOf(whole, "L").filter(({ station }) => station.name === "Shear");
    const marked = mark(open("lots", line, {}, lots), 2, { started: [{ station: "Shear", at: NOW }] });
    const now = instant(cuts[1]!.finish + 1);
    const again = stepsOf(planWeek([marked], { now, units: UNITS }), "L");
    expect(again.filter(({ station }) => station.name === "Shear").map(({ lot }) => lot)).toEqual([3, 4]);
    expect(again.filter(({ station }) => station.name === "Brake").length).toBe(4);
    const ends = (of: PlannedStep[]) => Math.max(...of.map(({ finish }) => finish));
    expect(ends(again)).toBeLessThanOrEqual(ends(stepsOf(whole, "L")) + cuts[0]!.setUp + 3600);
  });

  it("a line begun without a time, or later than now, is named", () => {
    const begun = (time?: number) =>
      mark(jobs[1]!, 2, { started: [{ station: "Shear", at: time === undefined ? undefined : at(time) }] });
    expect(says(planWeek([begun()], { now: NOW, units: 0 }))).toEqual([
      expect.stringMatching(/^two, C \(row 2, column "Started"\): "Shear" has no time/),
    ]);
    expect(says(planWeek([begun(1)], { now: NOW, units: 0 }))).toEqual([
      expect.stringContaining("begins later than now"),
    ]);
  });

  it("work at a vendor is back its working days after it was sent", () => {
    const coated = open("coated", [part("V", { Operations: "Coating" })]);
    const sent = at(-3 + 9 * HOUR);
    const marked = mark(coated, 2, { started: [{ station: "Coating", at: sent }] });
    const [coating] = stepsOf(planWeek([marked], { now: NOW, units: UNITS }), "V");
    const days = coating!.station.vendorDays!;
    const later = stepsOf(planWeek([marked], { now: at(9 * HOUR), units: UNITS }), "V")[0]!;
    expect(days).toBeGreaterThan(1);
    expect([coating!.ready, later.finish]).toEqual([sent, coating!.finish]);
  });

  it("a pin that is past or before the work can begin is named, dropped, and weighs nothing", () => {
    const free = planWeek(jobs, { now: NOW, units: UNITS });
    const pinned = mark(jobs[0]!, 2, { pins: [{ station: "Brake", at: at(-3) }] });
    const week = planWeek([pinned, jobs[1]!], { now: NOW, units: UNITS });
    expect(says(week)).toEqual([expect.stringMatching(/pinned to \d+, which is past; planned without the pin/)]);
    expect(week.worth).toEqual(free.worth);
    const later = open("later", [part("A")], { Start: MONDAY + 2 });
    const early = planWeek([mark(later, 2, { pins: [{ station: "Shear", at: at(1 + 9 * HOUR) }] })], { now: NOW });
    expect(says(early)).toEqual([expect.stringContaining("pinned before the work can begin")]);
  });

  it("a pin at night is named and stands at the next working time", () => {
    const pinnedTo = (time: number) => [mark(jobs[0]!, 2, { pins: [{ station: "Brake", at: at(time) }] }), jobs[1]!];
    const night = planWeek(pinnedTo(1 + 22 * HOUR), { now: NOW, units: UNITS });
    const morning = stepsOf(night, "A").find(({ station }) => station.name === "Brake")!.pin!;
    expect(morning).toBeGreaterThan(at(2));
    expect(says(night)).toEqual([
      expect.stringContaining(`outside its shifts; taken as pinned to the next working time, ${morning}`),
    ]);
    expect(planWeek(pinnedTo(morning / SECONDS_PER_DAY - MONDAY), { now: NOW, units: UNITS }).steps).toEqual(
      night.steps,
    );
  });

  it("a pin that cannot be kept is named with the time that can, and no late hour of the jobs", () => {
    const soon = at(7.25 * HOUR);
    const week = planWeek([mark(jobs[1]!, 2, { pins: [{ station: "Brake", at: soon }] })], { now: NOW, units: UNITS });
    const bend = stepsOf(week, "C").find(({ station }) => station.name === "Brake")!;
    expect(bend.ready).toBeGreaterThan(soon);
    expect(says(week)).toEqual([expect.stringContaining(`cannot keep its pin; it is planned from ${bend.ready}`)]);
    expect(week.worth.late).toBe(week.jobs[0]!.late);
    expect(week.bound.late).toBeLessThanOrEqual(week.worth.late);
  });

  it("a pin is kept by the first lot, and to the minute as it can be written", () => {
    const lots = shopOf({ job: job(), rates: [...SHOP.rates, ["Transfer lot", 50, null]] });
    const whole = open("lots", [part("L", { Quantity: 200 })], {}, lots);
    const bend = stepsOf(planWeek([whole], { now: NOW, units: UNITS }), "L").find(({ machine }) =>
      /brake/i.test(machine),
    );
    const pinned = (time: number) =>
      planWeek([mark(whole, 2, { pins: [{ station: "Brake", at: instant(time) }] })], { now: NOW, units: UNITS });
    expect(says(pinned(at(1 + 9 * HOUR)))).toEqual([]);
    expect(says(pinned(bend!.ready - 59))).toEqual([]);
    expect(says(pinned(bend!.ready - 61))).toEqual([expect.stringContaining("cannot keep its pin")]);
  });

  it("a mark at a station where the line has no work, and one made twice, are named and the rest is planned", () => {
    const week = planWeek([mark(jobs[0]!, 2, { done: ["Shear", "shear", "Polish"] }), jobs[1]!], {
      now: NOW,
      units: UNITS,
    });
    expect(says(week)).toEqual([
      expect.stringContaining('one, A (row 2, column "Done"): "Polish" is left out, the line has no work there'),
      expect.stringContaining('one, A (row 2, column "Done"): "shear" is marked twice'),
    ]);
    expect(stepsOf(week, "C").length).toBeGreaterThan(0);
  });

  it("never move what is done or has begun, in 300 random weeks", () => {
    const stations = ["Shear", "Brake"];
    for (let seed = 1; seed <= 300; seed++) {
      const next = randomFrom(seed);
      const marked = jobs.map((job) =>
        job.plan.lines.reduce((all, { row }) => {
          const drawn = next();
          if (drawn < 0.3) return mark(all, row, { done: [stations[Math.floor(next() * 2)]!] });
          const begun = { station: stations[Math.floor(next() * 2)]!, at: undefined };
          return drawn < 0.6 ? mark(all, row, { started: [begun] }) : all;
        }, job),
      );
      const before = planWeek(jobs, { now: NOW, units: 0 });
      const week = replanWeek(marked, { now: NOW, units: 2000 }, before);
      marked.forEach(({ marks }, at) => {
        for (const [row, { done, started }] of marks) {
          const own = week.steps.filter(({ job, line }) => job === at && line.row === row);
          expect(
            own.some(({ station }) => done.includes(station.name)),
            `seed ${seed}`,
          ).toBe(false);
          for (const step of own.filter(({ isStarted }) => isStarted)) {
            expect(started.map(({ station }) => station)).toContain(step.station.name);
            const machine = week.machines.find(({ steps }) => steps.includes(week.steps.indexOf(step)))!;
            const ahead = machine.steps.slice(0, machine.steps.indexOf(week.steps.indexOf(step)));
            expect(
              ahead.every((i) => week.steps[i]!.isStarted),
              `seed ${seed}`,
            ).toBe(true);
          }
        }
      });
    }
  }, 120_000);
});

describe("what is wrong is named and the rest is planned", () => {
  it("a due time that is past", () => {
    const week = planWeek([open("old", [part("A")], { Due: MONDAY - 1 })], { now: NOW, units: UNITS });
    expect(says(week)).toEqual([expect.stringMatching(/^old: due .*, which is past/)]);
    expect(week.steps.length).toBeGreaterThan(0);
  });

  it("tables of two shops that differ", () => {
    const other = shopOf({ job: job(), stations: withCell(SHOP.stations, "Brake", "Rate", 999) });
    const week = planWeek([open("one", [part("A")]), open("two", [part("B")], {}, other)], { now: NOW, units: UNITS });
    expect(says(week)).toEqual([
      "two: stations differ from those of one, which are used for stations and shifts; its times stay its own; with --shop WORKBOOK all jobs go by one shop",
    ]);
    expect(stepsOf(week, "B").length).toBeGreaterThan(0);
  });

  it("a bill under a second name is planned once, while one with another date is another order", () => {
    const copy = (name: string, due: number) => open(name, [part("A")], { Due: MONDAY + due });
    const week = planWeek([copy("one", 3), copy("two", 3), copy("three", 4)], { now: NOW, units: 0 });
    expect(says(week)).toEqual([
      "two: the same lines and dates as one; planned once, with the marks of one; if it is another order, give it its own date",
    ]);
    const once = planWeek([copy("one", 3), copy("three", 4)], { now: NOW, units: 0 });
    expect(week.days).toEqual(once.days);
    expect(week.jobs.map(({ finish }) => finish)).toEqual([once.jobs[0]!.finish, undefined, once.jobs[1]!.finish]);
  });

  it("one table that differs is said as one", () => {
    const shop = (end: string) =>
      shopOf({
        job: job(),
        calendar: SHOP.calendar.map((row, r) => row.map((cell, i) => (r > 0 && i === 2 && cell ? end : cell))),
      });
    const week = planWeek([open("one", [part("A")]), open("two", [part("B")], {}, shop("20:00"))], {
      now: NOW,
      units: 0,
    });
    expect(says(week)).toEqual([expect.stringMatching(/^two: calendar differs from that of one, which is used for/)]);
  });

  it("of copies the one with more marks rules", () => {
    const copy = (name: string) => open(name, [part("A")]);
    const jobs = [copy("one"), mark(copy("two"), 2, { done: ["Shear"] })];
    const week = planWeek(jobs, { now: NOW, units: 0 });
    expect(says(week)).toEqual([expect.stringMatching(/^one: the same .* with the marks of two/)]);
    expect(week.jobs.map(({ name, finish }) => (finish ? name : emptySays(week, name)))).toEqual([
      "same as two",
      "two",
    ]);
    expect(week.steps.map(({ station }) => station.name)).not.toContain("Shear");
  });

  it("a workbook of an earlier release rules no tables where a current one is there", () => {
    const other = shopOf({ job: job(), stations: withCell(SHOP.stations, "Brake", "Rate", 999) });
    const old = { ...open("a", [part("A")], {}, other), isOfBefore: true };
    const week = planWeek([old, open("b", [part("B")])], { now: NOW, units: 0 });
    expect(says(week)).toEqual([expect.stringMatching(/^a: stations differ from those of b/)]);
  });

  it("a mark of another machine of the station counts there, and is said", () => {
    const { shears } = shopOf();
    const other = { ...open("one", [part("A")]), marks: new Map() };
    const spare = { ...shears[0]!, name: "Spare shear" };
    const plan = planned([part("A")], { ...shopOf({ job: job() }), shears: [...shears, spare] });
    const week = planWeek([mark({ ...other, plan }, 2, { done: ["spare shear"] })], { now: NOW, units: 0 });
    expect(says(week)).toEqual([expect.stringMatching(/"spare shear" is taken for .*, where the line is planned/)]);
    expect(week.steps.map(({ station }) => station.name)).not.toContain("Shear");
  });

  it("a queue typed by hand is no difference: the open jobs are what waits", () => {
    const other = shopOf({ job: job(), stations: withCell(SHOP.stations, "Brake", "Queue", 500) });
    const week = planWeek([open("one", [part("A")]), open("two", [part("B")], {}, other)], { now: NOW, units: UNITS });
    expect(says(week)).toEqual([]);
  });

  it("a calendar without shifts, where another job's has some; refused where nobody's has", () => {
    const closed = shopOf({
      job: job(),
      calendar: [
        ["Day", "Start", "End"],
        ["2026-05-25", null, null],
      ],
    });
    const week = planWeek([open("closed", [part("A")], {}, closed), open("open", [part("B")])], {
      now: NOW,
      units: UNITS,
    });
    expect(says(week)).toContain("closed: its calendar has no shift; it is planned in the shop's");
    expect(stepsOf(week, "A").length).toBeGreaterThan(0);
    const late = [open("closed", [part("A", { Quantity: 400 })], {}, closed), open("open", [part("B")])];
    const soon = { now: NOW, units: UNITS, dues: new Map([["closed", () => NOW]]) };
    expect(rescuesOf(late, soon, planWeek(late, soon), "closed").length).toBeGreaterThan(0);
    expect(() => planWeek([open("closed", [part("A")], {}, closed)], { now: NOW, units: UNITS })).toThrow(
      expect.objectContaining({ message: expect.stringMatching(/^calendar must be one with a shift.*none in closed/) }),
    );
  });

  it("a line that has no quote", () => {
    const week = planWeek([open("one", [part("A"), part("B", { Material: "cheese" })])], { now: NOW, units: UNITS });
    expect(says(week)).toEqual([expect.stringMatching(/^one, B: not planned, no quote: .*cheese/)]);
    const bad = ["B", "C", "D"].map((name) => part(name, { Material: "cheese" }));
    const many = planWeek([open("one", [part("A"), ...bad]), open("two", bad.slice(0, 1))], { now: NOW, units: UNITS });
    expect(many.jobs.map(({ name }) => weekWithoutSays(many, name))).toEqual(["without 3 lines", "without 1 line"]);
    expect(weekWithoutSays(many)).toBe("without 4 lines");
    expect(weekWithoutSays(planWeek([open("one", [part("A")])], { now: NOW, units: 0 }))).toBe("");
  });
});

describe("a lot that goes on as it is done", () => {
  it("is never later than the whole line, and is set up once", () => {
    const lines = [part("A", { Quantity: 200, Operations: "Deburr" })];
    const rates = (lot: CellValue) => shopOf({ job: job(), rates: [...SHOP.rates, ["Transfer lot", lot, null]] });
    const whole = planWeek([open("one", lines)], { now: NOW, units: UNITS });
    const lots = planWeek([open("one", lines, {}, rates(50))], { now: NOW, units: UNITS });
    expect(lots.steps.length).toBe(4 * whole.steps.length);
    expect(lots.jobs[0]!.finish).toBeLessThan(whole.jobs[0]!.finish!);
    expect(lots.worth.setUp).toBe(whole.worth.setUp);
    const run = ({ steps }: Week) => steps.reduce((sum, step) => sum + step.run, 0);
    expect(run(lots)).toBe(run(whole));
  });
});

describe("the near plan", () => {
  it("stays first in its order; lots that stood the other way round are no circle", () => {
    const lots = shopOf({ job: job(), rates: [...SHOP.rates, ["Transfer lot", 50, null]] });
    const jobs = [open("lots", [part("L", { Quantity: 200 })], {}, lots), open("two", [part("B")], {}, lots)];
    const before = planWeek(jobs, { now: NOW, units: UNITS });
    const keys = [...before.orders.values()].flat().reverse();
    const week = planWeek(jobs, { now: NOW, units: UNITS, frozen: keys, tried: [before.orders] });
    expect(week.steps.length).toBe(before.steps.length);
    const cuts = stepsOf(week, "L").filter(({ station }) => station.name === "Shear");
    expect(cuts.map(({ lot }) => lot)).toEqual([1, 2, 3, 4]);
    for (const [i, cut] of cuts.entries()) if (i > 0) expect(cut.ready).toBeGreaterThanOrEqual(cuts[i - 1]!.finish);
  });
});

describe("load by day", () => {
  it("adds up to what the steps take, and never exceeds what the day has", () => {
    const week = planWeek([open("one", [part("A", { Quantity: 900 })]), open("two", [part("B", { Quantity: 300 })])], {
      now: NOW,
      units: UNITS,
    });
    const load = week.days.reduce((sum, day) => sum + day.load, 0);
    const work = week.steps.reduce((sum, { run, setUp }) => sum + run + setUp, 0);
    expect(Math.abs(load - work)).toBeLessThan(1);
    for (const day of week.days) expect(day.load).toBeLessThanOrEqual(day.available + 1e-6);
  });
});

describe("people of the calendar", () => {
  const [header, ...rows] = SHOP.calendar as [CellValue[], ...CellValue[][]];
  const general = rows.filter((row) => row[3] === null);
  const calendarOfPeople = (people: CellValue) => [[...header, "People"], ...general.map((row) => [...row, people])];
  const staffed = (people: CellValue, name = "one", parts = ["A", "B", "C", "D"]) => {
    const own = shopOf({ job: job({ Due: MONDAY + 2 }), calendar: calendarOfPeople(people) });
    return open(
      name,
      parts.map((each) => part(each, { Quantity: 150, Operations: "Weld 2; Deburr" })),
      {},
      own,
    );
  };
  const planOf = (people: CellValue, tried: WeekOptions["tried"] = []) =>
    planWeek([staffed(people), staffed(people, "two", ["E", "F"])], { now: NOW, units: UNITS, tried });
  /** The most who are at work together, by the beginnings and ends that are told. */
  const together = ({ steps }: Week) => {
    const taken = steps.flatMap(({ work, begins, ready, finish, setUp }) =>
      work
        ? [
            ...(setUp > 0 ? [[begins, Math.min(ready, begins + setUp), work.people] as const] : []),
            [ready, finish, work.people] as const,
          ]
        : [],
    );
    return Math.max(
      ...taken.map(([at]) => taken.reduce((sum, [from, to, people]) => sum + (from <= at && at < to ? people : 0), 0)),
    );
  };

  it("one person works at one station at a time, however many there are", () => {
    const [one, free] = [planOf(1), planOf(null)];
    expect(together(free)).toBeGreaterThan(1);
    expect(together(one)).toBe(1);
    expect(one.worth.late).toBeGreaterThan(free.worth.late);
    expect(says(one)).toEqual([]);
    expect(planOf(50).worth).toEqual(free.worth);
    // Who was waited for is on the chain: it reaches back to the beginning of the week.
    const [{ chain }] = one.jobs.filter(({ late }) => late > 0) as [Week["jobs"][number]];
    expect(one.steps[chain[0]!]!.begins).toBe(Math.min(...one.steps.map(({ begins }) => begins)));
  });

  it("each further person makes the week no later, since the earlier orders are among those tried", () => {
    let before = planOf(1);
    for (const people of [2, 3, 4]) {
      const week = planOf(people, [before.orders]);
      expect(together(week)).toBeLessThanOrEqual(people);
      expect(week.worth.late, `${people} people`).toBeLessThanOrEqual(before.worth.late);
      before = week;
    }
  });

  it("two lines that have begun where only one person is there are named", () => {
    const begun = (people: CellValue) => [
      mark(staffed(people, "one", ["A"]), 2, { started: [{ station: "Shear", at: NOW }] }),
      mark(staffed(people, "two", ["E"]), 2, { started: [{ station: "Deburr", at: NOW }] }),
    ];
    expect(says(planWeek(begun(1), { now: NOW, units: 0 }))).toEqual([
      'two, E (row 2, column "Started"): "Deburr" has begun beside A of one, with more people than the 1 that the calendar has there; one is planned behind the other, correct a mark',
    ]);
    expect(says(planWeek(begun(2), { now: NOW, units: 0 }))).toEqual([]);
  });

  it("a line that takes two people where there is only ever one is named and planned with one", () => {
    const long = open("one", [part("L", { Width: 90 })], {}, shopOf({ job: job(), calendar: calendarOfPeople(1) }));
    const week = planWeek([long], { now: NOW, units: UNITS });
    expect(week.steps.find(({ station }) => station.name === "Brake")!.work!.people).toBe(2);
    expect(says(week)).toContain(
      "one, L: Brake takes 2 people and the calendar never has more than 1 there; planned with 1",
    );
  });
});
