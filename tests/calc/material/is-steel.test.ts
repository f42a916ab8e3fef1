import { describe, expect, it } from "vitest";
import { isSteel } from "../../../src/calc/material/strength.ts";
import { CURRENT_EDITION } from "../../../src/data/materials/editions.ts";

const named = (name: string) => CURRENT_EDITION.materials.find((material) => material.name === name)!;

describe("the force formulas are stated for steels", () => {
  it.each(["A36", "A572-50", "A1011 CS", "A1008 CS", "A653 CS", "304", "316"])("%s is one", (name) => {
    expect(isSteel(named(name))).toBe(true);
  });
  it.each(["1100-H14", "6061-T6", "2024-T3", "C110 half hard", "C260 half hard"])("%s is not one", (name) => {
    expect(isSteel(named(name))).toBe(false);
  });
});
