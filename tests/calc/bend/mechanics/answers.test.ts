import { describe, expect, it } from "vitest";
import { airBendAtStroke } from "../../../../src/calc/bend/mechanics/air-bend-at-stroke.ts";
import { airBendToAngle } from "../../../../src/calc/bend/mechanics/air-bend-to-angle.ts";
import { hardeningFrom } from "../../../../src/calc/bend/mechanics/hardening.ts";
import { degrees, megapascals, mm } from "../../../../src/units/quantity.ts";
import { Refusal } from "../../../../src/units/refusal.ts";
import { bendInput } from "./shop-input.ts";

const refusalOf = (ask: () => unknown): Refusal => {
  try {
    ask();
  } catch (reason) {
    if (reason instanceof Refusal) return reason;
    throw reason;
  }
  throw new Error("was not refused");
};

describe("single answers", () => {
  // Finite-element case I (tests/reference/fe-cases.json): 225.4 N/mm, 2.51 deg, 3.20 mm, 5.54 mm, 9.92 mm to 91.01 deg.
  it.each([
    ["peakForce", 225.4, 9],
    ["springback", 2.51, 0.15],
    ["tangentRadius", 3.2, 0.15],
    ["bendDeduction", 5.54, 0.15],
    ["stroke", 9.9225, 0.3],
  ] as const)("%s of case I", (figure, expected, tolerance) => {
    expect(Math.abs(airBendToAngle(bendInput(), degrees(91.01))[figure] - expected)).toBeLessThan(tolerance);
  });

  it("a low-hardening sheet under a small nose ends at the nose: 6061-T6 1/8 in over 2 in, nose 1/16 in: 0.065 in", () => {
    // 0.065 in: recomputed by hand from M = f^(n+1) K t^2 .../(E'I) on k = 1/(nose + t/2), nose 1.5875 mm.
    const bend = airBendToAngle(
      bendInput({ K: 410, n: 0.05, E: 69e3, nu: 0.33, t: 3.175, V: 50.8, nose: 1.5875 }),
      degrees(90),
    );
    expect(bend.regime).toBe("wrapped");
    expect(Math.abs(bend.centerRadius / 25.4 - 0.065)).toBeLessThan(0.001);
  });

  it("the neutral axis on the tangent radius gives the deduction: BD = 2 (R + t) tan(A/2) - A (R + K t)", () => {
    for (const [angle, V] of [
      [30, 24],
      [90, 24],
      [120, 40],
    ] as const) {
      const bend = airBendToAngle(bendInput({ V }), degrees(angle));
      const half = (bend.finalAngle * Math.PI) / 360;
      const { tangentRadius: R, neutralFraction: K } = bend;
      expect(2 * (R + 3) * Math.tan(half) - 2 * half * (R + K * 3)).toBeCloseTo(bend.bendDeduction, 9);
    }
  });

  it("from a neighbor's solution the same bend is found", () => {
    const near = airBendToAngle(bendInput({ V: 25, K: 760 }), degrees(90)).solution;
    const [cold, warm] = [undefined, near].map((start) => airBendToAngle(bendInput(), degrees(90), start));
    for (const figure of ["stroke", "springback", "tangentRadius", "bendDeduction"] as const)
      expect(warm![figure]).toBeCloseTo(cold![figure], 5);
    expect(warm!.peakForce / cold!.peakForce).toBeCloseTo(1, 3);
  });
});

