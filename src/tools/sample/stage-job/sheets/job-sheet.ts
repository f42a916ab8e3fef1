import type { CellValue } from "../../../../units/cell.ts";
import { tableCells, value } from "../../building/cells.ts";
import type { SheetCell, SheetModel, SheetTable } from "../../xlsx/model.ts";
import type { StyleName } from "../../xlsx/styles.ts";
import { AREAS } from "../bill/features.ts";
import { CUSTOMER, JOB, QUOTE } from "../bill/job.ts";

export const TOWER_DUE = QUOTE.due - 1; // the day before

const HEADER_ROW = 4;
const FIRST = HEADER_ROW + 1;
const ROWS: readonly (readonly [key: string, item: string, entry: CellValue, style: StyleName, hint: string])[] = [
  ["job", "Job name", JOB, "inputText", ""],
  ["customer", "Customer", CUSTOMER, "inputText", ""],
  ["number", "Quote", QUOTE.number, "inputText", ""],
  ["day", "Date of the quote", QUOTE.day, "inputDay", "Typed, not today's: a quote must say the same tomorrow."],
  ["valid", "Valid for (days)", QUOTE.validDays, "inputNumber", ""],
  ["start", "Work can begin", QUOTE.start, "inputMoment", "Material and drawings are there from here on."],
  ["due", "Must leave by", QUOTE.due, "inputMoment", "The truck goes to site. A line's own Due comes before it."],
  ["towerDue", "Must leave by Tower", TOWER_DUE, "inputMoment", "An area that leaves at a time of its own."],
  [
    "areas",
    "Areas, first needed first",
    Object.values(AREAS).join("; "),
    "inputText",
    "What is needed first is loaded last.",
  ],
  ["pace", "Pace", "normal", "inputText", '"rush" adds the rush charge of the sheet Shop.'],
  ["profit", "Profit as", "margin", "inputText", '"margin", a share of the price, or "markup", a share of the cost.'],
];

/** A cell of this sheet for a formula elsewhere. */
export function jobCell(key: string): string {
  const at = ROWS.findIndex(([found]) => found === key);
  if (at < 0) throw new Error(`key must be one of the sheet Job; got ${key}`);
  return `Job!$B$${FIRST + at}`;
}

const area = (key: string): string => jobCell(key).replace(/^Job!|\$/g, "");

export function jobSheet(): SheetModel {
  const table: SheetTable = { name: "Job", row: HEADER_ROW, column: 1, headers: ["Job", "Entry"], rows: ROWS.length };
  const cells = tableCells(
    table,
    ROWS.map(([, item, entry]) => [item, entry]),
    ["label", "inputText"],
  );
  const styled = cells.map((cell): SheetCell => {
    const row = ROWS[cell.row - FIRST];
    return row && cell.column === 2 ? { ...cell, style: row[3] } : cell;
  });
  return {
    name: "Job",
    widths: [19, 52, 60],
    cells: [
      value(1, 1, "title", "Job"),
      value(2, 1, "note", "Who asks, and by when. All invented. Every function about the bill reads this table."),
      ...styled,
      ...ROWS.map(([, , , , hint], i) => value(FIRST + i, 3, "aside", hint)),
    ],
    tables: [table],
    validations: [
      { area: area("pace"), type: "list", formula: '"normal,rush"', prompt: "normal, or rush for the rush charge" },
      { area: area("profit"), type: "list", formula: '"margin,markup"', prompt: "margin or markup" },
    ],
    merges: ["A2:C2"],
    print: { landscape: false },
  };
}
