/**
 * A number as text the way Excel joins it to a string: 15 significant digits; beyond those the shorter of the plain and
 * the scientific form, and scientific for small numbers whose plain form would be longer than 20 characters (recalled
 * from published reverse engineering, memory).
 */
export function numberText(value: number): string {
  if (Number.isInteger(value) && Math.abs(value) < 1e15) return Object.is(value, -0) ? "0" : String(value);
  const [mantissa = "0", exponentText = "0"] = value.toExponential(14).split("e");
  const exponent = Number(exponentText);
  const digits = mantissa.replace("-", "").replace(".", "").replace(/0+$/, "") || "0";
  const sign = value < 0 ? "-" : "";
  const fraction = digits.length > 1 ? `.${digits.slice(1)}` : "";
  const size = String(Math.abs(exponent)).padStart(2, "0");
  const scientific = `${digits[0]}${fraction}E${exponent < 0 ? "-" : "+"}${size}`;
  const plainLength = exponent < 0 ? 1 - exponent + digits.length : exponent + 1;
  if (exponent < 0 ? plainLength > 20 : exponent > 14 && plainLength > scientific.length) return sign + scientific;
  if (exponent < 0) return `${sign}0.${"0".repeat(-exponent - 1)}${digits}`;
  if (digits.length <= exponent + 1) return `${sign}${digits.padEnd(exponent + 1, "0")}`;
  return `${sign}${digits.slice(0, exponent + 1)}.${digits.slice(exponent + 1)}`;
}
