import { headed, value } from "../../../../job/building/cells.ts";
import { shop } from "../../../../job/building/formulas.ts";
import type { SheetModel } from "../../../../job/xlsx/model.ts";

const HEADER_ROW = 8;

export const materialsSheet = (): SheetModel => ({
  name: "Materials",
  widths: [14, 22, 11, 10, 22, 18, 70],
  cells: [
    ...headed(
      "Materials",
      "Every built-in value with its source and how sure it is: read in the named text, derived, from memory, common practice or fitted. Your own values win: give the functions' data argument a range with a Name column and a column for each value you state, headed like the properties here. One value above: choose in the shaded cells.",
    ),
    value(4, 1, "label", "Material"),
    value(4, 2, "inputText", "304"),
    value(5, 1, "label", "Property"),
    value(5, 2, "inputText", "tensile high"),
    value(6, 1, "label", "Value"),
    { row: 6, column: 2, formula: shop("MATERIAL.VALUE", { material: "B4", property: "B5" }), spills: ["figure"] },
    {
      row: HEADER_ROW,
      column: 1,
      heads: ["header", "header", "headerRight", "header", "header", "header", "header"],
      spills: ["label", "text", "figure", "text", "text", "text", "wrapped"],
      formula: shop("MATERIAL.LIST"),
    },
  ],
  merges: ["A2:G2"],
  locked: true,
  frozen: { rows: HEADER_ROW, columns: 1 },
  print: { landscape: true, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
});
