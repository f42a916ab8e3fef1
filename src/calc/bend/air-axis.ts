import type { Millimeters } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import type { AirMethod } from "./air-bend.ts";
import { feasibleAirShape } from "./air-shape.ts";
import type { KChoice } from "./neutral-axis.ts";
import type { AskedBend } from "./solved-air-bend.ts";
import { correctedFraction, STRIPS } from "./strip-correction.ts";

/** Radius of the bend and the neutral axis on it: the method's own, or the one that is given. */
export function radiusAndAxis(
  asked: AskedBend,
  method: AirMethod,
  k: KChoice | undefined,
  work?: Working,
): { radius: Millimeters; k: KChoice; axisSource: string } {
  if (asked.material.strips && (method === "rule" || typeof k === "string"))
    throw wrong(
      "correction",
      'left out unless method is "best" or "mechanics" and k a number or blank',
      "a range",
      "strips are compared with the mechanics",
    );
  const { radius, neutralAxis, axisSource, solved } = feasibleAirShape(asked, method, work);
  if (k === undefined) return { radius, k: neutralAxis, axisSource };
  if (typeof k === "string" || !solved?.strip) return { radius, k, axisSource: "given" };
  step(work, "Kg", "neutral axis as given", k, "", "given");
  return {
    radius,
    k: correctedFraction(k, solved.strip, radius / asked.thickness),
    axisSource: `Kg + c, ${STRIPS}`,
  };
}
