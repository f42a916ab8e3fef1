import { COMPARED_BENDS, type ComparedBend } from "../../../data/compared-bends.ts";
import type { Ratio } from "../../../units/quantity.ts";
import type { AirBend } from "./air-bend.ts";
import type { AirBendInput } from "./air-bend-input.ts";

/** The compared bend that is most like this one. */
export interface NearestBend {
  /** "finite elements W", "measured m1 ..." */
  readonly id: string;
  /** 0: the same bend; up to 1 counts as compared. */
  readonly distance: Ratio;
  readonly inside: boolean;
  /** What tells the two apart most: "opening 12 t against 16 t". */
  readonly difference: string;
}

/*
 * How much of each quantity makes a distance of 1 (chosen): a step over which the model's error against the finite
 * elements changes by about its own size. Ratios count by their logarithm, since the next die is wider by a share.
 */
const SCALES = {
  opening: 0.4, // ln V/t: a die half as wide again
  nose: 0.8, // ln (nose/t + 0.25): a sharp nose is as good as none
  exponent: 0.6, // ln n
  finalAngle: 30, // degrees
  friction: 0.3, // chosen: case I against J moves nothing
  dieAngle: 90, // degrees; it moves only the center of the shoulder arc
  shoulder: 1.2, // ln (shoulder/t + 0.25)
  strain: 1.2, // ln K/E: three times as strong for its stiffness
  nipped: 0.5, // of 1, where nose and shoulder nip the sheet: there the distance is 2 at least
} as const;
const SHARP = 0.25; // chosen: below a quarter of the thickness a radius is an edge

type Quantity = keyof typeof SCALES;

const WORDS: Record<Quantity, readonly [name: string, unit: string]> = {
  opening: ["opening", " t"],
  nose: ["punch nose", " t"],
  exponent: ["n", ""],
  finalAngle: ["bend angle", " deg"],
  friction: ["friction", ""],
  dieAngle: ["die angle", " deg"],
  shoulder: ["die shoulder", " t"],
  strain: ["strength over modulus", ""],
  nipped: ["nipped between nose and shoulder", ""],
};

const measureOf: Record<Quantity, (value: number) => number> = {
  opening: Math.log,
  nose: (value) => Math.log(value + SHARP),
  exponent: Math.log,
  finalAngle: (value) => value,
  friction: (value) => value,
  dieAngle: (value) => value,
  shoulder: (value) => Math.log(value + SHARP),
  strain: Math.log,
  nipped: (value) => value,
};
/** Half angle, radians, over which a bend comes to be nipped (chosen); no compared bend is. */
const NIP_FADE = 0.1;
const QUANTITIES = Object.keys(SCALES) as Quantity[];

/** What was not given cannot tell a bend apart from those compared: its quantities are left out of the distance. */
type NotGiven = Partial<Record<"shoulder" | "dieAngle" | "friction", boolean>>;

/**
 * Inside or outside by one joint distance to the nearest bend that the model was compared with: the root of the summed
 * squares over all quantities, each by its scale. Continuous in every quantity (derived; scales chosen).
 */
export function nearestBend(
  input: AirBendInput,
  { finalAngle, solution }: Pick<AirBend, "finalAngle"> & { readonly solution: Pick<AirBend["solution"], "room"> },
  notGiven: NotGiven = {},
  among: readonly ComparedBend[] = COMPARED_BENDS,
): NearestBend {
  const t = input.thickness;
  const here: Record<Quantity, number | undefined> = {
    opening: input.dieOpening / t,
    nose: input.punchNose / t,
    exponent: input.hardening.exponent,
    finalAngle,
    friction: notGiven.friction ? undefined : input.friction,
    dieAngle: notGiven.dieAngle ? undefined : input.dieAngle,
    shoulder: notGiven.shoulder ? undefined : input.dieShoulder / t,
    strain: input.hardening.strength / input.modulus,
    nipped: Math.max(0, 1 - solution.room / NIP_FADE),
  };
  const apartFrom = (bend: ComparedBend, quantity: Quantity) =>
    apart(quantity, here[quantity], quantity === "nipped" ? 0 : bend[quantity]);
  const { bend, square } = among
    .map((each) => ({ bend: each, square: QUANTITIES.reduce((sum, of) => sum + apartFrom(each, of) ** 2, 0) }))
    .reduce((a, b) => (b.square < a.square ? b : a));
  const distance = Math.sqrt(square);
  const telling = QUANTITIES.reduce((most, quantity) =>
    apartFrom(bend, quantity) > apartFrom(bend, most) ? quantity : most,
  );
  const [name, unit] = WORDS[telling];
  const show = (value: number | undefined) => `${Number((value ?? 0).toPrecision(3))}${unit}`;
  return {
    id: bend.id,
    distance,
    inside: distance <= 1,
    difference:
      distance < 1e-3
        ? "the same bend"
        : `${name} ${show(here[telling])} against ${show(telling === "nipped" ? 0 : bend[telling])}`,
  };
}

function apart(quantity: Quantity, here: number | undefined, there: number): number {
  if (here === undefined) return 0;
  return Math.abs(measureOf[quantity](here) - measureOf[quantity](there)) / SCALES[quantity];
}
