/** The blank of a line: flat sizes, cut path, weight, and which way the grain must run. */
import { airRadiusByRule } from "../../calc/bend/air-radius.ts";
import { cracks } from "../../calc/bend/cracks.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import type { BentPart } from "../../calc/bend/order/part.ts";
import { flatLength } from "../../calc/flat/flat-length.ts";
import { blankWeight } from "../../calc/flat/weight.ts";
import { limitOf, type OwnThresholds } from "../../calc/limit-of.ts";
import { density } from "../../calc/material/strength.ts";
import { K_DEFAULT } from "../../data/bend-rules.ts";
import { PLATE_ALONG_FROM_IN } from "../../data/thresholds.ts";
import { atLeast } from "../../units/nearly.ts";
import { type Degrees, degrees, type Kilograms, type Millimetres, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import type { BillLine, Strip } from "../nouns/line.ts";
import type { Tools } from "./tools.ts";

/** How a radius and a deduction were found. */
export const METHODS = ["rule"] as const;
export type Method = (typeof METHODS)[number];

export interface Blank {
  readonly length: Millimetres;
  readonly width: Millimetres;
  readonly weight: Kilograms;
  /** Outline, holes and notches of one blank. */
  readonly path: Millimetres;
  readonly pierces: number;
  /** Rolling direction along the blank's length or width; "" where either will do. */
  readonly grain: "length" | "width" | "";
  /** The outside sizes before the bends take their deduction: longest, and their outline. */
  readonly longest: Millimetres;
  readonly outsideOutline: Millimetres;
}

/** The one inside radius and deduction of a line's bends, those its flat is made with; undefined for a flat part. */
export interface BendNumbers {
  readonly radius: Millimetres;
  /** Of its sharpest bend. */
  readonly deduction: Millimetres;
  readonly method: Method;
}

const square = (angle: number): Degrees => degrees(Math.abs(angle));

export function bendNumbers({ material, thickness, main, cross }: BillLine, tools: Tools, work?: Working): BendNumbers {
  const { die, punch } = tools;
  const radius = airRadiusByRule(material, die.opening, punch?.nose, work).expected;
  const sharpest = square(Math.max(...[...main.angles, ...(cross?.angles ?? [])].map(Math.abs)));
  const deduction = bendDeduction(thickness, radius, sharpest, K_DEFAULT.value, "outside");
  return { radius, deduction, method: "rule" };
}

export function blankOf(line: BillLine, bend: BendNumbers | undefined, own?: OwnThresholds, work?: Working): Blank {
  const flat = ({ flanges, angles }: Strip) =>
    bend === undefined || angles.length === 0
      ? flanges[0]!
      : flatLength(flanges, angles.map(square), line.thickness, bend.radius, K_DEFAULT.value, "outside", work);
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
    grain: grainLock(line, own),
    longest: mm(Math.max(...outside)),
    outsideOutline: mm(2 * sum(outside)),
  };
}

/** Holes and notches. */
export const inside = ({ holes, holeDiameter, notches, notchPath }: BillLine): Millimetres =>
  mm(holes * Math.PI * (holeDiameter ?? 0) + notches * (notchPath ?? 0));

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
 * Bend lines of the main strip run across the blank's length. A temper that cracks unless its bend line lies across the
 * grain is locked even where the bill says nothing. On plate and on a flat part what the bill states is kept; for
 * ductile sheet it is a wish that costs no metal (common practice).
 */
function grainLock({ grain, main, cross, material, thickness }: BillLine, own?: OwnThresholds): Blank["grain"] {
  const stated = grain === undefined ? "" : grain === "across" ? "length" : "width";
  if (main.angles.length === 0 && (cross?.angles.length ?? 0) === 0) return stated;
  if (cracks(material)) return stated || "length";
  return atLeast(thickness, limitOf(PLATE_ALONG_FROM_IN, own)) ? stated : "";
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
