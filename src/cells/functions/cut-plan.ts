import type { CutGroup } from "../../bill/cut/plan-cutting.ts";
import type { BillPlan } from "../../bill/plan.ts";
import type { CutNode } from "../../calc/cutting/cut-tree.ts";
import { patternIdOf } from "../../calc/cutting/pattern-id.ts";
import type { PinnedNode, Plan } from "../../calc/cutting/types.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { entryOf, itemAt } from "../../units/certain.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { showLayout } from "../parameters/cut-layout.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

type Row = SpillRow<"CUT.PLAN">;

export const cutPlan = defineBillFunction({
  name: "CUT.PLAN",
  question: "Which sheets are pulled, and what is cut from each?",
  example: { formula: `=INDEX(SHOP.CUT.PLAN(${EXAMPLE_CUTTERS}),2,8)`, answer: 1 },
  source: "strip patterns and insertion within the shear's limits, every plan replayed cut by cut (derived)",
  answer: cutPlanRows,
});

/** The shear's patterns, and the waterjet's sheets by count. */
export function cutPlanRows(plan: BillPlan): CellMatrix {
  const { system } = plan.shop;
  const rows = plan.groups.flatMap((group) => {
    const found = group.plan ? patternRows(group, group.plan, system) : jetRows(group);
    return [...found, totalRow(group)];
  });
  return spill("CUT.PLAN", rows, system);
}

const commonOf = ({ material, thickness, shear }: CutGroup): Row => ({
  Material: material.name,
  Thickness: thickness,
  "Cut on": shear?.name ?? "waterjet",
});

function patternRows(group: CutGroup, plan: Plan, system: UnitSystem): Row[] {
  const { sheetOf, lineOf } = group;
  return plan.patterns.map((pattern): Row => {
    const sheet = entryOf(sheetOf, pattern.stock);
    const area = pattern.yields.reduce((sum, { blank, count }) => {
      const { length, width } = entryOf(lineOf, blank).blank;
      return sum + count * length * width;
    }, 0);
    const remnants = plan.remnants.filter(({ piece }) => patternIdOf(piece) === pattern.id);
    return {
      ...commonOf(group),
      Pattern: pattern.id,
      Stock: sheet.name,
      Length: pattern.w,
      Width: pattern.h,
      Sheets: pattern.repeats,
      Blanks: pattern.yields.map(({ blank, count }) => `${blank} x ${count}`).join("; "),
      Remnants: remnants.map(({ w, h }) => `${show(w, "length", system)} x ${show(h, "length", system)}`).join("; "),
      Yield: area / (pattern.w * pattern.h),
      Weight: sheet.weight * pattern.repeats,
      Price: sheet.price === undefined ? undefined : sheet.price * pattern.repeats,
      Layout: showLayout(named(pattern.layout, [...lineOf.keys()])),
    };
  });
}

/** Blanks by the names they have in the plan. */
const named = (node: CutNode, names: readonly string[]): PinnedNode =>
  "item" in node
    ? { blank: itemAt(names, node.item), turned: node.turned }
    : { direction: node.direction, parts: node.parts.map((part) => named(part, names)) };

const jetRows = (group: CutGroup): Row[] =>
  group.uses.map(({ sheet, count, weight, price, pieces }, i) => {
    const area = [...pieces].reduce((sum, [{ blank }, cut]) => sum + cut * blank.length * blank.width, 0);
    return {
      ...commonOf(group),
      Pattern: `${i + 1}`,
      Stock: sheet.name,
      Length: sheet.length,
      Width: sheet.width,
      Sheets: count,
      Blanks: [...pieces].map(([{ line }, cut]) => `${line.part} x ${cut} in all`).join("; "),
      Yield: area / (sheet.length * sheet.width * count),
      Weight: weight,
      Price: price,
    };
  });

function totalRow(group: CutGroup): Row {
  const { uses, plan } = group;
  const sum = (of: (use: CutGroup["uses"][number]) => number) => uses.reduce((total, use) => total + of(use), 0);
  return {
    ...commonOf(group),
    Pattern: "Total",
    Sheets: sum(({ count }) => count),
    Yield: plan && plan.sheetArea > 0 ? plan.blankArea / plan.sheetArea : undefined,
    Weight: sum(({ weight }) => weight),
    Price: uses.some(({ price }) => price === undefined) ? undefined : sum(({ price = 0 }) => price),
    "Lower bound": plan?.bound,
    Message: plan?.warnings.join("; "),
  };
}
