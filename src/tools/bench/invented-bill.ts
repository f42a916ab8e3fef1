/** Bills by chance in the shop of the sample, for benchmarks. */
import { MATERIALS, SHOP_TABLES, type ShopTable } from "../../cells/example/invented-shop.ts";
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { pick, randomFrom } from "../random/random.ts";

type Row = readonly CellValue[];
const range = (header: Row, ...rows: Row[]): CellMatrix => [[...header], ...rows.map((row) => [...row])];

const SHEETS = [
  ["A36", 0.25],
  ["A36", 0.1875],
  ["A1011 CS", "10 ga"],
  ["A1011 CS", "14 ga"],
  ["304", "14 ga"],
  ["5052-H32", 0.125],
  ["6061-T6", 0.125],
] as const;
const SHAPES = [
  ["2; 3", 90],
  ["1.5; 4; 1.5", 90],
  ["2; 2; 2", "90; -90"],
  ["1.5; 3; 1.5; 2", 90],
  ["5", null],
] as const;
/** Lines by chance, of ordinary parts. */
export function inventedBill(lines: number, seed: number): CellMatrix {
  const random = randomFrom(seed);
  const eighths = (low: number, high: number) => low + Math.floor(random() * (high - low) * 8) / 8;
  return range(
    [
      "Part",
      "Material",
      "Thickness (in)",
      "Quantity",
      "Width (in)",
      "Flanges (in)",
      "Bend angles",
      "Holes",
      "Hole diameter (in)",
      "Operations",
      "Area",
      "Tolerance (in)",
      "Drawing radius (in)",
    ],
    ...Array.from({ length: lines }, (_, i): Row => {
      const [material, thickness] = pick(random, SHEETS);
      const [flanges, angles] = pick(random, SHAPES);
      const holes = random() < 0.5 ? Math.floor(random() * 8) : 0;
      const operations = pick(random, [null, "Deburr", "Deburr; Tap 2", "Coating"]);
      const radius = random() < 0.3 ? 0.06 : null;
      return [
        `P${i + 1}`,
        material,
        thickness,
        1 + Math.floor(random() * 200),
        eighths(1, 40),
        flanges,
        angles,
        holes,
        0.4375,
        operations,
        pick(random, ["Deck", "Truss", "Stairs"]),
        pick(random, [null, 0.1, 0.03]),
        radius,
      ];
    }),
  );
}

const tableOf = (table: ShopTable): CellMatrix => range(table.headers, ...table.rows);
export const SHOP: readonly CellMatrix[] = SHOP_TABLES.filter((table) => table !== MATERIALS).map(tableOf);
export const MONDAY = 46083; // 2 March 2026
/** Work can begin on Monday, and must leave so many days later. */
export const inventedJob = (days: number): CellMatrix =>
  range(["Job", "Entry"], ["Start", MONDAY], ["Due", MONDAY + days]);
