import { HOLE_THICKNESSES } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { type Degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { bendAllowance } from "./allowance.ts";
import type { KChoice } from "./neutral-axis.ts";
import { insideSetback } from "./setback.ts";

interface HoleLimits {
  /** From here on the hole keeps its shape. */
  readonly fine: Millimeters;
  /** Below this it tears into the bend: drill it after bending. */
  readonly drillAfter: Millimeters;
}

interface HoleBend {
  readonly thickness: Millimeters;
  readonly radius: Millimeters;
  readonly dieOpening: Millimeters;
  readonly bendAngle: Degrees;
  readonly k: KChoice;
}

/**
 * Least distance from the inside face of the other flange to a hole's edge. Two rules, the larger makes it "fine":
 * 2t + R beyond the inside face, and half the opening from the bend line on the flat, since everything inside it lies
 * over the open die and moves (both common practice). Between the two it distorts; below 2t + R drill it after bending.
 */
export function holeLimits({ thickness, radius, dieOpening, bendAngle, k }: HoleBend, work?: Working): HoleLimits {
  const drillAfter = step(
    work,
    "e1",
    "2t + R beyond the inside face",
    mm(HOLE_THICKNESSES.value * thickness + radius),
    "mm",
    cite(HOLE_THICKNESSES),
  );
  const tangent = insideSetback(radius, bendAngle, work);
  const halfArc = bendAllowance({ thickness, radius, bendAngle, k }, work) / 2;
  const overDie = step(
    work,
    "e2",
    "half the opening from the bend line, measured from the inside face",
    mm(dieOpening / 2 + tangent - halfArc),
    "mm",
    "common practice",
  );
  const fine = step(
    work,
    "e",
    "least distance from the inside face to the hole's edge",
    mm(Math.max(drillAfter, overDie)),
    "mm",
    "the larger of the two",
  );
  return { fine, drillAfter };
}
