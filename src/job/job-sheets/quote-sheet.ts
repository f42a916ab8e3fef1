import type { SpillName } from "../../cells/record/spill-columns.ts";
import { value } from "../building/cells.ts";
import { spillOf } from "../building/formulas.ts";
import { STATE } from "../building/read-me.ts";
import { spillColumn } from "../building/spill-block.ts";
import { HEADER_ROW as SPILL_ROW } from "../building/spill-sheet.ts";
import { onlyWhenRunning } from "../building/state.ts";
import type { SheetCell, SheetModel } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";
import type { JobContents } from "./contents.ts";
import { jobCell } from "./job-sheet.ts";

const HEADER_ROW = 16;
/** Row of the first line; the lines stand in the order of the bill. */
export const FIRST_LINE = HEADER_ROW + 1;

const PRICE: SpillName = "BILL.PRICE";
const all = spillOf(`Price!A${SPILL_ROW}`);
const summary = spillOf(`Summary!A${SPILL_ROW}`);
/** Behind the lines stand what is added up to the least order, rush, crate, truck, tax and the total. */
const SUM_ROWS = 6;
const column = (header: string): string => `INDEX(${all},0,${spillColumn(PRICE, header)})`;
const charge = (name: string, header = "Price"): string =>
  onlyWhenRunning(STATE, `_xlfn.XLOOKUP("${name}",${column("Part")},${column(header)},"")`);
const figure = (item: string, header: "Value" | "Note"): string =>
  `_xlfn.XLOOKUP("${item}",INDEX(${summary},0,1),INDEX(${summary},0,${spillColumn("BILL.SUMMARY", header)}),"")`;

const COLUMNS: readonly (readonly [header: string, title: string, width: number, style: StyleName])[] = [
  ["Part", "Part", 9, "text"],
  ["Description", "Description", 28, "wrapped"],
  ["Quantity", "Quantity", 9, "count"],
  ["Unit price", "Unit price", 16, "money"],
  ["Price", "Total", 13, "money"],
  ["Remark", "Remark", 36, "wrapped"],
];
export const REMARK_COLUMN = COLUMNS.length;
const LINES = `_xlfn.DROP(_xlfn.DROP(_xlfn.CHOOSECOLS(${all},${COLUMNS.map(([header]) => spillColumn(PRICE, header)).join(",")}),1),-${SUM_ROWS})`;

export const MACHINES = "Machines";

/** What nobody has typed yet stays empty: a reference alone shows it as 0. */
const typed = (key: Parameters<typeof jobCell>[0]): string => `IF(${jobCell(key)}="","",${jobCell(key)})`;
const HEAD: readonly (readonly [label: string, formula: string, style: StyleName])[] = [
  ["For", typed("customer"), "text"],
  ["Job", typed("job"), "text"],
  ["Quote", typed("number"), "text"],
  ["Date", figure("Date of the quote", "Value"), "dayLeft"],
  ["Good until", figure("Good until", "Value"), "dayLeft"],
  ["Leaves by", typed("due"), "dayLeft"],
  ["Plan", figure("Plan", "Value"), "text"],
  [
    MACHINES,
    `IF(${figure("Not confirmed from the plate", "Value")}>0,"not confirmed from the plate","confirmed from the plate")`,
    "text",
  ],
];
const SUMS: readonly (readonly [label: string, formula: string, style: StyleName])[] = [
  ["Minimum charge", charge("Minimum charge"), "money"],
  ["Rush", charge("Rush"), "money"],
  ["Crate", charge("Crate"), "money"],
  ["Truck", charge("Truck"), "money"],
  ["Tax", charge("Tax"), "money"],
  ["Total", charge("Total"), "totalMoney"],
  ["", charge("Total", "Note"), "text"],
];

const NOTES = [
  "Bent parts to the drawings named in the bill, in the quantities below. Prices hold for the whole list. Lines without a price are not quoted; the remark says why.",
  "What a bracket may carry is not part of this quote: that is a licensed engineer's work.",
];

export const QUOTE = "Quote";

export const quoteSheet = ({ shopName, quoteFoot }: Pick<JobContents, "shopName" | "quoteFoot">): SheetModel => ({
  name: QUOTE,
  widths: COLUMNS.map(([, , width]) => width),
  cells: [
    value(1, 1, "title", "Quote"),
    value(2, 1, "heading", shopName),
    ...HEAD.flatMap(([label, formula, style], i): SheetCell[] => [
      value(4 + i, 1, "strongLine", label),
      { row: 4 + i, column: 2, style, formula },
    ]),
    ...SUMS.flatMap(([label, formula, style], i): SheetCell[] => [
      value(6 + i, 4, label === "Total" ? "totalLabel" : "strongLine", label),
      { row: 6 + i, column: 5, style, formula },
    ]),
    ...NOTES.map((words, i) => value(13 + i, 1, "note", words)),
    ...COLUMNS.map(([, title, , style], i) =>
      value(HEADER_ROW, i + 1, style === "text" || style === "wrapped" ? "header" : "headerRight", title),
    ),
    {
      row: FIRST_LINE,
      column: 1,
      formula: onlyWhenRunning(STATE, LINES),
      spills: COLUMNS.map(([, , , style]) => style),
    },
  ],
  merges: NOTES.map((_, i) => `A${13 + i}:F${13 + i}`),
  frozen: { rows: HEADER_ROW, columns: 0 },
  print: { landscape: false, titleRows: `${HEADER_ROW}:${HEADER_ROW}`, foot: quoteFoot },
});
