/** The figures of a line in the order a person asks for them, all of them the plan's. */
import { hitsOf } from "../bill/lines/bent-strip.ts";
import type { LinePlan } from "../bill/lines/plan-line.ts";
import type { LineAnswer } from "../bill/plan.ts";
import { missing } from "../units/certain.ts";
import { show, showForce, showNumber, showPlain, showReading, showThickness } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";

export type Figure = readonly [name: string, value: string];

export function lineFigures(plan: LinePlan, { cutter }: LineAnswer, system: UnitSystem): Figure[] {
  const { line, blank, blanks, tools, bend, force, strips } = plan;
  const length = (value: number, digits: number) => show(value, "length", system, digits);
  const springback = strips.flatMap((strip) => strip.springback).filter((angle) => angle !== undefined);
  const rows: (Figure | undefined)[] = [
    ["Material", line.material.name],
    ["Thickness", showThickness(line.thickness, system)],
    ["Pieces", showNumber(line.quantity, 7)],
    blanks === line.quantity ? undefined : ["Blanks", showNumber(blanks, 7)],
    ["Flat", `${showPlain(blank.length, system)} x ${showReading(blank.width, system)}`],
    ["Weight each", show(blank.weight, "mass", system, 3)],
    cutter && ["Cut on", (plan.cutting[cutter] ?? missing()).name],
    tools && ["Brake", tools.brake.name],
    tools && ["Die", tools.die.name],
    tools?.punch && ["Punch", tools.punch.name],
    bend && ["Inside radius", length(bend.radius, 3)],
    bend && ["Deduction", `${showReading(bend.deduction, system)}, by ${bend.method}`],
    force && ["Force", `${showForce(force.expected, system)}, at worst ${showForce(force.worst, system)}`],
    springback.length === 0 ? undefined : ["Springback", show(Math.max(...springback), "angle", system, 2)],
    line.accepted === "" ? undefined : ["Accepted", line.accepted],
  ];
  return rows.filter((row) => row !== undefined);
}

/** Order of the bends and settings of the back gauge, a row each; both directions of a tray one after the other. */
export function orderFigures({ strips }: LinePlan, system: UnitSystem): Figure[] {
  if (strips.length === 0) return [];
  const both = (of: (hit: ReturnType<typeof hitsOf>[number]) => string) =>
    strips.map((strip) => hitsOf(strip).map(of).join("; ")).join(" | ");
  const isFound = strips.every(({ order }) => order.feasible);
  return [
    [isFound ? "Bend order" : "Usual order, to try", both(({ bend }) => String(bend))],
    ["Back gauge", both(({ stop }) => showReading(stop, system))],
  ];
}
