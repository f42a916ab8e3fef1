import { type Millimeters, mm } from "../../units/quantity.ts";
import { remember } from "../../units/remember.ts";
import type { Working } from "../../units/working.ts";
import type { AirMethod } from "./air-bend.ts";
import { airRadiusByRule, type RadiusBand } from "./air-radius.ts";
import { type AirShape, airShape } from "./air-shape.ts";
import { bendDeduction } from "./deduction.ts";
import { type AirBendBand, airBendBand } from "./mechanics/air-bend-band.ts";
import { withModelError } from "./mechanics/model-error.ts";
import { deviationsOf } from "./mechanics/usual-deviations.ts";
import type { AskedBend } from "./solved-air-bend.ts";

/**
 * Inside radius over a die with its band: by rule the two shares of the opening, or what is wider; by mechanics the 90 % band of stock,
 * die and model; between the two methods the mechanics' band about the mixed radius. Refuses as airShape does; whether
 * the faces of the tools allow the bend is not part of it.
 */
export const airRadiusBand = (asked: AskedBend, method: AirMethod, work?: Working): RadiusBand =>
  work ? bandOf(asked, method, work) : bandKnown(asked, method);

const MOST_KNOWN = 4096; // chosen: about a megabyte
/** Line after line of a bill asks about the same bend. */
const bandKnown = remember(MOST_KNOWN, (asked: AskedBend, method: AirMethod) => bandOf(asked, method));

function bandOf(asked: AskedBend, method: AirMethod, work?: Working): RadiusBand {
  const shape = airShape(asked, method, work);
  if (!shape.solved) return airRadiusByRule(asked.material, asked.tools.dieOpening, asked.tools.punchNose);
  const { input, bend, nearest } = shape.solved;
  const stock = airBendBand(input, { finalAngle: asked.bendAngle }, deviationsOf(input), bend);
  return shapeBand(asked, shape, withModelError(stock, input, nearest.distance)).radius;
}

/** Radius and deduction (outside legs) of a shape, each with its band. */
export function shapeBand(
  { material, thickness, bendAngle, tools }: AskedBend,
  { radius, neutralAxis: k, mechanicsShare }: AirShape,
  mechanics: Pick<AirBendBand, "tangentRadius" | "bendDeduction">,
): { readonly radius: RadiusBand; readonly deduction: RadiusBand } {
  const at = (inside: Millimeters) => bendDeduction({ thickness, radius: inside, bendAngle, k, legs: "outside" });
  const deduction = at(radius);
  const solved = {
    radius: about(radius, mechanics.tangentRadius),
    deduction: about(deduction, mechanics.bendDeduction),
  };
  if (mechanicsShare > 0) return solved;
  const byRule = airRadiusByRule(material, tools.dieOpening, tools.punchNose);
  // A nose wider than the rule's shares leaves them no width: that is not certainty.
  return {
    radius: wider(byRule, solved.radius),
    deduction: wider({ low: at(byRule.low), expected: deduction, high: at(byRule.high) }, solved.deduction),
  };
}

const wider = (one: RadiusBand, other: RadiusBand): RadiusBand => ({
  low: mm(Math.min(one.low, other.low)),
  expected: one.expected,
  high: mm(Math.max(one.high, other.high)),
});

/** The band of one figure laid about another. */
const about = (expected: Millimeters, { lower, value, upper }: AirBendBand["tangentRadius"]): RadiusBand => ({
  low: mm(Math.max(0, expected - value + lower)),
  expected,
  high: mm(expected - value + upper),
});
