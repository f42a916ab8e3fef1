import { CURRENT_EDITION } from "../../data/materials/editions.ts";
import { headed, tableCells } from "../building/cells.ts";
import type { SheetModel, SheetTable, Validation } from "../xlsx/model.ts";
import { columnName } from "../xlsx/xml.ts";
import type { JobContents, PartColumn } from "./contents.ts";
import { namesOf } from "./shop-sheet.ts";

export const PART_COLUMNS: readonly PartColumn[] = [
  { header: "Part", width: 8 },
  { header: "Description", width: 25 },
  { header: "Quantity", width: 9, number: true },
  { header: "Material", width: 11 },
  { header: "Thickness", width: 12, keepsText: true },
  { header: "Flanges", width: 19, keepsText: true },
  { header: "Bend angles", width: 14, keepsText: true },
  { header: "Bend length", width: 8, number: true },
  { header: "Die", width: 10 },
  { header: "Punch", width: 11 },
  { header: "Hole distance", width: 9, number: true },
  { header: "Grain", width: 8 },
  { header: "Holes", width: 7, number: true },
  { header: "Hole diameter", width: 9, number: true },
  { header: "Operations", width: 21 },
  { header: "Drawing radius", width: 9, number: true },
  { header: "Radius tolerance", width: 10, number: true },
  { header: "Tolerance", width: 10, number: true },
  { header: "Spares", width: 7, number: true },
  { header: "Area", width: 9 },
  { header: "Certificate", width: 12 },
  { header: "Route", width: 10 },
];

/** What the floor marks for the shop's week, behind all that the bill itself reads. */
export const MARK_PART_COLUMNS: readonly PartColumn[] = [
  { header: "Done", width: 14, keepsText: true },
  { header: "Started", width: 22, keepsText: true },
  { header: "Pinned", width: 22, keepsText: true },
];

const HEADER_ROW = 4;
const FIRST = HEADER_ROW + 1;

/** Down to the last part. */
const downOf =
  ({ partColumns, parts }: JobContents) =>
  (header: string): string => {
    const column = columnName(partColumns.findIndex((found) => found.header === header) + 1);
    return `${column}${FIRST}:${column}${HEADER_ROW + parts.length}`;
  };

/** A list of names of the sheet Shop, where it has the table. */
function namesIn(contents: JobContents, header: string, table: string, prompt: string): Validation[] {
  const formula = namesOf(contents, table);
  return formula === undefined ? [] : [{ area: downOf(contents)(header), type: "list", formula, prompt }];
}

function validations(contents: JobContents): Validation[] {
  const down = downOf(contents);
  return [
    {
      area: down("Quantity"),
      type: "whole",
      formula: "0",
      prompt: "How many pieces",
      refusal: "A whole number of more than 0",
    },
    {
      area: down("Material"),
      type: "list",
      formula: `"${CURRENT_EDITION.materials.map(({ name }) => name).join(",")}"`,
      prompt: "A material of the functions; MATERIAL.LIST shows all",
    },
    {
      area: down("Bend length"),
      type: "decimal",
      formula: "0",
      prompt: "A plain number, or text that brings its own unit",
    },
    ...namesIn(contents, "Die", "Dies", "A die of the sheet Shop, or blank: the plan chooses"),
    ...namesIn(contents, "Punch", "Punches", "A punch of the sheet Shop, or blank"),
    {
      area: down("Grain"),
      type: "list",
      formula: '"across,along"',
      prompt: "Bend line across or along the rolling direction; blank where nobody said",
    },
    {
      area: down("Route"),
      type: "list",
      formula: '"shear,waterjet"',
      prompt: "Blank: BILL.ROUTE chooses; else the machine that must cut it",
    },
  ];
}

export function partsSheet(contents: JobContents): SheetModel {
  const { partColumns, parts, system } = contents;
  const table: SheetTable = {
    name: "Parts",
    row: HEADER_ROW,
    column: 1,
    headers: partColumns.map(({ header }) => header),
    rows: parts.length,
  };
  return {
    name: "Parts",
    widths: partColumns.map(({ width }) => width),
    columnStyles: partColumns.map(({ keepsText }) => (keepsText ? "textColumn" : undefined)),
    cells: [
      ...headed(
        "Parts",
        `One bracket a row. Plain numbers are ${system === "in" ? "inches" : "millimeters"}; text brings its own unit (3/16, 3 mm, 4,5 mm, 10 ga). Flanges are outside sizes in order along the strip, bend angles the angles the sheet is turned through. Bend length is the width of the blank. Hole distance runs from the other flange's inside face to the hole's edge. Tolerance is that of the outside sizes, plus and minus. Operations are stations of the sheet Shop, with how many where a piece has several: Tap 2; Coating. Spares are among the pieces ordered.`,
      ),
      ...tableCells(
        table,
        parts,
        partColumns.map(({ number }) => (number ? "inputNumber" : "inputText")),
      ),
    ],
    tables: [table],
    validations: validations(contents),
    merges: ["A2:J2"],
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: { landscape: true, pagesWide: 2, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
  };
}
