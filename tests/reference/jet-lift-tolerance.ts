/** Waterjet feed, lifting limit, general tolerances. */
import type { Published } from "./published.ts";

const ZENG_KIM = "Zeng & Kim, 7th American Water Jet Conference 1993, pp. 175-189 (formula and machinability memory)";
const NIOSH = "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation";
const LENGTHS = "ISO 2768-1 Table 1";
const ANGLES = "ISO 2768-1 Table 3";

/**
 * 51 lb times one multiplier: everything else at its best. Rows: the multiplier tables of the manual; the worksheet's
 * Tables 1 to 5 were read in a reprint, the couplings are memory, and another's program carries them as they stand here.
 */
const multiplier = (
  what: string,
  given: [h: number, v: number, d: number, a: number, lifts: number, coupling: string, hours: number],
  expected: number,
  basis: Published["basis"] = "read",
): Published => ({
  id: `lifting: ${what}`,
  call: ["LIFT.LIMIT", ...given],
  expected: 51 * expected,
  tolerance: 51 * 0.0051, // the manual's tables print two places
  source:
    basis === "read" ? `${NIOSH}, job analysis worksheet with Tables 1-5, reprint` : `${NIOSH}, multiplier tables`,
  basis,
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
  {
    id: "loading punch-press stock, where it is put down with care",
    call: ["LIFT.PLACE", 23, 15, 0, 23, 64, 0, 0.2, "fair", 1],
    expected: 14.5,
    tolerance: 0.4, // the manual multiplies rounded multipliers: 51 x 0.44 x 0.75 x 0.86
    source: `${NIOSH}, example 1, destination with significant control`,
    basis: "memory",
  },
  multiplier("reach of 15 in", [15, 30, 10, 0, 0.2, "good", 1], 0.67),
  multiplier("reach of 25 in", [25, 30, 10, 0, 0.2, "good", 1], 0.4),
  multiplier("from the floor", [10, 0, 10, 0, 0.2, "good", 1], 0.78),
  multiplier("from 70 in", [10, 70, 10, 0, 0.2, "good", 1], 0.7),
  multiplier("reach of 20 in", [20, 30, 10, 0, 0.2, "good", 1], 0.5),
  multiplier("from 10 in", [10, 10, 10, 0, 0.2, "good", 1], 0.85),
  multiplier("from 20 in", [10, 20, 10, 0, 0.2, "good", 1], 0.93),
  multiplier("from 50 in", [10, 50, 10, 0, 0.2, "good", 1], 0.85),
  multiplier("travel of 15 in", [10, 30, 15, 0, 0.2, "good", 1], 0.94),
  multiplier("travel of 20 in", [10, 30, 20, 0, 0.2, "good", 1], 0.91),
  multiplier("travel of 25 in", [10, 30, 25, 0, 0.2, "good", 1], 0.89, "memory"),
  multiplier("travel of 30 in", [10, 30, 30, 0, 0.2, "good", 1], 0.88),
  multiplier("travel of 70 in", [10, 30, 70, 0, 0.2, "good", 1], 0.85),
  ...[0.95, 0.9, 0.86, 0.81, 0.76, 0.71, 0.66, 0.62, 0.57].map((expected, i) =>
    multiplier(`twist of ${15 * (i + 1)} degrees`, [10, 30, 10, 15 * (i + 1), 0.2, "good", 1], expected),
  ),
  multiplier("fair grip below 30 in", [10, 29.999, 10, 0, 0.2, "fair", 1], 0.95, "memory"),
  multiplier("fair grip from 30 in", [10, 30, 10, 0, 0.2, "fair", 1], 1, "memory"),
  multiplier("poor grip, low", [10, 20, 10, 0, 0.2, "poor", 1], 0.925 * 0.9, "memory"),
  multiplier("poor grip", [10, 30, 10, 0, 0.2, "poor", 1], 0.9, "memory"),
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
  tolerance("LENGTH", 100, "f", 0.15, "read"),
  tolerance("LENGTH", 100, "c", 0.8, "read"),
  tolerance("LENGTH", 100, "v", 1.5, "read"),
  tolerance("ANGLE", 40, "m", 0.5, "read"),
  tolerance("ANGLE", 10, "f", 1, "read"),
  tolerance("ANGLE", 10.01, "m", 0.5, "read"),
  tolerance("ANGLE", 100, "m", 20 / 60, "read"),
  tolerance("ANGLE", 400, "m", 10 / 60, "read"),
  tolerance("ANGLE", 40, "c", 1, "memory"),
];
