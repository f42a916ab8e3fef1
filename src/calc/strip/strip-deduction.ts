import { type Degrees, degrees, type Millimeters, mm, type Ratio, radians } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";

/** A bent test strip as measured. No radius gauge is needed: the radius is the predicted one. */
interface TestStrip {
  readonly thickness: Millimeters;
  /** Length of the blank before bending. */
  readonly blank: Millimeters;
  /** Outside flanges to the virtual sharp corner. */
  readonly flanges: readonly [Millimeters, Millimeters];
  /** The angle it ended with, not the one that was wanted; 0 flat, 90 square. */
  readonly bendAngle: Degrees;
  /** Predicted inside radius, tangent to both flanges. */
  readonly tangentRadius: Millimeters;
}

interface StripResult {
  readonly deduction: Millimeters;
  /** Neutral axis, share of the thickness from the inside, on the predicted tangent radius. */
  readonly neutralFraction: Ratio;
  /** Standard deviation of that share from the three measured lengths. */
  readonly deviation: Ratio;
}

/** Outside these a strip says nothing: its K, or the mold line its flanges are measured to, is lost in the reading (chosen). */
const LEAST_ANGLE = degrees(10);
const GREATEST_ANGLE = degrees(170); // chosen, like the least

export function checkMeasuredAngle(bendAngle: Degrees): void {
  if (!(bendAngle >= LEAST_ANGLE && bendAngle <= GREATEST_ANGLE))
    throw wrong("bend_angle", `${LEAST_ANGLE} to ${GREATEST_ANGLE} degrees`, bendAngle);
}

/** Standard deviation of one length read with a caliper (chosen; a worn caliper or a burr is worse). */
export const READING = mm(0.05);

/**
 * What one strip says of the bend: BD = A + B - L, and the K that gives it on the predicted radius,
 * K = ((2 (r + t) tan(A / 2) - BD) / A - r) / t (derived from BD = 2 SB - BA). Three lengths, each read to a deviation
 * s, leave sqrt(3) s / (A t) in K: 0.018 at 3 mm and 0.055 at 1 mm for s = 0.05 mm and 90 degrees (derived).
 * @throws Refusal on lengths that no strip can have. Angles 10 to 170 degrees: below, K is lost in the reading.
 */
export function stripDeduction(strip: TestStrip, reading: Millimeters = READING, work?: Working): StripResult {
  checkStrip(strip, reading);
  const { thickness, blank, flanges, bendAngle, tangentRadius } = strip;
  const turned = radians(bendAngle);
  const source = "test strip (measured), geometry (derived)";
  const deduction = step(
    work,
    "BD",
    "sum of outside flanges less blank",
    mm(flanges[0] + flanges[1] - blank),
    "mm",
    source,
  );
  const setbacks = 2 * (tangentRadius + thickness) * Math.tan(turned / 2);
  const fraction = ((setbacks - deduction) / turned - tangentRadius) / thickness;
  const neutralFraction = step(work, "K", "neutral axis on the predicted radius", fraction, "", source);
  const deviation = (Math.sqrt(3) * reading) / (turned * thickness);
  step(work, "s_K", "standard deviation of K from three lengths", deviation, "", "sqrt(3) s / (A t) (derived)");
  return { deduction, neutralFraction, deviation };
}

function checkStrip({ thickness, blank, flanges, bendAngle, tangentRadius }: TestStrip, reading: Millimeters): void {
  const positive = (parameter: string, value: number) => {
    if (!(value > 0 && value < Infinity)) throw wrong(parameter, "above 0 mm", value);
  };
  positive("thickness", thickness);
  positive("blank", blank);
  for (const flange of flanges) positive("flanges", flange);
  positive("reading", reading);
  if (!(tangentRadius >= 0 && tangentRadius < Infinity)) throw wrong("radius", "0 mm or more", tangentRadius);
  checkMeasuredAngle(bendAngle);
}
