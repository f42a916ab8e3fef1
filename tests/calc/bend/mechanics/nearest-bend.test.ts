import { describe, expect, it } from "vitest";
import { nearestBend } from "../../../../src/calc/bend/mechanics/nearest-bend.ts";
import { COMPARED_BENDS } from "../../../../src/data/compared-bends.ts";
import { degrees } from "../../../../src/units/quantity.ts";
import reference from "../../../reference/fe-cases.json" with { type: "json" };
import second from "../../../reference/fe-cases-second.json" with { type: "json" };
import measured from "../../../reference/measured-bends.json" with { type: "json" };
import { bendInput } from "./shop-input.ts";

const finiteElements = [...reference.cases, ...second.cases];

describe("the table of compared bends is what the reference files say", () => {
  it.each(finiteElements)("finite elements $id", (c) => {
    const row = COMPARED_BENDS.find(({ id }) => id === `finite elements ${c.id}`)!;
    expect(row.opening / (c.V_mm / c.t_mm)).toBeCloseTo(1, 3);
    expect(row.nose / (c.punch_nose_mm / c.t_mm)).toBeCloseTo(1, 3);
    expect(row.shoulder! / (c.die_shoulder_mm / c.t_mm)).toBeCloseTo(1, 3);
    expect(row.exponent).toBeCloseTo(c.n, 4);
    expect(row.strain / (c.K_MPa / c.E_MPa)).toBeCloseTo(1, 3);
    expect(row.finalAngle).toBeCloseTo(c.final_bend_angle_deg, 1);
    expect([row.dieAngle, row.friction]).toEqual([c.die_angle_deg, c.mu]);
  });

  it("and every measured bend whose die is stated", () => {
    const stated = measured.bends.filter((bend) => bend.die_in !== null);
    for (const { id, thickness_in, punch_nose_in, die_in } of stated) {
      const row = COMPARED_BENDS.find((other) => other.id.startsWith(`measured ${id},`))!;
      expect(row.opening).toBeCloseTo(die_in! / thickness_in, 2);
      expect(row.nose).toBeCloseTo(punch_nose_in / thickness_in, 3);
      expect(row.finalAngle).toBe(90);
    }
    expect(COMPARED_BENDS).toHaveLength(finiteElements.length + stated.length);
  });
});

describe("one joint distance", () => {
  const at = (values: Parameters<typeof bendInput>[0], angle = 90, notGiven = {}, room = 1) =>
    nearestBend(bendInput(values), { finalAngle: degrees(angle), solution: { room } }, notGiven);

  it("a compared bend is at no distance from itself", () => {
    const found = at({ shoulder: 2, mu: 0 }, 91.01);
    expect(found.id).toBe("finite elements I");
    expect(found.distance).toBeLessThan(1e-3);
    expect(found).toMatchObject({ inside: true, difference: "the same bend" });
  });

  it.each([
    [
      "a wide die, hot-rolled 16 gauge over 2 in",
      { t: 1.519, V: 50.8, nose: 1.6, n: 0.12, mu: 0.1, shoulder: 3 },
      true,
    ],
    ["5052-H32 1/8 in over 2 in", { t: 3.175, V: 50.8, nose: 1.59, n: 0.087, mu: 0.1, shoulder: 3 }, true],
    ["a die of 80 t", { V: 240 }, false],
    ["a nose of 15 t", { V: 120, nose: 45 }, false],
    ["a sheet that hardly hardens", { n: 0.02 }, false],
  ])("%s: inside is %s", (_, values, inside) => {
    expect(at(values).inside).toBe(inside);
  });

  it("all of them off a little is outside, where each alone is inside", () => {
    const off = { V: 31, n: 0.2, nose: 3.5 };
    for (const [name, value] of Object.entries(off)) expect(at({ [name]: value }).distance, name).toBeLessThan(0.8);
    const near = at({ n: 0.08, nose: 6.5, V: 52 }, 60);
    expect(near.inside).toBe(false);
  });

  it("a shoulder that was not given never makes a bend outside", () => {
    const odd = { shoulder: 30 };
    expect(at(odd).distance).toBeGreaterThan(1);
    expect(at(odd, 91.01, { shoulder: true }).distance).toBeLessThan(1e-3);
  });

  it("a bend that is about to be nipped is outside, at 2 and more where it is, and the distance says so", () => {
    const { distance, difference } = at({}, 91.01, {}, 0.05);
    expect(distance).toBeCloseTo(1, 2);
    expect(difference).toBe("nipped between nose and shoulder 0.5 against 0");
    expect(at({}, 91.01, {}, 0).distance).toBeCloseTo(2, 2);
    expect(at({}, 91.01, {}, 0.1).distance).toBeLessThan(1e-3);
  });

  it("sheet of twice the strength over modulus is another sheet", () => {
    expect(at({ K: 702.3 * 2.3 }, 91.01).distance).toBeGreaterThan(0.6);
  });

  it("says what differs most", () => {
    expect(at({ V: 60, mu: 0.1 }, 90).difference).toBe("opening 20 t against 16 t");
  });
});
