import type { Regime } from "../../data/materials/material.ts";
import { firstOf } from "../../units/certain.ts";
import { type Millimeters, mm, type Ratio } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import { correctedFraction } from "../bend/strip-correction.ts";
import { furthestOut, type Measured, shrunkMean } from "../shrunk-mean.ts";

export interface StripRecord {
  readonly material: string;
  readonly regime: Regime;
  readonly thickness: Millimeters;
  readonly dieOpening: Millimeters;
  readonly tangentRadius: Millimeters;
  /** From the strip, and as predicted without it. */
  readonly measuredFraction: Ratio;
  readonly predictedFraction: Ratio;
  readonly deviation: Ratio;
  /** Measured over predicted peak force, and measured over predicted springback, where they were read. */
  readonly forceRatio?: Ratio;
  readonly springbackRatio?: Ratio;
}

interface ShopCorrection {
  readonly material: string;
  readonly regime: Regime;
  /** The die of the strips, and the thicknesses that they speak for. */
  readonly opening: Millimeters;
  readonly thicknessFrom: Millimeters;
  readonly thicknessTo: Millimeters;
  /** Strips used; `outliers` are left out, by their place in the list given, each with what to do about it. */
  readonly strips: number;
  readonly outliers: readonly { readonly place: number; readonly message: string }[];
  /** To be added to the predicted K, and its standard deviation. */
  readonly offset: Ratio;
  readonly deviation: Ratio;
  /** Standard deviation of the strips about the correction: undefined below two strips. */
  readonly spread: Ratio | undefined;
  /** K also changes with r / t: per decade, about this r / t. Only where the strips span enough of it. */
  readonly slope: { readonly perDecade: Ratio; readonly about: Ratio } | undefined;
  /** What the catalogue's strength and springback are to be multiplied by: means of the strips that have them. */
  readonly strength: Ratio | undefined;
  readonly springback: Ratio | undefined;
  /** Fewer than three strips: the reading alone may be wrong by as much as the correction. */
  readonly few: boolean;
}

/** How far shops differ from the prediction before anything is measured: standard deviation of K (chosen; FE cases scatter 0.415-0.438). */
const PRIOR: Measured = { value: 0, deviation: 0.05 };
const SPAN = 2;
/** Strips speak for sheets a tenth thinner than the thinnest of them to a tenth thicker than the thickest (chosen: less than a gauge). */
const BEYOND = 0.1;

/**
 * The shop's own correction of K by material, contact regime and die, from its test strips: precision-weighted mean of the
 * residuals, shrunk towards none by the prior N(0, 0.05^2): c = sum(res / s^2) / (sum(1 / s^2) + 1 / 0.05^2), standard
 * deviation (sum(1 / s^2) + 400)^-1/2 (normal conjugate prior, derived). A slope in lg(r / t) only from three distinct
 * ratios that span a factor of 2.
 * @throws Refusal where a strip's figures cannot be weighed.
 */
export function shopCorrections(records: readonly StripRecord[], work?: Working): ShopCorrection[] {
  records.forEach((r, i) => {
    if (!(r.deviation > 0 && r.deviation < Infinity))
      throw wrong(`deviation of strip ${i + 1}`, "above 0", r.deviation);
    for (const figure of [r.measuredFraction, r.predictedFraction])
      if (!Number.isFinite(figure)) throw wrong(`K of strip ${i + 1}`, "a number", figure);
    for (const ratio of [r.forceRatio, r.springbackRatio])
      if (ratio !== undefined && !(ratio > 0 && ratio < Infinity))
        throw wrong(`measured over predicted of strip ${i + 1}`, "above 0", ratio);
    if (!(r.tangentRadius > 0 && r.thickness > 0))
      throw wrong(`radius of strip ${i + 1}`, "above 0 mm", r.tangentRadius);
  });
  const groups = new Map<string, Placed[]>();
  records.forEach((record, i) => {
    const key = JSON.stringify([record.material, record.regime, record.dieOpening.toFixed(2)]);
    groups.set(key, [
      ...(groups.get(key) ?? []),
      { ...record, place: i + 1, value: record.measuredFraction - record.predictedFraction },
    ]);
  });
  return [...groups.values()].map((group) => correctionOf(group, work));
}

/** Its value is what was measured less what was predicted. */
type Placed = StripRecord & Measured & { readonly place: number };

function correctionOf(group: readonly Placed[], work: Working | undefined): ShopCorrection {
  const used = [...group];
  const outliers: { place: number; message: string }[] = [];
  for (let out = furthestOut(used, PRIOR); out; out = furthestOut(used, PRIOR)) {
    used.splice(used.indexOf(out.measured), 1);
    const { place, measuredFraction } = out.measured;
    const message = `strip ${place} gives K ${measuredFraction.toFixed(3)}, ${out.times.toFixed(1)} standard deviations from what the others lead to expect: measure its blank, flanges and angle again, and check its material`;
    outliers.push({ place, message });
  }
  const { material, regime, dieOpening } = firstOf(group);
  const thicknesses = group.map(({ thickness }) => thickness);
  const { value: offset, deviation } = shrunkMean(used, PRIOR);
  const source = "precision-weighted mean with prior N(0, 0.05^2) (derived)";
  step(work, "c", `correction of K, ${material}, ${regime}`, offset, "", source);
  step(work, "s_c", "its standard deviation", deviation, "", source);
  const slope = slopeOf(used);
  const residuals = used.map((r) => r.value - correctedFraction(0, { offset, slope }, ratioOf(r)));
  const spread = used.length < 2 ? undefined : Math.sqrt(sum(residuals.map((r) => r * r)) / (used.length - 1));
  return {
    material,
    regime,
    opening: dieOpening,
    thicknessFrom: mm(Math.min(...thicknesses) * (1 - BEYOND)),
    thicknessTo: mm(Math.max(...thicknesses) * (1 + BEYOND)),
    strips: used.length,
    outliers,
    offset,
    deviation,
    spread,
    slope,
    strength: mean(used.map((r) => r.forceRatio)),
    springback: mean(used.map((r) => r.springbackRatio)),
    few: used.length < 3,
  };
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const weight = (r: Placed): number => 1 / r.deviation ** 2;
const ratioOf = (r: StripRecord): Ratio => r.tangentRadius / r.thickness;

function mean(values: readonly (number | undefined)[]): number | undefined {
  const known = values.filter((v) => v !== undefined);
  return known.length ? sum(known) / known.length : undefined;
}

/** Weighted least squares in lg(r / t) about the weighted mean, so that the offset stays what it is (derived). */
function slopeOf(strips: readonly Placed[]): ShopCorrection["slope"] {
  const ratios = strips.map(ratioOf);
  const distinct = new Set(ratios.map((r) => r.toPrecision(2)));
  if (distinct.size < 3 || Math.max(...ratios) < SPAN * Math.min(...ratios)) return undefined;
  const total = sum(strips.map(weight));
  const center = sum(strips.map((r) => weight(r) * Math.log10(ratioOf(r)))) / total;
  const placed = strips.map((r) => ({ value: r.value, w: weight(r), away: Math.log10(ratioOf(r)) - center }));
  // About the center the distances weigh nothing in all, so that the residuals need no mean taken off.
  const perDecade =
    sum(placed.map(({ value, w, away }) => w * away * value)) / sum(placed.map(({ w, away }) => w * away ** 2));
  return { perDecade, about: 10 ** center };
}