describe("refusals", () => {
  it.each([
    ["thickness", { t: 0 }],
    ["thickness", { t: Number.NaN }],
    ["thickness", { t: -3 }],
    ["hardening strength", { K: 0 }],
    ["hardening exponent", { n: 0 }],
    ["hardening exponent", { n: 1 }],
    ["prestrain", { e0: 0 }],
    ["modulus", { E: 207 }],
    ["poisson", { nu: 0.5 }],
    ["die_opening over thickness", { V: 6 }],
    ["die_shoulder", { shoulder: -1 }],
    ["die_angle", { dieAngle: 0 }],
    ["punch_nose", { nose: Number.POSITIVE_INFINITY }],
    ["friction", { mu: 0.6 }],
  ])("%s outside what the solver takes: #VALUE!", (name, values) => {
    const refusal = refusalOf(() => airBendToAngle(bendInput(values), degrees(90)));
    expect(refusal.code).toBe("#VALUE!");
    expect(refusal.message.startsWith(`${name} must be from `)).toBe(true);
  });

  it.each([0, -90, 180, Number.NaN])("a final angle of %s: #N/A", (angle) => {
    const refusal = refusalOf(() => airBendToAngle(bendInput(), degrees(angle)));
    expect(refusal).toMatchObject({ code: "#N/A" });
    expect(refusal.message).toBe(`bend_angle must be from 0.5 to 175 deg for the mechanics; got ${angle} deg`);
  });

  it("an angle this sheet cannot reach in this die names the largest it can: #N/A", () => {
    const input = bendInput({ V: 12, nose: 6 });
    const refusal = refusalOf(() => airBendToAngle(input, degrees(140)));
    expect(refusal.code).toBe("#N/A");
    const limit = Number(/at most ([\d.]+) deg/.exec(refusal.message)?.[1]);
    expect(airBendToAngle(input, degrees(limit)).finalAngle).toBeCloseTo(limit, 6);
    expect(refusalOf(() => airBendToAngle(input, degrees(limit + 0.1))).code).toBe("#N/A");
  });

  it("a stroke this sheet cannot follow names the largest it can: #N/A", () => {
    const input = bendInput({ V: 12, nose: 6 });
    const refusal = refusalOf(() => airBendAtStroke(input, mm(500)));
    const limit = Number(/at most ([\d.]+) mm/.exec(refusal.message)?.[1]);
    expect(airBendAtStroke(input, mm(limit)).stroke).toBeCloseTo(limit, 6);
    expect(refusalOf(() => airBendAtStroke(input, mm(limit + 0.001))).code).toBe("#N/A");
  });

  it.each([
    [0, "#VALUE!"],
    [Number.NaN, "#VALUE!"],
    [0.05, "#N/A"], // elastic: the sheet springs back flat
    [500, "#N/A"],
  ])("a stroke of %s mm: %s", (stroke, code) => {
    const refusal = refusalOf(() => airBendAtStroke(bendInput(), mm(stroke)));
    expect(refusal.code).toBe(code);
    expect(refusal.message.startsWith("stroke must be ")).toBe(true);
  });
});

describe("hardening from a tensile test", () => {
  it.each([0.08, 0.1556, 0.26])("finds the power law a tensile test was taken from, n = %s", (n) => {
    // Considere: the tensile strength of K e^n is K (n/e)^n; its 0.2 % proof stress lies on the curve at 0.002 + Y/E.
    const K = 600;
    const E = 207e3;
    let proof = 200;
    for (let i = 0; i < 200; i++) proof = K * (0.002 + proof / E) ** n;
    const law = hardeningFrom({
      yield: megapascals(proof),
      tensile: megapascals(K * (n / Math.E) ** n),
      modulus: megapascals(E),
    });
    expect(law.exponent).toBeCloseTo(n, 6);
    expect(law.strength).toBeCloseTo(K, 3);
  });

  it("refuses a tensile strength not above yield, and what is not a number", () => {
    const ask = (yieldStrength: number, tensile: number) =>
      refusalOf(() =>
        hardeningFrom({
          yield: megapascals(yieldStrength),
          tensile: megapascals(tensile),
          modulus: megapascals(207e3),
        }),
      );
    expect(ask(400, 400).message).toBe("tensile must be above yield (400 MPa); got 400");
    for (const bad of [Number.NaN, 0, -250, 1e7, Number.POSITIVE_INFINITY]) {
      expect(ask(bad, 400).message).toBe(`yield must be above 0 MPa; got ${bad}`);
      expect(ask(250, bad).message).toBe(`tensile must be above 0 MPa; got ${bad}`);
    }
    expect(ask(1, 400).code).toBe("#N/A");
  });
});
