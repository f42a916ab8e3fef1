import { cite } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import { NARROW_THICK, NARROW_THICK_FROM_IN, NARROW_THIN } from "../../data/shear-rules.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type Millimetres, mm } from "../../units/quantity.ts";
import { show } from "../../units/show.ts";
import { MM_PER_INCH, type UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { highShearStrength, ratedShearStrength, shearStrength } from "../material/strength.ts";
import { type Problem, statusOf } from "../problem.ts";
import { knifeGap } from "./knife-gap.ts";
import { maximumShearThickness, sameMaterial } from "./maximum-thickness.ts";

export interface Shear {
  readonly name: string;
  readonly ratedThickness: Millimetres;
  /** The steel the rating is stated in, by name; mild steel where the table does not say. */
  readonly ratedMaterial?: string | undefined;
  readonly cutLength: Millimetres;
  readonly leastHold?: Millimetres | undefined;
  readonly knifeGap?: Millimetres | undefined;
}

export interface ShearedBlank {
  readonly material: Material;
  readonly thickness: Millimetres;
  readonly cutLength: Millimetres;
  /** Width of the narrowest strip that falls. */
  readonly stripWidth: Millimetres;
}

/** A knife gap this much wider than wanted burrs; this much tighter dulls the knives. Memory, unverified. */
const GAP_TOO_WIDE = 2;

/**
 * Will this shear take this cut? Thickness in this material against the plate's rating, cut length against the table,
 * narrow strips, hold-down and knife gap. A remedy is another shear of the table, tried with the same check.
 * The rating itself is never compared with a computed force (see force.ts). The plate decides.
 */
export function checkShear(
  blank: ShearedBlank,
  shear: Shear,
  others: readonly Shear[],
  ratedMaterialOf: (shear: Shear) => Material,
  system: UnitSystem,
  work?: Working,
): Problem[] {
  const problems = findProblems(blank, shear, ratedMaterialOf(shear), system, work);
  if (statusOf(problems) === "clear") return problems;
  const another = others.find(
    (candidate) =>
      candidate !== shear && statusOf(findProblems(blank, candidate, ratedMaterialOf(candidate), system)) !== "stop",
  );
  return problems.map((problem) =>
    problem.severity === "stop"
      ? {
          ...problem,
          remedy: another
            ? `Nearest remedy: shear it on ${another.name}.`
            : "No shear of the table takes it: cut it on the waterjet or buy it cut.",
        }
      : problem,
  );
}

function findProblems(
  blank: ShearedBlank,
  shear: Shear,
  rated: Material,
  system: UnitSystem,
  work?: Working,
): Problem[] {
  return [
    thicknessProblem(blank, shear, rated, system, work),
    lengthProblem(blank, shear, system),
    holdProblem(blank, shear, system),
    stripProblem(blank, system),
    gapProblem(blank, shear, system),
  ].filter((problem) => problem !== undefined);
}

function thicknessProblem(
  { material, thickness }: ShearedBlank,
  shear: Shear,
  rated: Material,
  system: UnitSystem,
  work?: Working,
): Problem | undefined {
  const same = material.name === rated.name;
  const safe = same
    ? sameMaterial(shear.ratedThickness, work)
    : maximumShearThickness(
        shear.ratedThickness,
        ratedShearStrength(rated, work),
        highShearStrength(material, work),
        work,
      );
  if (atMost(thickness, safe)) return undefined;
  // Between the careful and the ordinary figure a certificate can decide; above the ordinary one nothing can.
  const ordinary = same
    ? safe
    : mm(Math.min(shear.ratedThickness, (shear.ratedThickness * ratedShearStrength(rated)) / shearStrength(material)));
  const severity = atMost(thickness, ordinary) ? "check" : "stop";
  const rating = `${show(shear.ratedThickness, "length", system)} in ${rated.name}`;
  return {
    check: "shear rating",
    severity,
    value: thickness,
    limit: safe,
    quantity: "length",
    message: `${shear.name}, rated ${rating}, takes ${show(safe, "length", system)} of strong ${material.name}${severity === "check" ? ` (${show(ordinary, "length", system)} of ordinary)` : ""}; this is ${show(thickness, "length", system)}.`,
    remedy: "Ask for the mill certificate; the plate decides.", // of a check; a stop gets another
  };
}

function lengthProblem({ cutLength }: ShearedBlank, shear: Shear, system: UnitSystem): Problem | undefined {
  if (atMost(cutLength, shear.cutLength)) return undefined;
  return {
    check: "cut length",
    severity: "stop",
    value: cutLength,
    limit: shear.cutLength,
    quantity: "length",
    message: `The cut is ${show(cutLength, "length", system)}; ${shear.name} cuts ${show(shear.cutLength, "length", system)}.`,
  };
}

function holdProblem({ stripWidth }: ShearedBlank, shear: Shear, system: UnitSystem): Problem | undefined {
  if (shear.leastHold === undefined || atLeast(stripWidth, shear.leastHold)) return undefined;
  return {
    check: "hold-down",
    severity: "check",
    value: stripWidth,
    limit: shear.leastHold,
    quantity: "length",
    message: `A piece of ${show(stripWidth, "length", system)} does not reach a hold-down of ${shear.name}, which needs ${show(shear.leastHold, "length", system)}.`,
    remedy: "Let it fall behind the blade and hold the wide piece; never reach under the hold-downs.",
  };
}

function stripProblem({ thickness, stripWidth }: ShearedBlank, system: UnitSystem): Problem | undefined {
  const multiple = atLeast(thickness, NARROW_THICK_FROM_IN.value * MM_PER_INCH) ? NARROW_THICK : NARROW_THIN;
  const least = mm(multiple.value * thickness);
  if (atLeast(stripWidth, least)) return undefined;
  return {
    check: "narrow strip",
    severity: "check",
    value: stripWidth,
    limit: least,
    quantity: "length",
    message: `A strip of ${show(stripWidth, "length", system)} is narrower than ${multiple.value} thicknesses, ${show(least, "length", system)}: it twists, bows and cambers (${cite(multiple)}).`,
    remedy: "Use flat bar or saw it, or straighten it before bending.",
  };
}

function gapProblem({ material, thickness }: ShearedBlank, shear: Shear, system: UnitSystem): Problem | undefined {
  const share = material.knifeGap;
  if (shear.knifeGap === undefined || !share) return undefined;
  const wanted = knifeGap(thickness, share.value, cite(share));
  if (atMost(shear.knifeGap, GAP_TOO_WIDE * wanted)) return undefined;
  return {
    check: "knife gap",
    severity: "check",
    value: shear.knifeGap,
    limit: wanted,
    quantity: "length",
    message: `The knife gap of ${shear.name} is set to ${show(shear.knifeGap, "length", system)}; this sheet wants ${show(wanted, "length", system)} and will burr.`,
    remedy: "Reset the gap before the run, knives locked out.",
  };
}

/** Records the answer of the check itself as the last step of its working. */
export const recordStatus = (problems: readonly Problem[], work?: Working) =>
  step(
    work,
    "status",
    "worst of all checks",
    statusOf(problems),
    "",
    "clear: no problem found against the tables given",
  );
