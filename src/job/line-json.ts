/** One line of a plan as `bill --json` and `check --json` write it. Nothing is decided here. */

import { dueOf } from "../bill/dates/due.ts";
import { fixSays } from "../bill/fix-says.ts";
import type { BentStrip } from "../bill/lines/bent-strip.ts";
import { isLine } from "../bill/nouns/line.ts";
import { type BillPlan, isQuoted, type LineAnswer } from "../bill/plan.ts";
import { type Finding, problemsOf } from "../bill/problems.ts";
import { notesSay, says } from "../bill/says.ts";
import { timeOf } from "../bill/time/station-work.ts";
import { itemAt } from "../units/certain.ts";
import { Refusal } from "../units/refusal.ts";
import { refusalOr } from "../units/remember.ts";
import { type UnitSystem, unitName } from "../units/system.ts";
import type { LineJson } from "./bill-schema.ts";
import { figureIn, isoTime, orNull, plain, textOrNull } from "./plain-figures.ts";

const MINUTE = 60; // seconds, by definition

/** @param index of the line in the bill. */
export function lineJson(plan: BillPlan, index: number): LineJson {
  const answer = itemAt(plan.lines, index);
  const { system, job } = plan.shop;
  const figure = figureIn(system);
  const length = (value: number | undefined) => (value === undefined ? null : figure(value, "length"));
  const row = itemAt(plan.rows, index);
  const ordered = isLine(row) ? row : undefined;
  const due = ordered && dueOf(ordered, job);
  const { plan: planned, status, findings, cutter } = answer;
  const tools = planned?.tools;
  return {
    line: numberOf(answer),
    part: answer.part,
    quantity: orNull(ordered?.quantity),
    ordered: orNull(planned?.blanks),
    material: orNull(ordered?.material.name),
    thickness: length(planned?.line.thickness ?? ordered?.nominal),
    finish: textOrNull(ordered?.finish),
    weight: planned ? figure(planned.blank.weight, "mass") : null,
    status,
    accepted: textOrNull(ordered?.accepted),
    findings: findingsJson(plan, answer),
    notes: notesSay(findings, system),
    flat: planned
      ? { length: figure(planned.blank.length, "length"), width: figure(planned.blank.width, "length") }
      : null,
    radius: length(planned?.bend?.radius),
    deduction: length(planned?.bend?.deduction),
    method: orNull(planned?.bend?.method),
    die: orNull(tools?.die.name),
    punch: orNull(tools?.punch?.name),
    brake: orNull(tools?.brake.name),
    order: planned ? orderJson(planned.strips, system) : null,
    cut_on: orNull(cutter),
    quoted: answer.isQuoted,
    due: due === undefined ? null : isoTime(due),
    minutes: minutesOf(plan, answer),
    ...priceOf(plan, answer),
  };
}

/** A line's number in the bill: row 1 is the header. */
export const numberOf = ({ row }: { readonly row: number }): number => row - 1;

function findingsJson(plan: BillPlan, answer: LineAnswer): LineJson["findings"] {
  const { system } = plan.shop;
  const fix = plan.fix(answer);
  return problemsOf(answer.findings).map((finding, i) => ({
    about: finding.about,
    status: finding.status,
    figure: figureOf(finding, finding.figure, system),
    limit: figureOf(finding, finding.limit, system),
    unit: finding.quantity === undefined ? null : unitName(finding.quantity, system),
    says: says(finding, system),
    fix: fix && i === 0 ? { says: fixSays(fix, system), reaches: fix.reaches } : null,
  }));
}

function figureOf({ quantity }: Finding, value: number | undefined, system: UnitSystem): number | null {
  if (value === undefined || !Number.isFinite(value)) return null;
  return quantity === undefined ? plain(value) : figureIn(system)(value, quantity);
}

/** The hits of all strips, one strip after the other; null for a flat part, and where a strip has no order. */
function orderJson(strips: readonly BentStrip[], system: UnitSystem): LineJson["order"] {
  const figure = figureIn(system);
  const hits: NonNullable<LineJson["order"]> = [];
  for (const { order, part, depths } of strips) {
    if (!order.feasible) return null;
    for (const { bend, gaugedEnd, stop, turned, flipped } of order.hits)
      hits.push({
        hit: hits.length + 1,
        bend,
        angle: plain(itemAt(part.bends, bend - 1).angle),
        stop: figure(stop, "length"),
        end: gaugedEnd,
        turn: turned ? (flipped ? "ends and flip" : "ends") : flipped ? "flip" : "none",
        depth: figure(itemAt(depths, bend - 1), "length"),
      });
  }
  return hits.length === 0 ? null : hits;
}

/** Minutes of all its pieces, set-up included, by station. Empty where it is not quoted, or a figure is missing. */
function minutesOf(plan: BillPlan, answer: LineAnswer): LineJson["minutes"] {
  if (!isQuoted(answer)) return {};
  const work = refusalOr(() => plan.workOf(answer));
  const minutes = new Map<string, number>();
  if (!(work instanceof Refusal))
    for (const each of work.works)
      minutes.set(each.station.name, (minutes.get(each.station.name) ?? 0) + timeOf(each) / MINUTE);
  return Object.fromEntries([...minutes].map(([station, value]) => [station, plain(value)]));
}

function priceOf(plan: BillPlan, answer: LineAnswer): Pick<LineJson, "cost" | "price_each" | "price"> {
  const price = isQuoted(answer) ? refusalOr(() => plan.priceOf(answer)) : undefined;
  if (price === undefined || price instanceof Refusal) return { cost: null, price_each: null, price: null };
  return { cost: plain(price.cost), price_each: plain(price.unitPrice), price: plain(price.price) };
}
