import { describe, expect, it } from "vitest";
import { bendDeduction } from "../../../src/calc/bend/deduction.ts";
import { correctedBend, radiusAndAxis, type Sheet } from "../../../src/calc/strip/corrected-bend.ts";
import { correctionFor } from "../../../src/calc/strip/correction-for.ts";
import { edition20262 } from "../../../src/data/materials/edition-2026-2.ts";
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
const sheet = (opening: number, thickness: number, corrections: Sheet["corrections"]): Sheet => ({
  material: A36,
  thickness: mm(thickness),
  tools: { dieOpening: mm(opening), punchNose: mm(1.6) },
  corrections,
});
const deduction = (of: Sheet, work?: Working) => {
  const { radius, k, axisSource } = radiusAndAxis(of, square, "best", undefined, work);
  return bendDeduction(of.thickness, radius, square, k, "outside", work, axisSource);
};

describe("the shop's strips by material, thickness range and die", () => {
  it("strips for one die change that die's bends: K by the offset, so the deduction by -A t c", () => {
    const [plain, own] = [[], [row]].map((corrections) => deduction(sheet(50.8, 6.35, corrections)));
    expect(own! - plain!).toBeCloseTo((Math.PI / 2) * 6.35 * 0.02, 9);
  });

  it.each([
    ["another die", 38.1, 6.35],
    ["a thinner sheet", 50.8, 4.76],
    ["a thicker sheet", 50.8, 7.2],
  ])("%s keeps every digit", (_, opening, thickness) => {
    const [plain, own] = [[], [row]].map((corrections) => sheet(opening, thickness, corrections));
    expect(deduction(own!)).toBe(deduction(plain!));
    expect(correctedBend(own!, square).bend).toEqual(correctedBend(plain!, square).bend);
  });

  it("force and springback come out as measured", () => {
    const [plain, own] = [[], [row]].map((corrections) => correctedBend(sheet(50.8, 6.35, corrections), square).bend);
    expect(own!.peakForce / plain!.peakForce).toBeCloseTo(1.1, 1);
    expect(own!.springback / plain!.springback).toBeCloseTo(1.2, 1);
  });

  it("the working names the strips", () => {
    const work: Working = [];
    deduction(sheet(50.8, 6.35, [row]), work);
    expect(work.find(({ symbol }) => symbol === "strips")!.value).toBe(
      "A36, point contact, 0.224 in to 0.276 in over 2 in",
    );
  });

  it("a row that names the die comes before one that holds for all", () => {
    const { opening: _, thicknessFrom: __, thicknessTo: ___, ...anywhere } = { ...row, offset: 0.01 };
    const bend = { material: "A36", thickness: mm(6.35), dieOpening: mm(50.8), regime: "point" as const };
    expect(correctionFor([anywhere, row], bend)).toBe(row);
    expect(correctionFor([anywhere, row], { ...bend, dieOpening: mm(25.4) })).toBe(anywhere);
    expect(correctionFor([anywhere, row], { ...bend, material: "304" })).toBeUndefined();
    expect(correctionFor([row], { ...bend, regime: "wrapped" })).toBeUndefined();
  });
});
