/** Brake, bend ends, beam, punch and die on both sides of each threshold. Common practice of US shops; the plate decides. */
import { describe, expect, it } from "vitest";
import { forceFindings } from "../../../../src/calc/bend/check/force.ts";
import { type BendLine, sharpestBend } from "../../../../src/calc/bend/check/line.ts";
import { forceCases } from "../../../../src/calc/bend/force-cases.ts";
import type { Material } from "../../../../src/data/materials/material.ts";
import { mm, newtons, newtonsPerMillimeter } from "../../../../src/units/quantity.ts";
import { BRAKE, die, line, material, punch, setup } from "./set-up.ts";

const { tensileHigh: _, ...noStrongSheet } = material("A36");
/** Of a steel without a strong case only the thickness makes the worst case: about a tenth more. */
const EVEN = noStrongSheet as Material;
const STRONG = material("A36");
const loads = (of: Material, bendLength = 400) =>
  forceCases(sharpestBend(line({ material: of }), setup()), mm(bendLength));

describe("what the cases of these tests are", () => {
  it("a steel of even strength, and one whose strong sheet takes a third more", () => {
    expect(loads(EVEN).worst / loads(EVEN).expected).toBeCloseTo(1.11, 1);
    expect(loads(STRONG).worst / loads(STRONG).expected).toBeGreaterThan(1.3);
  });
});

/** Housings so near that the beam never decides, with a bend that fits between them. */
const onBrake = (of: Material, ratedForce: number) =>
  forceFindings(line({ material: of }), setup({ brake: { ...BRAKE, ratedForce: newtons(ratedForce) } })).filter(
    ({ about }) => about === "brake force",
  );

describe("the brake", () => {
  it.each([
    ["80 % of the rating, as expected", EVEN, loads(EVEN).expected / 0.8, undefined],
    ["a little over 80 %", EVEN, loads(EVEN).expected / 0.801, "check"],
    ["100 %", EVEN, loads(EVEN).expected, "check"],
    ["a little over 100 %", EVEN, loads(EVEN).expected / 1.001, "stop"],
    ["100 % in the worst case", STRONG, loads(STRONG).worst, undefined],
    ["a little over 100 % in the worst case", STRONG, loads(STRONG).worst / 1.001, "check"],
  ] as const)("%s: %s", (_what, of, rated, status) => {
    const [found] = onBrake(of, rated);
    expect(found?.status).toBe(status);
    const { expected, worst } = loads(of);
    if (found) expect(found).toMatchObject({ figure: expected, beside: worst, limit: rated, name: "B" });
  });
});

describe("a bend whose ends stand outside the housings", () => {
  const ends = (share: number, bendLength = 2100) => {
    const brake = { ...BRAKE, ratedForce: newtons(loads(EVEN, bendLength).expected / share) };
    const found = forceFindings(line({ material: EVEN, bendLength: mm(bendLength) }), setup({ brake }));
    return found.find(({ about }) => about === "bend ends")?.status;
  };
  it.each([
    [0.5, "note"],
    [0.501, "check"],
    [0.8, "check"],
    [0.801, "stop"],
    // A brake without the force needs no finding about its ends.
    [1.001, undefined],
  ] as const)("%d of the rating: %s", (share, status) => expect(ends(share)).toBe(status));
  it("a bend as long as the room between the housings stands inside", () => expect(ends(0.9, 2000)).toBeUndefined());
});

describe("the beam: its rating over 60 % of the distance between the housings", () => {
  const beam = (of: Material, loadLimit: number, bendLength: number) => {
    // The rating is out of reach, the housings far apart: only the load per length speaks.
    const brake = { ...BRAKE, ratedForce: newtons(1e8), betweenHousings: mm(1e8 / 0.6 / loadLimit) };
    const found = forceFindings(line({ material: of, bendLength: mm(bendLength) }), setup({ brake }));
    return found.find(({ about }) => about === "beam");
  };
  const spread = (of: Material, bendLength: number, over: number) => ({
    expected: loads(of, bendLength).expected / over,
    worst: loads(of, bendLength).worst / over,
  });
  it.each([
    ["over its length", 400, 400],
    ["over 12 in where it is shorter", 100, 12 * 25.4],
  ])("%s", (_what, bendLength, over) => {
    const { expected, worst } = spread(STRONG, bendLength, over);
    expect(beam(STRONG, worst, bendLength)).toBeUndefined();
    expect(beam(STRONG, worst / 1.001, bendLength)?.status).toBe("check");
    expect(beam(STRONG, expected, bendLength)?.status).toBe("check");
    const found = beam(STRONG, expected / 1.001, bendLength);
    expect(found?.status).toBe("stop");
    expect(found?.figure).toBeCloseTo(expected, 9);
  });
});

describe.each(["die", "punch"] as const)("the %s, by its length", (tool) => {
  const rated = (of: Material, load: number) => {
    const given = { ...(tool === "die" ? die() : punch()), rating: newtonsPerMillimeter(load / 400) };
    return forceFindings(line({ material: of }), setup({ [tool]: given }));
  };
  it.each([
    ["80 % as expected", EVEN, loads(EVEN).expected / 0.8, undefined],
    ["over 80 %", EVEN, loads(EVEN).expected / 0.801, "check"],
    ["100 %", EVEN, loads(EVEN).expected, "check"],
    ["over 100 %", EVEN, loads(EVEN).expected / 1.001, "stop"],
    ["100 % in the worst case", STRONG, loads(STRONG).worst, undefined],
    ["over 100 % in the worst case", STRONG, loads(STRONG).worst / 1.001, "check"],
    ["125 % in the worst case", STRONG, loads(STRONG).worst / 1.25, "check"],
    [
      "over 125 % in the worst case, as expected still under: nothing relieves a tip",
      STRONG,
      loads(STRONG).worst / 1.251,
      "stop",
    ],
  ] as const)("%s", (_what, of, load, status) => {
    const found = rated(of, load);
    expect(found.map((each) => [each.about, each.status])).toEqual(status ? [[tool, status]] : []);
  });
});

describe("what a table does not say is not judged", () => {
  it("tools without a rating, no punch", () => {
    const bend: BendLine = line();
    expect(forceFindings(bend, setup())).toEqual([]);
    expect(forceFindings(bend, { brake: BRAKE, die: die() })).toEqual([]);
  });
});
