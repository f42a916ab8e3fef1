/** Blank of a line: flat sizes by hand, and which way its grain must run. Common practice. */
import { describe, expect, it } from "vitest";
import { blankOf } from "../../../src/bill/lines/blank.ts";
import type { Line } from "../../cells/example/tables.ts";
import { bracket, inches, lineOf, planned } from "../shop.ts";

const grain = (line: Line) => planned([bracket(line)]).lines[0]!.plan!.blank.grain;

describe("the grain of a blank", () => {
  it.each([
    // what is locked: a temper that cracks
    ["6061-T6", 0.125, null, "length"],
    ["6061-T6", 0.125, "across", "length"],
    ["6061-T6", 0.125, "along", "width"],
    // plate keeps what the bill states
    ["A36", 0.25, null, ""],
    ["A36", 0.25, "across", "length"],
    ["A36", 0.25, "along", "width"],
    // for ductile sheet it is a wish that costs no metal
    ["A36", 0.1875, "across", ""],
    ["304", "16 ga", "along", ""],
  ] as const)("%s %s in, bend line %s: %j", (Material, Thickness, Grain, locked) => {
    expect(grain({ Material, Thickness, Grain, Holes: 0 })).toBe(locked);
  });
  it.each([
    ["length", "length"],
    ["width", "width"],
    ["free", ""],
    [null, ""],
  ])("of a flat part what the bill states is kept: %s", (Grain, kept) => {
    expect(grain({ Flanges: "5", "Bend angles": null, Material: "A1008 CS", Thickness: "16 ga", Grain })).toBe(kept);
  });
});

describe("flat sizes", () => {
  it("of a plate are its own; its path has the holes and notches", () => {
    const line = lineOf(bracket({ Flanges: "5", "Bend angles": null, Notches: 4, "Notch path": 2.5 }));
    const blank = blankOf(line, undefined);
    expect([inches(blank.length), inches(blank.width), blank.pierces]).toEqual([5, 4, 3]);
    expect(inches(blank.path)).toBeCloseTo(2 * (5 + 4) + 2 * Math.PI * 0.5 + 4 * 2.5, 9);
    expect(blank.weight / 0.45359237).toBeCloseTo(5 * 4 * 0.25 * 0.284, 6);
  });
  it("a tray is flat in both directions by the one deduction of its bends", () => {
    const tray = { Width: null, Flanges: "3; 6; 3", "Cross flanges": "3; 5; 3", "Cross angles": 90 };
    const { plan } = planned([bracket(tray)]).lines[0]!;
    const deduction = inches(plan!.bend!.deduction);
    expect(inches(plan!.blank.length)).toBeCloseTo(12 - 2 * deduction, 9);
    expect(inches(plan!.blank.width)).toBeCloseTo(11 - 2 * deduction, 9);
  });
  it("a Z bends as much as a channel does: the sign of an angle changes no flat", () => {
    const flat = (angles: string) =>
      planned([bracket({ Flanges: "3; 6; 3", "Bend angles": angles })]).lines[0]!.plan!.blank.length;
    expect(flat("90; -90")).toBeCloseTo(flat("90; 90"), 9);
  });
});
