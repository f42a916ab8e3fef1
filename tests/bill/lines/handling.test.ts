/** What a line asks of hands, edges and air: each at its threshold, on both sides, and with the shop's own figure. Sizes by hand. */
import { describe, expect, it } from "vitest";
import { causeSays, questionSays, sharedCauses } from "../../../src/bill/causes.ts";
import { type Line, rates, SHOP, withCell } from "../../cells/example/tables.ts";
import { answerOf, bracket, kindsOf, planned, shopOf } from "../shop.ts";

const kinds = (line: Line, about: string, shop = shopOf()): string[] =>
  kindsOf(answerOf(planned([bracket(line)], shop), "HB1")).filter((kind) => kind.startsWith(`${about}:`));
const own = (changed: Record<string, number | string>) => shopOf({ rates: rates(changed) });

describe("hands", () => {
  const clip = { Material: "A1008 CS", Thickness: "18 ga", Holes: 0, "Hole distance": null } as const;
  // Two flanges and one bend of 18 gauge lose about 0.1 in: 1.9 in of flat of 1 + 1.
  it.each([
    [{ ...clip, Flanges: "1; 1", Width: 1.75 }, ["hands: check neither side"]],
    [{ ...clip, Flanges: "1; 1", Width: 2.25 }, ["hands: note one side"]],
    [{ ...clip, Flanges: "3; 3", Width: 3.9 }, ["hands: note one side"]],
    [{ ...clip, Flanges: "3; 3", Width: 4.1 }, []],
    [{ ...clip, Flanges: "1.5", "Bend angles": null, Width: 1.5 }, []], // no bend, no die
  ] as [Line, string[]][])("a line of %j has %j", (line, found) => expect(kinds(line, "hands")).toEqual(found));
  it("with the shop's own figure", () =>
    expect(kinds({ ...clip, Flanges: "1; 1", Width: 2.25 }, "hands", own({ "Small blank check": 3 }))).toEqual([
      "hands: check neither side",
    ]));
});

describe("swing", () => {
  const angle = (Flanges: string, changed: Line): Line => ({ Flanges, Holes: 0, "Hole distance": null, ...changed });
  // A plate of 1/4 in, 12 in wide, weighs 0.85 lb for each inch in front of the die.
  it.each([
    [angle("2; 20", { Width: 12 }), []],
    [angle("2; 30", { Width: 12 }), ["swing: note swings"]],
    [angle("2; 30", { Width: 30 }), ["swing: check heavy"]], // 30 x 30 x 1/4 x 0.284 = 64 lb
    [angle("2; 30", { Width: 12, Material: "304", Thickness: "14 ga" }), ["swing: check sags"]],
    [angle("2; 30", { Width: 12, Material: "A1011 CS", Thickness: "12 ga" }), ["swing: note swings"]],
  ] as [Line, string[]][])("a line of %j has %j", (line, found) => expect(kinds(line, "swing")).toEqual(found));
  it("with the shop's own figure", () =>
    expect(kinds(angle("2; 20", { Width: 12 }), "swing", own({ "Swing from": 12 }))).toEqual(["swing: note swings"]));
});

describe("edges and grain", () => {
  const hard = { Material: "6061-T6", Thickness: "1/8", Punch: "Round 1/2", Holes: 0, "Hole distance": null } as const;
  it.each([
    [{ Thickness: "3/16" }, "edges", ["edges: note plate"]],
    [{ Thickness: "3/16", Operations: "Deburr" }, "edges", []],
    [{ Material: "A1011 CS", Thickness: "10 ga" }, "edges", []],
    [{ ...hard, Grain: "across" }, "edges", ["edges: check cracking temper"]],
    [{ ...hard, Grain: "across", Operations: "deburr" }, "edges", []],
    [{ ...hard, Grain: "along" }, "radius", ["radius: stop along"]],
    [{ ...hard, Grain: null }, "radius", ["radius: check across only"]],
    // A tray has bends both ways: one of them cannot lie across.
    [
      { ...hard, Width: null, Flanges: "2; 9; 2", "Cross flanges": "2; 12; 2", "Cross angles": 90 },
      "radius",
      ["radius: stop along"],
    ],
  ] as [Line, string, string[]][])("a line of %j has, about %s, %j", (line, about, found) =>
    expect(kinds(line, about)).toEqual(found),
  );
  it("is not looked at where nobody says what is done beside the bends", () =>
    expect(kinds({ ...hard, Grain: "across" }, "edges", shopOf({ stations: undefined }))).toEqual([]));
});

