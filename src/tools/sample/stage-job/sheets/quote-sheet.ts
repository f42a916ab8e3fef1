import type { SpillName } from "../../../../cells/record/spill-columns.ts";
import { value } from "../../building/cells.ts";
import { spillOf } from "../../building/formulas.ts";
import { spillColumn } from "../../building/spill-block.ts";
import { HEADER_ROW as SPILL_ROW } from "../../building/spill-sheet.ts";
import type { SheetCell, SheetModel } from "../../xlsx/model.ts";
import type { StyleName } from "../../xlsx/styles.ts";
import { cellName } from "../../xlsx/xml.ts";
import { jobCell } from "./job-sheet.ts";

const HEADER_ROW = 15;
const FIRST = HEADER_ROW + 1;
const SHOP_NAME = "Tinker's Yard Sheet Works (an invented shop)";

const PRICE: SpillName = "BILL.PRICE";
const all = spillOf(`Price!A${SPILL_ROW}`);
const lines = "ROWS(Parts[Part])";
const column = (header: string): string => `INDEX(${all},0,${spillColumn(PRICE, header)})`;
/** Of every line of the bill, by its part; a line without a price is offered on request. */
const offered = (header: string): string =>
  `_xlfn.LET(_xlpm.found,_xlfn.XLOOKUP(Parts[Part],${column("Part")},${column(header)},""),IF(_xlpm.found="","on request",_xlpm.found))`;
const charge = (name: string): string => `_xlfn.XLOOKUP("${name}",${column("Part")},${column("Price")})`;

const COLUMNS: readonly (readonly [header: string, width: number, style: StyleName, formula: string])[] = [
  ["Line", 6, "count", `_xlfn.SEQUENCE(${lines})`],
  ["Part", 9, "text", "Parts[Part]"],
  ["Description", 34, "text", "Parts[Description]"],
  ["Material", 12, "text", "Parts[Material]"],
  ["Quantity", 9, "count", "Parts[Quantity]"],
  ["Unit price", 17, "offer", offered("Unit price")],
  ["Total", 13, "offer", offered("Price")],
];

const HEAD: readonly (readonly [label: string, formula: string, style: StyleName])[] = [
  ["For", jobCell("customer"), "text"],
  ["Job", jobCell("job"), "text"],
  ["Quote", jobCell("number"), "text"],
  ["Date", jobCell("day"), "dayLeft"],
  ["Valid until", `${jobCell("day")}+${jobCell("valid")}`, "dayLeft"],
  ["Leaves by", jobCell("due"), "dayLeft"],
];
const SUMS: readonly (readonly [label: string, formula: string, style: StyleName])[] = [
  ["Lines", `SUM(${spillOf(cellName(FIRST, COLUMNS.length))})`, "money"],
  ["Minimum charge", charge("Minimum charge"), "money"],
  ["Rush", charge("Rush"), "money"],
  ["Total", charge("Total"), "totalMoney"],
];

const NOTES = [
  'Bent parts to the drawings named in the bill, in the quantities above. Lines "on request" want a word about the drawing first.',
  "What a bracket may carry is not part of this quote: that is a licensed engineer's work.",
];

export function quoteSheet(): SheetModel {
  const sumColumn = COLUMNS.length;
  return {
    name: "Quote",
    widths: COLUMNS.map(([, width]) => width),
    cells: [
      value(1, 1, "title", "Quote"),
      value(2, 1, "heading", SHOP_NAME),
      ...HEAD.flatMap(([label, formula, style], i): SheetCell[] => [
        value(4 + i, 1, "strongLine", label),
        { row: 4 + i, column: 3, style, formula },
      ]),
      ...SUMS.flatMap(([label, formula, style], i): SheetCell[] => [
        value(4 + i, sumColumn - 1, i === SUMS.length - 1 ? "totalLabel" : "strongLine", label),
        { row: 4 + i, column: sumColumn, style, formula },
      ]),
      ...NOTES.map((words, i) => value(11 + i, 1, "note", words)),
      ...COLUMNS.flatMap(([header, , style, formula], i): SheetCell[] => [
        value(HEADER_ROW, i + 1, style === "text" ? "header" : "headerRight", header),
        { row: FIRST, column: i + 1, formula, spills: [style] },
      ]),
    ],
    merges: NOTES.map((_, i) => `A${11 + i}:G${11 + i}`),
    frozen: { rows: HEADER_ROW, columns: 0 },
    print: { landscape: false, titleRows: `${HEADER_ROW}:${HEADER_ROW}`, foot: "Invented shop, job and prices." },
  };
}
