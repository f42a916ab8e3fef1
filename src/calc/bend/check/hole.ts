import { K_DEFAULT } from "../../../data/bend-rules.ts";
import { atLeast } from "../../../units/nearly.ts";
import type { Finding } from "../../finding.ts";
import type { AirEstimate } from "../air-estimate.ts";
import { holeLimits } from "../hole-distance.ts";
import { insideSetback } from "../setback.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/** Is the nearest hole far enough from the bend? Inside the tangent it is pulled out of shape, over the open die it goes oval. */
export function holeFinding(line: BendLine, { die }: Setup, { radius }: AirEstimate): Finding | undefined {
  if (line.holeDistance === undefined || radius === undefined) return undefined;
  const bend = sharpest(line);
  const { fine } = holeLimits({
    thickness: line.thickness,
    radius,
    dieOpening: die.opening,
    bendAngle: bend,
    k: K_DEFAULT.value,
  });
  if (atLeast(line.holeDistance, fine)) return undefined;
  const oval = atLeast(line.holeDistance, insideSetback(radius, bend));
  return {
    about: "hole",
    status: oval ? "check" : "stop",
    kind: oval ? "goes oval" : "is pulled",
    figure: line.holeDistance,
    limit: fine,
    quantity: "length",
  };
}
