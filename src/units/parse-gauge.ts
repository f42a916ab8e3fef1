/**
 * Reads a gauge number: 10, "10", "10 ga", "10ga", "3/0", "000" (three zeros). Returns the number with zeros counted
 * down from 0 (1/0 is 0, 2/0 is -1, 3/0 is -2 ...), or undefined.
 */
const GAUGE = /^(?:no\.?\s*|#\s*)?(\d{1,2}|0{2,7}|[2-7]\s*\/\s*0|1\s*\/\s*0)\s*(?:ga|gage|gauge)?\.?$/i;
const SUFFIX = /(?:ga|gage|gauge)\.?\s*$/i;

export function parseGauge(value: number | string): number | undefined {
  if (typeof value === "number") return Number.isInteger(value) && value >= 0 && value <= 99 ? value : undefined;
  const digits = GAUGE.exec(value.trim())?.[1]?.replace(/\s/g, "");
  if (digits === undefined) return undefined;
  if (digits.includes("/")) return 1 - Number(digits[0]);
  if (/^0+$/.test(digits)) return 1 - digits.length;
  return Number(digits);
}

/** "10 ga" says that it is a gauge; a bare "10" does not. */
export const namesGauge = (text: string): boolean => SUFFIX.test(text);

/** 10 -> "10 ga", -2 -> "3/0 ga". */
export const showGauge = (gauge: number): string => `${gauge < 0 ? `${1 - gauge}/0` : gauge} ga`;
