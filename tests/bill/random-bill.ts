/** Bills and shops by chance, out of the rows of the invented shop: thick plate, stainless, missing stock, bad lines. */
import fc from "fast-check";
import * as invented from "../../src/cells/example/invented-shop.ts";
import { billTitles } from "../../src/cells/tables/bill-columns.ts";
import type { CellMatrix, CellValue } from "../../src/units/cell.ts";

export interface RandomBill {
  readonly bill: CellMatrix;
  /** Tables by the name of their argument; a table that is not there was not given. */
  readonly tables: Readonly<Record<string, CellMatrix>>;
}

const HEADER = billTitles(
  ...(["part", "material", "thickness", "quantity", "width", "flanges", "bendAngles"] as const),
  ...(["crossFlanges", "crossAngles", "die", "punch", "holes", "holeDiameter", "holeDistance"] as const),
  ...(["route", "operations", "tolerance", "radius", "grain", "area", "accepted", "brake"] as const),
);

const SHEETS: readonly (readonly [string, CellValue])[] = [
  ["A36", "3/16"],
  ["A36", "1/4"],
  ["A36", "1/2"], // not in Stock, and over every shear
  ["A1011 CS", "10 ga"],
  ["A1011 CS", "16 ga"], // Stock has only thicker
  ["304", "14 ga"],
  ["304", "1/4"], // over every shear: waterjet
  ["5052-H32", "1/8"],
  ["6061-T6", "1/8"], // cracks on most tools
  ["A653 CS", "18 ga"],
];
const SHAPES: readonly (readonly [flanges: string, angles: CellValue, cross: string | null])[] = [
  ["4", null, null],
  ["2; 3", 90, null],
  ["1.5; 4; 1.5", "90; 90", null],
  ["1.5; 2.5; 1.5", "90; -90", null],
  ["1; 1.5; 3; 1.5; 1", "-90; 90; 90; -90", null],
  ["1; 6; 1", 90, "1; 8; 1"],
  ["0.25; 3", 90, null],
];

/** Goods that are cut only are in no bill of these. */
const STOCK = {
  ...invented.STOCK,
  rows: invented.STOCK.rows.filter(([name]) => !/^(Panel|Expanded)/.test(String(name))),
};

const some = <T>(values: readonly T[]) => fc.constantFrom(...values);
const maybe = <T>(values: readonly T[]) => fc.oneof({ weight: 3, arbitrary: fc.constant(null) }, some(values));
const lineArbitrary = fc.record({
  name: fc.integer({ min: 1, max: 12 }), // parts may repeat
  sheet: some(SHEETS),
  shape: some(SHAPES),
  quantity: fc.oneof({ weight: 12, arbitrary: fc.integer({ min: 1, max: 40 }) }, some<CellValue>(["many", 0, 2.5])),
  width: some([2, 4, 12.5, 30, 70, 100, 125]),
  die: maybe(["V 1", "V 2", "V 5/8", "2"]),
  punch: maybe(["Plain", "Knife", "Gooseneck", "Nobody's"]),
  holes: maybe([2, 4]),
  route: maybe(["shear", "waterjet"]),
  operations: maybe(["Deburr", "Weld 2; Coating", "Polish"]),
  tolerance: maybe([0.005, 0.06, 0.25]),
  radius: maybe([0.06, 0.16]),
  grain: maybe(["across", "along"]),
  area: some(["Deck", "Tower", ""]),
  accepted: maybe(["A. Person, 3 March"]),
});

const shopParts = {
  brakes: fc.subarray([0, 1], { minLength: 1 }),
  dies: fc.subarray([...invented.DIES.rows.keys()], { minLength: 1 }),
  punches: fc.subarray([...invented.PUNCHES.rows.keys()], { minLength: 1 }),
  shears: fc.subarray([0, 1]),
  hasJet: fc.boolean(),
  stock: fc.subarray([...STOCK.rows.keys()], { minLength: 4 }),
  counts: fc.array(maybe([0, 1, 2, 5]), {
    minLength: invented.STOCK.rows.length,
    maxLength: invented.STOCK.rows.length,
  }),
  hasJob: fc.boolean(),
  hasStock: fc.oneof({ weight: 9, arbitrary: fc.constant(true) }, fc.constant(false)),
  hasStations: fc.oneof({ weight: 5, arbitrary: fc.constant(true) }, fc.constant(false)),
};
type ShopParts = { [K in keyof typeof shopParts]: (typeof shopParts)[K] extends fc.Arbitrary<infer T> ? T : never };

function tablesOf(shop: ShopParts): Record<string, CellMatrix> {
  const table = ({ headers, rows: all }: invented.ShopTable, wanted?: readonly number[]): CellMatrix => [
    [...headers],
    ...(wanted ?? [...all.keys()]).map((at) => headers.map((_, i) => all[at]![i] ?? null)),
  ];
  const stock = table(STOCK, shop.stock);
  const count = stock[0]!.indexOf("Sheets");
  stock.slice(1).forEach((row, i) => {
    row[count] = shop.counts[i]!;
  });
  const rates = table(invented.RATES).map((row) => (row[0] === "Cut effort" ? ["Cut effort", 0.02, null] : row));
  const tables: Record<string, CellMatrix> = {
    brakes: table(invented.BRAKES, shop.brakes),
    dies: table(invented.DIES, shop.dies),
    punches: table(invented.PUNCHES, shop.punches),
    rates,
  };
  if (shop.shears.length > 0) tables["shears"] = table(invented.SHEARS, shop.shears);
  if (shop.hasJet) tables["waterjets"] = table(invented.WATERJETS);
  if (shop.hasStations) tables["stations"] = table(invented.STATIONS);
  if (shop.hasStock) tables["stock"] = stock;
  if (shop.hasJob) {
    tables["calendar"] = table(invented.CALENDAR);
    tables["job"] = [
      ["Job", "Entry"],
      ["Start", "2026-05-18 07:00"],
      ["Due", "2026-05-27 09:30"],
    ];
  }
  return tables;
}

/** The tables of a shop: some of the invented one's tools, machines and sheets. */
export const shopArbitrary: fc.Arbitrary<Record<string, CellMatrix>> = fc.record(shopParts).map(tablesOf);

export const billArbitrary: fc.Arbitrary<RandomBill> = fc
  .record({ lines: fc.array(lineArbitrary, { minLength: 2, maxLength: 14 }), ...shopParts })
  .map(({ lines, ...shop }) => {
    const rows = lines.map((line): CellValue[] => {
      const [material, thickness] = line.sheet;
      const [flanges, angles, cross] = line.shape;
      return [
        `P-${line.name}`,
        material,
        thickness,
        line.quantity,
        cross === null ? line.width : null,
        flanges,
        angles,
        cross,
        cross === null ? null : 90,
        line.die,
        line.punch,
        line.holes,
        line.holes === null ? null : 0.375,
        line.holes === null ? null : 0.9,
        line.route,
        line.operations,
        line.tolerance,
        line.radius,
        line.grain,
        line.area,
        line.accepted,
        null,
      ];
    });
    return { bill: [HEADER, ...rows], tables: tablesOf(shop) };
  });
