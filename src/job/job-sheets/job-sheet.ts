import { headed, tableCells, value } from "../building/cells.ts";
import type { SheetCell, SheetModel, SheetTable } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";
import type { JobContents, JobKey } from "./contents.ts";

const HEADER_ROW = 4;
const FIRST = HEADER_ROW + 1;
const ROWS: readonly (readonly [key: JobKey, item: string, style: StyleName, hint: string])[] = [
  ["job", "Job name", "inputText", ""],
  ["customer", "Customer", "inputText", ""],
  ["number", "Quote", "inputText", ""],
  ["day", "Date of the quote", "inputDay", "Typed, not today's: a quote must say the same tomorrow."],
  ["valid", "Valid for (days)", "inputNumber", ""],
  ["start", "Work can begin", "inputMoment", "Material and drawings are there from then on."],
  [
    "due",
    "Must leave by",
    "inputMoment",
    "When the truck leaves for the site; a day without a time means the end of that day. A line's own Due comes first.",
  ],
  [
    "areas",
    "Areas, first needed first",
    "inputText",
    "What is needed first is loaded last. A row such as Must leave by Tower, below, gives an area its own time.",
  ],
  ["pace", "Pace", "inputText", '"rush" adds the rush charge of the sheet Shop.'],
  ["profit", "Profit as", "inputText", '"margin", a share of the price, or "markup", a share of the cost.'],
  ["currency", "Currency", "inputText", "Printed with every sum, such as USD; none is assumed."],
];

/** A cell of this sheet for a formula elsewhere. */
export function jobCell(key: JobKey): string {
  const at = ROWS.findIndex(([found]) => found === key);
  if (at < 0) throw new Error(`key must be one of the sheet Job; got ${key}`);
  return `Job!$B$${FIRST + at}`;
}

const area = (key: JobKey): string => jobCell(key).replace(/^Job!|\$/g, "");

export function jobSheet({ job, jobNote, areaDues = [] }: JobContents): SheetModel {
  // Below the usual rows, so that a cell of the sheet stands where every other sheet looks for it.
  const rows = [
    ...ROWS.map(([key, item, style, hint]) => ({ item, entry: job[key] ?? null, style, hint })),
    ...areaDues.map(([name, due]) => ({
      item: `Must leave by ${name}`,
      entry: due,
      style: "inputMoment" as const,
      hint: "An area that leaves at its own time.",
    })),
  ];
  const table: SheetTable = { name: "Job", row: HEADER_ROW, column: 1, headers: ["Job", "Entry"], rows: rows.length };
  const cells = tableCells(
    table,
    rows.map(({ item, entry }) => [item, entry]),
    ["label", "inputText"],
  );
  const styled = cells.map((cell): SheetCell => {
    const row = rows[cell.row - FIRST];
    return row && cell.column === 2 ? { ...cell, style: row.style } : cell;
  });
  return {
    name: "Job",
    widths: [19, 52, 60],
    cells: [...headed("Job", jobNote), ...styled, ...rows.map(({ hint }, i) => value(FIRST + i, 3, "aside", hint))],
    tables: [table],
    validations: [
      { area: area("pace"), type: "list", formula: '"normal,rush"', prompt: "normal, or rush for the rush charge" },
      { area: area("profit"), type: "list", formula: '"margin,markup"', prompt: "margin or markup" },
    ],
    merges: ["A2:C2"],
    print: { landscape: false },
  };
}
