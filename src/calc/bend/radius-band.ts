import type { Material } from "../../data/materials/material.ts";
import { type Degrees, degrees, type Millimetres, mm } from "../../units/quantity.ts";
import type { Working } from "../../units/working.ts";
import type { AirMethod, AirTools } from "./air-bend.ts";
import { airRadiusByRule, type RadiusBand } from "./air-radius.ts";
import { airShape } from "./air-shape.ts";
import { airBendBand } from "./mechanics/air-bend-band.ts";
import { withModelError } from "./mechanics/model-error.ts";
import { deviationsOf } from "./mechanics/usual-deviations.ts";

/** The bend that drawings call a radius for. */
const SQUARE: Degrees = degrees(90);

/**
 * Inside radius over a die with its band: by rule the two shares of the opening; by mechanics the 90 % band of stock,
 * die and model; between the two methods the mechanics' band about the mixed radius. Refuses as airShape does.
 */
export function airRadiusBand(
  material: Material,
  thickness: Millimetres,
  tools: AirTools,
  method: AirMethod,
  work?: Working,
): RadiusBand {
  const { radius, mechanicsShare, solved } = airShape(material, thickness, SQUARE, tools, method, work);
  if (mechanicsShare === 0 || !solved) return airRadiusByRule(material, tools.dieOpening, tools.punchNose);
  const { input, bend, nearest } = solved;
  const stock = airBendBand(input, { finalAngle: SQUARE }, deviationsOf(input), bend);
  const { lower, value, upper } = withModelError(stock, input, nearest.distance).tangentRadius;
  return { low: mm(Math.max(0, radius - value + lower)), expected: radius, high: mm(radius - value + upper) };
}
