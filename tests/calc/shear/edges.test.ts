/** The force where blade and cut are just as long; asked of the arithmetic itself. */
import { describe, expect, it } from "vitest";
import { shearForce } from "../../../src/calc/shear/force.ts";
import { degrees, megapascals, mm } from "../../../src/units/quantity.ts";
import type { Working } from "../../../src/units/working.ts";

describe("the force of a raked blade", () => {
  const told = (cutLength: number, rake: number | undefined) => {
    const work: Working = [];
    const force = shearForce(
      mm(2),
      mm(cutLength),
      rake === undefined ? undefined : degrees(rake),
      megapascals(300),
      work,
    );
    return { force, source: work.find(({ symbol }) => symbol === "area")?.source };
  };
  const engaged = 2 / Math.tan(Math.PI / 90);
  it("is the triangle's where the cut is as long as the blade in it, and less below", () => {
    expect(told(engaged, 2).force).toBeCloseTo((300 * 2 * engaged) / 2, 6);
    expect(told(engaged, 2).source).toMatch(/^t\^2/);
    expect(told(engaged * 2, 2).source).toMatch(/^t\^2/);
    expect(told(engaged / 2, 2).source).toMatch(/^t L/);
    expect(told(engaged / 2, 2).force).toBeCloseTo(
      300 * (2 * (engaged / 2) - ((engaged / 2) ** 2 * Math.tan(Math.PI / 90)) / 2),
      6,
    );
  });

  it("no rake, or none given, is a parallel blade", () => {
    expect(told(100, 0)).toEqual({ force: 300 * 2 * 100, source: undefined });
    expect(told(100, undefined)).toEqual({ force: 300 * 2 * 100, source: undefined });
  });
});
