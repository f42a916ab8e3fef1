import { type Millimetres, megapascals } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import type { AirBendInput } from "../bend/mechanics/air-bend-input.ts";
import type { ShopCorrection } from "./shop-correction.ts";

/** The part of a shop's correction that bends are computed with. */
export type AppliedCorrection = Pick<
  ShopCorrection,
  "material" | "regime" | "offset" | "slope" | "strength" | "springback"
> & {
  /** Blank in a table that was typed by hand: it then holds for any die, any thickness. */
  readonly opening?: Millimetres | undefined;
  readonly thicknessFrom?: Millimetres | undefined;
  readonly thicknessTo?: Millimetres | undefined;
};

/**
 * Sheet as the shop's strips found it: strength as the measured force says, and the modulus so that springback, which
 * goes with strength over modulus, comes out as measured. Only for the die and
 * contact the strips were bent in.
 */
export function calibrated(
  input: AirBendInput,
  { strength = 1, springback }: AppliedCorrection,
  work?: Working,
): AirBendInput {
  step(work, "f_K", "strength, measured over predicted", strength, "", "test strips (measured)");
  const stiffness = springback === undefined ? 1 : strength / springback;
  step(
    work,
    "f_E",
    "modulus that gives the measured springback, share of the catalogue's",
    stiffness,
    "",
    "test strips (measured)",
  );
  return {
    ...input,
    hardening: { ...input.hardening, strength: megapascals(input.hardening.strength * strength) },
    modulus: megapascals(input.modulus * stiffness),
  };
}
