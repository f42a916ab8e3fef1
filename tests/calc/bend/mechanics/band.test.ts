import { describe, expect, it } from "vitest";
import { airBendBand, solveAirBend } from "../../../../src/calc/bend/mechanics/air-bend-band.ts";
import { bandAgainstRandomSolves } from "../../../../src/tools/bench/airbend-band.ts";
import { degrees, megapascals, mm } from "../../../../src/units/quantity.ts";
import { Refusal } from "../../../../src/units/refusal.ts";
import { bendInput } from "./shop-input.ts";

// Reference: random solves of the same model (Monte Carlo); 1,000 here, 10,000 by `npm run bench:airbend -- --band 10000`.
const deviations = { thickness: mm(0.1), strength: megapascals(50), exponent: 0.03, dieOpening: mm(0.2) };

describe("the 90 % band", () => {
  it.each([
    ["A36-like at a wanted angle", bendInput({ mu: 0.1 }), { finalAngle: degrees(90) }],
    ["A36-like at a set stroke", bendInput({ mu: 0.1 }), { stroke: mm(9.9) }],
    ["stainless, touched at a point", bendInput({ K: 1275, n: 0.45, E: 193e3 }), { finalAngle: degrees(90) }],
  ] as const)("%s: both ends within a tenth of the width of 1,000 random solves", (_, input, target) => {
    const shares = bandAgainstRandomSolves(input, target, deviations, 1000, 9);
    expect(Object.keys(shares)).toHaveLength(9);
    for (const [figure, { lower, upper }] of Object.entries(shares)) {
      expect(Math.abs(lower), `${figure} lower`).toBeLessThan(0.1);
      expect(Math.abs(upper), `${figure} upper`).toBeLessThan(0.1);
    }
  });

  it("of one deviation alone: from the lesser of both solves to the greater, however lopsided", () => {
    const none = { thickness: mm(0), strength: megapascals(0), exponent: 0, dieOpening: mm(0) };
    const target = { finalAngle: degrees(90) } as const;
    const input = bendInput();
    const [thin, asIs, thick] = [-0.3, 0, 0.3].map((by) =>
      solveAirBend({ ...input, thickness: mm(input.thickness + by) }, target),
    );
    const band = airBendBand(input, target, { ...none, thickness: mm(0.3) });
    for (const figure of ["peakForce", "stroke", "springback", "tangentRadius"] as const) {
      const found = [thin!, asIs!, thick!].map((bend): number => bend[figure]);
      // The force's top is not searched again for a neighbor: good to a thousandth, as the peak itself is.
      expect(band[figure].lower / Math.min(...found), figure).toBeCloseTo(1, figure === "peakForce" ? 3 : 6);
      expect(band[figure].upper / Math.max(...found), figure).toBeCloseTo(1, figure === "peakForce" ? 3 : 6);
    }
  });

  it("has no width without deviations", () => {
    const none = { thickness: mm(0), strength: megapascals(0), exponent: 0, dieOpening: mm(0) };
    const { peakForce } = airBendBand(bendInput(), { finalAngle: degrees(90) }, none);
    expect(peakForce.lower).toBe(peakForce.value);
    expect(peakForce.upper).toBe(peakForce.value);
  });

  it("refuses a negative deviation", () => {
    const ask = () => airBendBand(bendInput(), { finalAngle: degrees(90) }, { ...deviations, exponent: -0.1 });
    expect(ask).toThrow(Refusal);
  });
});