describe("galvanized", () => {
  const galv = { Material: "A653 CS", Thickness: "16 ga" } as const;
  it.each([
    [{ ...galv, Operations: "Weld 2" }, ["galvanized: check welded"]],
    [{ ...galv, Operations: "Deburr" }, []],
    [{ Operations: "Weld 2" }, []],
  ] as [Line, string[]][])("a line of %j has %j", (line, found) => expect(kinds(line, "galvanized")).toEqual(found));
});

describe("a mechanical brake", () => {
  // About 36 tons, 58 if it runs hard, on a brake that its worst force is too much for, its expected one not.
  const on = (drive: string | null) => {
    const [header, ...rows] = withCell(SHOP.brakes, "Brake 1", "Rated force", 46);
    const brakes = [[...header!, "Drive"], ...rows.slice(0, 1).map((row) => [...row, drive])];
    return kinds({ Width: 24, Die: "V 2" }, "brake force", shopOf({ brakes }));
  };
  it("stops where a hydraulic one gives way", () => {
    expect(on(null)).toEqual(["brake force: check over"]);
    expect(on("hydraulic")).toEqual(["brake force: check over"]);
    expect(on("Mechanical")).toEqual(["brake force: stop over"]);
    expect(() => on("steam")).toThrow('"Drive" must be one of "hydraulic", "servo", "mechanical"');
  });
});

describe("sheets to lift", () => {
  // A 48 x 120 in plate of 1/4 in weighs 408 lb.
  const without = (changed: Record<string, number | string | null>) => {
    const table = rates(changed as Record<string, number>);
    return shopOf({ rates: table.filter(([name, value], i) => i === 0 || (value !== null && name !== "Hoist time")) });
  };
  it.each([
    [{}, []],
    [{ "Hoist above": null }, ["lifting: check sheet too heavy"]],
    [{ "Hoist limit": "1000 lb" }, []],
  ] as [Record<string, number | string | null>, string[]][])("%j", (changed, found) => {
    if ("Hoist limit" in changed) return expect(kinds({}, "lifting", own({ "Hoist limit": 1000 }))).toEqual(found);
    expect(kinds({}, "lifting", without(changed))).toEqual(found);
  });
  it("more than the hoist lifts stops", () =>
    expect(kinds({}, "lifting", own({ "Hoist limit": 300 }))).toEqual(["lifting: stop sheet over hoist"]));
});

describe("causes", () => {
  const asks = (Part: string, radius: number) => bracket({ Part, "Drawing radius": radius, "Radius tolerance": 0.01 });
  it("the customer is asked once, about all radii", () => {
    const { lines } = planned([asks("A", 0.1), asks("B", 0.125), bracket({ Part: "C" })]);
    expect(questionSays(lines, "in")).toMatch(
      /^Are these inside radii acceptable in place of the drawing's\? A 0\.\d+ in for 0\.100 in; B 0\.\d+ in for 0\.125 in\.$/,
    );
    expect(questionSays(planned([bracket()]).lines, "in")).toBe("");
    expect(sharedCauses(lines)).toEqual([]);
  });
  it("what three lines have in common is one cause with its parts; two are two", () => {
    const short = (Part: string) => bracket({ Part, Flanges: "1; 3" });
    expect(sharedCauses(planned([short("A"), short("B")]).lines)).toEqual([]);
    const [cause, ...others] = sharedCauses(
      planned([short("A"), bracket({ Part: "X" }), short("B"), short("C")]).lines,
    );
    expect(others).toEqual([]);
    expect(causeSays(cause!, "in")).toBe(
      "A: A flange of 1.000 in falls into die V 2; it needs 1.750 in. The same on B, C.",
    );
  });
});
