import { describe, expect, it } from "vitest";
import type { AirTools } from "../../../src/calc/bend/air-bend.ts";
import { forceCases } from "../../../src/calc/bend/force-cases.ts";
import { solvedAirBend } from "../../../src/calc/bend/solved-air-bend.ts";
import { bendForce, type ForceMethod } from "../../../src/calc/bend/tonnage.ts";
import { wrappedNose } from "../../../src/calc/bend/wrapped-nose.ts";
import { thickestSheet } from "../../../src/calc/material/thickest.ts";
import { EDITIONS } from "../../../src/data/materials/editions.ts";
import type { Material } from "../../../src/data/materials/material.ts";
import { degrees, type Millimeters, megapascals, mm } from "../../../src/units/quantity.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import { refusalOr } from "../../../src/units/remember.ts";

const inch = (value: number) => mm(value * 25.4);
const named = (edition: string, name: string) =>
  EDITIONS.find((each) => each.name === edition)!.materials.find((each) => each.name === name)!;

/** A right angle, on a nose and a shoulder that are not given unless they are. */
const over = (material: Material, thickness: Millimeters, dieOpening: Millimeters, tools: Partial<AirTools> = {}) => ({
  material,
  thickness,
  bendAngle: degrees(90),
  tools: { dieOpening, ...tools },
});

describe("force never falls when the sheet gets thicker", () => {
  const walk = Array.from({ length: 1500 }, (_, i) => inch(0.015 * (0.75 / 0.015) ** (i / 1500)));

  it.each([
    ["2026.1", "A36"],
    ["2026.2", "A36"],
    ["2026.2", "A1011 CS"],
    ["2026.2", "5052-H32"],
  ])("%s %s: expected and worst case over 1, 1-1/2, 2 and 4 in", (edition, name) => {
    const material = named(edition, name);
    for (const opening of [1, 1.5, 2, 4]) {
      const forces = walk.map((thickness) => forceCases(over(material, thickness, inch(opening)), inch(12)));
      for (const [i, { expected, worst }] of forces.entries()) {
        if (i === 0) continue;
        expect(expected).toBeGreaterThan(forces[i - 1]!.expected);
        expect(worst).toBeGreaterThan(forces[i - 1]!.worst);
        expect(worst).toBeGreaterThan(expected);
        // Nor does it jump where a formula's range ends: a step of the walk is 0.26 % of thickness. Over less than 4 t the
        // nose that is taken (t / 2) fills the die, and the force runs off.
        if (opening * 25.4 > 4 * walk[i]!) expect(expected / forces[i - 1]!.expected).toBeLessThan(1.01);
      }
    }
  });

  it('BEND.TONNAGE "highest" does not fall where Lange ends: 0.3035 and 0.304 in over 1.52 in', () => {
    const at = (thickness: number, method: ForceMethod) =>
      bendForce(
        {
          thickness: inch(thickness),
          bendLength: inch(12),
          dieOpening: inch(1.52),
          tensile: megapascals(400),
          isSteel: true,
        },
        method,
      );
    expect(at(0.304, "highest")).toBeGreaterThan(at(0.3035, "highest"));
    expect(at(0.3045, "highest") / at(0.3035, "highest")).toBeLessThan(1.01);
    expect(() => at(0.3045, "Lange")).toThrow("die_opening must be 5 to 20 times the thickness");
  });

  // US press-brake forming chart for 60 ksi mild steel, tons per foot (read in a reprint).
  it.each([
    [0.25, 1.25, 27.5],
    [0.25, 1.5, 22.1],
    [0.25, 2, 15.0],
    [0.25, 3, 9.6],
    [0.375, 2, 42.7],
    [0.375, 3, 23.8],
    [0.5, 3, 48.5],
    [0.5, 4, 33.2],
    [0.5, 6, 19.5],
  ])("%s in over %s in: %s tons a foot on a published chart, the continued formula within 18 %%", (t, V, tons) => {
    const sheet = {
      ...named("2026.2", "A36"),
      tensileTypical: { value: 60, unit: "ksi", mark: "given", source: "chart" },
    } as const;
    const { expected } = forceCases(over(sheet, inch(t), inch(V)), inch(12));
    expect(Math.abs(expected / 8896.443 / tons - 1)).toBeLessThan(0.18);
  });
});

