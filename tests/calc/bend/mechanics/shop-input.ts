import type { AirBendInput } from "../../../../src/calc/bend/mechanics/air-bend-input.ts";
import { degrees, megapascals, mm } from "../../../../src/units/quantity.ts";

/** Plain numbers to an input; an A36-like 3 mm sheet in a 24 mm die unless the test says otherwise. */
export function bendInput(values: Partial<Record<Name, number>> = {}): AirBendInput {
  const v = { ...A36_LIKE, ...values };
  return {
    hardening: {
      strength: megapascals(v.K),
      exponent: v.n,
      ...(values.e0 === undefined ? {} : { prestrain: values.e0 }),
    },
    modulus: megapascals(v.E),
    poisson: v.nu,
    thickness: mm(v.t),
    dieOpening: mm(v.V),
    dieShoulder: mm(v.shoulder),
    dieAngle: degrees(v.dieAngle),
    punchNose: mm(v.nose),
    friction: v.mu,
  };
}

type Name = "K" | "n" | "e0" | "E" | "nu" | "t" | "V" | "shoulder" | "dieAngle" | "nose" | "mu";

const A36_LIKE = { K: 702.3, n: 0.1556, E: 207e3, nu: 0.3, t: 3, V: 24, shoulder: 2, dieAngle: 85, nose: 1.5, mu: 0 };
