/** Bills as a small shop sees them, generated from a seed, and random bills with random limits for the replay. */

import type { Blank, Limits, Stock } from "../../../calc/cutting/index.ts";
import { NO_LIMITS } from "../../../calc/cutting/index.ts";
import { itemAt } from "../../../units/certain.ts";
import { mm, money } from "../../../units/quantity.ts";
import { randomFrom } from "../../random/random.ts";

const INCH = 25.4;
const inches = (value: number) => mm(value * INCH);

const logUniform = (unit: () => number, from: number, to: number): number => from * (to / from) ** unit();
/** On 1/16 in. */
const sixteenth = (value: number): number => Math.round(value * 16) / 16;

/** Kilograms per cubic millimeter (common practice: 7.85 g/cm3), and thicknesses in inches: 16 ga to 1/4. */
const STEEL = 7.85e-6;
/** Money per kilogram of sheet and per minute at the shear: common practice, about 0.90 a pound and 60 an hour. */
const PRICE_PER_KG = 2;
export const PER_MINUTE = 1;
const THICKNESSES = [0.0598, 0.1046, 0.1875, 0.25];

export interface Bill {
  readonly blanks: readonly Blank[];
  readonly stock: readonly Stock[];
  readonly limits: Limits;
  /** Kilograms per square millimeter. */
  readonly weightPerArea: number;
}

/** 30 + 2 (seed mod 36) sizes, 2-24 by 3-60 in, quantity 1-40, all log-uniform; 30 % with the grain along the long side. */
export function shopBill(seed: number): Bill {
  const unit = randomFrom(seed);
  const blanks = Array.from({ length: 30 + 2 * (seed % 36) }, (_, k): Blank => {
    const w = sixteenth(logUniform(unit, 2, 24));
    const length = sixteenth(logUniform(unit, 3, 60));
    const quantity = Math.round(logUniform(unit, 1, 40));
    const longFirst = Math.max(w, length);
    const shortSecond = Math.min(w, length);
    const grain = unit() < 0.3 ? "along" : "free";
    return { id: `P${k + 1}`, w: inches(longFirst), h: inches(shortSecond), quantity, grain };
  });
  // By the seed alone, so that the blanks of a seed stay what they were.
  const thickness = itemAt(THICKNESSES, seed % THICKNESSES.length);
  const weightPerArea = STEEL * inches(thickness);
  const sizes = [
    { h: 48, w: 96 },
    { h: 48, w: 120 },
    { h: 60, w: 120 },
  ];
  const stock = sizes.map(
    ({ h, w }): Stock => ({
      id: `${h}x${w}`,
      w: inches(w),
      h: inches(h),
      quantity: Infinity,
      price: money(inches(w) * inches(h) * weightPerArea * PRICE_PER_KG),
      grain: "w",
      trim: inches(0.25),
      remnant: false,
    }),
  );
  const limits: Limits = {
    ...NO_LIMITS,
    longestCut: inches(120),
    reach: inches(48),
    leastDrop: inches(1),
    leastRemnant: inches(12),
    thickness: inches(thickness),
    frontReach: inches(60),
  };
  return { blanks, stock, limits, weightPerArea };
}

/** A small bill on random stock and a random shear; some blanks will be impossible. */
export function randomBill(seed: number): Bill {
  const unit = randomFrom(seed * 7919 + 17);
  const between = (from: number, to: number) => from + (to - from) * unit();
  const pick = <T>(list: readonly T[]): T => itemAt(list, Math.floor(unit() * list.length));
  const round = (value: number) => (seed % 2 === 0 ? inches(sixteenth(value / INCH)) : mm(Math.round(value * 10) / 10));
  const count = 1 + Math.floor(unit() * 15);
  const blanks = Array.from(
    { length: count },
    (_, k): Blank => ({
      id: `B${k + 1}`,
      w: round(between(20, 900) * (unit() < 0.1 ? 2 : 1)),
      h: round(between(15, 700)),
      quantity: 1 + Math.floor(unit() ** 2 * 20),
      grain: pick(["free", "free", "along", "across"] as const),
    }),
  );
  const stock = Array.from(
    { length: 1 + Math.floor(unit() * 4) },
    (_, k): Stock => ({
      id: `S${k + 1}`,
      w: round(between(800, 3200)),
      h: round(between(500, 1600)),
      quantity: unit() < 0.5 ? Infinity : Math.floor(unit() * 8),
      price: unit() < 0.5 ? null : (between(20, 300) as Stock["price"]),
      grain: pick(["w", "h"] as const),
      trim: unit() < 0.5 ? mm(0) : round(between(3, 12)),
      remnant: unit() < 0.2,
      edgesSheared: k === 3,
    }),
  );
  const limits: Limits = {
    longestCut: unit() < 0.3 ? mm(Infinity) : round(between(900, 3300)),
    reach: unit() < 0.2 ? mm(Infinity) : round(between(400, 1300)),
    nearestGauge: unit() < 0.5 ? mm(0) : round(between(5, 25)),
    leastDrop: unit() < 0.3 ? mm(0) : round(between(5, 40)),
    leastHold: unit() < 0.4 ? mm(0) : round(between(5, 60)),
    stages: 2 + Math.floor(unit() * 3),
    leastRemnant: unit() < 0.3 ? mm(0) : round(between(100, 400)),
    remnantWorth: seed % 3 === 0 ? 0.5 : 0,
    ...(seed % 5 === 0 ? {} : { cutToMark: seed % 5 > 2, frontReach: round(between(200, 2000)) }),
    thickness: mm(between(0.5, 6)),
    ...(seed % 7 === 0 ? { twistWidth: 8, twistLength: 20 } : {}),
  };
  return { blanks, stock, limits, weightPerArea: STEEL * limits.thickness! };
}
