import { airBendBand, deviated, solveAirBend } from "../../calc/bend/mechanics/air-bend-band.ts";
import type { AirBendInput } from "../../calc/bend/mechanics/air-bend-input.ts";
import { itemAt } from "../../units/certain.ts";
import { randomFrom } from "../random/random.ts";

/** 90 % of a normal distribution lie within this many standard deviations. */
const NINETY_PERCENT = 1.6448536;

const normal = (random: () => number) => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/**
 * How far each end of the 90 % band lies from the 5th and 95th percentile of `solves` random solves, as a share of the
 * random band's width. A figure that does not
 * move (the angle at a wanted angle) is left out.
 */
export function bandAgainstRandomSolves(
  input: AirBendInput,
  target: Parameters<typeof airBendBand>[1],
  deviations: Parameters<typeof airBendBand>[2],
  solves: number,
  seed: number,
): Record<string, { readonly lower: number; readonly upper: number }> {
  const random = randomFrom(seed);
  const drawn: Record<string, number[]> = {};
  const draw = () => normal(random) / NINETY_PERCENT;
  for (let i = 0; i < solves; i++) {
    const by = { thickness: draw(), strength: draw(), exponent: draw(), dieOpening: draw() };
    const { regime: _, solution: __, ...figures } = solveAirBend(deviated(input, deviations, by), target);
    for (const [figure, value] of Object.entries(figures)) {
      drawn[figure] ??= [];
      drawn[figure].push(value);
    }
  }
  const band = airBendBand(input, target, deviations);
  const share = Object.entries(drawn).flatMap(([figure, values]) => {
    values.sort((a, b) => a - b);
    const low = itemAt(values, Math.floor(0.05 * values.length));
    const high = itemAt(values, Math.floor(0.95 * values.length));
    const { lower, upper } = band[figure as keyof typeof band];
    const width = high - low;
    if (width < 1e-6) return [];
    return [[figure, { lower: (lower - low) / width, upper: (upper - high) / width }] as const];
  });
  return Object.fromEntries(share);
}
