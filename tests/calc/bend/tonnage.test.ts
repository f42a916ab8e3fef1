import { describe, expect, it } from "vitest";
import { lineLoadLimit } from "../../../src/calc/bend/line-load.ts";
import { maximumLength } from "../../../src/calc/bend/maximum-length.ts";
import { maximumThickness } from "../../../src/calc/bend/maximum-thickness.ts";
import { type AirBend, bendForce, continuedLangeForce, FORCE_METHODS } from "../../../src/calc/bend/tonnage.ts";
import { megapascals, mm, newtons } from "../../../src/units/quantity.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import first from "../../reference/fe-cases.json" with { type: "json" };
import second from "../../reference/fe-cases-second.json" with { type: "json" };

const bend: AirBend = {
  thickness: mm(6),
  bendLength: mm(2000),
  dieOpening: mm(50),
  tensile: megapascals(400),
  isSteel: true,
};
const brake = { name: "B", ratedForce: newtons(1_500_000), bedLength: mm(3050), betweenHousings: mm(2550) };

describe("air-bend force", () => {
  it.each(FORCE_METHODS)("%s: twice the length or the strength is twice the force", (method) => {
    const force = bendForce(bend, method);
    expect(bendForce({ ...bend, bendLength: mm(4000) }, method) / force).toBeCloseTo(2, 12);
    expect(bendForce({ ...bend, tensile: megapascals(800) }, method) / force).toBeCloseTo(2, 12);
  });

  /*
   * A rating is checked with the handbook's force: from the tensile strength of the same hardening law, K (n / e)^n, it is
   * never short of what the independent finite-element solutions needed, and far over them in annealed stainless alone.
   */
  it.each([...first.cases, ...second.cases])("Lange against finite elements, $id: not short of them", (solved) => {
    const force = continuedLangeForce({
      thickness: mm(solved.t_mm),
      bendLength: mm(1),
      dieOpening: mm(solved.V_mm),
      tensile: megapascals(solved.K_MPa * (solved.n / Math.E) ** solved.n),
      isSteel: true,
    });
    expect(force / solved.peak_force_N_per_mm).toBeGreaterThan(0.985);
    expect(force / solved.peak_force_N_per_mm).toBeLessThan(solved.n > 0.4 ? 1.76 : 1.36);
  });

  it("highest is the greatest of those that apply", () => {
    const each = (["Lange", "Groover", "US shop"] as const).map((method) => bendForce(bend, method));
    expect(bendForce(bend, "highest")).toBe(Math.max(...each));
    // Outside Lange's range the other two still answer.
    const thick = { ...bend, thickness: mm(12), dieOpening: mm(100) };
    expect(bendForce(thick, "highest")).toBe(bendForce(thick, "US shop"));
  });

  it.each([
    ["thinner than 0.5 mm", { thickness: mm(0.4), dieOpening: mm(4) }],
    ["thicker than 10 mm", { thickness: mm(10.1), dieOpening: mm(80) }],
    ["an opening below five thicknesses", { dieOpening: mm(29) }],
    ["an opening above twenty thicknesses", { dieOpening: mm(121) }],
  ])("Lange has no answer for %s", (_, change) => {
    expect(() => bendForce({ ...bend, ...change }, "Lange")).toThrow(Refusal);
  });

  it("Lange's limits themselves belong to the range, also when they come as inches", () => {
    expect(bendForce({ ...bend, thickness: mm(10), dieOpening: mm(50) }, "Lange")).toBeGreaterThan(0);
    expect(bendForce({ ...bend, thickness: mm(0.1 * 25.4), dieOpening: mm(2 * 25.4) }, "Lange")).toBeGreaterThan(0);
  });
});

describe("what a brake takes", () => {
  it("the beam's load per length is the rating over 60 % of the distance between housings (common practice)", () => {
    expect(lineLoadLimit(brake)).toBeCloseTo(1_500_000 / (0.6 * 2550), 9);
  });

  it("the longest bend needs exactly the rating, or fills the bed", () => {
    const heavy = { ...bend, thickness: mm(8), dieOpening: mm(50), tensile: megapascals(500) };
    const longest = maximumLength(heavy, brake, "Groover");
    expect(longest).toBeLessThan(brake.bedLength);
    expect(bendForce({ ...heavy, bendLength: longest }, "Groover")).toBeCloseTo(brake.ratedForce, 3);
    expect(maximumLength({ ...bend, thickness: mm(1) }, brake, "Groover")).toBe(brake.bedLength);
  });

  it("a force per length above the beam's limit has no longest bend", () => {
    expect(() => maximumLength({ ...bend, thickness: mm(20) }, brake, "Groover")).toThrow(Refusal);
  });

  it("the thickest sheet needs exactly what is allowed, or is a sixth of the opening", () => {
    const long = { ...bend, bendLength: mm(3000) };
    const thickest = maximumThickness(long, brake, "Groover");
    expect(bendForce({ ...long, thickness: thickest }, "Groover")).toBeCloseTo(brake.ratedForce, 3);
    expect(maximumThickness({ ...bend, bendLength: mm(100), dieOpening: mm(12) }, brake, "Groover")).toBeCloseTo(2, 9);
  });

  it("a bend longer than the bed has no thickness", () => {
    expect(() => maximumThickness({ ...bend, bendLength: mm(3051) }, brake, "Groover")).toThrow(Refusal);
  });
});
