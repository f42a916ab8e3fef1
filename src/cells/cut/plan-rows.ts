/** A cut plan as the rows of CUT.PLAN and CUT.LIST. */
import { cutList } from "../../calc/cutting/cut-list.ts";
import type { Plan, PlannedPattern } from "../../calc/cutting/types.ts";
import { Refusal } from "../../units/refusal.ts";
import { show, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { SpillRow } from "../record/spill-columns.ts";
import { type SheetPlan, stockId } from "./plan-sheets.ts";

export function planRows({ material, thickness, sheets, plan }: SheetPlan, system: UnitSystem): SpillRow[] {
  const common = { Material: material.name, Thickness: thickness };
  if (plan instanceof Refusal) return [{ ...common, Pattern: "Total", Message: plan.message }];
  const sheetOf = (pattern: PlannedPattern) => sheets.find((sheet, i) => stockId(sheet, i) === pattern.stock)!;
  const rows = plan.patterns.map((pattern): SpillRow => {
    const sheet = sheetOf(pattern);
    const blankArea = pattern.yields.reduce((sum, { blank, count }) => sum + count * areaOf(plan, blank), 0);
    return {
      ...common,
      Pattern: pattern.id,
      Stock: sheet.name,
      Length: pattern.w,
      Width: pattern.h,
      Sheets: pattern.repeats,
      Blanks: pattern.yields.map(({ blank, count }) => `${blank} x ${count}`).join("; "),
      Remnants: remnantsOf(plan, pattern, system),
      Yield: blankArea > 0 ? blankArea / (pattern.w * pattern.h) : undefined,
      Weight: sheet.weight * pattern.repeats,
      Price: sheet.price * pattern.repeats,
    };
  });
  const sum = (key: "Sheets" | "Weight" | "Price") => rows.reduce((total, row) => total + (row[key] as number), 0);
  return [
    ...rows,
    {
      ...common,
      Pattern: "Total",
      Sheets: sum("Sheets"),
      Yield: plan.sheetArea > 0 ? plan.blankArea / plan.sheetArea : undefined,
      Weight: sum("Weight"),
      Price: sum("Price"),
      "Lower bound": plan.bound,
      Message: leftOut(plan),
    },
  ];
}

/** Pieces are named after their pattern: "3", "3d1", "3d1.2". */
const patternOf = (piece: string): string => /^\d+/.exec(piece)?.[0] ?? piece;

const areaOf = (plan: Plan, blank: string): number => {
  for (const { falls, stays } of plan.cuts)
    for (const piece of [...falls, stays]) if (piece.blank === blank) return piece.w * piece.h;
  return 0;
};

const remnantsOf = (plan: Plan, pattern: PlannedPattern, system: UnitSystem): string =>
  plan.remnants
    .filter(({ piece }) => patternOf(piece) === pattern.id)
    .map(({ w, h }) => `${show(w, "length", system)} x ${show(h, "length", system)}`)
    .join("; ");

const leftOut = (plan: Plan): string =>
  [
    ...plan.leftOut.map(({ blank, count, reason }) => `${count} of ${blank} left out: ${reason}`),
    ...plan.warnings,
  ].join("; ");

export function listRows({ material, thickness, plan }: SheetPlan, system: UnitSystem): SpillRow[] {
  const sheet = `${material.name} ${show(thickness, "length", system)}`;
  if (plan instanceof Refusal) return [{ Note: sheet, Message: plan.message }];
  return cutList(plan).map((cut) => ({
    Cut: cut.seq,
    Pattern: patternOf(cut.piece),
    Piece: cut.copies > 1 ? `${cut.piece} (${cut.copies} of them)` : cut.piece,
    Gauge: cut.gauge ?? undefined,
    "Cut length": cut.length,
    Strokes: cut.strokes,
    Falls: cut.falls,
    Stays: cut.stays,
    Turn: cut.turn ? "turn" : "",
    Note: [sheet, cut.stage, cut.setting === 0 ? "cut to a mark" : `setting ${showNumber(cut.setting)}`].join(", "),
  }));
}
