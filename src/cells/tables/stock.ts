/** Sheets that can be bought or lie in the rack. */

import type { StockSheet } from "../../bill/nouns/stock.ts";
import { density } from "../../calc/material/strength.ts";
import type { Material } from "../../data/materials/material.ts";
import { COMMON_REMNANT_WORTH } from "../../data/remnants.ts";
import { kilograms, type Millimeters, mm, money } from "../../units/quantity.ts";
import { Refusal, wrong } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { KG_PER_POUND } from "../../units/system.ts";
import { readLayout } from "../parameters/cut-layout.ts";
import { readThickness } from "../parameters/length.ts";
import { between, type Columns, notNegative, oneOf, positive, type Row, whole } from "../parameters/read-table.ts";
import { remembered } from "../parameters/remembered.ts";
import { shopTable } from "../parameters/shop-table.ts";
import type { ReadContext, TableParameter } from "../record/record.ts";

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
  remnantWorth: { headers: ["Remnant worth"], kind: "number", optional: true, rule: between(0, 1) },
  remnant: { headers: ["Remnant"], kind: "text", optional: true, rule: oneOf("yes", "no") },
  grain: { headers: ["Grain"], kind: "text", optional: true, rule: oneOf("length", "width") },
  pinned: { headers: ["Pinned"], kind: "text", optional: true },
  edges: { headers: ["Edges sheared"], kind: "text", optional: true, rule: oneOf("yes", "no") },
} as const satisfies Columns;

function asStock(row: Row<typeof STOCK_COLUMNS>, name: string, context: ReadContext): StockSheet {
  const label = (column: string) => `${name} row ${row.row} column "${column}"`;
  const material = context.materials.find(row.material, label("Material"));
  const thickness = thicknessOf(row.thickness, material, label("Thickness"), context);
  const [length, width] = [mm(Math.max(row.length, row.width)), mm(Math.min(row.length, row.width))];
  const weight = kilograms(length * width * thickness * density(material));
  const byWeight =
    row.pricePerKilogram ?? (row.pricePerPound === undefined ? undefined : row.pricePerPound / KG_PER_POUND);
  const price = row.price ?? (byWeight === undefined ? undefined : byWeight * weight);
  // An offcut without a price is paid for already.
  const isRemnant = row.remnant?.toLowerCase() === "yes";
  return {
    name: row.name ?? `${material.name} ${showBoth(thickness, "length")}`,
    material,
    thickness,
    length,
    width,
    weight,
    price: price === undefined ? (isRemnant ? money(0) : undefined) : money(price),
    count: row.count,
    leadDays: row.leadDays,
    remnantWorth: row.remnantWorth ?? COMMON_REMNANT_WORTH.value,
    saysRemnantWorth: row.remnantWorth !== undefined,
    isRemnant,
    grain: grainOf(row),
    pinned: row.pinned === undefined ? undefined : pinnedOf(row.pinned, row.count, label),
    edgesSheared: row.edges?.toLowerCase() === "yes",
  };
}

/** So many sheets are cut to it. */
function pinnedOf(text: string, count: number | undefined, label: (column: string) => string): StockSheet["pinned"] {
  if (count === undefined) throw wrong(label("Count"), "given where a layout is pinned", null);
  return readLayout(text, label("Pinned"));
}

/** A sheet was rolled along its long side; an offcut says along which of its two. */
const grainOf = ({ grain, length, width }: Row<typeof STOCK_COLUMNS>): StockSheet["grain"] =>
  grain === undefined || length === width || (grain.toLowerCase() === "length") === length > width ? "long" : "short";

/** A thickness cell that has been read: millimeters already, or a gauge that the material makes a thickness. */
export function thicknessOf(
  cell: number | string,
  material: Material,
  label: string,
  context: ReadContext,
): Millimeters {
  if (typeof cell === "number") return mm(cell);
  try {
    return readThickness(cell, label, { ...context, material });
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    // A gauge that its series does not have speaks of "gauge"; in a table the cell must be named.
    throw new Refusal(problem.code, problem.message.replace(/^gauge /, `${label} `));
  }
}

export const stock = () => STOCK;
const STOCK: TableParameter<StockSheet[]> = (() => {
  const table = shopTable("stock table", "Sheets in stock or on offer", STOCK_COLUMNS, asStock);
  return { ...table, read: remembered(table.read) };
})();
