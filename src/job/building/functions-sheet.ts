import type { SheetModel } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";
import { value } from "./cells.ts";
import { shop } from "./formulas.ts";

const HEADER_ROW = 3;

export const functionsSheet = (): SheetModel => ({
  name: "Functions",
  widths: [31, 34, 36, 12, 46, 40],
  cells: [
    value(1, 1, "title", "Functions"),
    {
      row: HEADER_ROW,
      column: 1,
      heads: Array<StyleName>(6).fill("header"),
      formula: shop("FUNCTIONS"),
      spills: ["label", "wrapped", "wrapped", "wrapped", "wrapped", "wrapped"],
    },
  ],
  frozen: { rows: HEADER_ROW, columns: 1 },
  print: { landscape: true, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
});
