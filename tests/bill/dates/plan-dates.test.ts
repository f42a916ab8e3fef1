/** When lines must leave, which are late by how many hours, and what a second shift or sending out would save. */
import { describe, expect, it } from "vitest";
import { unusedAreas } from "../../../src/bill/dates/due.ts";
import type { BillPlan } from "../../../src/bill/plan.ts";
import { timeOf } from "../../../src/bill/time/station-work.ts";
import {
  answer,
  bill,
  columnOf,
  given,
  HOUR,
  job,
  type Line,
  MONDAY,
  rates,
  refusal,
  SHOP,
  withCell,
} from "../../cells/example/tables.ts";
import { bracket, planned, quotedOf, shopOf } from "../shop.ts";

const datesOf = (plan: BillPlan, part: string) => plan.dates.lines.get(quotedOf(plan, part).plan)!;
const serial = (at: number) => at / 86_400;

describe("due", () => {
  const entries = { Due: MONDAY + 4, "Due Deck": MONDAY + 2, "Must leave by: Front of house": MONDAY + 1 };
  const plan = planned(
    [
      bracket({ Part: "own", Area: "Deck", Due: MONDAY + 3 }),
      bracket({ Part: "deck", Area: "deck" }),
      bracket({ Part: "front", Area: "Front of house" }),
      bracket({ Part: "other", Area: "Tower" }),
    ],
    shopOf({ job: job(entries) }),
  );
  it("is the line's own, else its area's, else the job's", () => {
    const days = ["own", "deck", "front", "other"].map((part) => serial(datesOf(plan, part).due) - MONDAY);
    expect(days.map(Math.floor)).toEqual([3, 2, 1, 4]);
  });
  it("on a day without a time means by the end of that day", () => {
    const second = 1 / 86_400;
    expect(serial(datesOf(plan, "own").due) - MONDAY).toBeCloseTo(4 - second, 9);
    const of = (due: number | string) => planned([bracket({ Part: "own", Due: due })], shopOf({ job: job(entries) }));
    const done = serial(datesOf(plan, "own").finish);
    expect(done % 1).toBeGreaterThan(0.3); // in the working day
    expect(datesOf(of(Math.floor(done)), "own").isLate).toBe(false);
    expect(datesOf(of(Math.floor(done) - 1), "own").lateBy).toBeGreaterThan(0);
    expect(serial(datesOf(of(MONDAY + 1.25), "own").due)).toBe(MONDAY + 1.25);
  });
  it("says in which order the work is done", () => {
    const finish = (part: string) => datesOf(plan, part).finish;
    expect(finish("front")).toBeLessThan(finish("deck"));
    expect(finish("deck")).toBeLessThan(finish("own"));
    expect(finish("own")).toBeLessThan(finish("other"));
  });
  it("of an area that no line has is shown, and two for one area are refused", () => {
    const asked = (more: Record<string, number>) => ({ job: job({ ...entries, ...more }) });
    const spill = answer("BILL.SUMMARY", [bracket({ Area: "Deck" })], asked({}));
    const unused = spill.filter(([item]) => item === "Due of an area without lines");
    expect(unused.map((row) => row[3])).toEqual(["Front of house"]);
    const twice = [...job(entries), ["Due: deck", MONDAY + 3]];
    expect(refusal("BILL.SUMMARY", ...given(bill(bracket()), { ...SHOP, job: twice }))).toMatch(
      /^job row \d+ "Due: deck" must be one time for each area/,
    );
  });
});

