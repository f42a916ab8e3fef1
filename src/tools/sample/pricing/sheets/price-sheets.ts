/** Prices of the shop's own parts, and what quantity and margin do to one of them. */
import { ofShop } from "../../../../job/building/bill-arguments.ts";
import { headed, value } from "../../../../job/building/cells.ts";
import { lookUp, shop, spillOf } from "../../../../job/building/formulas.ts";
import { spillColumn } from "../../../../job/building/spill-block.ts";
import { HEADER_ROW, spillSheet } from "../../../../job/building/spill-sheet.ts";
import type { SheetCell, SheetModel } from "../../../../job/xlsx/model.ts";
import type { StyleName } from "../../../../job/xlsx/styles.ts";
import { topLeft } from "../../../../units/certain.ts";
import { PARTS } from "../bill/catalogue-parts.ts";
import { CORRECTION } from "./strip-sheets.ts";

export const priceSheet = (): SheetModel => ({
  ...spillSheet({
    name: "Price",
    note: "Cost and price of every part of the sheet Parts, with metal by the sheets they pull, priced on the sheet Rates and machines. Locked: type into the inputs.",
    blocks: [
      {
        spill: "BILL.PRICE",
        formula: shop("BILL.PRICE", { ...ofShop, corrections: CORRECTION }),
        widths: { Part: 24, Note: 24, Message: 30 },
      },
    ],
  }),
  locked: true,
});

const PRICES = spillOf(`Price!A${HEADER_ROW}`);
const priced = (header: string): string =>
  `_xlfn.XLOOKUP(B4,INDEX(${PRICES},0,1),INDEX(${PRICES},0,${spillColumn("BILL.PRICE", header)}))`;
const rate = (name: string): string => lookUp(`"${name}"`, "Rates[Rate]", "Rates[Value]");

type Input = readonly [row: number, label: string, content: string | number, style: StyleName, hint: string];
const INPUTS: readonly Input[] = [
  [4, "Part", String(topLeft(PARTS)), "inputText", "A part of the sheet Parts"],
  [5, "Quantities", "1; 10; 25; 50; 100; 250", "inputText", "As a list"],
];
const STEPS: readonly (readonly [row: number, label: string, formula: string, style: StyleName, hint: string])[] = [
  [7, "Quantity of the bill", priced("Quantity"), "count", ""],
  [8, "Cost of the bill", priced("Cost"), "money", "material, labor, set-up, outside, overhead"],
  [9, "Margin", rate("Margin"), "percent", "a share of the price"],
  [10, "Mark-up", rate("Mark-up"), "percent", "a share of the cost; for comparison"],
  [11, "Set-ups, once", `${priced("Set-up")}*(1+${rate("Overhead")})`, "money", "with overhead"],
  [12, "Each piece besides", "(B8-B11)/B7", "money", "with overhead and the scrap of this bill"],
  [
    13,
    "Price of the bill for this margin",
    shop("PRICE.FORMARGIN", { cost: "B8", margin: "B9" }),
    "money",
    "before rounding each piece up to the cent",
  ],
];
const BREAKS_ROW = 16;
const LADDER = [0, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4];
const MONEY: readonly StyleName[] = ["count", "money", "money", "money"];
const HEADS: readonly StyleName[] = ["headerRight", "headerRight", "headerRight", "headerRight"];

export function breaksSheet(): SheetModel {
  const breaks = (column: number, margin: string, basis: string): SheetCell => ({
    row: BREAKS_ROW,
    column,
    heads: HEADS,
    spills: MONEY,
    formula: shop("PRICE.BREAKS", { set_up: "B11", each: "B12", quantities: "B5", margin, basis }),
  });
  const first = BREAKS_ROW + 1;
  return {
    name: "Breaks",
    widths: [30, 26, 14, 14, 3, 12, 12, 12, 12, 3, 12, 14],
    cells: [
      ...headed(
        "Breaks",
        "What quantity and margin do to one part. Shaded cells are inputs, all others are locked. Set-ups are paid once, so the piece gets cheaper; a margin is a share of the price, a mark-up a share of the cost.",
      ),
      ...INPUTS.flatMap(([row, label, content, style, hint]): SheetCell[] => [
        value(row, 1, "label", label),
        value(row, 2, style, content),
        value(row, 3, "aside", hint),
      ]),
      ...STEPS.flatMap(([row, label, formula, style, hint]): SheetCell[] => [
        value(row, 1, "label", label),
        { row, column: 2, style, formula, ...(formula.startsWith("_xldudf") ? { spills: [style] } : {}) },
        value(row, 3, "aside", hint),
      ]),
      value(BREAKS_ROW - 1, 1, "heading", "By quantity, at the margin"),
      breaks(1, "B9", '"margin"'),
      value(BREAKS_ROW - 1, 6, "heading", "By quantity, at the mark-up"),
      breaks(6, "B10", '"markup"'),
      value(BREAKS_ROW - 1, 11, "heading", "The bill by margin"),
      value(BREAKS_ROW, 11, "headerRight", "Margin"),
      value(BREAKS_ROW, 12, "headerRight", "Price"),
      ...LADDER.map((share, i) => value(first + i, 11, "inputShare", share)),
      {
        row: first,
        column: 12,
        spills: ["money"],
        formula: shop("PRICE.FORMARGIN", { cost: "B8", margin: `K${first}:K${first + LADDER.length - 1}` }),
      },
    ],
    validations: [
      { area: "B4", type: "list", formula: `Parts!$A$5:$A$${4 + PARTS.length}`, prompt: "A part of the sheet Parts" },
    ],
    merges: ["A2:L2"],
    locked: true,
    print: { landscape: true },
  };
}
