/** What CUT.PLAN spills, as prices and purchases read it: sheets by material and thickness. */
import type { Material } from "../../data/materials/material.ts";
import { type Millimetres, mm } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { type Columns, notNegative, positive, whole } from "../parameters/read-table.ts";
import { anyTable } from "../parameters/shop-table.ts";
import type { TableParameter } from "../record/record.ts";

const COLUMNS = {
  pattern: { headers: ["Pattern"], kind: "text", optional: true },
  stock: { headers: ["Stock"], kind: "text", optional: true },
  material: { headers: ["Material"], kind: "text", optional: "cell" },
  thickness: { headers: ["Thickness"], kind: "length", optional: "cell", rule: positive },
  length: { headers: ["Length"], kind: "length", optional: "cell", rule: positive },
  width: { headers: ["Width"], kind: "length", optional: "cell", rule: positive },
  sheets: { headers: ["Sheets"], kind: "number", optional: "cell", rule: whole(0, 1_000_000) },
  blanks: { headers: ["Blanks"], kind: "text", optional: true },
  price: { headers: ["Price"], kind: "number", optional: "cell", rule: notNegative },
} as const satisfies Columns;

export interface PlanRow {
  readonly stock: string;
  readonly material: string;
  readonly thickness: Millimetres;
  readonly length: Millimetres;
  readonly width: Millimetres;
  readonly sheets: number;
  readonly price: number;
  /** Blanks on one sheet by part; undefined where the range has no such column. */
  readonly blanks: ReadonlyMap<string, number> | undefined;
}

/** "A1 x 4; B2 x 2" */
const blanksOf = (list: string | undefined): PlanRow["blanks"] =>
  list === undefined
    ? undefined
    : new Map(
        list.split(";").flatMap((item) => {
          const [, part, count] = /^\s*(.*?) x (\d+)\s*$/.exec(item) ?? [];
          return part === undefined ? [] : [[part, Number(count)] as const];
        }),
      );

/** Rows of patterns; totals and rows that only carry a message are left out. */
export const plan = (): TableParameter<PlanRow[]> => {
  const table = anyTable(
    "cut plan",
    "What CUT.PLAN spills; blank: by area at the stated yield",
    COLUMNS,
    (row): PlanRow | undefined => {
      const { material, thickness, length, width, sheets, price } = row;
      if (material === undefined || thickness === undefined || length === undefined || width === undefined)
        return undefined;
      if (sheets === undefined || price === undefined || row.pattern?.toLowerCase() === "total") return undefined;
      return {
        stock: row.stock ?? "",
        material,
        thickness: mm(thickness),
        length: mm(length),
        width: mm(width),
        sheets,
        price,
        blanks: blanksOf(row.blanks),
      };
    },
    true,
  );
  return {
    ...table,
    read: (given, name, context) => table.read(given, name, context).filter((row) => row !== undefined),
  };
};

/** A thickness as plans and lines are matched by it: whole thousandths of a millimetre, since a spill may be rounded. */
export const sheetKey = (material: string, thickness: Millimetres): string =>
  `${material} ${Math.round(thickness * 1000)}`;

export const rowsFor = (plan: readonly PlanRow[], material: Material, thickness: Millimetres): PlanRow[] =>
  plan.filter((row) => sheetKey(row.material, row.thickness) === sheetKey(material.name, thickness));

/** How many blanks of a part the plan cuts; undefined where it does not say. */
export function plannedBlanks(plan: readonly PlanRow[], part: string): number | undefined {
  const told = plan.filter(({ blanks }) => blanks !== undefined);
  return told.length === 0
    ? undefined
    : told.reduce((sum, { blanks, sheets }) => sum + (blanks!.get(part) ?? 0) * sheets, 0);
}

/** Price of all sheets of a material and thickness. */
export function planPrice(plan: readonly PlanRow[], material: Material, thickness: Millimetres): number {
  const rows = rowsFor(plan, material, thickness);
  if (rows.length === 0)
    throw noAnswer("plan", `a range with sheets of ${material.name} ${showBoth(thickness, "length")}`, "none");
  return rows.reduce((sum, { price }) => sum + price, 0);
}
