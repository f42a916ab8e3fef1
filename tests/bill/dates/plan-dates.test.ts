/** When lines must leave, which are late by how many hours, and what a second shift or sending out would save. */
import { describe, expect, it } from "vitest";
import type { BillPlan } from "../../../src/bill/plan.ts";
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
