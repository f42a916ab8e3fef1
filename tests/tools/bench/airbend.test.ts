import { describe, expect, it } from "vitest";
import { answerCase, ERRORS } from "../../../src/tools/bench/airbend-case.ts";
import { timeSolves } from "../../../src/tools/bench/airbend-shop-range.ts";
import reference from "../../reference/fe-cases.json" with { type: "json" };

const caseI = reference.cases.find((c) => c.id === "I")!;

describe("one case of bench:airbend", () => {
  it("gives regime, nearest compared case, model, errors as model minus reference and the time of a solve", () => {
    const answer = answerCase(caseI);
    if (!answer.ok) throw new Error(answer.message);
    expect(Object.keys(answer)).toEqual([
      "id",
      "ok",
      "regime",
      "inside",
      "distance",
      "nearest",
      "distance_to_others",
      "nearest_other",
      "model",
      "error",
      "solve_ms",
    ]);
    expect(answer).toMatchObject({ inside: true, nearest: "finite elements I" });
    expect(answer.regime).toBe("wrapped");
    expect(Object.keys(answer.error)).toEqual([...ERRORS]);
    const { model, error } = answer;
    expect(error.springback_deg).toBeCloseTo(model["springback_deg"]! - caseI.springback_deg, 12);
    expect(error.r_eq_mm).toBeCloseTo(model["r_eq_mm"]! - caseI.r_eq_mm, 12);
    expect(error.force_pct).toBeCloseTo((model["peak_force_N_per_mm"]! / caseI.peak_force_N_per_mm - 1) * 100, 10);
    expect(error.bend_deduction_t).toBeCloseTo(
      (model["bend_deduction_mm"]! - caseI.bend_deduction_mm) / caseI.t_mm,
      12,
    );
  });

  it("leaves the error of a missing reference null and the model's answer as it was", () => {
    const { peak_force_N_per_mm: _, ...withoutForce } = caseI;
    const [all, some] = [answerCase(caseI), answerCase(withoutForce)];
    if (!all.ok || !some.ok) throw new Error("was refused");
    expect(some.error).toEqual({ ...all.error, force_pct: null });
    expect(some.model).toEqual(all.model);
  });

  it.each([
    ["a missing input", { ...caseI, K_MPa: undefined }, /^K_MPa must be a number; got/],
    ["text for a number", { ...caseI, V_mm: "24" }, /^V_mm must be a number; got "24"/],
    ["an impossible thickness", { ...caseI, t_mm: 0 }, /^thickness must be from/],
    [
      "neither stroke nor angle",
      { ...caseI, stroke_mm: null, final_bend_angle_deg: null },
      /^stroke_mm must be a number/,
    ],
    ["no object at all", 7, /^K_MPa must be a number/],
  ])("refuses %s with a message", (_, value, message) => {
    const answer = answerCase(value);
    expect(answer.ok).toBe(false);
    if (!answer.ok) expect(answer.message).toMatch(message);
  });

  it("refuses none of the shop's ordinary bends", () => {
    const { refused, times } = timeSolves(200);
    expect(refused).toBe(0);
    expect(times).toHaveLength(200);
  });
});
