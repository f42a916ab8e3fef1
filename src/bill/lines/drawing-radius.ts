/** The drawing's inside radius against what a set of tools gives. */
import { askedOver } from "../../calc/bend/air-estimate.ts";
import { between } from "../../calc/bend/check/bottoming.ts";
import type { Setup } from "../../calc/bend/check/line.ts";
import { type Acceptance, acceptRadius } from "../../calc/bend/radius-acceptance.ts";
import { airRadiusBand } from "../../calc/bend/radius-band.ts";
import type { Finding } from "../../calc/finding.ts";
import { limitOf } from "../../calc/limit-of.ts";
import { RADIUS_NEAR_IN, RADIUS_NEAR_THICKNESSES } from "../../data/thresholds.ts";
import { atMost } from "../../units/nearly.ts";
import { degrees, type Millimeters, mm } from "../../units/quantity.ts";
import type { BillLine } from "../nouns/line.ts";

/**
 * undefined where the drawing asks for none. A tolerance is held by the whole band of the die's radius; without one what is
 * expected within 1/32 in or half a thickness will do.
 */
export function drawingRadius(
  { material, thickness, radius, radiusTolerance, main, cross }: BillLine,
  { die, punch, own }: Pick<Setup, "die" | "punch" | "own">,
  pressed: number,
): { readonly verdict: Acceptance; readonly finding: Finding | undefined } | undefined {
  if (radius === undefined) return undefined;
  const nose = punch?.nose;
  const sharpest = degrees(Math.max(...[...main.angles, ...(cross?.angles ?? [])].map(Math.abs)));
  const inAir = airRadiusBand(askedOver(material, thickness, sharpest, die, nose), material.airMethod ?? "rule");
  const onNose = (end: Millimeters) => (nose === undefined ? end : between(end, nose, pressed));
  const gives = { ...inAir, low: onNose(inAir.low), expected: onNose(inAir.expected), high: onNose(inAir.high) };
  const near = mm(Math.max(limitOf(RADIUS_NEAR_IN, own), limitOf(RADIUS_NEAR_THICKNESSES, own) * thickness));
  const share = gives.expected / die.opening;
  const { verdict } =
    radiusTolerance === undefined
      ? acceptRadius({ radius, tolerance: near }, { ...gives, low: gives.expected, high: gives.expected }, share, "in")
      : acceptRadius({ radius, tolerance: radiusTolerance }, gives, share, "in");
  const off = Math.abs(gives.expected - radius);
  const finding = (status: Finding["status"], kind: string): Finding => ({
    about: "drawing radius",
    status,
    kind,
    figure: gives.expected,
    limit: radius,
    quantity: "length",
  });
  if (verdict === "measure")
    return { verdict, finding: { ...finding("note", "measure"), figure: gives.low, beside: gives.high } };
  if (verdict !== "accept") return { verdict, finding: finding("check", "ask") };
  const isExact = atMost(off, 0.01 * radius);
  return { verdict, finding: radiusTolerance === undefined && !isExact ? finding("note", "near") : undefined };
}

export const drawingRadiusFinding = (
  line: BillLine,
  tools: Pick<Setup, "die" | "punch" | "own">,
  pressed: number,
): Finding[] => {
  const found = drawingRadius(line, tools, pressed)?.finding;
  return found ? [found] : [];
};
