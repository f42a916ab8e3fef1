import { CURRENT_EDITION } from "../../../../data/materials/editions.ts";
import { tableCells, value } from "../../building/cells.ts";
import type { SheetModel, SheetTable, Validation } from "../../xlsx/model.ts";
import type { StyleName } from "../../xlsx/styles.ts";
import { PART_COLUMNS, PARTS } from "../job.ts";
import { namesOf } from "./shop-sheet.ts";

/** Thickness, flanges and angles are text cells: 3/16 typed into a plain cell becomes a day in March. */
const STYLES: readonly StyleName[] = [
  "inputText",
  "inputText",
  "inputNumber",
  "inputText",
  "inputText",
  "inputText",
  "inputText",
  "inputNumber",
  "inputText",
  "inputText",
  "inputNumber",
  "inputText",
];

const HEADER_ROW = 4;
const FIRST = HEADER_ROW + 1;
const LAST = HEADER_ROW + PARTS.length;

const validations = (): Validation[] => {
  const down = (column: string): string => `${column}${FIRST}:${column}${LAST}`;
  return [
    {
      area: down("C"),
      type: "whole",
      formula: "0",
      prompt: "How many pieces",
      refusal: "A whole number of more than 0",
    },
    {
      area: down("D"),
      type: "list",
      formula: `"${CURRENT_EDITION.materials.map(({ name }) => name).join(",")}"`,
      prompt: "A material of the functions; MATERIAL.LIST shows all",
    },
    {
      area: down("H"),
      type: "decimal",
      formula: "0",
      prompt: "Inches, a plain number",
      refusal: "A number of more than 0, in inches",
    },
    { area: down("I"), type: "list", formula: namesOf("Dies"), prompt: "A die of the sheet Shop" },
    { area: down("J"), type: "list", formula: namesOf("Punches"), prompt: "A punch of the sheet Shop, or blank" },
    {
      area: down("L"),
      type: "list",
      formula: '"across,along"',
      prompt: "Bend line across or along the rolling direction; blank where nobody said",
    },
  ];
};

export function partsSheet(): SheetModel {
  const table: SheetTable = { name: "Parts", row: HEADER_ROW, column: 1, headers: PART_COLUMNS, rows: PARTS.length };
  const rows = PARTS.map((part) => [
    part.part,
    part.description,
    part.quantity,
    part.material,
    part.thickness,
    part.flanges,
    part.bendAngles,
    part.bendLength,
    part.die,
    part.punch,
    part.holeDistance,
    part.grain,
  ]);
  return {
    name: "Parts",
    widths: [9, 26, 10, 12, 11, 23, 16, 11, 11, 13, 11, 10],
    columnStyles: [undefined, undefined, undefined, undefined, "textColumn", "textColumn", "textColumn"],
    cells: [
      value(1, 1, "title", "Parts"),
      value(
        2,
        1,
        "note",
        "One bracket a row. Plain numbers are inches; text brings its own unit (3/16, 3 mm, 4,5 mm, 10 ga). Flanges are outside sizes in order along the strip, bend angles the angles the sheet is turned through. Bend length is the width of the blank. Hole distance runs from the other flange's inside face to the hole's edge.",
      ),
      ...tableCells(table, rows, STYLES),
    ],
    tables: [table],
    validations: validations(),
    merges: ["A2:L2"],
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: { landscape: true, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
  };
}
