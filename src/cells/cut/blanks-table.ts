/** Blanks to be cut, as BILL.BLANKS spills them or as typed by hand. */
import type { BlankGrain } from "../../calc/cutting/types.ts";
import type { Material } from "../../data/materials/material.ts";
import { type Millimetres, mm } from "../../units/quantity.ts";
import { type Columns, oneOf, positive, type Row, whole } from "../parameters/read-table.ts";
import { shopTable } from "../parameters/shop-table.ts";
import type { ReadContext, TableParameter } from "../record/record.ts";
import { thicknessOf } from "../tables/stock.ts";

const BLANK_COLUMNS = {
  part: { headers: ["Part", "Blank"], kind: "text" },
  material: { headers: ["Material"], kind: "text" },
  thickness: { headers: ["Thickness"], kind: "thickness" },
  length: { headers: ["Length"], kind: "length", rule: positive },
  width: { headers: ["Width"], kind: "length", rule: positive },
  quantity: { headers: ["Quantity"], kind: "number", rule: whole(0, 1_000_000) },
  grain: { headers: ["Grain"], kind: "text", optional: true, rule: oneOf("length", "width", "free", "") },
} as const satisfies Columns;

export interface BlankToCut {
  readonly part: string;
  readonly material: Material;
  readonly thickness: Millimetres;
  readonly length: Millimetres;
  readonly width: Millimetres;
  readonly quantity: number;
  readonly grain: BlankGrain;
}

/** The rolling direction runs along the blank's length, its width, or it does not matter. */
const GRAINS: Readonly<Record<string, BlankGrain>> = { length: "along", width: "across" };

function asBlank(row: Row<typeof BLANK_COLUMNS>, name: string, context: ReadContext): BlankToCut {
  const label = (column: string) => `${name} row ${row.row} column "${column}"`;
  const material = context.materials.find(row.material, label("Material"));
  return {
    part: row.part,
    material,
    thickness: thicknessOf(row.thickness, material, label("Thickness"), context),
    length: mm(row.length),
    width: mm(row.width),
    quantity: row.quantity,
    grain: GRAINS[row.grain?.toLowerCase() ?? ""] ?? "free",
  };
}

export const blanks = (): TableParameter<BlankToCut[]> =>
  shopTable(
    "blank table",
    'Blanks to cut, such as the spill of BILL.BLANKS; grain "length" or "width" is the way the sheet must be rolled',
    BLANK_COLUMNS,
    asBlank,
  );
