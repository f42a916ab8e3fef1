/** What a revision of a bill changes: each difference once, worked by hand, and nothing that reads alike. */
import { describe, expect, it } from "vitest";
import { planChanges } from "../../../src/bill/changes/plan-changes.ts";
import type { BillPlan } from "../../../src/bill/plan.ts";
import { job, type Line, MONDAY, rates, without } from "../../cells/example/tables.ts";
import { bracket, inches, planned, quotedOf, shopOf } from "../shop.ts";

type Changes = ReturnType<typeof planChanges>;
const of = (before: readonly Line[], after: readonly Line[]) => planChanges(planned(before), planned(after));
const linesOf = ({ lines }: Changes) => lines.map(({ part, change }) => [part, change]);
const pairs = (differences: Changes["job"]) =>
  Object.fromEntries(differences.map(({ what, before, after }) => [what, [before.value, after.value]]));
/** Of the one line that differs. */
const differences = (changed: Line, was: Line = {}) => {
  const { lines } = of([bracket(was)], [bracket({ ...was, ...changed })]);
  expect(lines.length).toBeLessThanOrEqual(1);
  return pairs(lines[0]?.differences ?? []);
};

describe("lines of a revision", () => {
  it("that stay as they were are not told", () => {
    expect(of([bracket()], [bracket()])).toEqual({ lines: [], job: [] });
  });
  it("come, go or differ, those of the new bill first, whatever their order", () => {
    const [a, b, c] = ["a", "b", "c"].map((Part) => bracket({ Part })) as [Line, Line, Line];
    const found = of([a, b, { ...c, Quantity: 5 }], [c, bracket({ Part: "d" }), b]);
    expect(linesOf(found)).toEqual([
      ["c", "changed"],
      ["d", "added"],
      ["b", "changed"], // its share of a sheet, which it has with others now
      ["a", "gone"],
    ]);
    const [, added, shared, gone] = found.lines;
    expect(pairs(shared!.differences)).not.toHaveProperty("Quantity");
    expect(pairs(added!.differences)["Quantity"]).toEqual([undefined, 20]);
    expect(pairs(gone!.differences)["Quantity"]).toEqual([20, undefined]);
  });
  it("are told by their part, in whatever letters, the second of one part against the second", () => {
    const twice = [bracket({ Quantity: 3 }), bracket({ Quantity: 4 })];
    const found = of(twice, [bracket({ Part: "hb1 ", Quantity: 3 }), bracket({ Quantity: 6 })]);
    const quantities = found.lines.map((line) => pairs(line.differences)["Quantity"]);
    expect(quantities.filter((pair) => pair !== undefined)).toEqual([[4, 6]]);
    expect(linesOf(found).every(([, change]) => change === "changed")).toBe(true);
    const both = of(twice, [bracket({ Quantity: 5 }), bracket({ Quantity: 6 })]);
    expect(both.lines.map((line) => pairs(line.differences)["Quantity"])).toEqual([
      [3, 5],
      [4, 6],
    ]);
  });
  it("say every column of the bill that was typed otherwise", () => {
    const found = differences({
      Quantity: 24,
      Spares: 2,
      Width: 5,
      Flanges: "2; 4",
      "Bend angles": 80,
      Holes: 3,
      Operations: "Deburr; Weld 2",
      Area: "Deck",
      Due: MONDAY + 3.5,
      "Drawing radius": 0.2,
      Accepted: "A. Person",
    });
    expect(found).toMatchObject({
      Quantity: [20, 24],
      Extras: [0, 2],
      Blanks: [20, 24], // a shop that states no allowances cuts what is ordered
      "Drawing radius": [undefined, 0.2 * 25.4],
      Accepted: [undefined, "A. Person"],
      Width: [4 * 25.4, 5 * 25.4],
      Flanges: [
        [2 * 25.4, 3 * 25.4],
        [2 * 25.4, 4 * 25.4],
      ],
      Holes: [2, 3],
      Operations: [undefined, "Deburr; Weld 2"],
      Area: [undefined, "Deck"],
      Due: [undefined, (MONDAY + 3.5) * 86_400],
      "Flat width": [4 * 25.4, 5 * 25.4],
    });
    expect(found["Bend angles"]![1]).toHaveLength(1);
    expect(Object.keys(found)).not.toContain("Material");
    expect(Object.keys(found)).not.toContain("Thickness");
  });
  it("say the flanges of the other direction of a tray", () => {
    const tray = { Width: null, Flanges: "2; 12; 2", "Bend angles": 90, "Cross angles": 90, Holes: 0 };
    const found = differences({ "Cross flanges": "2; 9; 3" }, { ...tray, "Cross flanges": "2; 9; 2" });
    const of = (...sizes: number[]) => sizes.map((size) => expect.closeTo(size * 25.4, 9));
    expect(found["Cross flanges"]).toEqual([of(2, 9, 2), of(2, 9, 3)]);
  });
  it("say no tools of a part that becomes flat, and give both sides as what they were", () => {
    const { lines } = of([bracket()], [bracket({ Flanges: "5", "Bend angles": null })]);
    const found = pairs(lines[0]!.differences);
    for (const what of ["Brake", "Die", "Punch"]) expect(found[what]).toEqual([expect.any(String), undefined]);
    for (const { before, after } of lines[0]!.differences) expect(before.kind).toBe(after.kind);
  });
  it("say no punch in a shop that states none", () => {
    const bare = planned([bracket()], shopOf({ punches: undefined }));
    const found = pairs(planChanges(planned([bracket({ Punch: "Plain" })]), bare).lines[0]!.differences);
    expect(found["Punch"]).toEqual(["Plain", undefined]);
  });
  it("say the tools, the flat, minutes and price that go with it, and not what stays", () => {
    const thin = { Material: "5052-H32", Thickness: "1/8", Die: "V 1", Punch: "Plain" };
    const found = differences({ Die: "V 1" }, { ...thin, Die: "V 1-1/2" });
    expect(found["Die"]).toEqual(["V 1-1/2", "V 1"]);
    for (const what of ["Punch", "Brake", "Flanges", "Quantity"]) expect(found).not.toHaveProperty([what]);
    const [before, after] = [planned([bracket()]), planned([bracket(thin)])];
    const { lines } = planChanges(before, after);
    const said = pairs(lines[0]!.differences);
    expect(said["Material"]).toEqual(["A36", "5052-H32"]);
    expect(said["Thickness"]!.map((mm) => inches(mm as number))).toEqual([0.25, 0.125]);
    const priceOf = (plan: BillPlan) => plan.priceOf(quotedOf(plan, "HB1"));
    expect(said["Price"]).toEqual([priceOf(before).price, priceOf(after).price]);
    expect(said["Price each"]).toEqual([priceOf(before).unitPrice, priceOf(after).unitPrice]);
    expect(said["Cut on"]).toEqual(before.lines[0]!.cutter === after.lines[0]!.cutter ? undefined : expect.anything());
  });
  it("of many more pieces take more minutes, in minutes: twice the pieces at most twice, and more than before", () => {
    const [was, is] = differences({ Quantity: 400 }, { Quantity: 200 })["Minutes"] as [number, number];
    expect(is).toBeGreaterThan(was);
    expect(is).toBeLessThan(2 * was + 0.1);
    // 200 bends by a person at the brake, a few seconds to half a minute each, and the cutting: hours, not days.
    expect(was).toBeGreaterThan(30);
    expect(was).toBeLessThan(24 * 60);
  });
  it("say what stops a line that was quoted, and that it has no price then", () => {
    const found = differences({ Width: 130 });
    expect(found["Status"]).toEqual(["clear", "stop"]);
    expect(found["Quoted"]).toEqual(["yes", "no"]);
    expect(found["Price"]![1]).toBeUndefined();
    expect(found["Minutes"]![1]).toBeUndefined();
    expect(found["Done"]![1]).toBeUndefined();
  });
  it.each([
    ["a width by less than a thousandth of an inch", { Width: 4.0009 }, false],
    ["a width by more", { Width: 4.0011 }, true],
    ["one flange of the list by more", { Flanges: "2; 3.0011" }, true],
    ["a flange by less", { Flanges: "2; 3.0009" }, false],
    ["another flange", { Flanges: "2; 3; 1" }, true],
    ["a time by half a minute", { Due: MONDAY + 3.5 + 1 / 2880 }, false],
    ["a time by two minutes", { Due: MONDAY + 3.5 + 1 / 720 }, true],
  ])("that differ in %s read alike: or not", (_, changed, isTold) => {
    const ordered = ["Width", "Flanges", "Due"];
    const found = Object.keys(differences(changed, { Due: MONDAY + 3.5 }));
    expect(ordered.some((what) => found.includes(what))).toBe(isTold);
  });
  it("say first what is there now, then what was there only before", () => {
    const found = Object.keys(differences({ Accepted: null, Quantity: 24 }, { Accepted: "A. Person" }));
    expect(found[0]).toBe("Quantity");
    expect(found).toContain("Price");
    expect(found.at(-1)).toBe("Accepted");
  });
  it("that could not be read say what they were", () => {
    const { lines } = of([bracket()], [bracket({ Thickness: -4 })]);
    const found = pairs(lines[0]!.differences);
    expect(found["Quantity"]).toEqual([20, undefined]);
    expect(found["Flat length"]![1]).toBeUndefined();
  });
});

