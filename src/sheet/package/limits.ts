/**
 * What a workbook may unpack to. Excel itself writes no part near these sizes from a sheet a person made; a package
 * that claims more is a bomb or a mistake. Common practice, chosen so that 100,000 rows x 12 columns pass easily.
 */
export const LIMITS = {
  entries: 20_000,
  partBytes: 256 * 1024 * 1024,
  totalBytes: 512 * 1024 * 1024,
  /** Deflate cannot exceed about 1032:1; sheet XML compresses 10 to 40 times. Applies to parts above ratioFrom bytes. */
  ratio: 250,
  ratioFrom: 16 * 1024 * 1024,
  /** Cells that one array formula or data table fills: every one of them is kept. Nearly two columns of a sheet. */
  arrayCells: 2_000_000,
} as const;
