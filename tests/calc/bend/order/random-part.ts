import type { BentPart } from "../../../../src/calc/bend/order/part.ts";
import { randomFrom } from "../../../../src/tools/random/random.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";

/** Deduction for a neutral fiber at 0.42 t (derived from BD = 2 SB - BA). */
export const deductionFor = (angle: number, radius: number, thickness: number): number => {
  const turned = (Math.abs(angle) * Math.PI) / 180;
  return 2 * (radius + thickness) * Math.tan(turned / 2) - turned * (radius + 0.42 * thickness);
};

/** A bracket-like part: mostly square bends either way, flanges from just formable to long. */
export function randomPart(seed: number, bends = 1 + (seed % 6)): BentPart {
  const draw = randomFrom(seed);
  const between = (low: number, high: number) => low + (high - low) * draw();
  const thickness = between(1, 4);
  const angles = Array.from({ length: bends }, () => {
    const size = draw() < 0.7 ? 90 : between(20, 130);
    return draw() < 0.5 ? -size : size;
  });
  const radius = thickness * between(0.8, 1.6);
  const setbacks = angles.map((a) => (radius + thickness) * Math.tan((Math.abs(a) * Math.PI) / 360));
  return {
    thickness: mm(thickness),
    flanges: Array.from({ length: bends + 1 }, (_, leg) =>
      mm((setbacks[leg - 1] ?? 0) + (setbacks[leg] ?? 0) + between(8, 70)),
    ),
    bends: angles.map((angle) => ({
      angle: degrees(angle),
      deduction: mm(deductionFor(angle, radius, thickness)),
      insideRadius: mm(radius),
    })),
  };
}
