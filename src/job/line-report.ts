/** One line of the bill as it is shown beside the workbook and on paper: drawings, figures, what the checks say. */

import { checkPart } from "../calc/bend/order/part.ts";
import { checkPress } from "../calc/bend/order/press.ts";
import { type Problem, type Status, sentences, statusOf, worstFirst } from "../calc/problem.ts";
import { planBends, type StripPlan } from "../cells/bill/bend-plan.ts";
import { checkLine, type LineCheck } from "../cells/bill/check.ts";
import { orRefusal } from "../cells/bill/rows.ts";
import { type BillLine, type BillRow, isLine } from "../cells/tables/bill.ts";
import { drawBentProfile } from "../papers/drawing/bent-profile.ts";
import { drawEndOfBend } from "../papers/drawing/end-of-bend.ts";
import { drawFlat } from "../papers/drawing/flat-blank.ts";
import { Refusal } from "../units/refusal.ts";
import { show, showForce, showNumber } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import type { ShopBill } from "./shop-bill.ts";

export interface LineReport {
  readonly part: string;
  readonly status: Status | "unreadable";
  /** One a finding, the worst first. */
  readonly sentences: readonly string[];
  /** In the order a person asks for them. */
  readonly figures: readonly (readonly [name: string, value: string])[];
  /** SVG; the pictures of the tools come last, and are missing where no tool was found. */
  readonly drawings: readonly { readonly name: string; readonly svg: string }[];
}

export interface LineWork {
  readonly line: BillLine;
  readonly check: LineCheck;
  /** One a direction with bends; none for a flat part. */
  readonly bends: readonly StripPlan[];
  /** Why it cannot be drawn, where it cannot; the checks stand all the same. */
  readonly noDrawing: string | undefined;
}

/** Everything that is calculated for a line; a Refusal where it cannot be. */
export function workOf(row: BillRow, { shop, missing, press }: ShopBill): LineWork | Refusal {
  if (!isLine(row)) return row.refusal;
  if (!shop) return new Refusal("#N/A", missing[0] ?? "shop must be given; got nothing");
  return orRefusal(() => {
    const check = checkLine(row, shop);
    const bends = orRefusal(() => {
      const strips = planBends(row, check.chosen, check.blank.radius, press);
      // Now, so that nothing refuses while it is being drawn.
      for (const { part, press: tools } of strips) {
        checkPart(part);
        checkPress(tools);
      }
      return strips;
    });
    return bends instanceof Refusal
      ? { line: row, check, bends: [], noDrawing: bends.message }
      : { line: row, check, bends, noDrawing: undefined };
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
    drawings: drawingsOf(work, bill.system, "last"),
  };
}

/** What was found, each with its remedy, the worst first; one sentence where nothing was. */
export const sentencesOf = (problems: readonly Problem[]): string[] =>
  problems.length === 0 ? [sentences([])] : worstFirst(problems).map((problem) => sentences([problem]));

export function figuresOf({ line, check, bends }: LineWork, system: UnitSystem): (readonly [string, string])[] {
  const { blank, chosen, force } = check;
  const length = (value: number, digits = 4) => show(value, "length", system, digits);
  const springback = bends.flatMap((strip) => strip.springback).filter((angle) => angle !== undefined);
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
    springback.length === 0 ? undefined : ["Springback", show(Math.max(...springback), "angle", system, 2)],
  ];
  return rows.filter((row) => row !== undefined);
}

/** @param hits which pictures of the tools: of every bend, or of the last of each direction. */
export function drawingsOf(
  { line, bends }: LineWork,
  system: UnitSystem,
  hits: "every" | "last",
): LineReport["drawings"] {
  const [main, cross] = bends;
  if (!main) return [];
  const options = { name: line.part, grain: line.grain, cross: cross?.part };
  const bent = bends.map(({ part }, i) => ({
    name: i === 0 ? "Bent" : "Bent, second direction",
    svg: drawBentProfile(part, system, line.part),
  }));
  return [
    ...bent,
    { name: "Flat", svg: drawFlat(main.part, line.width, system, options) },
    ...bends.flatMap((strip, i) => hitPictures(strip, line.part, i, system).slice(hits === "every" ? 0 : -1)),
  ];
}

/** The end of every bend in its order; as far as it goes where no order was found. */
function hitPictures(strip: StripPlan, part: string, direction: number, system: UnitSystem): LineReport["drawings"] {
  const { order, press, plain } = strip;
  const hits = order.feasible ? order.hits : [...order.finished, ...order.blocked.slice(0, 1)];
  return hits.map((hit, i) => ({
    name: `${direction === 0 ? "" : "Second direction: "}Hit ${i + 1}: end of bend ${hit.bend}`,
    svg: drawEndOfBend(
      {
        part: strip.part,
        press,
        finished: hits.slice(0, i).map(({ bend }) => bend),
        hit,
        springback: strip.overbend(hit.bend),
        name: part,
        plain,
      },
      system,
    ),
  }));
}
