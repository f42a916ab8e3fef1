/** Waterjet feed, lifting limit, general tolerances. */
import type { Published } from "./published.ts";

const ZENG_KIM = "Zeng & Kim, 7th American Water Jet Conference 1993, pp. 175-189 (formula and machinability memory)";
const NIOSH = "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation";
const LENGTHS = "ISO 2768-1 Table 1";
const ANGLES = "ISO 2768-1 Table 3";

/** 51 lb times one multiplier: everything else at its best. Rows: the multiplier tables of the manual. */
const multiplier = (
  what: string,
  given: [h: number, v: number, d: number, a: number, lifts: number, coupling: string, hours: number],
  expected: number,
): Published => ({
  id: `lifting: ${what}`,
  call: ["LIFT.LIMIT", ...given],
  expected: 51 * expected,
  tolerance: 51 * 0.0051, // the manual's tables print two places
  source: `${NIOSH}, multiplier tables`,
  basis: "memory",
});

const tolerance = (
  name: "LENGTH" | "ANGLE",
  size: number,
  grade: string,
  expected: number,
  basis: Published["basis"],
): Published => ({
  id: `ISO 2768-1, ${name.toLowerCase()} ${size} mm class ${grade}`,
  call: [`TOLERANCE.${name}`, size, grade, "mm"],
  expected,
  tolerance: 1e-9,
  source: name === "LENGTH" ? LENGTHS : ANGLES,
  basis,
});

export const jetLiftTolerance: readonly Published[] = [
  {
    id: "waterjet, 1/2 in mild steel, US units",
    call: ["JET.FEED", "A36", 0.5, 1, 50, 0.014, 0.75, 0.04],
    expected: 14.6,
    tolerance: 0.1,
    source: `${ZENG_KIM}, US constant 163`,
    basis: "memory",
  },
  {
    id: "waterjet, the same cut, SI",
    call: ["JET.FEED", "A36", 12.7, 1, 344.738, 0.3556, 340.19, 1.016, "mm"],
    expected: 371,
    tolerance: 2,
    source: `${ZENG_KIM}, SI constant 788`,
    basis: "memory",
  },
  {
    id: "lifting at its best",
    call: ["LIFT.LIMIT", 10, 30, 10, 0, 0.2, "good", 1],
    expected: 51,
    tolerance: 1e-6,
    source: `${NIOSH}, load constant`,
    basis: "read",
  },
  {
    id: "lifting at its best, in kilograms",
    call: ["LIFT.LIMIT", 250, 750, 250, 0, 0.2, "good", 1, "mm"],
    expected: 23,
    tolerance: 0.2,
    source: `${NIOSH}, metric load constant 23 kg at 25 cm, 75 cm, 25 cm`,
    basis: "memory",
  },
  {
    id: "loading punch-press stock, origin",
    call: ["LIFT.LIMIT", 23, 15, 48, 0, 0.2, "fair", 1],
    expected: 16.3,
    tolerance: 0.3, // the manual multiplies rounded multipliers
    source: `${NIOSH}, example 1`,
    basis: "memory",
  },
  multiplier("reach of 15 in", [15, 30, 10, 0, 0.2, "good", 1], 0.67),
  multiplier("reach of 25 in", [25, 30, 10, 0, 0.2, "good", 1], 0.4),
  multiplier("from the floor", [10, 0, 10, 0, 0.2, "good", 1], 0.78),
  multiplier("from 70 in", [10, 70, 10, 0, 0.2, "good", 1], 0.7),
  multiplier("travel of 25 in", [10, 30, 25, 0, 0.2, "good", 1], 0.89),
  multiplier("travel of 70 in", [10, 30, 70, 0, 0.2, "good", 1], 0.85),
  multiplier("twist of 45 degrees", [10, 30, 10, 45, 0.2, "good", 1], 0.86),
  multiplier("twist of 135 degrees", [10, 30, 10, 135, 0.2, "good", 1], 0.57),
  multiplier("fair grip below 30 in", [10, 29.999, 10, 0, 0.2, "fair", 1], 0.95),
  multiplier("fair grip from 30 in", [10, 30, 10, 0, 0.2, "fair", 1], 1),
  multiplier("poor grip, low", [10, 20, 10, 0, 0.2, "poor", 1], 0.925 * 0.9),
  multiplier("poor grip", [10, 30, 10, 0, 0.2, "poor", 1], 0.9),
  multiplier("once a minute for an hour", [10, 29.999, 10, 0, 1, "good", 1], 0.94),
  multiplier("once a minute for a day", [10, 29.999, 10, 0, 1, "good", 8], 0.75),
  multiplier("four a minute for two hours", [10, 29.999, 10, 0, 4, "good", 2], 0.72),
  multiplier("six a minute for a day", [10, 29.999, 10, 0, 6, "good", 8], 0.27),

  tolerance("LENGTH", 250, "m", 0.5, "read"),
  tolerance("LENGTH", 3, "m", 0.1, "read"),
  tolerance("LENGTH", 6, "m", 0.1, "read"),
  tolerance("LENGTH", 30, "m", 0.2, "read"),
  tolerance("LENGTH", 120, "m", 0.3, "read"),
  tolerance("LENGTH", 120.01, "m", 0.5, "read"),
  tolerance("LENGTH", 1000, "m", 0.8, "read"),
  tolerance("LENGTH", 4000, "m", 2, "read"),
  tolerance("LENGTH", 100, "f", 0.15, "memory"),
  tolerance("LENGTH", 100, "c", 0.8, "memory"),
  tolerance("LENGTH", 100, "v", 1.5, "memory"),
  tolerance("ANGLE", 40, "m", 0.5, "read"),
  tolerance("ANGLE", 10, "f", 1, "read"),
  tolerance("ANGLE", 10.01, "m", 0.5, "read"),
  tolerance("ANGLE", 100, "m", 20 / 60, "read"),
  tolerance("ANGLE", 400, "m", 10 / 60, "read"),
  tolerance("ANGLE", 40, "c", 1, "memory"),
];
