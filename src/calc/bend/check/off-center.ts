import { OFF_CENTER_CHECK } from "../../../data/thresholds.ts";
import { atMost } from "../../../units/nearly.ts";
import { newtons } from "../../../units/quantity.ts";
import type { Finding } from "../../finding.ts";
import { limitOf } from "../../limit-of.ts";
import { forceCases } from "../force-cases.ts";
import { type BendLine, type Setup, sharpestBend } from "./line.ts";

/**
 * A bend off the middle of the bed, as on staged tools: the nearer side takes F (1/2 + e / S) of the expected force, e
 * off the middle, S between the housings (statics, derived), and half the rating is each side's (common practice; the
 * manual rules).
 */
export function offCenterFinding(line: BendLine, setup: Setup): Finding | undefined {
  const { brake, own } = setup;
  const { bendLength, offCenter = 0 } = line;
  if (offCenter === 0) return undefined;
  const { expected } = forceCases(sharpestBend(line, setup), bendLength);
  const near = newtons(expected * (1 / 2 + offCenter / brake.betweenHousings));
  const limit = newtons(brake.ratedForce / 2);
  if (atMost(near, limitOf(OFF_CENTER_CHECK, own) * limit)) return undefined;
  const status = atMost(near, limit) ? "check" : "stop";
  return { about: "off center", status, kind: "near side", figure: near, limit, quantity: "force", name: brake.name };
}
