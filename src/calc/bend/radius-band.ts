import { mm } from "../../units/quantity.ts";
import { remember } from "../../units/remember.ts";
import type { Working } from "../../units/working.ts";
import type { AirMethod } from "./air-bend.ts";
import { airRadiusByRule, type RadiusBand } from "./air-radius.ts";
import { airShape } from "./air-shape.ts";
import { airBendBand } from "./mechanics/air-bend-band.ts";
import { withModelError } from "./mechanics/model-error.ts";
import { deviationsOf } from "./mechanics/usual-deviations.ts";
import type { AskedBend } from "./solved-air-bend.ts";

/**
 * Inside radius over a die with its band: by rule the two shares of the opening; by mechanics the 90 % band of stock,
 * die and model; between the two methods the mechanics' band about the mixed radius. Refuses as airShape does; whether
 * the faces of the tools allow the bend is not part of it.
 */
export const airRadiusBand = (asked: AskedBend, method: AirMethod, work?: Working): RadiusBand =>
  work ? bandOf(asked, method, work) : bandKnown(asked, method);

const MOST_KNOWN = 4096; // chosen: about a megabyte
/** Line after line of a bill asks about the same bend. */
const bandKnown = remember(MOST_KNOWN, (asked: AskedBend, method: AirMethod) => bandOf(asked, method));

function bandOf(asked: AskedBend, method: AirMethod, work?: Working): RadiusBand {
  const { material, bendAngle, tools } = asked;
  const { radius, mechanicsShare, solved } = airShape(asked, method, work);
  if (mechanicsShare === 0 || !solved) return airRadiusByRule(material, tools.dieOpening, tools.punchNose);
  const { input, bend, nearest } = solved;
  const stock = airBendBand(input, { finalAngle: bendAngle }, deviationsOf(input), bend);
  const { lower, value, upper } = withModelError(stock, input, nearest.distance).tangentRadius;
  return { low: mm(Math.max(0, radius - value + lower)), expected: radius, high: mm(radius - value + upper) };
}
