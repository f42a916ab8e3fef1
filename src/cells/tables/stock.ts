/** Sheets that can be bought or lie in the rack. The rolling direction runs the long way. */
import { density } from "../../calc/material/strength.ts";
import type { Material } from "../../data/materials/material.ts";
import { atLeast } from "../../units/nearly.ts";
import { type Kilograms, kilograms, type Millimetres, type Money, mm, money } from "../../units/quantity.ts";
import { noAnswer, Refusal, wrong } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { KG_PER_POUND } from "../../units/system.ts";
import { readThickness } from "../parameters/length.ts";
import { type Columns, notNegative, oneOf, positive, type Row, whole } from "../parameters/read-table.ts";
import { shopTable } from "../parameters/shop-table.ts";
import type { ReadContext } from "../record/record.ts";

const STOCK_COLUMNS = {
  name: { headers: ["Stock", "Sheet", "Name"], kind: "text", optional: true },
  material: { headers: ["Material"], kind: "text" },
  thickness: { headers: ["Thickness"], kind: "thickness" },
  length: { headers: ["Length"], kind: "length", rule: positive },
  width: { headers: ["Width"], kind: "length", rule: positive },
  price: { headers: ["Price", "Price each"], kind: "number", optional: true, rule: notNegative },
  pricePerPound: { headers: ["Price per lb"], kind: "number", optional: true, rule: notNegative },
  pricePerKilogram: { headers: ["Price per kg"], kind: "number", optional: true, rule: notNegative },
  count: { headers: ["Count", "Sheets"], kind: "number", optional: true, rule: whole(0, 100_000) },
  leadDays: { headers: ["Lead days"], kind: "number", optional: true, rule: whole(0, 1000) },
  remnant: { headers: ["Remnant"], kind: "text", optional: true, rule: oneOf("yes", "no") },
} as const satisfies Columns;

export interface StockSheet {
  readonly name: string;
  readonly material: Material;
  readonly thickness: Millimetres;
  /** The long side, along which the sheet was rolled. */
  readonly length: Millimetres;
  readonly width: Millimetres;
  readonly weight: Kilograms;
  readonly price: Money;
  /** undefined: as many as wanted. */
  readonly count: number | undefined;
  readonly leadDays: number | undefined;
  readonly isRemnant: boolean;
}

function asStock(row: Row<typeof STOCK_COLUMNS>, name: string, context: ReadContext): StockSheet {
  const label = (column: string) => `${name} row ${row.row} column "${column}"`;
  const material = context.materials.find(row.material, label("Material"));
  const thickness = thicknessOf(row.thickness, material, label("Thickness"), context);
  const [length, width] = [mm(Math.max(row.length, row.width)), mm(Math.min(row.length, row.width))];
  const weight = kilograms(length * width * thickness * density(material));
  const byWeight =
    row.pricePerKilogram ?? (row.pricePerPound === undefined ? undefined : row.pricePerPound / KG_PER_POUND);
  const price = row.price ?? (byWeight === undefined ? undefined : byWeight * weight);
  if (price === undefined) throw wrong(label("Price"), 'given, or one of "Price per lb" and "Price per kg"', null);
  return {
    name: row.name ?? `${material.name} ${showBoth(thickness, "length")}`,
    material,
    thickness,
    length,
    width,
    weight,
    price: money(price),
    count: row.count,
    leadDays: row.leadDays,
    isRemnant: row.remnant?.toLowerCase() === "yes",
  };
}

/** A thickness cell that has been read: millimetres already, or a gauge that the material makes a thickness. */
export function thicknessOf(
  cell: number | string,
  material: Material,
  label: string,
  context: ReadContext,
): Millimetres {
  if (typeof cell === "number") return mm(cell);
  try {
    return readThickness(cell, label, { ...context, material });
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    // A gauge that its series does not have speaks of "gauge"; in a table the cell must be named.
    throw new Refusal(problem.code, problem.message.replace(/^gauge /, `${label} `));
  }
}

export const stock = () => shopTable("stock table", "Sheets in stock or on offer", STOCK_COLUMNS, asStock);

/**
 * The sheets a line is cut from: its material, in its thickness or else the next thicker one there is. Thickness decides
 * alone; which of several sizes to pull is the cut plan's question.
 */
export function sheetsFor(material: Material, thickness: Millimetres, sheets: readonly StockSheet[]): StockSheet[] {
  const same = sheets.filter((sheet) => sheet.material.name === material.name);
  const least = Math.min(
    ...same.filter((sheet) => atLeast(sheet.thickness, thickness)).map((sheet) => sheet.thickness),
  );
  const fitting = same.filter((sheet) => sheet.thickness === least);
  if (fitting.length === 0)
    throw noAnswer(
      "stock",
      `a table with a sheet of ${material.name} of at least ${showBoth(thickness, "length")}`,
      same.length === 0 ? "none of this material" : `${same.length} thinner ones`,
    );
  return fitting;
}
