/**
 * Reads a number as people type it into a cell of text: "0.25", ".25", "4,5", "1/4", "1-1/2", "1 1/2".
 * Returns "ambiguous" where a comma may be a decimal or a thousands mark ("1,234"), undefined for anything else.
 */
const DECIMAL = /^(\d+(?:[.,]\d*)?|[.,]\d+)$/;
const FRACTION = /^(?:(\d+)(?:\s*-\s*|\s+))?(\d+)\s*[/⁄]\s*(\d+)$/;
/** One to three digits, not a lone zero, then exactly three more: could be one and a bit or more than a thousand. */
const AMBIGUOUS = /^[1-9]\d{0,2}(,\d{3})+$/;
const MINUS = /^[-−]\s*/;

export function parseNumber(text: string): number | "ambiguous" | undefined {
  const trimmed = text.trim();
  if (trimmed.length > 40) return undefined;
  const unsigned = trimmed.replace(MINUS, "").replace(/^\+/, "");
  const value = parseUnsigned(unsigned);
  return typeof value === "number" && MINUS.test(trimmed) ? -value : value;
}

function parseUnsigned(text: string): number | "ambiguous" | undefined {
  if (AMBIGUOUS.test(text)) return "ambiguous";
  if (DECIMAL.test(text)) return Number(text.replace(",", "."));
  const fraction = FRACTION.exec(text);
  if (!fraction) return undefined;
  const [, whole = "0", numerator, denominator] = fraction;
  if (Number(denominator) === 0) return undefined;
  return Number(whole) + Number(numerator) / Number(denominator);
}
