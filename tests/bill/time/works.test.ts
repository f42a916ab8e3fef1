/** What a line takes at each station: against the bracket that is worked by hand, and by hand beyond it. */
import { describe, expect, it } from "vitest";
import type { LinePlan } from "../../../src/bill/lines/plan-line.ts";
import type { Station } from "../../../src/bill/nouns/station.ts";
import { measuresOf, unitsOf } from "../../../src/bill/time/measures.ts";
import { paceOf } from "../../../src/bill/time/pace.ts";
import { sharesOf } from "../../../src/bill/time/shares.ts";
import { stationWork, timeOf } from "../../../src/bill/time/station-work.ts";
import { seconds } from "../../../src/calc/time/seconds.ts";
import { type Line, rates, SHOP } from "../../cells/example/tables.ts";
import { WORKED_BRACKET } from "../../reference/worked-bracket.ts";
import { bracket, lineOf, planned, quotedOf, shopOf } from "../shop.ts";

const workOf = (line: Line, station: string, shop = shopOf()) => {
  const plan = planned([line], shop);
  return plan.workOf(quotedOf(plan, String(line["Part"]))).works.find((work) => work.station.name === station)!;
};
const byHand = (row: number) => WORKED_BRACKET[row - 1]!.value;

describe("the worked bracket", () => {
  it.each([
    ["Shear", 20, 21, 30],
    ["Drill", 28, 29, 32],
    ["Brake", 26, 27, 31],
  ])("takes at the %s what is worked by hand: each, run and set-up", (station, each, run, setUp) => {
    const work = workOf(bracket(), station);
    expect(work.each).toBeCloseTo(byHand(each), 8);
    expect([work.run, work.setUp, work.pieces]).toEqual([byHand(run), byHand(setUp), 20]);
    expect([work.people, work.own]).toEqual([1, 1]);
    expect(timeOf(work)).toBe(byHand(run) + byHand(setUp));
  });
  it("names the machine that does it, and none at a bench", () => {
    const plan = planned([bracket()]);
    const { tools, cutting } = quotedOf(plan, "HB1").plan;
    expect(["Shear", "Brake", "Drill"].map((station) => workOf(bracket(), station).machine)).toEqual([
      cutting.shear!.name,
      tools!.brake.name,
      "",
    ]);
  });
  it("alone pays the whole change of its tools and of the shear's gap, an hour of 50 minutes", () => {
    const brake = workOf(bracket(), "Brake");
    expect([brake.share, brake.change]).toEqual([1.2 * 25 * 60, 1.2 * 25 * 60]);
    const shear = workOf(bracket(), "Shear");
    expect([shear.share, shear.change]).toEqual([byHand(30), byHand(30)]);
    expect([workOf(bracket(), "Drill").share, workOf(bracket(), "Drill").change]).toEqual([0, 0]);
  });
});

