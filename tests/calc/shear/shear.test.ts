import { describe, expect, it } from "vitest";
import { shearForce } from "../../../src/calc/shear/force.ts";
import { knifeGap } from "../../../src/calc/shear/knife-gap.ts";
import { maximumShearThickness, sameMaterial } from "../../../src/calc/shear/maximum-thickness.ts";
import { degrees, megapascals, mm } from "../../../src/units/quantity.ts";

const strength = megapascals(300);

describe("shearing force", () => {
  it("no rake, blank or 0, is a parallel blade", () => {
    expect(shearForce(mm(2), mm(100), undefined, strength)).toBe(60_000);
    expect(shearForce(mm(2), mm(100), degrees(0), strength)).toBe(60_000);
  });

  it("a raked blade does not feel the length beyond the triangle in the cut", () => {
    const one = shearForce(mm(2), mm(200), degrees(1.5), strength);
    expect(shearForce(mm(2), mm(4000), degrees(1.5), strength)).toBe(one);
    expect(one).toBeCloseTo((300 * 4) / (2 * Math.tan((1.5 * Math.PI) / 180)), 9);
  });

  it("is the same from both sides where the piece is exactly as long as the triangle", () => {
    const engaged = 2 / Math.tan((2 * Math.PI) / 180);
    const short = shearForce(mm(2), mm(engaged * (1 - 1e-9)), degrees(2), strength);
    const long = shearForce(mm(2), mm(engaged * (1 + 1e-9)), degrees(2), strength);
    expect(short / long).toBeCloseTo(1, 8);
  });

  it("a very short piece is cut as by parallel blades", () => {
    const parallel = shearForce(mm(2), mm(0.1), undefined, strength);
    expect(shearForce(mm(2), mm(0.1), degrees(1), strength) / parallel).toBeCloseTo(1, 2);
  });

  it("rake never makes it harder", () => {
    for (const length of [1, 10, 100, 1000])
      for (const rake of [0.1, 1, 3, 10])
        expect(shearForce(mm(3), mm(length), degrees(rake), strength)).toBeLessThanOrEqual(
          shearForce(mm(3), mm(length), undefined, strength),
        );
  });
});

describe("a shear's rating in another material", () => {
  it("stronger sheet goes by parallel blades, the smaller of the two rules", () => {
    expect(maximumShearThickness(mm(6), megapascals(300), megapascals(600))).toBeCloseTo(3, 12);
  });

  it("softer sheet does not raise the rating", () => {
    expect(maximumShearThickness(mm(6), megapascals(300), megapascals(100))).toBe(6);
    expect(sameMaterial(mm(6))).toBe(6);
  });
});

it("the knife gap is a share of the thickness, on one side", () => {
  expect(knifeGap(mm(4), 0.06, "a table")).toBeCloseTo(0.24, 12);
});
