import type { AirBendInput } from "../../calc/bend/mechanics/air-bend-input.ts";
import { airBendToAngle } from "../../calc/bend/mechanics/air-bend-to-angle.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { degrees, megapascals, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { pick, randomFrom } from "../random/random.ts";
import { medianOf } from "./spread.ts";

/** Sheet of 0.9-6.5 mm in a die of 6-12 thicknesses: what a small shop bends in a week (common practice). */
function shopBend(random: () => number): { input: AirBendInput; finalAngle: number } {
  const between = (least: number, most: number) => least + (most - least) * random();
  const [strength, exponent, modulus] = pick(random, [
    [530, 0.26, 207e3],
    [702, 0.156, 207e3],
    [1275, 0.45, 193e3],
    [410, 0.05, 69e3],
    [308, 0.087, 70e3],
  ] as const);
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

/**
 * Milliseconds of `count` solves to an angle over the shop's range, after a warm-up; sorted. Each bend is timed in three
 * passes and its median counts, so that what else the machine does in one of them is not taken for the solve.
 */
export function timeSolves(count: number): { refused: number; times: number[] } {
  const random = randomFrom(1);
  const bends = Array.from({ length: count }, () => shopBend(random));
  for (const { input, finalAngle } of bends.slice(0, 1000)) timed(() => airBendToAngle(input, degrees(finalAngle)));
  const passes = [1, 2, 3].map(() =>
    bends.map(({ input, finalAngle }) => timed(() => airBendToAngle(input, degrees(finalAngle)))),
  );
  const times = bends.map((_, i) => medianOf(passes.map((pass) => itemAt(pass, i).time)));
  return { refused: firstOf(passes).filter((solve) => solve.refused).length, times: times.sort((a, b) => a - b) };
}

function timed(solve: () => unknown): { readonly time: number; readonly refused: boolean } {
  const start = performance.now();
  let refused = false;
  try {
    solve();
  } catch (reason) {
    if (!(reason instanceof Refusal)) throw reason;
    refused = true;
  }
  return { time: performance.now() - start, refused };
}