describe("a line that is cut on the waterjet", () => {
  const jet = bracket({ Route: "waterjet" });
  it("has its holes made there: no drill, a set-up of its own that nobody shares", () => {
    const plan = planned([jet, bracket({ Part: "B", Route: "waterjet" })]);
    for (const part of ["HB1", "B"]) {
      const { works } = plan.workOf(quotedOf(plan, part));
      expect(works.map(({ station }) => station.name)).toEqual(["Waterjet", "Brake"]);
      // 7 minutes, as the table says.
      expect([works[0]!.setUp, works[0]!.share, works[0]!.change]).toEqual([1.2 * 7 * 60, 0, 0]);
    }
  });
  it("takes as much longer as its path is longer, beside the handling", () => {
    const each = (changed: Line) => workOf({ ...jet, Holes: 0, "Hole diameter": null, ...changed }, "Waterjet").each;
    // Outside sizes 5 x 4 in, and 5 x 8: 18 in of path and 26.
    const [small, large, larger] = [each({}), each({ Width: 8 }), each({ Width: 12 })];
    expect(larger - large).toBeGreaterThan(0);
    expect(large - small).toBeGreaterThan(0.5 * (larger - large));
    // Two holes of 1/2 in: 3.14 in of path and two pierces more.
    expect(each({ Holes: 2, "Hole diameter": 0.5 })).toBeGreaterThan(small);
  });
  it("is handled once: ten seconds more of handling a piece are ten more at the jet", () => {
    const each = (seconds: number) =>
      workOf(jet, "Waterjet", shopOf({ rates: rates({ Allowance: 1, "Handling per piece": seconds }) })).each;
    expect(each(20) - each(10)).toBeCloseTo(10, 8);
  });
  it("takes its share of a sheet's loading too, by area", () => {
    const base = { Allowance: 1 };
    const each = (minutes: number) =>
      workOf(jet, "Waterjet", shopOf({ rates: rates({ ...base, "Sheet loading": minutes }) })).each;
    // Two minutes more for 48 x 120 in, of which the blank is as long as worked by hand and 4 in wide.
    expect(each(4) - each(2)).toBeCloseTo((120 * byHand(14) * 4) / (120 * 48), 8);
  });
});

describe("the shear", () => {
  const each = (changed: Line, changedRates: Record<string, number | null>, of = SHOP.rates) => {
    const named = of.filter(([name]) => changedRates[String(name)] !== null);
    const values = Object.fromEntries(Object.entries(changedRates).filter(([, value]) => value !== null));
    const table = named.map((row) => (String(row[0]) in values ? row.with(1, values[String(row[0])]!) : row));
    return workOf(bracket({ Holes: 0, "Hole diameter": null, ...changed }), "Shear", shopOf({ rates: table })).each;
  };
  it("counts a sheet's loading by the area of the blank, and none where no time is stated", () => {
    const base = { Allowance: 1 };
    const more = each({}, { ...base, "Sheet loading": 4 }) - each({}, { ...base, "Sheet loading": 2 });
    expect(more).toBeCloseTo((120 * byHand(14) * 4) / (120 * 48), 8);
    expect(each({}, { ...base, "Sheet loading": null })).toBeCloseTo(each({}, { ...base, "Sheet loading": 0 }), 9);
    // Nor where the shop lists no sheets.
    const of = (stock: undefined | typeof SHOP.stock, minutes: number) =>
      workOf(bracket(), "Shear", shopOf({ stock, rates: rates({ ...base, "Sheet loading": minutes }) })).each;
    expect(of(undefined, 4)).toBe(of(SHOP.stock, 0));
  });
  it("has a handling of its own, by size, or the one of every machine where none was timed", () => {
    const base = { Allowance: 1, "Sheet loading": 0 };
    // 2.5 cuts of 60/18 s, each handled.
    expect(each({}, { ...base, "Shear handling per cut": null })).toBeCloseTo(2.5 * (60 / 18 + byHand(19)), 8);
    expect(each({}, { ...base, "Shear handling by length": null })).toBeCloseTo(2.5 * (60 / 18 + 1.7), 8);
  });
  it("is set up without its blade gap where the shop states no time for that", () => {
    const table = SHOP.rates.filter(([name]) => name !== "Blade gap setting");
    expect(workOf(bracket(), "Shear", shopOf({ rates: table })).setUp).toBe(1.2 * 4 * 60);
  });
});

