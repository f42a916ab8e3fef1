import { describe, expect, it } from "vitest";
import { airRadiusByRule } from "../../../src/calc/bend/air-radius.ts";
import { holeLimits } from "../../../src/calc/bend/hole-distance.ts";
import { safeFlange, shortestFlange } from "../../../src/calc/bend/minimum-flange.ts";
import { minimumRadius } from "../../../src/calc/bend/minimum-radius.ts";
import { CURRENT_EDITION } from "../../../src/data/materials/editions.ts";
import { degrees, type Millimeters, megapascals, mm } from "../../../src/units/quantity.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import type { UnitSystem } from "../../../src/units/system.ts";

const material = (name: string) => CURRENT_EDITION.materials.find((each) => each.name === name)!;
const inch = (value: number) => mm(value * 25.4);
const safe = (thickness: Millimeters, dieOpening: Millimeters, shoulder: Millimeters | undefined, system: UnitSystem) =>
  safeFlange({ thickness, dieOpening, bendAngle: degrees(90), shoulder }, system);
const radiusOf = (name: string, thickness: number, grain: "across" | "along" = "across", tensile?: number) =>
  minimumRadius(
    { ...material(name), tensile: tensile === undefined ? undefined : megapascals(tensile) },
    inch(thickness),
    grain,
  ) / 25.4;

describe("least published radius", () => {
  /** Aluminum Association-type table, multiples of t at 1/64, 1/32, 1/16, 1/8, 3/16, 1/4, 3/8, 1/2 in (read). */
  it.each([
    ["6061-T6", 1 / 16, 1.5],
    ["6061-T6", 1 / 4, 3.5],
    ["6061-T4", 1 / 8, 1.5],
    ["5052-H32", 1 / 32, 0],
    ["5052-H34", 1 / 4, 2.5],
    ["1100-H14", 1 / 2, 2.5],
  ])("%s of %d in: %d thicknesses", (name, thickness, multiple) => {
    expect(radiusOf(name, thickness)).toBeCloseTo(multiple * thickness, 12);
  });

  it("between two thicknesses the thicker column rules", () => {
    expect(radiusOf("6061-T6", 0.1)).toBeCloseTo(2.5 * 0.1, 12);
    expect(radiusOf("6061-T6", 0.126)).toBeCloseTo(3 * 0.126, 12);
  });

  it.each([
    ["beyond the aluminum table", () => radiusOf("6061-T6", 0.51)],
    ["aluminum along rolling", () => radiusOf("6061-T6", 0.125, "along")],
    ["plate above 3/4 in", () => radiusOf("A36", 0.76)],
    ["sheet above 12 mm", () => radiusOf("A1011 CS", 0.5, "across", 360)],
    ["sheet of more than 640 MPa", () => radiusOf("A1011 CS", 0.1, "across", 650)],
    ["sheet of unknown strength", () => radiusOf("A1011 CS", 0.1)],
    ["304: nothing is published here", () => radiusOf("304", 0.1)],
  ])("no answer: %s", (_, ask) => {
    expect(ask).toThrow(Refusal);
  });

  /** DIN 6935 (1975-10) as reprinted (read): thickness, class limit, radius in mm. */
  it.each([
    [1, 390, 1],
    [1.01, 390, 1.6],
    [3, 390, 3],
    [3, 490, 4],
    [3, 640, 5],
    [12, 640, 25],
  ])("sheet of %d mm up to %d MPa: %d mm", (thickness, tensile, radius) => {
    expect(radiusOf("A1008 CS", thickness / 25.4, "across", tensile) * 25.4).toBeCloseTo(radius, 12);
  });
});

describe("radius the opening gives", () => {
  it("lies in the band of the trade's shares (common practice, memory)", () => {
    const band = airRadiusByRule(material("304"), inch(1), undefined);
    expect([band.low, band.expected, band.high].map((value) => value / 25.4)).toEqual([
      expect.closeTo(0.2, 12),
      expect.closeTo(0.21, 12),
      expect.closeTo(0.22, 12),
    ]);
  });

  it("a larger punch nose rules, a smaller one does not", () => {
    expect(airRadiusByRule(material("304"), inch(1), inch(0.5)).expected).toBe(inch(0.5));
    expect(airRadiusByRule(material("304"), inch(1), inch(0.03)).expected).toBeCloseTo(inch(0.21), 12);
  });
});

describe("least flange", () => {
  it("a square bend's flange reaches the die's edge at 0.7 of the opening (common practice), exactly V / sqrt 2", () => {
    expect(shortestFlange(mm(50), degrees(90))).toBeCloseTo(50 / Math.SQRT2, 12);
    expect(shortestFlange(mm(50), degrees(90)) / 50).toBeCloseTo(0.7, 1);
  });

  it("a flat sheet needs half the opening; sharper bends need more", () => {
    expect(shortestFlange(mm(50), degrees(0))).toBeCloseTo(25, 12);
    expect(shortestFlange(mm(50), degrees(120))).toBeCloseTo(50, 12);
  });

  it("the safe flange stands on the next sixteenth or millimeter and is never below the shortest", () => {
    expect((safe(inch(0.25), inch(2), undefined, "in") / 25.4) % (1 / 16)).toBeCloseTo(0, 9);
    expect(safe(mm(6), mm(50), undefined, "mm") % 1).toBe(0);
    expect(safe(mm(6), mm(50), mm(3), "mm")).toBeGreaterThanOrEqual(50 / Math.SQRT2 + 3 + 3);
  });
});

describe("holes beside a bend", () => {
  const limits = holeLimits({
    thickness: inch(0.25),
    radius: inch(0.3125),
    dieOpening: inch(2),
    bendAngle: degrees(90),
    k: 0.42,
  });

  it("below 2t + R drill after (common practice); inside half the opening it distorts", () => {
    expect(limits.drillAfter / 25.4).toBeCloseTo(2 * 0.25 + 0.3125, 12);
    // The bend line lies half the allowance beyond the tangent point, which is R from the inside face.
    const halfArc = ((Math.PI / 2) * (0.3125 + 0.42 * 0.25)) / 2;
    expect(limits.fine / 25.4).toBeCloseTo(1 + 0.3125 - halfArc, 12);
  });
});