describe("a line that is late", () => {
  // The brake is taken for 35 hours; until Wednesday noon it has 8-1/2, 8-1/2 and 5.
  const busy = withCell(SHOP.stations, "Brake", "Queue", 35);
  const shop = (changed: Line) =>
    shopOf({ stations: busy, job: job({ Due: MONDAY + 2 + 12 * HOUR }), rates: rates(changed) });
  const late = (changed: Line) => datesOf(planned([bracket()], shop(changed)), "HB1");
  it("is named with its hours", () => {
    const tables = {
      stations: busy,
      job: job({ Due: MONDAY + 2 + 12 * HOUR }),
      rates: rates({ "Second shift": null, "Overtime per day": null }),
    };
    const spill = answer("BILL.SUMMARY", [bracket()], tables);
    const row = spill.find(([item]) => item === "Late")!;
    expect(row[3]).toBe("HB1, at the Brake; working hours; nothing offered saves it");
    const [hours] = columnOf(answer("BILL.WHATIF", [bracket()], tables), "Late by");
    expect(row[1]).toBe(hours);
    expect(hours).toBeGreaterThan(13); // 3-1/2 of Wednesday, 8-1/2, and what is left on Friday
  });
  it("a second shift of 8 hours saves what it brings, and may bring it in time", () => {
    const found = late({ "Second shift": 8, "Overtime per day": 1 });
    expect(found.verdict).toBe("second shift");
    // By hand: Monday and Tuesday are 8 hours longer each, and the line is begun and done on Wednesday.
    expect(found.secondShiftSaves).toBe(16 * 3600);
    expect(found.lateAtBest).toBe(0);
    // Nobody has ordered it: the line is late until somebody does.
    expect(found.isLate).toBe(true);
    expect(found.lateBy).toBeGreaterThan(13 * 3600);
  });
  it("sending it out saves what the queue would have cost", () => {
    const stations = withCell(busy, "Brake", "Vendor days", 2);
    const plan = planned([bracket()], shopOf({ stations, job: job({ Due: MONDAY + 2 + 12 * HOUR }) }));
    const found = datesOf(plan, "HB1");
    // Back on Wednesday at 7:00, when the work began on Monday at 7:00; else Friday morning.
    expect(found.outsideSaves).toBeGreaterThan(17 * 3600);
  });
  it("without a second shift nothing is said of one", () => {
    expect(late({ "Second shift": null }).secondShiftSaves).toBeUndefined();
  });
});

describe("lines that must leave together", () => {
  const long = bracket({ Part: "long", Quantity: 400 });
  const short = bracket({ Part: "short", Quantity: 4, Width: 5 });
  it("go the shortest first, wherever they stand in the bill", () => {
    for (const lines of [
      [long, short],
      [short, long],
    ]) {
      const plan = planned(lines);
      expect(datesOf(plan, "short").finish).toBeLessThan(datesOf(plan, "long").finish);
    }
  });
  it("but the sooner it must leave the earlier a line goes, however long it is", () => {
    const plan = planned([short, { ...long, Due: MONDAY + 3 }]);
    expect(datesOf(plan, "long").finish).toBeLessThan(datesOf(plan, "short").finish);
  });
  it("and of lines alike in all but the name the first by name goes first, wherever it stands", () => {
    const lines = [bracket({ Part: "a" }), bracket({ Part: "b" }), bracket({ Part: "c" })];
    const finishes = (of: typeof lines) => ["a", "b", "c"].map((part) => datesOf(planned(of), part).finish);
    const [a, b, c] = finishes(lines);
    expect(a).toBeLessThan(b!);
    expect(b).toBeLessThan(c!);
    expect(finishes([...lines].reverse())).toEqual(finishes(lines));
    expect(finishes([lines[1]!, lines[2]!, lines[0]!])).toEqual(finishes(lines));
  });
});

