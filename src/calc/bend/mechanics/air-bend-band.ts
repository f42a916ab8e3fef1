import {
  type Degrees,
  type Megapascals,
  type Millimeters,
  megapascals,
  mm,
  type Ratio,
} from "../../../units/quantity.ts";
import { Refusal } from "../../../units/refusal.ts";
import { refusalOr } from "../../../units/remember.ts";
import type { AirBend } from "./air-bend.ts";
import { airBendAtStroke } from "./air-bend-at-stroke.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { airBendToAngle } from "./air-bend-to-angle.ts";

/** What the ram is set to: a wanted final angle, or a stroke whatever angle comes of it. */
type AirBendTarget = { readonly finalAngle: Degrees } | { readonly stroke: Millimeters };

/** How far stock and die stray from their nominal: half the width that holds 90 % of them, taken as independent. */
export interface Deviations {
  readonly thickness: Millimeters;
  readonly strength: Megapascals;
  readonly exponent: Ratio;
  readonly dieOpening: Millimeters;
}

/** 5 %, nominal and 95 % value of every figure of an air bend, in its own unit. */
export type AirBendBand = {
  readonly [Figure in Exclude<keyof AirBend, "regime" | "solution">]: {
    readonly lower: AirBend[Figure];
    readonly value: AirBend[Figure];
    readonly upper: AirBend[Figure];
  };
};

export function solveAirBend(input: AirBendInput, target: AirBendTarget, near?: AirBend): AirBend {
  return "stroke" in target
    ? airBendAtStroke(input, target.stroke)
    : airBendToAngle(input, target.finalAngle, near?.solution);
}

/** The input with each deviation taken `by` so many times. */
export function deviated(input: AirBendInput, d: Deviations, by: Record<keyof Deviations, number>): AirBendInput {
  const { hardening } = input;
  return {
    ...input,
    thickness: mm(input.thickness + by.thickness * d.thickness),
    dieOpening: mm(input.dieOpening + by.dieOpening * d.dieOpening),
    hardening: {
      ...hardening,
      strength: megapascals(hardening.strength + by.strength * d.strength),
      exponent: hardening.exponent + by.exponent * d.exponent,
    },
  };
}

/** Every figure goes nearly straight with these: one solve, its change taken both ways (checked with the band). */
const STRAIGHT: readonly (keyof Deviations)[] = ["strength", "dieOpening"];

/** A bend of a sheet that deviates, and the sign its changes count with. */
interface End {
  readonly bend: AirBend;
  readonly sign: 1 | -1;
}
const mirrored = (bend: AirBend): End[] => [
  { bend, sign: 1 },
  { bend, sign: -1 },
];

/**
 * Up and down; the one stands for both where the other goes like it, or where that sheet does not reach the angle: a bend
 * that the expected sheet makes keeps its band. Refuses where neither reaches it.
 */
function endsOf(solved: (by: 1 | -1) => AirBend, goesStraight: boolean): End[] {
  const up = refusalOr(() => solved(1));
  if (up instanceof Refusal) return mirrored(solved(-1));
  const down = goesStraight ? undefined : refusalOr(() => solved(-1));
  if (down === undefined || down instanceof Refusal) return mirrored(up);
  return [up, down].map((bend) => ({ bend, sign: 1 }));
}

/**
 * 90 % band of an air bend from stated deviations, by propagation: each deviation is taken alone, up and down or by its
 * derivative, and the changes of a figure are added by squares, those that raise it and those that lower it apart, so
 * that a band may be lopsided (derived; first order, checked against 10,000 random solves). At a wanted angle the band of the stroke says
 * how far the ram must be corrected; at a set stroke the band of the final angle says what comes off the machine.
 * Refuses (#VALUE!) a deviation that is not a number from 0 up, and as the solver does.
 */
export function airBendBand(
  input: AirBendInput,
  target: AirBendTarget,
  deviations: Deviations,
  nominal = solveAirBend(input, target),
): AirBendBand {
  const names = ["thickness", "strength", "exponent", "dieOpening"] as const;
  for (const name of names) {
    const deviation = deviations[name];
    if (!(deviation >= 0 && Number.isFinite(deviation))) {
      throw new Refusal("#VALUE!", `deviation of ${name} must be a number from 0 up; got ${deviation}`);
    }
  }
  const still = { thickness: 0, strength: 0, exponent: 0, dieOpening: 0 };
  const solved = (name: keyof Deviations, by: number) =>
    solveAirBend(deviated(input, deviations, { ...still, [name]: by }), target, nominal);
  const { regime: _, solution: __, ...figures } = nominal;
  type Figure = keyof AirBendBand;
  const changeOf = (bend: AirBend, figure: Figure) => (bend[figure] as number) - (nominal[figure] as number);
  const changes = names
    .filter((name) => deviations[name] > 0)
    .map((name): ((figure: Figure) => readonly number[]) => {
      const ends = endsOf((by) => solved(name, by), STRAIGHT.includes(name));
      return (figure) => ends.map(({ bend, sign }) => sign * changeOf(bend, figure));
    });

  const band = Object.entries(figures).map(([figure, value]) => {
    let below = 0;
    let above = 0;
    for (const change of changes) {
      const both = change(figure as Figure);
      below += Math.min(0, ...both) ** 2;
      above += Math.max(0, ...both) ** 2;
    }
    return [figure, { lower: value - Math.sqrt(below), value, upper: value + Math.sqrt(above) }];
  });
  return Object.fromEntries(band) as AirBendBand;
}
