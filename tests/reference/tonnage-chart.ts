/**
 * A US press-brake forming chart for 60 ksi mild steel, tons a foot, columns aligned by its die widths, read in a reprint.
 * It states neither punch nor yield: 40 ksi is taken, which moves the answers by 2 % at most. The openings of 5 to 6
 * thicknesses are the farthest off.
 */
import type { Published } from "./published.ts";

/** [thickness in, [opening in, tons a foot]]. */
const CHART: readonly (readonly [number, ...[opening: number, tons: number][]])[] = [
  [0.25, [1.25, 27.5], [1.5, 22.1], [2, 15], [2.5, 11.6], [3, 9.6], [3.5, 7.9], [4, 6.7]],
  [0.375, [2, 42.7], [2.5, 31.2], [3, 23.8], [3.5, 19.5], [4, 16.3], [5, 12.4], [6, 9.6]],
  [0.5, [3, 48.5], [3.5, 39.5], [4, 33.2], [5, 24.6], [6, 19.5], [7, 16.1], [8, 13.4]],
];
const WITHIN = 0.12;
const STEEL = [
  ["Name", "Materials edition", "Yield typical (ksi)", "Tensile typical (ksi)"],
  ["A36", "2026.2", 40, 60],
];

export const tonnageChart: readonly Published[] = CHART.flatMap(([thickness, ...columns]) =>
  columns.map(
    ([opening, tons]): Published => ({
      id: `tonnage chart: ${thickness} in over ${opening} in`,
      call: ["AIR.TONNAGE", "A36", thickness, 90, 12, opening, null, null, null, null, null, null, "in", STEEL],
      expected: tons,
      tolerance: WITHIN * tons,
      source: "US press-brake forming chart for 60 ksi mild steel, tons per foot, reprint",
      basis: "read",
    }),
  ),
);
