/** The blank of a line: flat sizes, cut path, weight, and which way the grain must run. */
import { airRadiusByRule } from "../../calc/bend/air-radius.ts";
import { findProblems } from "../../calc/bend/check/check.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import type { BentPart } from "../../calc/bend/order/part.ts";
import { flatLength } from "../../calc/flat/flat-length.ts";
import { blankWeight } from "../../calc/flat/weight.ts";
import { density } from "../../calc/material/strength.ts";
import { K_DEFAULT } from "../../data/bend-rules.ts";
import { degrees, type Kilograms, type Millimetres, mm } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import type { BillLine, Strip } from "../tables/bill.ts";
import type { Chosen } from "./tools.ts";

export interface Blank {
  readonly length: Millimetres;
  readonly width: Millimetres;
  readonly weight: Kilograms;
  /** Outline, holes and notches of one blank. */
  readonly path: Millimetres;
  readonly pierces: number;
  /** Rolling direction along the blank's length or width; "" where either will do. */
  readonly grain: "length" | "width" | "";
  /** Inside radius the die gives; undefined for a flat part. */
  readonly radius: Millimetres | undefined;
  /** The outside sizes before the bends take their deduction: longest, and their outline. */
  readonly longest: Millimetres;
  readonly outsideOutline: Millimetres;
}

export function blankOf(line: BillLine, chosen: Chosen | undefined, system: UnitSystem, work?: Working): Blank {
  const radius = chosen && bentRadius(line, chosen, work);
  const flat = (strip: Strip) =>
    radius === undefined
      ? strip.flanges[0]!
      : flatLength(strip.flanges, strip.angles.map(square), line.thickness, radius, K_DEFAULT.value, "outside", work);
  const length = flat(line.main);
  const width = line.cross ? flat(line.cross) : line.width;
  const weight = blankWeight(line.thickness, length, width, density(line.material, work), 1, work);
  const outside = [sum(line.main.flanges), line.cross ? sum(line.cross.flanges) : line.width];
  const path = step(
    work,
    "path",
    "cut path, holes and notches included",
    mm(2 * (length + width) + inside(line)),
    "mm",
    "outline + holes pi d + notches (derived)",
  );
  return {
    length,
    width,
    weight,
    path,
    pierces: line.holes + 1,
    grain: grainLock(line, chosen, system),
    radius,
    longest: mm(Math.max(...outside)),
    outsideOutline: mm(2 * sum(outside)),
  };
}

/** Holes and notches. */
export const inside = ({ holes, holeDiameter, notches, notchPath }: BillLine): Millimetres =>
  mm(holes * Math.PI * (holeDiameter ?? 0) + notches * (notchPath ?? 0));

const bentRadius = ({ material }: BillLine, { setup }: Chosen, work?: Working): Millimetres =>
  airRadiusByRule(material, setup.die.opening, setup.punch?.nose, work).expected;

/** A strip as the gauge sees it. */
export const bentPart = (line: BillLine, strip: Strip, radius: Millimetres): BentPart => ({
  thickness: line.thickness,
  flanges: strip.flanges,
  bends: strip.angles.map((angle) => ({
    angle,
    insideRadius: radius,
    deduction: bendDeduction(line.thickness, radius, square(angle), K_DEFAULT.value, "outside"),
  })),
});

/**
 * Bend lines of the main strip run across the blank's length. A grain that the bill states is kept; a temper that cracks
 * unless its bend line lies across the grain is locked even where the bill says nothing.
 */
function grainLock(line: BillLine, chosen: Chosen | undefined, system: UnitSystem): Blank["grain"] {
  if (!chosen || line.main.angles.length === 0) return "";
  if (line.grain !== undefined) return line.grain === "across" ? "length" : "width";
  const cracks = (problems: Chosen["problems"]) => problems.some((p) => p.check === "radius" && p.severity !== "note");
  if (!cracks(chosen.problems)) return "";
  const across = findProblems({ ...chosen.bends[0]!, grain: "across" }, chosen.setup, system);
  return cracks(across) ? "" : "length";
}

const square = (angle: number) => degrees(Math.abs(angle));
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
