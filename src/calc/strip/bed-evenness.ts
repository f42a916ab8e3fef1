import { atMost } from "../../units/nearly.ts";
import { type Degrees, degrees, type Millimeters, mm, radians } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import { checkMeasuredAngle } from "./strip-deduction.ts";

/** Angle of a strip bent at a place along the bed. */
interface BedReading {
  readonly along: Millimeters;
  readonly bendAngle: Degrees;
}

interface BedEvenness {
  /** Greatest less least angle. */
  readonly spread: Degrees;
  readonly mean: Degrees;
  /** Where the angle is furthest from the mean, and by how much: positive where it is bent more. */
  readonly worstAt: Millimeters;
  readonly worstBy: Degrees;
  /** Ram movement that changes the angle by one degree in this die. */
  readonly ramPerDegree: Millimeters;
  /** Lower the end with the greater position by this much against the other (negative: raise), over the length read. */
  readonly tilt: Millimeters;
  /** Crown the middle up by this much against the ends (negative: less); undefined below three places. */
  readonly crown: Millimeters | undefined;
  /** Whether half the spread stays within what a plain bracket needs. */
  readonly even: boolean;
}

/** What a plain brake holds and a plain bracket needs, plus or minus (memory, unverified; common practice). */
export const PLAIN_BRACKET = degrees(1);

/**
 * Is the brake true along its bed? Spread of the angles, where it is worst, and how the ram or the crowning must change.
 * Depth is (V / 2) / tan(included / 2), so the ram moves V / (4 sin^2(included / 2)) per radian: V / 2 at 90 degrees,
 * about 0.0087 V a degree (derived). The straight line through the readings is taken out by tilting the ram; what
 * then bows between middle and ends (least squares) by crowning.
 * @throws Refusal below two places, on equal places, or on angles outside 10 to 170 degrees.
 */
export function bedEvenness(
  readings: readonly BedReading[],
  dieOpening: Millimeters,
  tolerance: Degrees = PLAIN_BRACKET,
  work?: Working,
): BedEvenness {
  if (readings.length < 2) throw wrong("along", "angles at 2 or more places along the bed", readings.length);
  if (!(dieOpening > 0 && dieOpening < Infinity)) throw wrong("die_opening", "above 0 mm", dieOpening);
  if (!(tolerance > 0 && tolerance < Infinity)) throw wrong("tolerance", "above 0 degrees", tolerance);
  for (const { along, bendAngle } of readings) {
    if (!Number.isFinite(along)) throw wrong("place along the bed", "a number", along);
    checkMeasuredAngle(bendAngle);
  }
  const places = readings.map((r) => r.along);
  const length = Math.max(...places) - Math.min(...places);
  if (!(length > 0)) throw wrong("along", "taken at different places along the bed", places.join(", "));

  const angles = readings.map((r) => r.bendAngle);
  const spread = step(
    work,
    "spread",
    "greatest less least angle",
    degrees(Math.max(...angles) - Math.min(...angles)),
    "deg",
    "measured",
  );
  const mean = degrees(average(angles));
  const worst = readings.reduce((a, b) => (Math.abs(b.bendAngle - mean) > Math.abs(a.bendAngle - mean) ? b : a));
  const included = Math.PI - radians(mean);
  const perRadian = dieOpening / (4 * Math.sin(included / 2) ** 2);
  const ramPerDegree = step(
    work,
    "dy",
    "ram movement per degree",
    mm((perRadian * Math.PI) / 180),
    "mm",
    "V / (4 sin^2(included / 2)) (derived)",
  );

  // Places from -1 to 1, so that the line's ends differ by twice its slope and the bow is the square's coefficient.
  const middle = (Math.max(...places) + Math.min(...places)) / 2;
  const x = places.map((p) => (2 * (p - middle)) / length);
  const [slope, bow] = lineAndBow(x, angles);
  const tilt = step(
    work,
    "tilt",
    "lower the far end of the ram by",
    mm(-2 * slope * ramPerDegree),
    "mm",
    "least squares (derived)",
  );
  const crown =
    bow === undefined
      ? undefined
      : step(work, "crown", "crown the middle up by", mm(bow * ramPerDegree), "mm", "least squares (derived)");
  return {
    spread,
    mean,
    worstAt: worst.along,
    worstBy: degrees(worst.bendAngle - mean),
    ramPerDegree,
    tilt,
    crown,
    even: atMost(spread / 2, tolerance),
  };
}

const average = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

/** Slope and square coefficient of the least-squares parabola; below three distinct places the line's slope alone. */
function lineAndBow(x: readonly number[], y: readonly number[]): [number, number | undefined] {
  const moment = (p: number, values?: readonly number[]) => average(x.map((v, i) => v ** p * (values?.[i] ?? 1)));
  const [m1, m2, m3, m4] = [moment(1), moment(2), moment(3), moment(4)];
  // Covariances of 1, x, x^2 with each other and with y.
  const [cxx, cxq, cqq] = [m2 - m1 * m1, m3 - m1 * m2, m4 - m2 * m2];
  const [cxy, cqy] = [moment(1, y) - m1 * moment(0, y), moment(2, y) - m2 * moment(0, y)];
  if (new Set(x).size < 3) return [cxy / cxx, undefined];
  const determinant = cxx * cqq - cxq * cxq;
  return [(cxy * cqq - cqy * cxq) / determinant, (cqy * cxx - cxy * cxq) / determinant];
}
