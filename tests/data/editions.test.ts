import { describe, expect, it } from "vitest";
import { ANGULAR, LINEAR } from "../../src/data/iso-2768.ts";
import { CURRENT_EDITION, EDITIONS } from "../../src/data/materials/editions.ts";
import { ALUMINUM_COLUMNS_IN, ALUMINUM_RADII, DIN_CLASSES_MPA, DIN_RADII } from "../../src/data/minimum-radii.ts";
import { FREQUENCY } from "../../src/data/niosh.ts";

const rising = (values: readonly number[]): boolean => values.every((value, i) => i === 0 || value >= values[i - 1]!);

describe("editions of the materials", () => {
  it("have different names and rising dates; the current one is among them", () => {
    expect(new Set(EDITIONS.map(({ name }) => name)).size).toBe(EDITIONS.length);
    expect(EDITIONS.map(({ date }) => date)).toEqual(EDITIONS.map(({ date }) => date).sort());
    expect(EDITIONS).toContain(CURRENT_EDITION);
  });

  it("no name or alias means two materials", () => {
    for (const { materials } of EDITIONS) {
      const fold = (name: string) => name.toLowerCase().replace(/[\s\-_.,/()]+/g, "");
      const owners = new Map<string, string>();
      for (const { name, aliases } of materials)
        for (const each of [name, ...aliases].map(fold)) {
          expect(owners.get(each) ?? name, each).toBe(name);
          owners.set(each, name);
        }
    }
  });

  it("an aluminum alloy's radius row exists", () => {
    for (const { materials } of EDITIONS)
      for (const { name, radiusRule } of materials)
        if (radiusRule?.table === "aluminum") expect(ALUMINUM_RADII, name).toHaveProperty([radiusRule.row]);
  });
});

describe("tables have their full width and the shape of their subject", () => {
  it("least radii: one per column, never smaller in thicker sheet", () => {
    for (const [row, { multiples }] of Object.entries(ALUMINUM_RADII)) {
      expect(multiples, row).toHaveLength(ALUMINUM_COLUMNS_IN.length);
      expect(rising(multiples), row).toBe(true);
    }
    for (const column of [0, 1, 2, 3]) expect(rising(DIN_RADII.map((row) => row[column]!))).toBe(true);
    for (const [, ...radii] of DIN_RADII) expect(rising(radii)).toBe(true);
    expect(rising(DIN_CLASSES_MPA)).toBe(true);
  });

  it("frequency multipliers fall with the lifts and with the hours", () => {
    for (const column of [1, 2, 3]) expect(rising(FREQUENCY.map((row) => -row[column]!))).toBe(true);
    for (const [, ...multipliers] of FREQUENCY) expect(rising(multipliers.map((value) => -value))).toBe(true);
  });

  it("general tolerances rise with the size of a length and fall with the leg of an angle", () => {
    for (const grade of ["f", "m", "c", "v"] as const) {
      expect(rising(LINEAR.flatMap((row) => row[grade] ?? []))).toBe(true);
      expect(rising(ANGULAR.map((row) => -row[grade]))).toBe(true);
    }
  });
});
