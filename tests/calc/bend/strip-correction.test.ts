import { describe, expect, it } from "vitest";
import { radiusAndAxis } from "../../../src/calc/bend/air-axis.ts";
import { bendDeduction } from "../../../src/calc/bend/deduction.ts";
import { forceCases } from "../../../src/calc/bend/force-cases.ts";
import { type AskedBend, solvedAirBend } from "../../../src/calc/bend/solved-air-bend.ts";
import { stripFor, withStrips } from "../../../src/calc/bend/strip-correction.ts";
import { edition20262 } from "../../../src/data/materials/edition-2026-2.ts";
import type { Material, StripCorrection } from "../../../src/data/materials/material.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";
import type { Working } from "../../../src/units/working.ts";

const A36 = edition20262.materials.find(({ name }) => name === "A36")!;
const square = degrees(90);
const row = {
  material: "A36",
  regime: "point" as const,
  offset: -0.02,
  slope: undefined,
  strength: 1.1,
  springback: 1.2,
  opening: mm(50.8),
  thicknessFrom: mm(5.7),
  thicknessTo: mm(7),
};
const asked = (opening: number, thickness: number, rows: readonly StripCorrection[]): AskedBend => ({
  material: withStrips(A36, rows),
  thickness: mm(thickness),
  bendAngle: square,
  tools: { dieOpening: mm(opening), punchNose: mm(1.6) },
});
const deduction = (of: AskedBend, work?: Working) => {
  const { radius, k, axisSource } = radiusAndAxis(of, "best", undefined, work);
  return bendDeduction({ thickness: of.thickness, radius, bendAngle: square, k, legs: "outside" }, work, axisSource);
};

describe("the shop's strips by material, thickness range and die", () => {
  it("strips for one die change that die's bends: K by the offset, so the deduction by -A t c", () => {
    const [plain, own] = [[], [row]].map((rows) => deduction(asked(50.8, 6.35, rows)));
    expect(own! - plain!).toBeCloseTo((Math.PI / 2) * 6.35 * 0.02, 9);
  });

  it.each([
    ["another die", 38.1, 6.35],
    ["a thinner sheet", 50.8, 4.76],
    ["a thicker sheet", 50.8, 7.2],
  ])("%s keeps every digit", (_, opening, thickness) => {
    const [plain, own] = [[], [row]].map((rows) => asked(opening, thickness, rows));
    expect(deduction(own!)).toBe(deduction(plain!));
    expect(solvedAirBend(own!).bend).toEqual(solvedAirBend(plain!).bend);
  });

  it("force and springback come out as measured", () => {
    const [plain, own] = [[], [row]].map((rows) => solvedAirBend(asked(50.8, 6.35, rows)).bend);
    expect(own!.peakForce / plain!.peakForce).toBeCloseTo(1.1, 1);
    expect(own!.springback / plain!.springback).toBeCloseTo(1.2, 1);
  });

  it("the working names the strips", () => {
    const work: Working = [];
    deduction(asked(50.8, 6.35, [row]), work);
    expect(work.find(({ symbol }) => symbol === "strips")!.value).toBe(
      "A36, point contact, 0.224 in to 0.276 in over 2 in",
    );
  });

  it("a row that names the die comes before one that holds for all", () => {
    const { opening: _, thicknessFrom: __, thicknessTo: ___, ...anywhere } = { ...row, offset: 0.01 };
    const bend = { thickness: mm(6.35), dieOpening: mm(50.8), regime: "point" as const };
    const both = withStrips(A36, [anywhere, row]);
    expect(stripFor(both, bend)).toBe(row);
    expect(stripFor(both, { ...bend, dieOpening: mm(25.4) })).toBe(anywhere);
    expect(withStrips({ ...A36, name: "304" }, [anywhere, row]).strips).toBeUndefined();
    expect(stripFor(withStrips(A36, [row]), { ...bend, regime: "wrapped" })).toBeUndefined();
  });

  it("a hard strip raises both forces of a bill, a soft one never the worst", () => {
    const over = (material: Material, opening: number) => ({
      material,
      thickness: mm(6.35),
      bendAngle: degrees(90),
      tools: { dieOpening: mm(opening) },
    });
    const cases = (strength: number, opening = 50.8) =>
      forceCases(over(withStrips(A36, [{ ...row, strength }]), opening), mm(1000));
    const plain = forceCases(over(A36, 50.8), mm(1000));
    expect(cases(1.2).expected / plain.expected).toBeCloseTo(1.2, 12);
    expect(cases(1.2).worst / plain.worst).toBeCloseTo(1.2, 12);
    expect(cases(0.8).expected / plain.expected).toBeCloseTo(0.8, 12);
    expect(cases(0.8).worst).toBe(plain.worst);
    expect(cases(1.2, 38.1)).toEqual(forceCases(over(A36, 38.1), mm(1000)));
  });
});
