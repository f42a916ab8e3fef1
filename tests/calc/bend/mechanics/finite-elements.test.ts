import { describe, expect, it } from "vitest";
import { airBendAtStroke } from "../../../../src/calc/bend/mechanics/air-bend-at-stroke.ts";
import { airBendToAngle } from "../../../../src/calc/bend/mechanics/air-bend-to-angle.ts";
import { checkedAgainstFiniteElements } from "../../../../src/calc/bend/mechanics/checked-range.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import reference from "../../../reference/fe-cases.json" with { type: "json" };
import second from "../../../reference/fe-cases-second.json" with { type: "json" };
import { bendInput } from "./shop-input.ts";

// Reference: independent finite-element solutions made for this project (tests/reference/fe-cases.json).
type Case = (typeof reference.cases)[number];

const inputOf = (c: Case) =>
  bendInput({
    K: c.K_MPa,
    n: c.n,
    E: c.E_MPa,
    nu: c.nu,
    t: c.t_mm,
    V: c.V_mm,
    shoulder: c.die_shoulder_mm,
    dieAngle: c.die_angle_deg,
    nose: c.punch_nose_mm,
    mu: c.mu,
  });

function errorsOf(c: Case) {
  const atStroke = airBendAtStroke(inputOf(c), mm(c.stroke_mm));
  const toAngle = airBendToAngle(inputOf(c), degrees(c.final_bend_angle_deg));
  return {
    forcePercent: (atStroke.peakForce / c.peak_force_N_per_mm - 1) * 100,
    springback: atStroke.springback - c.springback_deg,
    angle: atStroke.finalAngle - c.final_bend_angle_deg,
    deduction: (toAngle.bendDeduction - c.bend_deduction_mm) / c.t_mm,
  };
}

const rms = (cases: readonly Case[], figure: keyof ReturnType<typeof errorsOf>) =>
  Math.sqrt(cases.reduce((sum, c) => sum + errorsOf(c)[figure] ** 2, 0) / cases.length);

describe("the mechanics against finite elements", () => {
  it.each(reference.cases)("case $id: force 4 %, springback 0.15 deg, angle 1.5 deg, deduction 0.12 t", (c) => {
    const errors = errorsOf(c);
    expect(Math.abs(errors.forcePercent)).toBeLessThan(4);
    expect(Math.abs(errors.springback)).toBeLessThan(0.15);
    expect(Math.abs(errors.angle)).toBeLessThan(1.5);
    expect(Math.abs(errors.deduction)).toBeLessThan(0.12);
  });

  const fitted = reference.cases.filter((c) => "ABCEGHI".includes(c.id));
  const apart = reference.cases.filter((c) => "DJKL".includes(c.id));

  it.each([
    ["the seven the constants were fitted on", fitted, 7],
    ["the four kept apart", apart, 4],
    ["all eleven", reference.cases, 11],
  ] as const)("rms over %s: angle 1 deg, deduction 0.06 t", (_, cases, count) => {
    expect(cases).toHaveLength(count);
    expect(rms(cases, "angle")).toBeLessThan(1);
    expect(rms(cases, "deduction")).toBeLessThan(0.06);
  });

  it("every case lies inside the range said to be checked, and the range is no wider than the cases", () => {
    const reports = [...reference.cases, ...second.cases].map((c) =>
      checkedAgainstFiniteElements(inputOf(c), airBendToAngle(inputOf(c), degrees(c.final_bend_angle_deg))),
    );
    for (const [i, quantity] of reports[0]!.entries()) {
      const values = reports.map((report) => report[i]!.value);
      // The tangent radius reported is the model's, which is up to 0.15 t from the finite elements'.
      const slack = quantity.quantity.startsWith("tangent radius") ? 0.15 : 1e-9;
      expect(Math.abs(Math.min(...values) - quantity.least), quantity.quantity).toBeLessThanOrEqual(slack);
      expect(Math.abs(Math.max(...values) - quantity.most), quantity.quantity).toBeLessThanOrEqual(slack);
    }
  });
});

// Reference: tests/reference/fe-cases-second.json, none of it fitted.
describe("the mechanics against a second finite-element program", () => {
  it.each(second.repeated)("the second program gives case $id as the first does", (c) => {
    const first = reference.cases.find(({ id }) => id === c.id)!;
    expect(Math.abs(c.peak_force_N_per_mm / first.peak_force_N_per_mm - 1)).toBeLessThan(0.013);
    expect(Math.abs(c.springback_deg - first.springback_deg)).toBeLessThan(0.12);
    expect(Math.abs(c.final_bend_angle_deg - first.final_bend_angle_deg)).toBeLessThan(0.2);
    expect(Math.abs(c.bend_deduction_mm - first.bend_deduction_mm) / c.t_mm).toBeLessThan(0.04);
  });

  it.each(second.cases)("case $id, $material: force 4 %, angle 1.5 deg, deduction 0.12 t, springback", (c) => {
    const errors = errorsOf(c);
    expect(Math.abs(errors.forcePercent)).toBeLessThan(4);
    expect(Math.abs(errors.angle)).toBeLessThan(1.5);
    expect(Math.abs(errors.deduction)).toBeLessThan(0.12);
    // 0.15 deg, but with n = 0.05 (6061-T6, 5 to 11 deg of springback) the model is only good to 5 % of it.
    expect(Math.abs(errors.springback)).toBeLessThan(c.n > 0.05 ? 0.15 : 0.05 * c.springback_deg);
  });
});
