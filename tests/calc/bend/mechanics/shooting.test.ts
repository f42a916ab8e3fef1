import { describe, expect, it } from "vitest";
import { bendSetup } from "../../../../src/calc/bend/mechanics/bend-setup.ts";
import { loadedPose } from "../../../../src/calc/bend/mechanics/loaded-pose.ts";
import reference from "../../../reference/fe-cases.json" with { type: "json" };
import { shoot } from "../../../reference/shooting.ts";
import { bendInput } from "./shop-input.ts";

// Reference: a second, independent solution of the same beam (tests/reference/shooting.ts).
const cases = reference.cases.filter((c) => "ABCDHJ".includes(c.id));

describe("the closed form against shooting", () => {
  it.each(cases)("case $id: force, depth and springback agree", (c) => {
    const values = {
      K: c.K_MPa,
      n: c.n,
      E: c.E_MPa,
      nu: c.nu,
      t: c.t_mm,
      V: c.V_mm,
      nose: c.punch_nose_mm,
      shoulder: c.die_shoulder_mm,
      dieAngle: c.die_angle_deg,
      mu: c.mu,
    };
    const halfAngle = (c.final_bend_angle_deg + c.springback_deg) * (Math.PI / 360);
    const shot = shoot(values, halfAngle);
    const pose = loadedPose(bendSetup(bendInput(values)), halfAngle);
    // Within 0.2 %: the shooting's own steps; friction's line of action is shifted in src, applied as a moment here.
    expect(Math.abs(pose.force / shot.force - 1)).toBeLessThan(2e-3);
    expect(Math.abs(pose.depth / shot.depth - 1)).toBeLessThan(1e-3);
    expect(Math.abs(pose.springback / shot.springback - 1)).toBeLessThan(4e-3);
    expect(Math.abs(pose.wrapAngle - shot.wrap)).toBeLessThan(5e-3);
  });
});
