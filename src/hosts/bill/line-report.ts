/** One line of the bill as it is shown beside the workbook and on paper: drawings, figures, what the checks say. */

import { type Problem, type Status, sentences, statusOf, worstFirst } from "../../calc/problem.ts";
import { checkLine, type LineCheck } from "../../cells/bill/check.ts";
import { orRefusal } from "../../cells/bill/rows.ts";
import { type BillLine, type BillRow, isLine } from "../../cells/tables/bill.ts";
import { Refusal } from "../../units/refusal.ts";
import { show, showForce, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { drawBentProfile } from "../drawing/bent-profile.ts";
import { drawFlat } from "../drawing/flat-blank.ts";
import { type BendPlan, planBends } from "./bend-plan.ts";
import type { ShopBill } from "./shop-bill.ts";

export interface LineReport {
  readonly part: string;
  readonly status: Status | "unreadable";
  /** One a finding, the worst first. */
  readonly sentences: readonly string[];
  /** In the order a person asks for them. */
  readonly figures: readonly (readonly [name: string, value: string])[];
  /** SVG; the picture of the tools comes last, and is missing where no tool was found. */
  readonly drawings: readonly { readonly name: string; readonly svg: string }[];
}

export interface LineWork {
  readonly line: BillLine;
  readonly check: LineCheck;
  readonly bends: BendPlan | undefined;
  /** Why it cannot be drawn, where it cannot; the checks stand all the same. */
  readonly noDrawing: string | undefined;
}

/** Everything that is calculated for a line; a Refusal where it cannot be. */
export function workOf(row: BillRow, { shop, missing, press }: ShopBill): LineWork | Refusal {
  if (!isLine(row)) return row.refusal;
  if (!shop) return new Refusal("#N/A", missing[0] ?? "shop must be given; got nothing");
  return orRefusal(() => {
    const check = checkLine(row, shop);
    const bends = orRefusal(() => planBends(row, check, press));
    const refused = bends instanceof Refusal;
    return {
      line: row,
      check,
      bends: refused ? undefined : bends,
      noDrawing: refused ? bends.message : undefined,
    };
  });
}

export function lineReport(row: BillRow, bill: ShopBill): LineReport {
  const work = workOf(row, bill);
  if (work instanceof Refusal)
    return { part: row.part, status: "unreadable", sentences: [work.message], figures: [], drawings: [] };
  const { line, check } = work;
  return {
    part: line.part,
    status: statusOf(check.problems),
    sentences: [...sentencesOf(check.problems), ...(work.noDrawing ? [`Not drawn: ${work.noDrawing}`] : [])],
    figures: figuresOf(work, bill.system),
    drawings: drawingsOf(work, bill.system),
  };
}

/** What was found, each with its remedy, the worst first; one sentence where nothing was. */
export const sentencesOf = (problems: readonly Problem[]): string[] =>
  problems.length === 0 ? [sentences([])] : worstFirst(problems).map((problem) => sentences([problem]));

export function figuresOf({ line, check, bends }: LineWork, system: UnitSystem): (readonly [string, string])[] {
  const { blank, chosen, force } = check;
  const length = (value: number, digits = 4) => show(value, "length", system, digits);
  const rows: (readonly [string, string] | undefined)[] = [
    ["Material", line.material.name],
    ["Thickness", length(line.thickness)],
    ["Pieces", showNumber(line.quantity, 7)],
    ["Flat", `${length(blank.length, 5)} x ${length(blank.width, 5)}`],
    ["Weight each", show(blank.weight, "mass", system, 3)],
    chosen && ["Die", chosen.setup.die.name],
    chosen?.setup.punch && ["Punch", chosen.setup.punch.name],
    blank.radius === undefined ? undefined : ["Inside radius", length(blank.radius, 3)],
    force && ["Force", `${showForce(force.expected, system)}, at worst ${showForce(force.worst, system)}`],
    bends?.springback === undefined ? undefined : ["Springback", show(bends.springback, "angle", system, 2)],
  ];
  return rows.filter((row) => row !== undefined);
}

export function drawingsOf({ line, bends }: LineWork, system: UnitSystem): LineReport["drawings"] {
  if (!bends) return [];
  const { part } = bends;
  return [
    { name: "Bent", svg: drawBentProfile(part, system, line.part) },
    { name: "Flat", svg: drawFlat(part, line.width, system, { name: line.part, grain: line.grain }) },
    ...bends.pictures(line.part, system),
  ];
}
