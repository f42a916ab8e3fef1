/** The plan of a bill as `bill --json` writes it: an extract that other programs read. Nothing is decided here. */
import type { BillPlan } from "../bill/plan.ts";
import { planSetUps } from "../bill/setups/plan-setups.ts";
import { Refusal } from "../units/refusal.ts";
import { refusalOr } from "../units/remember.ts";
import { BILL_JSON, type BillJson, PART_JSON, type PartJson } from "./bill-schema.ts";
import { lineJson, numberOf } from "./line-json.ts";
import { figureIn, isoTime, orNull, plain } from "./plain-figures.ts";

/** It is written through its schema: anything the schema does not know is our fault, never an answer. */
export const billJson = (plan: BillPlan): BillJson => {
  const lines = plan.lines.map((_, i) => lineJson(plan, i));
  return BILL_JSON.parse({
    version: 1,
    plan: plan.number,
    units: plan.shop.system,
    lines,
    sheets: sheetsJson(plan),
    setups: planSetUps(plan.quoted).map(({ tools, lines: set }) => ({
      brake: tools.brake.name,
      die: tools.die.name,
      punch: orNull(tools.punch?.name),
      lines: set.map(({ plan: { line } }) => numberOf(line)),
    })),
    totals: totalsJson(plan, lines),
    not_checked: [...plan.notChecked],
  });
};

/** The same of each part by itself, with its row. @param above rows of its file above the heading. */
export const partsJson = (plan: BillPlan, above = 0): PartJson[] =>
  plan.lines.map(({ row }, i) => PART_JSON.parse({ row: row + above, ...lineJson(plan, i) }));

/** One row a size of Stock that a material and thickness pulls for one machine. */
function sheetsJson({ groups, shop }: BillPlan): BillJson["sheets"] {
  const figure = figureIn(shop.system);
  return groups.flatMap(({ material, cutter, uses }) =>
    uses.map(({ sheet, count, price, pieces, remnants }) => ({
      material: material.name,
      thickness: figure(sheet.thickness, "length"),
      stock: sheet.name,
      machine: cutter,
      count,
      price: price === undefined ? null : plain(price),
      pieces: [...pieces].map(([{ line }, of]) => ({ line: numberOf(line), part: line.part, count: of })),
      remnants: remnants.map(({ length, width }) => ({
        length: figure(length, "length"),
        width: figure(width, "length"),
      })),
    })),
  );
}

function totalsJson(plan: BillPlan, lines: BillJson["lines"]): BillJson["totals"] {
  const { totals } = plan;
  const money = refusalOr(() => plan.money);
  const dates = refusalOr(() => plan.dates);
  const found = dates instanceof Refusal ? undefined : dates;
  const charges = money instanceof Refusal ? undefined : money.charges;
  const sum = (key: "cost" | "price") => lines.reduce((total, line) => total + (line[key] ?? 0), 0);
  return {
    lines: totals.lines,
    ...totals.of,
    quoted: totals.quoted,
    pieces: totals.pieces,
    weight: figureIn(plan.shop.system)(totals.weight, "mass"),
    cost: charges ? plain(sum("cost")) : null,
    price: charges ? toCent(sum("price")) : null,
    finish: found?.finish === undefined ? null : isoTime(found.finish),
    late: found ? found.late : null,
    minimum: charges ? plain(charges.minimum) : null,
    rush: charges ? plain(charges.rush) : null,
    crate: charges ? plain(charges.crate) : null,
    truck: charges ? plain(charges.truck) : null,
    tax: charges ? plain(charges.tax) : null,
    order: charges ? plain(charges.total) : null,
  };
}

/** Sums of cents are cents again. */
const toCent = (value: number): number => Math.round(value * 100) / 100;
