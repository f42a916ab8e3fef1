/** A value estimated from measurements and a prior belief. */

export interface Measured {
  readonly value: number;
  /** Standard deviation. */
  readonly deviation: number;
}

/**
 * Precision-weighted mean of the measurements and of a prior N(mean, deviation^2), with its standard deviation: normal
 * data with known deviations and the conjugate normal prior. mu = (m / s0^2 + sum(x / s^2)) / (1 / s0^2 + sum(1 / s^2)).
 * It lies between the prior's mean and the measurements, never past them.
 * Source: any text on Bayesian statistics, such as Lee, Bayesian Statistics, section 2.2 (memory).
 */
export function shrunkMean(measured: readonly Measured[], prior: Measured): Measured {
  const weight = ({ deviation }: Measured) => deviation ** -2;
  const all = [prior, ...measured];
  const precision = all.reduce((sum, each) => sum + weight(each), 0);
  return {
    value: all.reduce((sum, each) => sum + each.value * weight(each), 0) / precision,
    deviation: precision ** -0.5,
  };
}

/** A figure more than this many standard deviations from the others is an outlier (common practice). */
const OUTLYING = 3;

/**
 * The measurement that fits the others worst, if it is an outlier. Two cannot say which of them is wrong; the prior can.
 */
export function furthestOut<T extends Measured>(
  measured: readonly T[],
  prior: Measured,
): { readonly measured: T; readonly times: number } | undefined {
  const scored = measured.map((each) => {
    const { value, deviation } = shrunkMean(
      measured.length < 3 ? [] : measured.filter((other) => other !== each),
      prior,
    );
    return { measured: each, times: Math.abs(each.value - value) / Math.hypot(each.deviation, deviation) };
  });
  const [first, ...rest] = scored;
  const worst = first && rest.reduce((a, b) => (a.times >= b.times ? a : b), first);
  return worst && worst.times > OUTLYING ? worst : undefined;
}