describe("a nose that nearly fills its die", () => {
  // 12 ga over V 1 around a nose of 1/2 in: 18.6 tons by the handbook, 90 by the solved bend, on a brake of 60.
  const tools = { punchNose: inch(0.5), dieShoulder: inch(0.09), dieAngle: degrees(80) };
  const narrow = over(named("2026.2", "A1011 CS"), inch(0.1046), inch(1), tools);
  it("needs several times the handbook's force, as the solved bend says", () => {
    const { expected, worst } = forceCases(narrow, inch(46));
    expect(expected / (solvedAirBend(narrow).bend.peakForce * 46 * 25.4)).toBeCloseTo(1.07, 1);
    expect(expected / 8896.443).toBeGreaterThan(80);
    expect(worst).toBeGreaterThan(expected);
  });

  const noses = [0.0625, 0.25, 0.5];
  const sheets = [
    ["A36", [0.125, 0.1875, 0.25]],
    ["A1011 CS", [0.0598, 0.0747, 0.1046, 0.1345]],
    ["304", [0.0375, 0.0625, 0.125]],
    ["5052-H32", [0.063, 0.09, 0.125]],
    ["6061-T6", [0.063, 0.125]],
  ] as const;
  it.each(sheets)("%s: over every die and nose never under 0.83 of the solved bend", (name, thicknesses) => {
    for (const thickness of thicknesses)
      for (const [V, dieAngle, shoulder] of [
        [0.375, 80, 0.03],
        [0.625, 80, 0.06],
        [1, 80, 0.09],
        [1.5, 78, 0.12],
        [2, 78, 0.16],
      ] as const)
        for (const nose of noses) {
          if (V < 5 * thickness || V > 22 * thickness) continue;
          const faces = { punchNose: inch(nose), dieShoulder: inch(shoulder), dieAngle: degrees(dieAngle) };
          const bend = over(named("2026.2", name), inch(thickness), inch(V), faces);
          const solved = refusalOr(() => solvedAirBend(bend).bend.peakForce);
          const { freeSheet } = wrappedNose(bend, bend.thickness, megapascals(400), inch(1));
          // What the solver refuses is nipped, or as good as.
          if (solved instanceof Refusal) expect(freeSheet).toBeLessThan(0.2 * bend.thickness);
          else expect(forceCases(bend, inch(1)).expected / 25.4 / solved).toBeGreaterThan(0.83);
        }
  });

  it("a sharp nose in a usual die takes the handbook's force, to the digit", () => {
    const bend = over(named("2026.2", "A36"), inch(0.25), inch(2), { ...tools, punchNose: inch(0.0625) });
    expect(forceCases(bend, inch(12))).toEqual(forceCases(over(bend.material, bend.thickness, inch(2)), inch(12)));
  });
});

describe("thickest within tolerance, absolute figures", () => {
  // ASTM A6/A6M thickness table (reprints); a service center's upper ordering limits by gauge (reprint).
  it.each([
    ["A36", 0.1875, 0.2175],
    ["A36", 0.25, 0.28],
    ["A36", 0.5, 0.53],
    ["A1011 CS", 0.1793, 0.1863],
    ["A1011 CS", 0.1345, 0.1405],
    ["A1008 CS", 0.1196, 0.1256],
    ["A1008 CS", 0.0747, 0.0797],
    ["A1008 CS", 0.0598, 0.0648],
  ])("%s %s in may come %s in thick", (name, nominal, thickest) => {
    expect(thickestSheet(named("2026.2", name), inch(nominal)) / 25.4).toBeCloseTo(thickest, 6);
  });

  it("edition 2026.1 keeps its shares of the thickness", () => {
    expect(thickestSheet(named("2026.1", "A36"), inch(0.25)) / 25.4).toBeCloseTo(0.28, 9);
    expect(thickestSheet(named("2026.1", "A36"), inch(0.5)) / 25.4).toBeCloseTo(0.56, 9);
    expect(thickestSheet(named("2026.1", "A1011 CS"), inch(0.1)) / 25.4).toBeCloseTo(0.105, 9);
  });
});
