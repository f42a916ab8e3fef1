import { BOTTOMING_HIGH, BOTTOMING_LOW } from "../../../data/bend-rules.ts";
import {
  BOTTOM_THICKEST_IN,
  BOTTOM_THICKEST_STAINLESS_IN,
  BOTTOM_WITHIN,
  SPRINGBACK_BAND,
  SPRINGBACK_LEAST_BAND,
} from "../../../data/thresholds.ts";
import { atLeast, atMost } from "../../../units/nearly.ts";
import type { Degrees } from "../../../units/quantity.ts";
import type { Finding } from "../../finding.ts";
import { limitOf } from "../../limit-of.ts";
import type { AirEstimate } from "../air-estimate.ts";
import { forceCases } from "../force-cases.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/**
 * The sheet must be bent further than wanted by its springback. Where that band meets the faces of die or punch it may
 * bottom: within a few degrees thin sheet still comes to its angle, at several times the force; beyond it never does
 * (common practice).
 */
export function loadedAngleFindings(line: BendLine, setup: Setup, { springback }: AirEstimate): Finding[] {
  if (springback === undefined)
    return [{ about: "springback", status: "note", kind: "unknown", name: line.material.name }];
  const loaded = sharpest(line) + springback;
  const { die, punch, own } = setup;
  const band = Math.max(limitOf(SPRINGBACK_LEAST_BAND, own), limitOf(SPRINGBACK_BAND, own) * springback);
  const against = (kind: "die" | "punch", name: string, angle: Degrees): Finding[] => {
    const room = 180 - angle - loaded;
    if (atLeast(room, band)) return [];
    const touches = atLeast(room, 0);
    const bottoms = !touches && atLeast(room, -limitOf(BOTTOM_WITHIN, own)) && mayBottom(line, setup);
    return [
      {
        about: "loaded angle",
        status: touches || bottoms ? "check" : "stop",
        kind: `${touches ? "touches" : bottoms ? "bottoms" : "passes"} ${kind}`,
        figure: 180 - loaded,
        limit: angle,
        beside: springback,
        quantity: "angle",
        name,
      },
    ];
  };
  return [...against("die", die.name, die.angle), ...(punch ? against("punch", punch.name, punch.angle) : [])];
}

/** Thin enough, and 5 times the expected and 3 times the worst force fit every rating. */
function mayBottom(line: BendLine, { brake, die, punch, own }: Setup): boolean {
  const { material, thickness, bendLength } = line;
  const stainless = material.gaugeSeries === "stainless";
  if (!atMost(thickness, limitOf(stainless ? BOTTOM_THICKEST_STAINLESS_IN : BOTTOM_THICKEST_IN, own))) return false;
  const { expected, worst } = forceCases(material, thickness, bendLength, die.opening);
  const most = Math.max(BOTTOMING_HIGH.value * expected, BOTTOMING_LOW.value * worst);
  return (
    most <= brake.ratedForce &&
    [die.rating, punch?.rating].every((rating) => rating === undefined || most / bendLength <= rating)
  );
}
