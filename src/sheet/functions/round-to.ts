/**
 * Rounds half away from zero at a decimal place, on the number as Excel shows it: 15 significant digits, so that
 * ROUND(1.005,2) is 1.01 although the binary number lies just below.
 */
export function roundTo(value: number, digits: number, toInteger: (positive: number) => number): number {
  const places = Math.trunc(digits);
  const size = Math.abs(value);
  if (size === 0 || places > 308) return value;
  if (places < -308) return 0;
  const [mantissa = "0", exponent = "0"] = size.toPrecision(15).includes("e")
    ? size.toPrecision(15).split("e")
    : [size.toPrecision(15), "0"];
  const scaled = Number(`${mantissa}e${Number(exponent) + places}`);
  // From 2^53 on every number is whole: nothing to round, and its digits may not be written with an exponent.
  if (!(scaled < 2 ** 53)) return value;
  const rounded = Number(`${toInteger(scaled)}e${-places}`);
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}
