import { describe, expect, it } from "vitest";
import { factValue } from "../../../src/calc/material/fact-value.ts";
import {
  density,
  highShearStrength,
  lowShearStrength,
  shearStrength,
  tensileStrength,
} from "../../../src/calc/material/strength.ts";
import { fact } from "../../../src/data/fact.ts";
import { CURRENT_EDITION } from "../../../src/data/materials/editions.ts";
import type { Material } from "../../../src/data/materials/material.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import type { Working } from "../../../src/units/working.ts";

const given = (value: number) => fact(value, "MPa", "given", "this test");
const sheet: Material = {
  name: "sheet",
  aliases: [],
  tensileMinimum: given(400),
  tensileTypical: given(450),
  tensileHigh: given(520),
};

describe("strengths", () => {
  it("shear is 0.7 of the typical tensile strength (Groover 5e, read) unless it is listed", () => {
    expect(shearStrength(sheet)).toBeCloseTo(315, 9);
    expect(shearStrength({ ...sheet, shearStrength: given(300) })).toBe(300);
  });

  it("for comparing, low is the lowest and high the highest the figures allow", () => {
    expect(lowShearStrength(sheet)).toBeCloseTo(280, 9);
    expect(highShearStrength(sheet)).toBeCloseTo(364, 9);
    expect(lowShearStrength({ ...sheet, shearStrength: given(250) })).toBe(250);
    expect(highShearStrength({ ...sheet, shearStrength: given(400) })).toBe(400);
  });

  it("the shop's own shear strength is the sheet's, where only the edition says how high the tensile strength goes", () => {
    const known = { ...sheet, tensileHigh: fact(520, "MPa", "memory", "this test") };
    expect(highShearStrength({ ...known, shearStrength: given(300) })).toBe(300);
    expect(highShearStrength({ ...known, shearStrength: fact(300, "MPa", "read", "this test") })).toBeCloseTo(364, 9);
    expect(highShearStrength({ ...sheet, shearStrength: given(300) })).toBeCloseTo(364, 9);
  });

  it("a level that is not known is not guessed", () => {
    const { tensileMinimum: _, ...unspecified } = sheet;
    expect(() => tensileStrength(unspecified, "minimum")).toThrow(Refusal);
    expect(lowShearStrength(unspecified)).toBeCloseTo(315, 9);
  });

  it("a published figure comes out in the internal unit", () => {
    expect(factValue(fact(1, "ksi", "given", "this test"), "stress")).toBeCloseTo(6.894757, 6);
    expect(factValue(fact(0.06, "", "given", "this test"), undefined)).toBe(0.06);
    expect(() => factValue(fact(1, "in", "given", "this test"), "stress")).toThrow("is no unit of stress");
  });
});

describe("every material of the table", () => {
  it.each(CURRENT_EDITION.materials.map((material) => [material.name, material] as const))(
    "%s: yield below tensile, minimum below typical below high",
    (_, material) => {
      const ladder = [
        material.yieldMinimum,
        material.tensileMinimum,
        material.tensileTypical,
        material.tensileHigh,
      ].flatMap((each) => (each ? [factValue(each, "stress")] : []));
      expect(ladder).toEqual([...ladder].sort((a, b) => a - b));
      expect(new Set(ladder).size).toBe(ladder.length);
      if (material.shearStrength)
        expect(factValue(material.shearStrength, "stress")).toBeLessThan(factValue(material.tensileTypical!, "stress"));
    },
  );
});

describe("what a strength says of itself", () => {
  const titanium = { name: "Ti", aliases: [] } as unknown as Material;
  it.each([
    ["minimum", /its specification sets none/],
    ["typical", /give a number/],
    ["high", /give a number/],
  ] as const)("%s that is not known", (level, words) => {
    expect(() => tensileStrength(titanium, level)).toThrow(
      expect.objectContaining({ message: expect.stringMatching(words) }),
    );
  });

  it("a density that is not known is asked for", () => {
    expect(() => density(titanium)).toThrow(
      expect.objectContaining({ message: "material must be one with a density; got Ti; add it to the data range" }),
    );
  });

  it.each([
    ["high", "tensile strength, high (assumed)"],
    ["typical", "tensile strength, typical"],
  ] as const)("%s in the working", (level, what) => {
    const known = { ...titanium, tensileHigh: given(400), tensileTypical: given(400), tensileHighIs: "assumed" };
    const work: Working = [];
    tensileStrength(known as unknown as Material, level, work);
    expect(JSON.stringify(work)).toContain(what);
  });
});
