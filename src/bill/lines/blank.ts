/** The blank of a line: flat sizes, cut path, weight, and which way the grain must run. */
import { askedOver } from "../../calc/bend/air-estimate.ts";
import { type AirShape, airShape } from "../../calc/bend/air-shape.ts";
import { cracks } from "../../calc/bend/cracks.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import { beyondTangent } from "../../calc/bend/legs.ts";
import type { BentPart } from "../../calc/bend/order/part.ts";
import { flatFromDeductions, refuseOverlap } from "../../calc/flat/flat-length.ts";
import { blankWeight } from "../../calc/flat/weight.ts";
import { limitOf, type OwnThresholds } from "../../calc/limit-of.ts";
import { density } from "../../calc/material/strength.ts";
import { PLATE_ALONG_FROM_IN } from "../../data/thresholds.ts";
import { entryOf, firstOf } from "../../units/certain.ts";
import { atLeast } from "../../units/nearly.ts";
import { type Degrees, degrees, type Kilograms, type Millimeters, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import type { BillLine, Strip } from "../nouns/line.ts";
import type { Tools } from "./tools.ts";

/** How a radius and a deduction were found. "test strips": the mechanics with what the shop's own strips found. */
export const METHODS = ["rule", "mechanics", "mechanics and rule", "test strips", "bottoming"] as const;
export type Method = (typeof METHODS)[number];

export interface Blank {
  readonly length: Millimeters;
  readonly width: Millimeters;
  readonly weight: Kilograms;
  /** Outline, holes and notches of one blank. */
  readonly path: Millimeters;
  readonly pierces: number;
  /** Rolling direction along the blank's length or width; "" where either will do. */
  readonly grain: "length" | "width" | "";
  /** The outside sizes before the bends take their deduction: longest, and their outline. */
  readonly longest: Millimeters;
  readonly outsideOutline: Millimeters;
}

/** Radius and deduction of the bends of one angle. */
export interface BendNumber {
  readonly radius: Millimeters;
  readonly deduction: Millimeters;
}

/** Of a line's sharpest bend, and of its bends by angle: what its flat is made with. */
export interface BendNumbers extends BendNumber {
  readonly method: Method;
  /** Neither a compared bend nor a strip of the shop is like one of these bends: cut one, bend, measure. */
  readonly tryFirst: boolean;
  /** By the angle without its sign. */
  readonly at: ReadonlyMap<Degrees, BendNumber>;
}

const square = (angle: number): Degrees => degrees(Math.abs(angle));

/** As the AIR functions reckon them for this sheet over this die. The line has a bend. */
export function bendNumbers({ material, thickness, main, cross }: BillLine, tools: Tools, work?: Working): BendNumbers {
  const { die, punch } = tools;
  const angles = [...new Set([...main.angles, ...(cross?.angles ?? [])].map(square))].sort((a, b) => b - a);
  const found = angles.map((angle) => {
    const shape = airShape(askedOver(material, thickness, angle, die, punch?.nose), material.airMethod ?? "rule", work);
    const { radius, neutralAxis: k, axisSource } = shape;
    const deduction = bendDeduction({ thickness, radius, bendAngle: angle, k, legs: "outside" }, work, axisSource);
    return { angle, radius, deduction, method: methodOf(shape), tryFirst: tryFirst(shape) };
  });
  const at = new Map(found.map(({ angle, radius, deduction }) => [angle, { radius, deduction }]));
  const [{ radius, deduction, method }] = found as [(typeof found)[number]];
  return { radius, deduction, method, tryFirst: found.some((each) => each.tryFirst), at };
}

const methodOf = ({ solved, mechanicsShare }: AirShape): Method =>
  solved?.strip
    ? "test strips"
    : mechanicsShare === 1
      ? "mechanics"
      : mechanicsShare === 0
        ? "rule"
        : "mechanics and rule";

const tryFirst = ({ solved }: AirShape): boolean =>
  solved !== undefined && solved.strip === undefined && !solved.nearest.inside;

/** Of a bend of this angle, whichever way it turns. */
const numberAt = ({ at }: BendNumbers, angle: Degrees): BendNumber => entryOf(at, square(angle));

export function blankOf(line: BillLine, bend: BendNumbers | undefined, own?: OwnThresholds, work?: Working): Blank {
  const flat = ({ flanges, angles }: Strip) => {
    if (bend === undefined || angles.length === 0) return firstOf(flanges);
    const bends = angles.map((angle) => ({ angle, ...numberAt(bend, angle) }));
    refuseOverlap(
      flanges,
      bends.map(({ angle, radius }) => beyondTangent(line.thickness, radius, square(angle), "outside")),
    );
    return flatFromDeductions(
      flanges,
      bends.map(({ deduction }) => deduction),
      work,
    );
  };
  const length = flat(line.main);
  const width = line.cross ? flat(line.cross) : line.width;
  const weight = blankWeight({ thickness: line.thickness, length, width }, density(line.material, work), 1, work);
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
export const inside = ({ holes, holeDiameter, notches, notchPath }: BillLine): Millimeters =>
  mm(holes * Math.PI * (holeDiameter ?? 0) + notches * (notchPath ?? 0));

/** A strip as the gauge sees it. */
export const bentPart = (line: BillLine, strip: Strip, bend: BendNumbers): BentPart => ({
  thickness: line.thickness,
  flanges: strip.flanges,
  bends: strip.angles.map((angle) => {
    const { radius, deduction } = numberAt(bend, angle);
    return { angle, insideRadius: radius, deduction };
  }),
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