describe("a bench", () => {
  it("does what the bill says of it by name, by as much as it says, once", () => {
    expect(workOf(bracket({ Operations: "Drill 5" }), "Drill").each).toBeCloseTo(1.2 * 5 * 0.35 * 60, 8);
    const plan = planned([bracket({ Operations: "Drill; Weld 2" })]);
    const { works, outside } = plan.workOf(quotedOf(plan, "HB1"));
    expect(works.map(({ station }) => station.name).sort()).toEqual(["Brake", "Drill", "Shear", "Weld"]);
    expect(workOf(bracket({ Operations: "Drill; Weld 2" }), "Drill").each).toBeCloseTo(byHand(28), 8);
    expect(workOf(bracket({ Operations: "Weld 2" }), "Weld").each).toBeCloseTo(1.2 * 2 * 2.5 * 60, 8);
    expect(outside).toEqual([]);
  });
  it("counts the edge and the faces of the flat blank", () => {
    // Round the blank, 2 x (4.529 + 4) in, at 0.16 min a foot.
    expect(workOf(bracket({ Operations: "Deburr" }), "Deburr").each).toBeCloseTo(
      (1.2 * 2 * (byHand(14) + 4) * 0.16 * 60) / 12,
      6,
    );
    const plan = planned([bracket({ Operations: "Coating" })]);
    const { works, outside } = plan.workOf(quotedOf(plan, "HB1"));
    expect(works.some(({ station }) => station.name === "Coating")).toBe(false);
    expect(outside.map(({ station, units }) => [station.name, units])).toEqual([
      ["Coating", expect.closeTo((2 * byHand(14) * 4) / 144, 6)],
    ]);
  });
  it("of notches is asked for where they are many, and the drill only where there are holes", () => {
    const stations = [...SHOP.stations, ["Notcher", "notch", 6, 0.5, 50, 0, null, null, null, null]];
    const shop = shopOf({ stations });
    const names = (changed: Line) => {
      const plan = planned([bracket({ Route: "shear", ...changed })], shop);
      return plan.workOf(quotedOf(plan, "HB1")).works.map(({ station }) => station.name);
    };
    expect(names({ Notches: 2, "Notch path": 1 })).toEqual(["Shear", "Drill", "Notcher", "Brake"]);
    expect(names({ Holes: 0, "Hole diameter": null })).toEqual(["Shear", "Brake"]);
    expect(names({ Holes: 0, "Hole diameter": null, Notches: 2, "Notch path": 1 })).toEqual([
      "Shear",
      "Notcher",
      "Brake",
    ]);
    // What the bill names beside is no reason to leave the holes.
    expect(names({ Operations: "Weld 2" }).sort()).toEqual(["Brake", "Drill", "Shear", "Weld"]);
  });
  it("asks for a count where its work has no other measure", () => {
    const line = lineOf(bracket());
    const weld = shopOf().stations.find(({ name }) => name === "Weld")!;
    const piece = measuresOf(line, { length: 100, width: 50, weight: 2 } as unknown as Parameters<
      typeof measuresOf
    >[1]);
    expect(piece).toEqual({ holes: 2, notches: 0, area: 10_000, edge: 300, weight: 2 });
    expect(unitsOf(line, weld, piece, 3)).toBe(3);
    expect(() => unitsOf(line, weld, piece, undefined)).toThrow(
      expect.objectContaining({
        message: 'line 1 column "Operations" must be a count after "Weld"; got none; write "Weld 2"',
      }),
    );
  });
});

describe("several hits of one line", () => {
  const at = (changed: Line, changedRates: Record<string, number> = {}) =>
    workOf(
      bracket({ Holes: 0, "Hole diameter": null, ...changed }),
      "Brake",
      shopOf({ rates: rates({ Allowance: 1, ...changedRates }) }),
    );
  it("are set up each, by as much as the shop states, and by the length of the bend", () => {
    const channel = { Flanges: "2; 4; 2" };
    const more = (further: number) => at(channel, { "Set-up per further bend": further }).setUp;
    expect(more(10) - more(2)).toBe(8 * 60);
    expect(at({}, { "Set-up per further bend": 10 }).setUp).toBe(at({}, { "Set-up per further bend": 2 }).setUp);
    const byLength = (Width: number) => at({ Width }).setUp;
    // 0.6 minutes a foot of bend.
    expect(byLength(16) - byLength(4)).toBe(0.6 * 60);
  });
  it("are handled as the shop states: the first whole, those after it by its share", () => {
    const channel = { Flanges: "2; 4; 2" };
    const each = (share: number) => at(channel, { "Handling at next bends": share }).each;
    const handling = 5 + 0.3 * 2.31 + (2.7 * 8) / 12; // about: 8 in of outside size, some 2.3 lb
    expect(each(1) - each(0.5)).toBeGreaterThan(0.45 * handling);
    expect(each(1) - each(0.5)).toBeLessThan(0.55 * handling);
    expect(at({}, { "Handling at next bends": 1 }).each).toBeCloseTo(at({}, { "Handling at next bends": 0.5 }).each, 9);
  });
});

