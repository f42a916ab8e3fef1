import { K_DEFAULT } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import type { StripCorrection } from "../../data/materials/material.ts";
import { type Degrees, degrees, type Millimeters, mm, type Ratio } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import type { AirMethod } from "./air-bend.ts";
import { airRadiusByRule, OPENING_SHARE } from "./air-radius.ts";
import { refusePastFaces } from "./loaded-faces.ts";
import { OutOfReach } from "./mechanics/air-bend-to-angle.ts";
import { MECHANICS } from "./mechanics/record-bend.ts";
import { type AskedBend, nearestWords, recordNearest, type SolvedAirBend, solvedAirBend } from "./solved-air-bend.ts";
import { estimateSpringback } from "./springback-estimate.ts";
import { correctedFraction, STRIPS } from "./strip-correction.ts";

/** What a flat is computed with: the radius a gauge reads, and the neutral axis on it. */
export interface AirShape {
  readonly radius: Millimeters;
  readonly neutralAxis: Ratio;
  /** Where the neutral axis is from. */
  readonly axisSource: string;
  /** How much of it the mechanics says: 1 all, 0 the rule. */
  readonly mechanicsShare: Ratio;
  /** The solved bend, where there is one. */
  readonly solved: SolvedAirBend | undefined;
}

/** Up to a distance of 1 the mechanics alone, from 2 the rule alone (chosen). */
const RULE_FROM = 2;

/**
 * Inside radius (tangent to both flanges) and neutral axis of an air bend. "mechanics" solves the bend; "rule" takes a
 * share of the opening and K 0.42; "best" takes the mechanics inside what was compared, the rule far outside, and between
 * the two passes over without a step. Where only one of them has an answer, that one. The shop's own strips are nearer
 * than any compared bend: where they hold, the mechanics with what they found. Whether the tools' faces allow the bend is
 * not part of it.
 */
export function airShape(asked: AskedBend, method: AirMethod, work?: Working): AirShape {
  const { material, thickness, tools } = asked;
  if (material.strips) {
    const solved = refusalOr(() => solvedAirBend(asked));
    if (!(solved instanceof Refusal) && solved.strip)
      return byStrips(work ? solvedAirBend(asked, work) : solved, solved.strip, thickness, work);
  }
  const byRule = (into?: Working): AirShape => ({
    radius: airRadiusByRule(material, tools.dieOpening, tools.punchNose, into).expected,
    neutralAxis: K_DEFAULT.value,
    axisSource: cite(K_DEFAULT),
    mechanicsShare: 0,
    solved: undefined,
  });
  if (method === "rule") return byRule(work);
  if (method === "mechanics") return byMechanics(solvedAirBend(asked, work), work);
  const solved = refusalOr(() => solvedAirBend(asked, work));
  if (solved instanceof Refusal) {
    const why = `the rule, since the mechanics has no answer: ${solved.message}`;
    step(work, "method", "best", why, "", "method best");
    return byRule(work);
  }
  const rule = refusalOr(() => byRule());
  const share = rule instanceof Refusal ? 1 : shareOf(solved);
  step(work, "method", "best", `${shareWords(share)}; ${nearestWords(solved.nearest)}`, "", "method best");
  if (rule instanceof Refusal || share === 1) return byMechanics(solved, work);
  if (share === 0) return { ...byRule(work), solved };
  const { tangentRadius, neutralFraction } = solved.bend;
  const formula = `u^2 (3 - 2 u), u = ${RULE_FROM} - d, from 0 to 1 (chosen)`;
  step(work, "w", "share of the mechanics; the rest is the rule's", share, "", formula);
  step(work, "Rm", "inside radius by mechanics, tangent to both flanges", tangentRadius, "mm", MECHANICS);
  const { airRadiusLow: low, airRadiusHigh: high } = material;
  if (low && high) step(work, "q", OPENING_SHARE, (low.value + high.value) / 2, "", cite(low));
  step(work, "Rr", "inside radius by rule", rule.radius, "mm", "q V, the nose where it is larger (common practice)");
  step(work, "Km", "neutral axis by mechanics, from the middle line on Rm", neutralFraction, "", MECHANICS);
  step(work, "Kr", "neutral axis by rule", rule.neutralAxis, "", rule.axisSource);
  const mix = (one: number, other: number) => share * one + (1 - share) * other;
  const radius = mm(mix(tangentRadius, rule.radius));
  step(work, "R", "inside radius, between mechanics and rule", radius, "mm", "w Rm + (1 - w) Rr (chosen)");
  return {
    radius,
    neutralAxis: mix(neutralFraction, rule.neutralAxis),
    axisSource: "w Km + (1 - w) Kr (chosen)",
    mechanicsShare: share,
    solved,
  };
}

/** The same where the tools can make it: #N/A past the faces of die or punch, whatever the method. */
export function feasibleAirShape(asked: AskedBend, method: AirMethod, work?: Working): AirShape {
  const { tools } = asked;
  // The rule does not solve the bend, but the bend must fit the tools like any other.
  const isJudged = method !== "rule" || tools.dieAngle !== undefined || tools.punchAngle !== undefined || work;
  if (isJudged) {
    const solved = refusalOr(() => solvedAirBend(asked));
    const isUnsolved = solved instanceof Refusal;
    const loaded = isUnsolved ? estimatedLoadedAngle(asked) : solved.bend.loadedAngle;
    if (method !== "rule" && solved instanceof OutOfReach) throw solved;
    if (loaded !== undefined && !(isUnsolved && method === "mechanics")) refusePastFaces(loaded, tools, work);
    if (method === "rule" && !isUnsolved) recordNearest(solved.nearest, work);
  }
  return airShape(asked, method, work);
}

function byMechanics(solved: SolvedAirBend, work?: Working): AirShape {
  const { tangentRadius, neutralFraction } = solved.predicted;
  return {
    radius: step(work, "R", "inside radius of the circle tangent to both flanges", tangentRadius, "mm", MECHANICS),
    neutralAxis: neutralFraction,
    axisSource: "from the middle line of the solved bend, on R (fitted)",
    mechanicsShare: 1,
    solved,
  };
}

/** A strip's K was found on the predicted radius, and is laid on it again. */
function byStrips(solved: SolvedAirBend, strip: StripCorrection, thickness: Millimeters, work?: Working): AirShape {
  const shape = byMechanics(solved, work);
  const ratio = shape.radius / thickness;
  step(work, "Kp", "neutral axis as predicted", shape.neutralAxis, "", shape.axisSource);
  step(work, "c", "the shop's correction of it", correctedFraction(0, strip, ratio), "", STRIPS);
  return {
    ...shape,
    neutralAxis: correctedFraction(shape.neutralAxis, strip, ratio),
    axisSource: `Kp + c, ${STRIPS}`,
  };
}

/** 1 inside, 0 from a distance of 2; smooth between (chosen). */
function shareOf({ nearest }: SolvedAirBend): Ratio {
  const near = Math.min(1, Math.max(0, RULE_FROM - nearest.distance));
  return near * near * (3 - 2 * near);
}

export const shareWords = (share: Ratio): string =>
  share === 1 ? "the mechanics" : share === 0 ? "the rule" : `${Math.round(share * 100)} % mechanics, the rest rule`;

/** Where the bend cannot be solved, the faces are judged by an estimate of the springback. */
function estimatedLoadedAngle({ material, thickness, bendAngle, tools }: AskedBend): Degrees | undefined {
  const springback = estimateSpringback(material, thickness, tools.dieOpening, bendAngle);
  return springback === undefined ? undefined : degrees(bendAngle + springback);
}