describe("the job of a revision", () => {
  it("is counted: lines, pieces, blanks, weight and sheets, by hand", () => {
    const { job: found } = of([bracket()], [bracket(), bracket({ Part: "HB2", Quantity: 10 })]);
    const said = pairs(found);
    expect(said["Lines"]).toEqual([1, 2]);
    expect(said["Lines: clear"]).toEqual([1, 2]);
    expect(said["Lines quoted"]).toEqual([1, 2]);
    expect(said["Pieces"]).toEqual([20, 30]);
    expect(said["Blanks to cut"]).toEqual([20, 30]);
    // A blank of 46 x 90 in or more: of sheets no larger than 60 x 120 in one takes one.
    const plates = (Quantity: number) => [
      bracket({ Flanges: "90", "Bend angles": null, Width: 46, Holes: 0, Quantity }),
    ];
    expect(pairs(of(plates(1), plates(3)).job)["Sheets to pull"]).toEqual([1, 3]);
    expect(Object.keys(said)).not.toContain("Lines: stop");
    // 4.5292 x 4 x 1/4 in of steel of 0.284 lb/in3 (0.2836 in full): 1.286 lb each.
    const [was, is] = said["Weight"] as [number, number];
    expect(was / 0.45359237 / 20).toBeCloseTo(1.286, 2);
    expect(is / was).toBeCloseTo(30 / 20, 9);
  });
  it("says the minutes of every station by name: together those of the lines", () => {
    const [before, after] = [planned([bracket()]), planned([bracket(), bracket({ Part: "HB2", Width: 6 })])];
    const { lines, job: found } = planChanges(before, after);
    const stations = found.filter(({ what }) => what.startsWith("Minutes: "));
    expect(stations.map(({ what }) => what)).toContain("Minutes: Brake");
    const more = stations.reduce((sum, each) => sum + Number(each.after.value) - Number(each.before.value), 0);
    const ofLines = lines.flatMap(({ differences: all }) => all.filter(({ what }) => what === "Minutes"));
    const gained = ofLines.reduce((sum, each) => sum + Number(each.after.value) - Number(each.before.value ?? 0), 0);
    expect(gained).toBeGreaterThan(1);
    expect(Math.abs(more - gained)).toBeLessThan(0.1 * (stations.length + 1));
  });
  it("says the whole price, when it is done, what is late and by when it must leave", () => {
    const early = shopOf({ job: job({ Due: MONDAY + 7.1 / 24 }) });
    const [before, after] = [planned([bracket()]), planned([bracket({ Quantity: 200 })], early)];
    const said = pairs(planChanges(before, after).job);
    expect(said["Price"]).toEqual([before.money.charges.total, after.money.charges.total]);
    const done = (plan: BillPlan) => plan.dates.lines.get(quotedOf(plan, "HB1").plan)!.asItIs;
    expect(said["Done"]).toEqual([done(before), done(after)]);
    expect(said["Late lines"]).toEqual([0, 1]);
    const last = planned([bracket(), bracket({ Part: "long", Quantity: 200 })]);
    const both = [...last.dates.lines.values()].map(({ asItIs }) => asItIs);
    expect(pairs(planChanges(before, last).job)["Done"]![1]).toBe(Math.max(...both));
    expect(said["Must leave by"]![1]).toBeCloseTo((MONDAY + 7.1 / 24) * 86_400, 0);
  });
  it("says first what is there now, then what was there only before", () => {
    const unpriced = planned([bracket({ Quantity: 200 })], shopOf({ stock: undefined }));
    const found = planChanges(planned([bracket()]), unpriced).job.map(({ what }) => what);
    expect(found).toContain("Done");
    expect(found.at(-1)).toBe("Price");
  });
  it("without what a price and a date take says the rest of it", () => {
    const bare = shopOf({ job: undefined, rates: without(rates({}), "Handling per piece") });
    const { lines, job: found } = planChanges(planned([bracket()]), planned([bracket()], bare));
    expect(pairs(found)["Price"]![1]).toBe(0);
    expect(pairs(found)["Done"]![1]).toBeUndefined();
    expect(pairs(found)["Late lines"]).toEqual([0, undefined]);
    expect(Number(pairs(found)["Minutes: Brake"]![1])).toBe(0);
    expect(Object.keys(pairs(found))).not.toContain("Pieces");
    expect(Object.keys(pairs(lines[0]!.differences)).sort()).toEqual(["Done", "Minutes", "Price", "Price each"]);
  });
});
