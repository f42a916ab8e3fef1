/** Published measured bends (measured-bends.json, each row with its source), asked of the cell functions under 2026.2. */
import { describe, expect, it } from "vitest";
import { callRecord } from "../../src/cells/call/call.ts";
import { RECORDS } from "../../src/cells/catalogue.ts";
import { isCellError } from "../../src/units/cell.ts";
import measured from "./measured-bends.json" with { type: "json" };

const EDITION = "2026.2";
const MATERIALS: Record<string, string> = { "cold-rolled steel": "A1008 CS", "1100-O": "1100-O" };

function ask(name: string, given: Record<string, string | number>): number {
  const record = RECORDS.find((each) => each.name === name)!;
  const keys = Object.keys(record.parameters);
  for (const key of Object.keys(given)) expect(keys).toContain(key);
  const { value } = callRecord(
    record,
    keys.map((key) => given[key] ?? (key === "data" ? EDITION : null)),
  );
  if (isCellError(value)) throw new Error(value.message);
  return value as number;
}

type Bend = (typeof measured.bends)[number];
const over = (bend: Bend, dieOpening: number) => ({
  material: MATERIALS[bend.material]!,
  thickness: bend.thickness_in,
  bendAngle: 90,
  dieOpening,
  punchNose: bend.punch_nose_in,
});

describe("measured deductions, published", () => {
  const rows = measured.bends.filter((bend) => bend.deduction_in !== undefined);
  it.each(rows)("$id: $material $thickness_in in, deduction $deduction_in in, $source", (bend) => {
    if (bend.die_in !== null) {
      const deduction = ask("AIR.DEDUCTION", over(bend, bend.die_in));
      expect(Math.abs(deduction - bend.deduction_in!)).toBeLessThan(0.01);
      return;
    }
    // The die is not stated: between what 6 and 8 thicknesses give, and 0.001 in for the table's rounding.
    const [narrow, wide] = [6, 8].map((t) => ask("AIR.DEDUCTION", over(bend, t * bend.thickness_in)));
    expect(bend.deduction_in!).toBeGreaterThan(narrow! - 0.001);
    expect(bend.deduction_in!).toBeLessThan(wide! + 0.001);
  });
});

describe("measured radii, published", () => {
  const rows = measured.bends.filter((bend) => bend.radius_in !== undefined);
  it.each(rows)("$id: $material $thickness_in in, inside radius $radius_in in, $source", (bend) => {
    const radius = ask("AIR.RADIUS", over(bend, bend.die_in!));
    expect(Math.abs(radius - bend.radius_in!)).toBeLessThan(0.03);
  });
});

/** Opening and radius in thicknesses as the source states them; strengths of the plates (yield and tensile, ksi). */
const PLATES: Record<string, { opening: number; radius: number; strengths: readonly [number, number] | "A572-50" }> = {
  s1: { opening: 12.5, radius: 2.5, strengths: "A572-50" },
  s2: { opening: 13, radius: 2, strengths: [100, 125] },
  s3: { opening: 13.5, radius: 3, strengths: [150, 181] },
};

describe("springback of plate, published ranges", () => {
  it.each(measured.ranges)("$id: $what, $degrees degrees, $source", ({ id, degrees: [least, most] }) => {
    const { opening, radius, strengths } = PLATES[id]!;
    const t = 0.5;
    const bend = { thickness: t, bendAngle: 90, dieOpening: opening * t, punchNose: radius * t };
    const header = ["Name", "Modulus (ksi)", "Poisson ratio", "Yield typical (ksi)", "Tensile typical (ksi)"];
    const found =
      strengths === "A572-50"
        ? ask("AIR.SPRINGBACK", { material: strengths, ...bend })
        : ask("AIR.SPRINGBACK", {
            material: "the plate",
            ...bend,
            data: [header, ["the plate", 30000, 0.3, ...strengths]] as never,
          });
    expect(found).toBeGreaterThanOrEqual(least!);
    expect(found).toBeLessThanOrEqual(most!);
  });
});

describe("K of Machinery's Handbook, 26th ed., as quoted", () => {
  // Neutral axis on the radius that a die of 8 thicknesses gives, against the table's span over radii and thicknesses.
  it.each([
    ["aluminum", "5052-H32", 0.1],
    ["cold-rolled steel", "A1008 CS", 0.06],
    ["stainless steel", "304", 0.078],
  ] as const)("%s: within 0.04 of what is tabled", (family, material, thickness) => {
    const tabled = measured.k_table[family].k.flat();
    const bend = { material, thickness, bendAngle: 90, dieOpening: 8 * thickness, punchNose: 0.03 };
    const radius = ask("AIR.RADIUS", bend);
    const deduction = ask("AIR.DEDUCTION", bend);
    const k = ((2 * (radius + thickness) - deduction) / (Math.PI / 2) - radius) / thickness;
    expect(k).toBeGreaterThan(Math.min(...tabled) - 0.04);
    expect(k).toBeLessThan(Math.max(...tabled) + 0.04);
  });
});