describe("the stations of the dates", () => {
  const lines = [bracket(), bracket({ Part: "M", Width: 30, Quantity: 60 }), bracket({ Part: "N", Brake: "Brake 2" })];
  it("have as load what the lines have to do there, by machine too, the machines by name", () => {
    const plan = planned(lines);
    for (const station of plan.dates.stations) {
      const works = plan.quoted.flatMap((line) =>
        plan.workOf(line).works.filter((w) => w.station.name === station.station),
      );
      const sum = (of: typeof works) => of.reduce((total, work) => total + timeOf(work), 0);
      expect(station.load).toBe(sum(works));
      const machines = [...new Set(works.map(({ machine }) => machine))].filter((name) => name !== "").sort();
      expect(station.machines).toEqual(
        machines.map((name) => ({ name, load: sum(works.filter(({ machine }) => machine === name)) })),
      );
    }
    const brake = plan.dates.stations.find(({ station }) => station === "Brake")!;
    expect(brake.machines.map(({ name }) => name)).toEqual(["Brake 1", "Brake 2"]);
    const other = planned([bracket({ Brake: "Brake 1" }), bracket({ Part: "M", Brake: "Brake 2", Due: MONDAY + 1 })]);
    const first = planned([bracket({ Brake: "Brake 1", Due: MONDAY + 1 }), bracket({ Part: "M", Brake: "Brake 2" })]);
    for (const { dates } of [other, first])
      expect(dates.stations.find(({ station }) => station === "Brake")!.machines.map(({ name }) => name)).toEqual([
        "Brake 1",
        "Brake 2",
      ]);
    expect(brake.queue).toBe(6 * 3600); // as the table says
    expect(plan.dates.stations.find(({ station }) => station === "Drill")!.machines).toEqual([]);
  });
  it("are all those of the table, in its order", () => {
    expect(planned(lines).dates.stations.map(({ station }) => station)).toEqual(
      SHOP.stations.slice(1).map(([name]) => name),
    );
  });
});

describe("the dates of a bill", () => {
  it("end with its last line, and not at all without a line", () => {
    const plan = planned([bracket({ Quantity: 300 }), bracket({ Part: "B" })]);
    const each = ["HB1", "B"].map((part) => datesOf(plan, part).asItIs);
    expect(each[0]).toBeGreaterThan(each[1]!);
    expect(plan.dates.finish).toBe(each[0]);
    expect(planned([bracket({ Width: 130 })]).dates.finish).toBeUndefined();
  });
  it("count the late lines, and those of them that something offered saves", () => {
    const busy = withCell(SHOP.stations, "Brake", "Queue", 35);
    const due = { Due: MONDAY + 2 + 12 * HOUR };
    const lines = [
      bracket(),
      bracket({ Part: "now", Due: MONDAY + 8 * HOUR }),
      bracket({ Part: "calm", Due: MONDAY + 20 }),
    ];
    const of = (second: number | null) =>
      planned(lines, shopOf({ stations: busy, job: job(due), rates: rates({ "Second shift": second }) })).dates;
    expect([of(8).late, of(8).saved]).toEqual([2, 1]);
    expect([of(null).late, of(null).saved]).toEqual([2, 0]);
    expect([planned([bracket()]).dates.late, planned([bracket()]).dates.saved]).toEqual([0, 0]);
  });
  it("name overtime where one hour more a day is enough", () => {
    // 8-1/2 hours a day: Monday and Tuesday hold 17, and with an hour more each 19.
    const stations = withCell(withCell(SHOP.stations, "Brake", "Queue", 16.8), "Shear", "Queue", 0);
    const of = (hours: number | null) =>
      datesOf(
        planned(
          [bracket()],
          shopOf({ stations, job: job({ Due: MONDAY + 1 }), rates: rates({ "Overtime per day": hours }) }),
        ),
        "HB1",
      ).verdict;
    expect(of(1)).toBe("overtime");
    expect(of(null)).toBe("second shift");
    expect(of(0)).toBe("second shift");
  });
  it("count what a line is late in the shop's hours, or in those of the station that decides where they are more", () => {
    // Brake alone is open on Saturday too, 8:00 to 12:00; the shop is not, and the vendor is no matter.
    const stations = withCell(SHOP.stations, "Brake", "Queue", 8.5 * 5 + 1);
    const plan = (calendar: typeof SHOP.calendar) =>
      datesOf(planned([bracket()], shopOf({ stations, calendar, job: job({ Due: MONDAY + 4 + 15.5 * HOUR }) })), "HB1");
    const onSaturday = plan(SHOP.calendar);
    const hours = onSaturday.lateBy / 3600;
    expect(hours).toBeGreaterThan(1);
    expect(hours).toBeLessThan(4);
    const weekdays = SHOP.calendar.filter(([day]) => day !== "Saturday");
    expect(plan(weekdays).lateBy).toBe(onSaturday.lateBy);
  });
});

