import { K_DEFAULT } from "../../../data/bend-rules.ts";
import { show } from "../../../units/show.ts";
import type { UnitSystem } from "../../../units/system.ts";
import type { Problem } from "../../problem.ts";
import type { AirEstimate } from "../air-estimate.ts";
import { holeLimits, judgeHole } from "../hole-distance.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/** Is the nearest hole far enough from the bend? */
export function holeProblem(
  line: BendLine,
  { die }: Setup,
  { radius }: AirEstimate,
  system: UnitSystem,
): Problem | undefined {
  if (line.holeDistance === undefined || radius === undefined) return undefined;
  const limits = holeLimits(line.thickness, radius, die.opening, sharpest(line), K_DEFAULT.value);
  const verdict = judgeHole(line.holeDistance, limits);
  if (verdict === "fine") return undefined;
  const tears = verdict === "drill after";
  return {
    check: "hole",
    severity: tears ? "stop" : "check",
    value: line.holeDistance,
    limit: limits.fine,
    quantity: "length",
    message: `A hole ${show(line.holeDistance, "length", system)} from the other flange ${tears ? "tears into the bend" : "lies over the open die and distorts"}; it keeps its shape from ${show(limits.fine, "length", system)} on.`,
  };
}
