import { CURRENT_EDITION } from "../../../../data/materials/editions.ts";
import type { CellValue } from "../../../../units/cell.ts";
import { tableCells, value } from "../../building/cells.ts";
import { namesOf } from "../../shop/shop-sheet.ts";
import type { SheetModel, SheetTable, Validation } from "../../xlsx/model.ts";
import { columnName } from "../../xlsx/xml.ts";
import { AREAS, type Features, featuresOf } from "../bill/features.ts";
import { PARTS, type Part } from "../bill/job.ts";

type Bracket = Part & Features;
export interface PartColumn {
  readonly header: string;
  readonly width: number;
  readonly of: (part: Bracket) => CellValue;
  readonly number?: true;
  /** A text cell down to the bottom: 3/16 typed into a plain cell becomes a day in March. */
  readonly keepsText?: true;
}

export const PART_COLUMNS: readonly PartColumn[] = [
  { header: "Part", width: 8, of: ({ part }) => part },
  { header: "Description", width: 25, of: ({ description }) => description },
  { header: "Quantity", width: 9, number: true, of: ({ quantity }) => quantity },
  { header: "Material", width: 11, of: ({ material }) => material },
  { header: "Thickness", width: 12, keepsText: true, of: ({ thickness }) => thickness },
  { header: "Flanges", width: 19, keepsText: true, of: ({ flanges }) => flanges },
  { header: "Bend angles", width: 14, keepsText: true, of: ({ bendAngles }) => bendAngles },
  { header: "Bend length", width: 8, number: true, of: ({ bendLength }) => bendLength },
  { header: "Die", width: 10, of: ({ die }) => die },
  { header: "Punch", width: 11, of: ({ punch }) => punch },
  { header: "Hole distance", width: 9, number: true, of: ({ holeDistance }) => holeDistance },
  { header: "Grain", width: 8, of: ({ grain }) => grain },
  { header: "Holes", width: 7, number: true, of: ({ holes }) => holes },
  { header: "Hole diameter", width: 9, number: true, of: ({ holeDiameter }) => holeDiameter },
  { header: "Operations", width: 21, of: ({ operations }) => operations },
  { header: "Drawing radius", width: 9, number: true, of: ({ radius }) => radius },
  { header: "Radius tolerance", width: 10, number: true, of: ({ radiusTolerance }) => radiusTolerance },
  { header: "Tolerance", width: 10, number: true, of: ({ tolerance }) => tolerance },
  { header: "Spares", width: 7, number: true, of: ({ spares }) => spares },
  { header: "Area", width: 9, of: ({ part }) => AREAS[part.slice(0, 2)] ?? null },
  { header: "Certificate", width: 12, of: ({ certificate }) => certificate },
  { header: "Route", width: 10, of: () => null },
];

const HEADER_ROW = 4;
const FIRST = HEADER_ROW + 1;
const LAST = HEADER_ROW + PARTS.length;

const down = (header: string): string => {
  const column = columnName(PART_COLUMNS.findIndex((found) => found.header === header) + 1);
  return `${column}${FIRST}:${column}${LAST}`;
};

const validations = (): Validation[] => [
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
    prompt: "Inches, a plain number",
    refusal: "A number of more than 0, in inches",
  },
  { area: down("Die"), type: "list", formula: namesOf("Dies"), prompt: "A die of the sheet Shop" },
  { area: down("Punch"), type: "list", formula: namesOf("Punches"), prompt: "A punch of the sheet Shop, or blank" },
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

export function partsSheet(): SheetModel {
  const table: SheetTable = {
    name: "Parts",
    row: HEADER_ROW,
    column: 1,
    headers: PART_COLUMNS.map(({ header }) => header),
    rows: PARTS.length,
  };
  const rows = PARTS.map((part) => PART_COLUMNS.map(({ of }) => of({ ...part, ...featuresOf(part.part) })));
  return {
    name: "Parts",
    widths: PART_COLUMNS.map(({ width }) => width),
    columnStyles: PART_COLUMNS.map(({ keepsText }) => (keepsText ? "textColumn" : undefined)),
    cells: [
      value(1, 1, "title", "Parts"),
      value(
        2,
        1,
        "note",
        "One bracket a row. Plain numbers are inches; text brings its own unit (3/16, 3 mm, 4,5 mm, 10 ga). Flanges are outside sizes in order along the strip, bend angles the angles the sheet is turned through. Bend length is the width of the blank. Hole distance runs from the other flange's inside face to the hole's edge. Tolerance is that of the outside sizes, plus and minus. Operations are stations of the sheet Shop, with how many where a piece has several: Tap 2; Coating. Spares are among the pieces ordered.",
      ),
      ...tableCells(
        table,
        rows,
        PART_COLUMNS.map(({ number }) => (number ? "inputNumber" : "inputText")),
      ),
    ],
    tables: [table],
    validations: validations(),
    merges: ["A2:J2"],
    frozen: { rows: HEADER_ROW, columns: 1 },
    print: { landscape: true, pagesWide: 2, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
  };
}
