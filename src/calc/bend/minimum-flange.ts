import { FLANGE_MARGIN, FLANGE_STEP_IN } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { type Degrees, degrees, type Millimeters, mm, radians } from "../../units/quantity.ts";
import { MM_PER_INCH, type UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";

/**
 * Shortest outside flange that still lies on the die at the end of the bend: V / (2 sin(included / 2)) along the slope
 * from the corner to the die's edge. Below it the flange falls into the die and can be thrown. Source: geometry (derived).
 */
export const shortestFlange = (dieOpening: Millimeters, bendAngle: Degrees, work?: Working): Millimeters =>
  step(
    work,
    "b min",
    "shortest flange that reaches the die's edge",
    mm(dieOpening / (2 * Math.sin(radians(degrees(180 - bendAngle)) / 2))),
    "mm",
    "V / (2 sin(included / 2)) (derived)",
  );

interface FlangeBend {
  readonly thickness: Millimeters;
  readonly dieOpening: Millimeters;
  readonly bendAngle: Degrees;
  readonly shoulder: Millimeters | undefined;
}

/**
 * Least flange that a shop calls safe: the shortest, plus the shoulder radius, plus half a thickness, rounded up to
 * 1/16 in or 1 mm. About 0.7 V at 90 degrees and a little over (common practice).
 */
export function safeFlange(
  { thickness, dieOpening, bendAngle, shoulder }: FlangeBend,
  system: UnitSystem,
  work?: Working,
): Millimeters {
  const shortest = shortestFlange(dieOpening, bendAngle, work);
  // Not the share of the opening that a bend is solved with: 0.7 V and a little over is what brakes are run with.
  const said = shoulder === undefined ? "die shoulder radius, not given: none added" : "die shoulder radius";
  const round = step(work, "rd", said, shoulder ?? mm(0), "mm", shoulder === undefined ? SHORT : "given");
  const margin = step(
    work,
    "m",
    "shoulder radius and half a thickness",
    mm(round + FLANGE_MARGIN.value * thickness),
    "mm",
    cite(FLANGE_MARGIN),
  );
  return step(
    work,
    "b safe",
    "least safe flange, rounded up",
    roundUp(mm(shortest + margin), system),
    "mm",
    cite(FLANGE_STEP_IN),
  );
}

const SHORT = "0.7 V and a little over (common practice)";

/** Up to the next 1/16 in or millimeter; a figure that is one already stays. */
function roundUp(value: Millimeters, system: UnitSystem): Millimeters {
  const grid = system === "in" ? FLANGE_STEP_IN.value * MM_PER_INCH : 1;
  return mm(Math.ceil(value / grid - 1e-9) * grid); // numerical, the rounding of a unit conversion
}