describe("the latest start", () => {
  const lines = [
    bracket({ Quantity: 200 }),
    bracket({ Part: "B", Due: MONDAY + 3 + 10 * HOUR }),
    bracket({ Part: "C", Operations: "Coating" }),
  ];
  const from = (start: number, of = lines, tables = {}) =>
    planned(of, shopOf({ ...tables, job: job({ Start: start, Due: MONDAY + 10 + 12 * HOUR }) })).dates;
  it("is the last that leaves every line in time: so begun none is late, and some minutes of work later one is", () => {
    for (const of of [lines, lines.slice(0, 1), lines.slice(2)]) {
      const latest = from(MONDAY + 7 * HOUR, of).latestStart();
      if (typeof latest !== "number") throw new Error(String(latest));
      expect(latest).toBeGreaterThan((MONDAY + 7 * HOUR) * 86_400);
      expect(from(serial(latest), of).late).toBe(0);
      expect(from(serial(latest + 180), of).late).toBeGreaterThan(0);
    }
  });
  /** Nothing waits anywhere but two hours of other work at the brake. */
  const idle = SHOP.stations
    .slice(1)
    .reduce((of, [name]) => withCell(of, String(name), "Queue", name === "Brake" ? 2 : 0), SHOP.stations);
  const begun = (MONDAY + 7 * HOUR) * 86_400;
  const until = (due: number, of: readonly Line[], tables = {}) =>
    planned(
      of,
      shopOf({ stations: idle, ...tables, job: job({ Start: MONDAY + 7 * HOUR, Due: MONDAY + due * HOUR }) }),
    );
  const atBrake = (plan: BillPlan) => plan.dates.stations.find(({ station }) => station === "Brake")!.load;
  it("is the time due less what waits and the work at the station that decides, of the line with least to spare", () => {
    const plan = until(15, [bracket(), bracket({ Part: "calm", Due: MONDAY + 9 })]);
    const of = quotedOf(plan, "HB1").plan;
    const own = plan.quoted.find((line) => line.plan === of)!;
    const bending = plan.workOf(own).works.filter(({ station }) => station.name === "Brake");
    const hours = bending.reduce((sum, work) => sum + timeOf(work), 0);
    expect(hours).toBeGreaterThan(0);
    // By hand: within one shift, from 7:00 to 15:30, work done at 15:00 begins its own length earlier.
    expect(plan.dates.latestStart()).toBeCloseTo(begun + 8 * 3600 - (2 * 3600 + hours), 6);
  });
  it("is sooner where the brake closes before the shop does: the last moment from which its work is done that day", () => {
    // The brake is open from 7:00 to 11:00, the shop to 15:30: hours of the shop after 11:00 are none of the brake's.
    const calendar = SHOP.calendar.map((row) => (row[3] === "Brake" && row[2] ? row.with(2, "11:00") : row));
    const plan = until(15, [bracket()], { calendar });
    const latest = plan.dates.latestStart();
    const byHand = begun + 4 * 3600 - (2 * 3600 + atBrake(plan));
    expect(byHand).toBeGreaterThan(begun);
    // Halved until it is known to the minute, and never past it.
    expect(latest).toBeLessThanOrEqual(byHand);
    expect(latest).toBeGreaterThan(byHand - 60);
  });
  it("is past where a line is late already, and there is none without a line", () => {
    expect(from(MONDAY + 9.9, lines).latestStart()).toBe("past");
    expect(from(MONDAY + 7 * HOUR, [bracket({ Width: 130 })]).latestStart()).toBeUndefined();
  });
});

describe("areas with a date", () => {
  it("are unused where no line has them, in whatever letters and spaces", () => {
    const dues = { areaDues: ["Deck", "Tower", "Roof"].map((area) => ({ area, due: 0 as never })) };
    expect(unusedAreas([{ area: " deck " }, { area: "TOWER" }], dues).map(({ area }) => area)).toEqual(["Roof"]);
  });
});
