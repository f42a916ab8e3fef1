/** Published least inside bend radii, cold, square bend. */

const ALUMINUM_SOURCE =
  "Aluminum Association-type table of minimum 90-degree cold-bend radii, reprinted in a public design notebook";

/** Thicknesses of the columns, in inches. Between two columns the thicker rules. */
export const ALUMINUM_COLUMNS_IN = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 3 / 16, 1 / 4, 3 / 8, 1 / 2] as const;

interface AluminumRow {
  readonly multiples: readonly number[];
  readonly source: string;
}

const row = (source: string, ...multiples: number[]): AluminumRow => ({ multiples, source });

/** Least radius in multiples of the thickness, one per column. */
export const ALUMINUM_RADII = {
  "1100-O": row(`${ALUMINUM_SOURCE} (read)`, 0, 0, 0, 0, 0.5, 1, 1, 1.5),
  "1100-H14": row(`${ALUMINUM_SOURCE} (read)`, 0, 0, 0, 1, 1, 1.5, 2, 2.5),
  "5052-H32": row(`${ALUMINUM_SOURCE} (read)`, 0, 0, 1, 1.5, 1.5, 1.5, 1.5, 2),
  "5052-H34": row(`${ALUMINUM_SOURCE} (read)`, 0, 1, 1.5, 2, 2, 2.5, 2.5, 3),
  "6061-T4": row(`${ALUMINUM_SOURCE} (read)`, 0, 0, 1, 1.5, 2.5, 3, 3.5, 4),
  "6061-T6": row(`${ALUMINUM_SOURCE} (read)`, 1, 1, 1.5, 2.5, 3, 3.5, 4.5, 5),
  "2024-T3": row("Aluminum Design Manual 2005, Part VII, Table 3-1, reprint (read)", 2.5, 3, 4, 5, 5, 6, 7, 7.5),
} as const satisfies Readonly<Record<string, AluminumRow>>;
export type AluminumTemper = keyof typeof ALUMINUM_RADII;

/** ASTM A6 Table X4.2 is valid to 3/4 in (read in excerpt). */
export const A6_LIMIT_IN = 0.75;
/** Along rolling 1.5 times the radius across (read in excerpt). */
export const A6_ALONG_FACTOR = 1.5;
export const A6_SOURCE = "ASTM A6/A6M Appendix X4, Table X4.2 (read in excerpt)";

/**
 * DIN 6935:1975, steel, bends to 120 degrees across rolling, as reprinted (read):
 * [thickness up to mm, r for Rm <= 390, <= 490, <= 640 MPa].
 */
export const DIN_RADII: readonly (readonly [thickness: number, soft: number, medium: number, hard: number])[] = [
  [1, 1, 1.2, 1.6],
  [1.5, 1.6, 2, 2.5],
  [2.5, 2.5, 3, 4],
  [3, 3, 4, 5],
  [4, 5, 5, 6],
  [5, 6, 8, 8],
  [6, 8, 10, 10],
  [7, 10, 12, 12],
  [8, 12, 16, 16],
  [10, 16, 20, 20],
  [12, 20, 25, 25],
];
/** The tensile strengths of those columns, as reprinted (read). */
export const DIN_CLASSES_MPA = [390, 490, 640] as const;
export const DIN_SOURCE = "DIN 6935:1975 as reprinted (read)";
