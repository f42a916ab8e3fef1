import { parseValue } from "numfmt";

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

/** The number a text stands for in arithmetic (en-US: "1,234", "5%", "1/2/2020", "10:30"), undefined if none. */
export function textNumber(text: string): number | undefined {
  const trimmed = text.trim();
  if (trimmed === "") return undefined;
  if (PLAIN.test(trimmed)) {
    const plain = Number(trimmed);
    return Number.isFinite(plain) ? plain : undefined;
  }
  if (!/\d/.test(trimmed) || trimmed.length > 64) return undefined;
  const parsed = parseValue(trimmed);
  return typeof parsed?.value === "number" && Number.isFinite(parsed.value) ? parsed.value : undefined;
}
