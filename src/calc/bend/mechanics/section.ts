import { missing } from "../../../units/certain.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { gaussRule } from "./gauss.ts";

/**
 * Bending of the sheet's section in plane strain, per unit length of bend: an elastic core inside a skin that hardens
 * by Swift's law. All of it in closed form over the plastic strain p of the outer fiber (derived):
 *   s = f K (e0 + f p)^n, outer strain e = s/E' + p, curvature k = 2 e/t,
 *   moment M = 2 G/k^2 with G = integral of s e de = s^3/(3 E'^2) + (p s^2 + B)/(2 E') + A,
 *   A = integral of s p dp, B = integral of s^2 dp, w = integral of s de,
 *   complementary work Psi = k M - integral of M dk = 4 G/k - t w.
 * E' = E/(1 - nu^2); f = (1 + r)/sqrt(1 + 2r) carries uniaxial data to plane strain (Hill 1948, memory, unverified).
 */
interface SectionState {
  readonly curvature: number;
  readonly moment: number;
  readonly complementary: number;
  /** Derivative of the moment by the logarithm of the plastic strain measure; by the curvature where elastic. */
  readonly slope: number;
}

/** A section's moments from straight to a curvature, at quadrature points: what an arm is integrated over. */
export interface SectionPath {
  readonly end: SectionState;
  /** d ln M / d ln k at the end: 1 elastic, about n once most of the section is plastic. */
  readonly endExponent: number;
  readonly curvature: readonly number[];
  readonly moment: readonly number[];
  readonly complementary: readonly number[];
  /** Quadrature weight times dM. */
  readonly momentStep: readonly number[];
}

export interface Section {
  readonly thickness: number;
  /** E' t^3/12. */
  readonly stiffness: number;
  readonly elasticCurvature: number;
  stateAt(curvature: number): SectionState;
  pathTo(curvature: number): SectionPath;
}

/** Points in the elastic part of a path; those after them, if any, are the nodes of PLASTIC_RULE. */
export const ELASTIC_POINTS = 4;

// 4 points carry the smooth elastic part; 16, evenly over u^GRADING, hold the energy balance to 1e-5 for every exponent up
// to 0.5: between the logarithm of u, which wastes points near the yield strain, and u itself, which has none there.
const GRADING = 0.15;
const ELASTIC_RULE = gaussRule(ELASTIC_POINTS);
export const PLASTIC_RULE = gaussRule(16);

export function section(input: AirBendInput): Section {
  const { strength: K, exponent: n } = input.hardening;
  const t = input.thickness;
  const r = input.anisotropy ?? 1;
  const f = (1 + r) / Math.sqrt(1 + 2 * r);
  const Eprime = input.modulus / (1 - input.poisson ** 2);
  const e0 = input.hardening.prestrain ?? (K / input.modulus) ** (1 / (1 - n));
  const power0 = e0 ** n;
  const yieldStrain = (f * K * power0) / Eprime;
  const elasticCurvature = (2 * yieldStrain) / t;
  const stiffness = (Eprime * t ** 3) / 12; // E'I of a plate, by definition

  /** State at u = e0 + f p, the argument of the power law in the outer fiber; `power` is u^n. */
  const plasticState = (u: number, power: number): SectionState & { curvatureSlope: number } => {
    const s = f * K * power;
    const p = (u - e0) / f;
    const e = s / Eprime + p;
    const curvature = (2 * e) / t;
    const first = (u * power - e0 * power0) / (n + 1);
    const A = (K / f) * ((u * u * power - e0 * e0 * power0) / (n + 2) - e0 * first);
    const B = (f * K * K * (u * power * power - e0 * power0 * power0)) / (2 * n + 1);
    const G = (s * s * s) / (3 * Eprime * Eprime) + (p * s * s + B) / (2 * Eprime) + A;
    const w = (s * s) / (2 * Eprime) + K * first;
    const moment = (2 * G) / (curvature * curvature);
    const curvatureSlope = (2 / t) * ((n * s) / Eprime + u / f);
    const slope = ((-2 * moment + (t * t * s) / 2) / curvature) * curvatureSlope;
    return { curvature, moment, complementary: (4 * G) / curvature - t * w, slope, curvatureSlope };
  };

  /** u at a curvature beyond the elastic one: Newton on the outer strain, which rises with u and bends downward. */
  const hardeningArgument = (curvature: number): number => {
    const e = (curvature * t) / 2;
    let u = e0 + f * (e - yieldStrain);
    for (let newton = 0; newton < 50; newton++) {
      const s = f * K * u ** n;
      const change = (s / Eprime + (u - e0) / f - e) / ((n * s) / (u * Eprime) + 1 / f);
      u = Math.max(e0, u - change);
      if (Math.abs(change) < 1e-14 * u) break;
    }
    return u;
  };

  const elasticState = (curvature: number): SectionState => {
    const moment = stiffness * curvature;
    return { curvature, moment, complementary: (moment * curvature) / 2, slope: stiffness };
  };

  const plasticAt = (u: number) => plasticState(u, u ** n);

  const stateAt = (curvature: number) =>
    curvature <= elasticCurvature ? elasticState(curvature) : plasticAt(hardeningArgument(curvature));

  const pathTo = (curvature: number): SectionPath => {
    const plastic = curvature > elasticCurvature;
    const points = ELASTIC_POINTS + (plastic ? PLASTIC_RULE.nodes.length : 0);
    // Plain arrays: short typed ones live outside the heap and cost more to make than to fill.
    const path = {
      curvature: new Array<number>(points),
      moment: new Array<number>(points),
      complementary: new Array<number>(points),
      momentStep: new Array<number>(points),
    };
    const put = (i: number, state: SectionState, weight: number) => {
      path.curvature[i] = state.curvature;
      path.moment[i] = state.moment;
      path.complementary[i] = state.complementary;
      path.momentStep[i] = weight * state.slope;
    };
    const elasticPart = Math.min(curvature, elasticCurvature);
    for (let i = 0; i < ELASTIC_POINTS; i++) {
      const weight = ELASTIC_RULE.weights[i] ?? missing();
      put(i, elasticState(elasticPart * (ELASTIC_RULE.nodes[i] ?? missing())), weight * elasticPart);
    }
    if (!plastic) return { ...path, end: elasticState(curvature), endExponent: 1 };
    const u = hardeningArgument(curvature);
    const spread = (u / e0) ** GRADING - 1;
    for (let i = 0; i < PLASTIC_RULE.nodes.length; i++) {
      // Powers of u as exponentials: this loop is where the time of a solve goes, and a general power costs three.
      const graded = 1 + spread * (PLASTIC_RULE.nodes[i] ?? missing());
      const ln = Math.log(graded) / GRADING;
      const state = plasticState(e0 * Math.exp(ln), power0 * Math.exp(n * ln));
      put(ELASTIC_POINTS + i, state, ((PLASTIC_RULE.weights[i] ?? missing()) * spread) / (GRADING * graded));
    }
    const end = plasticAt(u);
    return { ...path, end, endExponent: (end.slope / end.curvatureSlope) * (curvature / end.moment) };
  };

  return { thickness: t, stiffness, elasticCurvature, stateAt, pathTo };
}
