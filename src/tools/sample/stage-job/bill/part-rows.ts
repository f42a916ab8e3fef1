/** The bill of the sample as the rows of its sheet. */
import { PART_COLUMNS } from "../../../../job/job-sheets/parts-sheet.ts";
import type { CellValue } from "../../../../units/cell.ts";
import { entryOf } from "../../../../units/certain.ts";
import { AREAS, type Features, featuresOf } from "./features.ts";
import { PARTS, type Part } from "./job.ts";

const BY_HEADER: Readonly<Record<string, (part: Part & Features) => CellValue>> = {
  Part: ({ part }) => part,
  Description: ({ description }) => description,
  Quantity: ({ quantity }) => quantity,
  Material: ({ material }) => material,
  Thickness: ({ thickness }) => thickness,
  Flanges: ({ flanges }) => flanges,
  "Bend angles": ({ bendAngles }) => bendAngles,
  "Bend length": ({ bendLength }) => bendLength,
  Die: ({ die }) => die,
  Punch: ({ punch }) => punch,
  "Hole distance": ({ holeDistance }) => holeDistance,
  Grain: ({ grain }) => grain,
  Holes: ({ holes }) => holes,
  "Hole diameter": ({ holeDiameter }) => holeDiameter,
  Operations: ({ operations }) => operations,
  "Drawing radius": ({ radius }) => radius,
  "Radius tolerance": ({ radiusTolerance }) => radiusTolerance,
  Tolerance: ({ tolerance }) => tolerance,
  Spares: ({ spares }) => spares,
  Area: ({ part }) => AREAS[part.slice(0, 2)] ?? null,
  Certificate: ({ certificate }) => certificate,
  Route: () => null,
};

export const PART_ROWS: readonly CellValue[][] = PARTS.map((part) =>
  PART_COLUMNS.map(({ header }) =>
    entryOf({ get: (own: string) => BY_HEADER[own] }, header)({ ...part, ...featuresOf(part.part) }),
  ),
);
