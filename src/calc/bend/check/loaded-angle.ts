import { BOTTOMING_HIGH, BOTTOMING_LOW } from "../../../data/bend-rules.ts";
import {
  BEAM_LEAST_IN,
  BOTTOM_THICKEST_IN,
  BOTTOM_THICKEST_STAINLESS_IN,
  BOTTOM_WITHIN,
  SHARPEST_DIE,
  SPRINGBACK_BAND,
  SPRINGBACK_LEAST_BAND,
} from "../../../data/thresholds.ts";
import { atLeast, atMost } from "../../../units/nearly.ts";
import type { Degrees } from "../../../units/quantity.ts";
import type { Finding } from "../../finding.ts";
import { limitOf } from "../../limit-of.ts";
import type { AirEstimate } from "../air-estimate.ts";
import { forceCases } from "../force-cases.ts";
import { lineLoadLimit } from "../line-load.ts";
import { type BendLine, type Setup, sharpest, sharpestBend } from "./line.ts";

/**
 * The sheet must be bent further than wanted by its springback. Where that meets the faces of die or punch it bottoms:
 * within a few degrees thin sheet still comes to its angle, at several times the force; beyond it never does. Where only
 * the band of the springback meets them it may bottom, which matters where that force does not fit (common practice).
 */
export function loadedAngleFindings(line: BendLine, setup: Setup, { springback }: AirEstimate): Finding[] {
  if (springback === undefined)
    return [{ about: "springback", status: "note", kind: "unknown", name: line.material.name }];
  const wanted = sharpest(line);
  const loaded = wanted + springback;
  const { die, punch, own } = setup;
  const band = Math.max(limitOf(SPRINGBACK_LEAST_BAND, own), limitOf(SPRINGBACK_BAND, own) * springback);
  const least = limitOf(SHARPEST_DIE, own);
  // Far past every V the estimate of the springback means nothing: what is left is how else to close it.
  if (!atLeast(180 - wanted, least) || loaded >= 180)
    return [
      { about: "loaded angle", status: "stop", kind: "no die", figure: wanted, limit: 180 - least, quantity: "angle" },
    ];
  const against = (kind: "die" | "punch", name: string, angle: Degrees): Finding[] => {
    const room = 180 - angle - loaded;
    if (atLeast(room, band)) return [];
    const touches = atLeast(room, 0);
    const fits = mayBottom(line, setup);
    const bottoms = !touches && fits && atLeast(room, -limitOf(BOTTOM_WITHIN, own));
    return [
      {
        about: "loaded angle",
        // A springy coil of thin sheet that meets the faces is pressed on, and comes to its angle: nobody asks before cutting.
        status: touches && fits ? "note" : touches || bottoms ? "check" : "stop",
        kind: `${touches ? (fits ? "is near" : "touches") : bottoms ? "bottoms" : "passes"} ${kind}`,
        // Both as the sheet is turned, like every bend angle: the tool's included angle lets it turn so far.
        figure: loaded,
        limit: 180 - angle,
        beside: springback,
        quantity: "angle",
        name,
      },
    ];
  };
  return [...against("die", die.name, die.angle), ...(punch ? against("punch", punch.name, punch.angle) : [])];
}

/** Whether the bend is made by bottoming: no face is passed too far for it, and one is met. */
export const bottoms = (line: BendLine, setup: Setup, estimate: AirEstimate): boolean => {
  const found = loadedAngleFindings(line, setup, estimate);
  return found.some(({ kind }) => kind.startsWith("bottoms")) && !found.some(({ status }) => status === "stop");
};

/** Thin enough, and 5 times the expected and 3 times the worst force fit every rating. */
function mayBottom(line: BendLine, setup: Setup): boolean {
  const { brake, die, punch, own } = setup;
  const { material, thickness, bendLength } = line;
  const stainless = material.gaugeSeries === "stainless";
  if (!atMost(thickness, limitOf(stainless ? BOTTOM_THICKEST_STAINLESS_IN : BOTTOM_THICKEST_IN, own))) return false;
  const { expected, worst } = forceCases(sharpestBend(line, setup), bendLength);
  const most = Math.max(BOTTOMING_HIGH.value * expected, BOTTOMING_LOW.value * worst);
  const onBeam = most / Math.max(bendLength, limitOf(BEAM_LEAST_IN, own));
  const perLength = most / bendLength;
  return (
    most <= brake.ratedForce &&
    onBeam <= lineLoadLimit(brake) &&
    [die.rating, punch?.rating].every((rating) => rating === undefined || perLength <= rating)
  );
}
