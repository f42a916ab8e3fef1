import type { Material } from "../../data/materials/material.ts";
import {
  GAP_CHECK,
  GAP_NOTE,
  GAP_STOP,
  GAP_TIGHT,
  GAP_TIGHT_FROM_IN,
  RATING_PRINTED,
  STRIP_CHECK,
  STRIP_NOTE,
  STRIP_PLATE_FROM_IN,
  STRIP_STOP,
} from "../../data/thresholds.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { type Finding, type Severity, statusOf } from "../finding.ts";
import { limitOf, type OwnThresholds } from "../limit-of.ts";
import { highShearStrength, ratedShearStrength, shearStrength } from "../material/strength.ts";
import { maximumShearThickness, sameMaterial } from "./maximum-thickness.ts";

export interface Shear {
  readonly name: string;
  readonly ratedThickness: Millimeters;
  /** The steel the rating is stated in. */
  readonly ratedIn: Material;
  readonly cutLength: Millimeters;
  readonly leastHold?: Millimeters | undefined;
  readonly bladeGap?: Millimeters | undefined;
}

export interface ShearedBlank {
  readonly material: Material;
  readonly thickness: Millimeters;
  readonly cutLength: Millimeters;
  /** Width of the narrowest strip that falls. */
  readonly stripWidth: Millimeters;
}

/**
 * Will this shear take this cut? Thickness in this material against the plate's rating, cut length against the table,
 * narrow strips, hold-down and blade gap. The rating itself is never compared with a computed force (see force.ts).
 * The plate decides.
 */
export function checkShear(blank: ShearedBlank, shear: Shear, own?: OwnThresholds, work?: Working): Finding[] {
  const found = [
    ratingFinding(blank, shear, work),
    lengthFinding(blank, shear),
    holdFinding(blank, shear),
    stripFinding(blank, own),
    gapFinding(blank, shear, own),
  ].filter((finding) => finding !== undefined);
  step(work, "status", "worst of all checks", statusOf(found), "", "clear: no problem found against the tables given");
  return found;
}

function ratingFinding({ material, thickness }: ShearedBlank, shear: Shear, work?: Working): Finding | undefined {
  const { ratedThickness, ratedIn, name } = shear;
  const same = material.name === ratedIn.name;
  const safe = same
    ? sameMaterial(ratedThickness, work)
    : maximumShearThickness(ratedThickness, ratedShearStrength(ratedIn, work), highShearStrength(material, work), work);
  if (atMost(thickness, mm(safe * (1 + RATING_PRINTED.value)))) return undefined;
  // Between the careful and the ordinary figure a certificate can decide; above the ordinary one nothing can.
  const ordinary = same
    ? safe
    : mm(Math.min(ratedThickness, (ratedThickness * ratedShearStrength(ratedIn)) / shearStrength(material)));
  const strongOnly = atMost(thickness, ordinary);
  return {
    about: "cutting",
    status: strongOnly ? "check" : "stop",
    kind: strongOnly ? "strong only" : "over rating",
    figure: thickness,
    limit: safe,
    beside: ordinary,
    quantity: "length",
    name,
    words: material.name,
  };
}

const lengthFinding = ({ cutLength }: ShearedBlank, shear: Shear): Finding | undefined =>
  atMost(cutLength, shear.cutLength)
    ? undefined
    : {
        about: "cutting",
        status: "stop",
        kind: "too long",
        figure: cutLength,
        limit: shear.cutLength,
        quantity: "length",
        name: shear.name,
      };

/** A narrow piece can only be the last to fall; what is held is the wide one. */
const holdFinding = ({ stripWidth }: ShearedBlank, { leastHold, name }: Shear): Finding | undefined =>
  leastHold === undefined || atLeast(stripWidth, leastHold)
    ? undefined
    : {
        about: "hold-down",
        status: "note",
        kind: "falls last",
        figure: stripWidth,
        limit: leastHold,
        quantity: "length",
        name,
      };

/** A narrow strip twists, bows and cambers. */
function stripFinding({ thickness, stripWidth }: ShearedBlank, own?: OwnThresholds): Finding | undefined {
  const wide = stripWidth / thickness;
  if (atLeast(wide, limitOf(STRIP_NOTE, own))) return undefined;
  const plate = atLeast(thickness, limitOf(STRIP_PLATE_FROM_IN, own));
  const status: Severity = !atLeast(wide, limitOf(STRIP_STOP, own))
    ? "stop"
    : plate || !atLeast(wide, limitOf(STRIP_CHECK, own))
      ? "check"
      : "note";
  const limit = mm(limitOf(STRIP_NOTE, own) * thickness);
  return { about: "narrow strip", status, kind: "twists", figure: stripWidth, limit, quantity: "length" };
}

function gapFinding({ thickness }: ShearedBlank, { bladeGap, name }: Shear, own?: OwnThresholds): Finding | undefined {
  if (bladeGap === undefined) return undefined;
  const share = bladeGap / thickness;
  const tight = !atLeast(share, limitOf(GAP_TIGHT, own)) && atLeast(thickness, limitOf(GAP_TIGHT_FROM_IN, own));
  if (!tight && atMost(share, limitOf(GAP_NOTE, own))) return undefined;
  const status: Severity = tight
    ? "check"
    : !atMost(share, limitOf(GAP_STOP, own))
      ? "stop"
      : atMost(share, limitOf(GAP_CHECK, own))
        ? "note"
        : "check";
  return {
    about: "blade gap",
    status,
    kind: tight ? "tight" : status === "stop" ? "folds in" : "wide",
    figure: bladeGap,
    limit: mm((tight ? limitOf(GAP_TIGHT, own) : limitOf(GAP_NOTE, own)) * thickness),
    beside: share,
    quantity: "length",
    name,
  };
}