describe("the pace of a shop", () => {
  const finished = (count: number, recorded: number) =>
    Array.from({ length: count }, (_, i) => ({
      station: "BRAKE",
      part: `p${i}`,
      estimated: seconds(100),
      recorded: seconds(recorded),
    }));
  const { rates: stated } = shopOf();
  it("is its allowance, and its own factor where three finished jobs have taught one", () => {
    expect(paceOf("Shear", { rates: stated, finished: finished(3, 150) })).toEqual({ total: 1.2, own: 1 });
    expect(paceOf("Brake", { rates: stated, finished: finished(2, 150) })).toEqual({ total: 1.2, own: 1 });
    const { total, own } = paceOf("Brake", { rates: stated, finished: finished(3, 150) });
    expect(own).toBeGreaterThan(1.1);
    expect(own).toBeLessThan(1.5);
    expect(total).toBeCloseTo(1.2 * own, 12);
    const none = shopOf({ rates: SHOP.rates.filter(([name]) => name !== "Allowance") }).rates;
    expect(paceOf("Brake", { rates: none, finished: [] })).toEqual({ total: 1, own: 1 });
  });
  it("is said in the working where it is not 1", () => {
    const said = (jobs: number, allowance: number) => {
      const work: { symbol: string }[] = [];
      paceOf(
        "Brake",
        { rates: shopOf({ rates: rates({ Allowance: allowance }) }).rates, finished: finished(jobs, 150) },
        work as never,
      );
      return work.map(({ symbol }) => symbol);
    };
    expect([said(0, 1), said(0, 1.1), said(3, 1), said(2, 1)]).toEqual([[], ["a"], ["f Brake"], []]);
  });
});

describe("a work at a station", () => {
  const given = {
    station: {} as Station,
    machine: "",
    pieces: 3,
    people: 1,
    note: "",
    pace: { total: 1.5, own: 1.25 },
  };
  it("is longer by the pace, its run and set-up in whole seconds up, a change to the nearest", () => {
    const work = stationWork({ ...given, each: seconds(1.1), setUp: 10.1, share: 2.1, change: 7 });
    expect(work.each).toBeCloseTo(1.65, 12);
    expect([work.run, work.setUp, work.share, work.change, work.own]).toEqual([5, 16, 4, 11, 1.25]);
    expect(timeOf(work)).toBe(21);
    // What a sum leaves behind the last digit is no second.
    expect(stationWork({ ...given, each: seconds(1), setUp: 10 + 1e-10, share: 2 + 1e-10 })).toMatchObject({
      setUp: 15,
      share: 3,
      change: 0,
    });
    expect(stationWork({ ...given, each: seconds(1), setUp: 10 })).toMatchObject({ share: 0, change: 0 });
  });
});

describe("a set-up that lines share", () => {
  it("is shared by their run, those of one key among themselves", () => {
    const [a, b, c] = ["a", "b", "c"].map((part) => ({ part }) as unknown as LinePlan) as [
      LinePlan,
      LinePlan,
      LinePlan,
    ];
    const shares = sharesOf([
      { plan: a, key: "1", run: 10 },
      { plan: b, key: "2", run: 7 },
      { plan: c, key: "1", run: 30 },
    ]);
    expect([shares.get(a), shares.get(b), shares.get(c)]).toEqual([0.25, 1, 0.75]);
  });
});
