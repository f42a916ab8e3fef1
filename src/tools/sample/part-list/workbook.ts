import { SHOP_TABLES } from "../../../cells/example/invented-shop.ts";
import { ofShop } from "../../../job/building/bill-arguments.ts";
import { across, headed, value } from "../../../job/building/cells.ts";
import { shop, spillOf } from "../../../job/building/formulas.ts";
import { readMeSheet } from "../../../job/building/read-me.ts";
import { spillColumn } from "../../../job/building/spill-block.ts";
import { HEADER_ROW, spillSheet } from "../../../job/building/spill-sheet.ts";
import { type InputColumn, tableSheet } from "../../../job/building/table-sheet.ts";
import { shopSheet } from "../../../job/job-sheets/shop-sheet.ts";
import type { SheetCell, SheetModel, WorkbookModel } from "../../../job/xlsx/model.ts";
import { SHOP_NOTE } from "../stage-job/workbook.ts";
import { KINDS } from "./kinds.ts";
import { plantedLines } from "./parts.ts";

export const LIST_COLUMNS: readonly (InputColumn & { readonly key: keyof ReturnType<typeof plantedLines>[number] })[] =
  [
    { key: "part", header: "Part", width: 9 },
    { key: "material", header: "Material", width: 12 },
    { key: "thickness", header: "Thickness", width: 11 },
    { key: "quantity", header: "Quantity", width: 9, number: true },
    { key: "width", header: "Width", width: 9, number: true },
    { key: "flanges", header: "Flanges", width: 18 },
    { key: "bendAngles", header: "Bend angles", width: 12 },
    { key: "die", header: "Die", width: 10 },
    { key: "punch", header: "Punch", width: 11 },
    { key: "grain", header: "Grain", width: 8 },
    { key: "holeDistance", header: "Hole distance", width: 9, number: true },
    { key: "radius", header: "Drawing radius", width: 9, number: true },
    { key: "radiusTolerance", header: "Radius tolerance", width: 10, number: true },
    { key: "tolerance", header: "Tolerance", width: 10, number: true },
    { key: "planted", header: "Planted", width: 28 },
  ];

const partsSheet = (): SheetModel =>
  tableSheet({
    name: "Parts",
    table: "Parts",
    note: "500 invented lines, no two the same, with some of every kind of problem planted among them (last column, which no function reads). Plain numbers are inches; text brings its own unit.",
    columns: LIST_COLUMNS,
    rows: plantedLines().map((line) => LIST_COLUMNS.map(({ key }) => line[key])),
  });

const ALL = spillOf(`Checks!A${HEADER_ROW}`);
const column = (header: string): string => `INDEX(${ALL},0,${spillColumn("BILL.CHECK", header)})`;

const checksSheet = (): SheetModel =>
  spillSheet({
    name: "Checks",
    note: "Every line against brake, dies, punches, shear and rates of the sheet Shop, by one formula. A line that cannot be read is a stop that says which cell, and leaves the others right.",
    blocks: [
      {
        spill: "BILL.CHECK",
        formula: shop("BILL.CHECK", ofShop),
        widths: {
          Part: 9,
          Status: 8,
          Sentence: 74,
          Die: 9,
          Punch: 10,
          "Drawing radius": 11,
          Tolerance: 12,
          Fix: 24,
          Notes: 40,
          Message: 20,
        },
        emphasis: { column: "Status", stop: ["stop"], check: ["check"] },
      },
    ],
  });

const STATES = [
  ["clear", "no problem found against the tables given"],
  ["check", "look before cutting"],
  ["stop", "as it stands it scraps sheet or hurts a machine"],
] as const;
const STATE_ROW = 4;
const KIND_ROW = STATE_ROW + STATES.length + 3;

/** Ordinary formulas over the answers: what is counted can be counted otherwise. */
function summarySheet(): SheetModel {
  const states = STATES.flatMap(([word, meaning], i): SheetCell[] => [
    value(STATE_ROW + i, 1, "label", word),
    { row: STATE_ROW + i, column: 2, style: "count", formula: `COUNTIFS(${column("Status")},"${word}")` },
    value(STATE_ROW + i, 3, "text", meaning),
  ]);
  const end = STATE_ROW + STATES.length;
  const first = KIND_ROW + 1;
  const kinds = KINDS.flatMap(({ name, in: where, words }, i): SheetCell[] => {
    const row = first + i;
    const found = `"*"&C${row}&"*"`;
    return [
      value(row, 1, "label", name),
      value(row, 2, "text", where),
      value(row, 3, "text", words),
      { row, column: 4, style: "count", formula: `COUNTIFS(${column(where)},${found})` },
      { row, column: 5, style: "count", formula: `COUNTIFS(${column(where)},${found},${column("Status")},"stop")` },
      { row, column: 6, style: "count", formula: `COUNTIFS(Parts[Planted],A${row})` },
      { row, column: 7, style: "text", formula: `INDEX(${column("Part")},MATCH(${found},${column(where)},0))` },
    ];
  });
  return {
    name: "Summary",
    widths: [32, 11, 44, 10, 10, 10, 12],
    cells: [
      ...headed(
        "Summary",
        "What the checks found, by kind: lines whose sentence (or notes) have the words. One line may have several kinds; what was not planted was found all the same.",
      ),
      ...states,
      value(end, 1, "totalLabel", "Lines"),
      { row: end, column: 2, style: "totalCount", formula: "ROWS(Parts[Part])" },
      ...across(KIND_ROW, 1, "header", ["Kind", "Found in", "Words"]),
      ...across(KIND_ROW, 4, "headerRight", ["Lines", "Of them stops", "Planted"]),
      value(KIND_ROW, 7, "header", "First one"),
      ...kinds,
    ],
    merges: ["A2:G2"],
    print: { landscape: false },
  };
}

const readMe = (): SheetModel =>
  readMeSheet({
    title: "Part-list check",
    subject: "500 lines against an invented shop",
    about:
      "Parts, machines and tools are invented: no drawing, firm or machine of these is meant. Problems were planted on purpose.",
    contents: [
      ["Summary", "How many lines are clear, to be looked at or stopped, and how many have which kind of problem."],
      ["Parts", "The list, one part a row. Paste your own over it."],
      ["Checks", "Status and sentence of every line."],
      ["Shop", "Machines, tools, stations, rates, shifts and sheets. Type your own over them."],
    ],
  });

/** The engineer's workbook. */
export const partListModel = (): WorkbookModel => ({
  title: "Bracket bill: part-list check of an invented shop",
  sheets: [
    readMe(),
    summarySheet(),
    partsSheet(),
    checksSheet(),
    shopSheet({ shop: SHOP_TABLES, shopNote: SHOP_NOTE }),
  ],
});
