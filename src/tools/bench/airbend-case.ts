import { airBendAtStroke } from "../../calc/bend/mechanics/air-bend-at-stroke.ts";
import type { AirBendInput } from "../../calc/bend/mechanics/air-bend-input.ts";
import { airBendToAngle } from "../../calc/bend/mechanics/air-bend-to-angle.ts";
import { nearestBend } from "../../calc/bend/mechanics/nearest-bend.ts";
import { COMPARED_BENDS } from "../../data/compared-bends.ts";
import { degrees, megapascals, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";

export const ERRORS = ["force_pct", "springback_deg", "angle_deg", "r_eq_mm", "bend_deduction_t"] as const;
type CaseErrors = Record<(typeof ERRORS)[number], number | null>;

export type CaseAnswer =
  | {
      readonly id: unknown;
      readonly ok: true;
      readonly regime: "point" | "wrapped";
      /** Whether the joint distance to the nearest compared bend is at most 1. */
      readonly inside: boolean;
      readonly distance: number;
      readonly nearest: string;
      /** The same to the nearest other compared bend: a case is at no distance from itself, which proves nothing. */
      readonly distance_to_others: number;
      readonly nearest_other: string;
      readonly model: Record<string, number>;
      readonly error: CaseErrors;
      readonly solve_ms: number;
    }
  | { readonly id: unknown; readonly ok: false; readonly message: string };

type Row = Record<string, unknown>;

const given = (row: Row, key: string): boolean => row[key] !== undefined && row[key] !== null;

function required(row: Row, key: string): number {
  const value = row[key];
  if (typeof value !== "number") throw new Refusal("#VALUE!", `${key} must be a number; got ${JSON.stringify(value)}`);
  return value;
}

function inputOf(row: Row): AirBendInput {
  return {
    hardening: {
      strength: megapascals(required(row, "K_MPa")),
      exponent: required(row, "n"),
      ...(given(row, "e0") ? { prestrain: required(row, "e0") } : {}),
    },
    modulus: megapascals(required(row, "E_MPa")),
    poisson: required(row, "nu"),
    ...(given(row, "r") ? { anisotropy: required(row, "r") } : {}),
    thickness: mm(required(row, "t_mm")),
    dieOpening: mm(required(row, "V_mm")),
    dieShoulder: mm(required(row, "die_shoulder_mm")),
    dieAngle: degrees(required(row, "die_angle_deg")),
    punchNose: mm(required(row, "punch_nose_mm")),
    friction: required(row, "mu"),
  };
}

/**
 * One case solved and compared. Springback, angle and peak force are the model's at the case's stroke; radius and
 * deduction at the angle the case ended with. A case without one of the two is solved by the other alone; a missing
 * reference leaves its error null.
 */
export function answerCase(value: unknown): CaseAnswer {
  const row: Row = typeof value === "object" && value !== null ? (value as Row) : {};
  const id = row["id"] ?? null;
  try {
    const input = inputOf(row);
    const hasStroke = given(row, "stroke_mm");
    const hasAngle = given(row, "final_bend_angle_deg");
    const start = performance.now();
    const toAngle = hasAngle ? airBendToAngle(input, degrees(required(row, "final_bend_angle_deg"))) : undefined;
    const atStroke = hasStroke ? airBendAtStroke(input, mm(required(row, "stroke_mm"))) : toAngle;
    if (!atStroke) throw new Refusal("#VALUE!", "stroke_mm must be a number; got nothing");
    const solve_ms = (performance.now() - start) / (hasStroke && hasAngle ? 2 : 1);
    const shaped = toAngle ?? atStroke;
    const model = {
      peak_force_N_per_mm: atStroke.peakForce as number,
      springback_deg: atStroke.springback as number,
      final_bend_angle_deg: atStroke.finalAngle as number,
      r_eq_mm: shaped.tangentRadius as number,
      bend_deduction_mm: shaped.bendDeduction as number,
    };
    const against = (key: keyof typeof model, of = (ours: number, theirs: number) => ours - theirs) =>
      typeof row[key] === "number" ? of(model[key], row[key]) : null;
    const error = {
      force_pct: against("peak_force_N_per_mm", (ours, theirs) => (ours / theirs - 1) * 100),
      springback_deg: against("springback_deg"),
      angle_deg: hasStroke ? against("final_bend_angle_deg") : null,
      r_eq_mm: against("r_eq_mm"),
      bend_deduction_t: against("bend_deduction_mm", (ours, theirs) => (ours - theirs) / input.thickness),
    };
    const { inside, distance, id: nearest } = nearestBend(input, shaped);
    const others = COMPARED_BENDS.filter((bend) => bend.id !== `finite elements ${id}`);
    const other = nearestBend(input, shaped, {}, others);
    const apart = { distance_to_others: other.distance, nearest_other: other.id };
    return { id, ok: true, regime: atStroke.regime, inside, distance, nearest, ...apart, model, error, solve_ms };
  } catch (refused) {
    if (!(refused instanceof Refusal)) throw refused;
    return { id, ok: false, message: refused.message };
  }
}
