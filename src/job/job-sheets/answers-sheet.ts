import { value } from "../building/cells.ts";
import { spillOf } from "../building/formulas.ts";
import { STATE } from "../building/read-me.ts";
import { spillColumn } from "../building/spill-block.ts";
import type { SheetCell, SheetModel } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";
import { cellName, columnName } from "../xlsx/xml.ts";
import type { JobContents } from "./contents.ts";
import { CHECKS } from "./spill-sheets.ts";
import { inSystem } from "./units.ts";

const HEADER_ROW = 8;
const FIRST = HEADER_ROW + 1;
/** Rows that the emphasis covers: room for a longer bill. */
const LAST_EMPHASIS = 400;

/** Columns of the sheet Checks that the estimator reads first. */
const COLUMNS: readonly (readonly [header: string, title: string, width: number, style: StyleName])[] = [
  ["Part", "Part", 8, "label"],
  ["Description", "Description", 25, "wrapped"],
  ["Quantity", "Quantity", 9, "count"],
  ["Material", "Material", 11, "text"],
  ["Thickness", "Thickness (in)", 11, "inch"],
  ["Flat length", "Flat length (in)", 9, "inch"],
  ["Flat width", "Flat width (in)", 9, "inch"],
  ["Die", "Die", 10, "text"],
  ["Radius", "Inside radius (in)", 8, "inchShort"],
  ["Force", "Force (US ton)", 8, "tenth"],
  ["Weight each", "Weight each (lb)", 10, "tenth"],
  ["Cut on", "Cut on", 10, "text"],
  ["Status", "Status", 8, "status"],
  ["Sentence", "What is wrong", 60, "wrapped"],
  ["Fix", "Fix", 24, "wrapped"],
  ["Then", "Then", 7, "text"],
];
const columnOf = (header: string): number => COLUMNS.findIndex(([found]) => found === header) + 1;
const of = (header: string): string => `_xlfn.DROP(_xlfn.CHOOSECOLS(${CHECKS},${spillColumn("BILL.CHECK", header)}),1)`;

const ALL = `_xlfn.DROP(_xlfn.CHOOSECOLS(${CHECKS},${COLUMNS.map(([header]) => spillColumn("BILL.CHECK", header)).join(",")}),1)`;
const answers = spillOf(cellName(FIRST, 1));
const column = (header: string): string => `INDEX(${answers},0,${columnOf(header)})`;

const TOTALS: readonly (readonly [label: string, formula: string, style: StyleName])[] = [
  ["Lines", `ROWS(${answers})`, "totalCount"],
  ["Quoted", `SUMPRODUCT(--(${of("Quoted")}="yes"))`, "totalCount"],
  ["Pieces quoted", `SUM(IF(${of("Quoted")}="yes",${column("Quantity")}))`, "totalCount"],
];
const WORDS = ["stop", "check", "clear"] as const;

export function answersSheet({ subject, system }: JobContents): SheetModel {
  const total = (row: number, at: number, label: string, formula: string, style: StyleName): SheetCell[] => [
    value(row, at, "totalLabel", label),
    { row, column: at + 1, style, formula },
  ];
  const status = columnName(columnOf("Status"));
  const area = `${status}${FIRST}:${status}${LAST_EMPHASIS}`;
  return {
    name: "Answers",
    widths: COLUMNS.map(([, , width]) => width),
    cells: [
      value(1, 1, "title", "Answers"),
      value(1, columnOf("Sentence"), "heading", subject),
      { row: 2, column: 1, style: "plain", formula: STATE },
      ...TOTALS.flatMap(([label, formula, style], i) => total(3 + i, 2, label, formula, style)),
      ...WORDS.flatMap((word, i) =>
        total(3 + i, columnOf("Force"), word, `SUMPRODUCT(--(${column("Status")}="${word}"))`, "totalCount"),
      ),
      ...COLUMNS.map(([, title, , style], i) =>
        value(
          HEADER_ROW,
          i + 1,
          style === "label" || style === "text" || style === "wrapped" || style === "status" ? "header" : "headerRight",
          inSystem(title, system),
        ),
      ),
      { row: FIRST, column: 1, formula: ALL, spills: COLUMNS.map(([, , , style]) => style) },
    ],
    emphasis: [
      { area, formula: `${status}${FIRST}="stop"`, look: "stop" },
      { area, formula: `${status}${FIRST}="check"`, look: "check" },
    ],
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: { landscape: true, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
  };
}
