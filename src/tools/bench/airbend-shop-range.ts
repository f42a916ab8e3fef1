import type { AirBendInput } from "../../calc/bend/mechanics/air-bend-input.ts";
import { airBendToAngle } from "../../calc/bend/mechanics/air-bend-to-angle.ts";
import { degrees, megapascals, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { randomFrom } from "./random.ts";

/** Sheet of 0.9-6.5 mm in a die of 6-12 thicknesses: what a small shop bends in a week (common practice). */
function shopBend(random: () => number): { input: AirBendInput; finalAngle: number } {
  const between = (least: number, most: number) => least + (most - least) * random();
  const [strength, exponent, modulus] = (
    [
      [530, 0.26, 207e3],
      [702, 0.156, 207e3],
      [1275, 0.45, 193e3],
      [410, 0.05, 69e3],
      [308, 0.087, 70e3],
    ] as const
  )[Math.floor(random() * 5)]!;
  const thickness = between(0.9, 6.5);
  const input = {
    hardening: { strength: megapascals(strength), exponent },
    modulus: megapascals(modulus),
    poisson: 0.3,
    thickness: mm(thickness),
    dieOpening: mm(thickness * between(6, 12)),
    dieShoulder: mm(thickness * between(0.4, 1)),
    dieAngle: degrees(85),
    punchNose: mm(between(0.5, 3.2)),
    friction: between(0, 0.15),
  };
  return { input, finalAngle: between(20, 100) };
}

/** Milliseconds of `count` solves to an angle over the shop's range, each timed alone, after a warm-up; sorted. */
export function timeSolves(count: number): { refused: number; times: number[] } {
  const random = randomFrom(1);
  const times: number[] = [];
  let refused = 0;
  const warmUp = 1000;
  for (let i = 0; i < warmUp + count; i++) {
    const { input, finalAngle } = shopBend(random);
    const start = performance.now();
    try {
      airBendToAngle(input, degrees(finalAngle));
    } catch (reason) {
      if (!(reason instanceof Refusal)) throw reason;
      if (i >= warmUp) refused++;
    }
    if (i >= warmUp) times.push(performance.now() - start);
  }
  return { refused, times: times.sort((a, b) => a - b) };
}
