/**
 * Number formats with an exponent and text among the placeholders (`0.0|e+|00`), which the numfmt library refuses. The
 * rules follow ECMA-376 part 1, 18.8.31, and cells that Excel saved: the exponent is a multiple of the number of whole
 * placeholders, %, and commas that would scale do nothing, and zero fills every whole placeholder.
 */
interface Exponential {
  readonly mantissa: string;
  readonly letter: string;
  readonly showPlus: boolean;
  readonly exponent: string;
}

const SHAPE = /^((?:[^"\\]|\\.|"[^"]*")*?)([eE])([+-])((?:[^"\\]|\\.|"[^"]*")*)$/;

function split(pattern: string): Exponential | undefined {
  const [, mantissa = "", letter = "", sign, exponent = ""] = SHAPE.exec(pattern) ?? [];
  if (!/[0#?]/.test(mantissa) || !/[0#?]/.test(exponent)) return undefined;
  return { mantissa, letter, showPlus: sign === "+", exponent };
}

/** One character or quoted run of a pattern: placeholder, point, or text as it shows. */
type Piece =
  | { readonly kind: "digit" | "point" | "comma"; readonly char: string }
  | { readonly kind: "text"; readonly text: string };

function pieces(pattern: string): Piece[] {
  const out: Piece[] = [];
  for (const token of pattern.match(/"[^"]*"|\\.|_.|\*.|[\s\S]/g) ?? []) {
    if (token === "0" || token === "#" || token === "?") out.push({ kind: "digit", char: token });
    else if (token === ".") out.push({ kind: "point", char: token });
    else if (token === ",") out.push({ kind: "comma", char: token });
    else if (token.startsWith('"')) out.push({ kind: "text", text: token.slice(1, -1) });
    else if (token.startsWith("\\")) out.push({ kind: "text", text: token.slice(1) });
    else if (token.length === 2) out.push({ kind: "text", text: token.startsWith("_") ? " " : "" });
    else out.push({ kind: "text", text: token });
  }
  return out;
}

const blank = (placeholder: string): string => (placeholder === "0" ? "0" : placeholder === "?" ? " " : "");

/** Fills whole placeholders from the right; further digits spill out before the first one. */
function fillWhole(parts: readonly Piece[], digits: string, grouped: boolean, zero: boolean): string {
  const places = parts.filter((p) => p.kind === "digit").length;
  let out = "";
  let place = places;
  for (const part of parts) {
    if (part.kind === "text") out += part.text;
    if (part.kind !== "digit") continue;
    const take =
      place === places ? digits.slice(0, Math.max(0, digits.length - places) + 1) : (digits.at(-place) ?? "");
    const own = place > digits.length ? (zero ? "0" : blank(part.char)) : take;
    place--;
    out += own;
    if (grouped && place > 0 && place % 3 === 0 && own !== "") out += own === " " ? " " : ",";
  }
  return out;
}

function fillFraction(parts: readonly Piece[], digits: string): string {
  let at = 0;
  const last = digits.replace(/0+$/, "").length;
  return parts
    .map((part) => {
      if (part.kind !== "digit") return part.kind === "text" ? part.text : "";
      const digit = at < last || part.char === "0" ? digits.charAt(at) : blank(part.char);
      at++;
      return digit;
    })
    .join("");
}

/** The value in an exponential format section; undefined when the section is none. */
export function scientific(pattern: string, value: number): string | undefined {
  const format = split(pattern);
  if (!format) return undefined;
  const all = pieces(format.mantissa);
  const point = all.findIndex((p) => p.kind === "point");
  const whole = point < 0 ? all : all.slice(0, point);
  const fraction = point < 0 ? [] : all.slice(point + 1);
  const step = Math.max(1, whole.filter((p) => p.kind === "digit").length);
  const decimals = fraction.filter((p) => p.kind === "digit").length;
  const firstDigit = whole.findIndex((p) => p.kind === "digit");
  const lastDigit = whole.findLastIndex((p) => p.kind === "digit");
  const grouped = whole.some((p, i) => p.kind === "comma" && i > firstDigit && i < lastDigit);
  const size = Math.abs(value);
  let exponent = size === 0 ? 0 : Math.floor(Number(size.toExponential(14).split("e")[1]) / step) * step;
  let text = scaled(size, exponent, decimals);
  if (Number(text) >= 10 ** step) {
    exponent += step;
    text = scaled(size, exponent, decimals);
  }
  const [digits = "0", rest = ""] = text.split(".");
  const mantissa =
    fillWhole(whole, digits, grouped, size === 0) + (point < 0 ? "" : `.${fillFraction(fraction, rest)}`);
  return (value < 0 ? "-" : "") + mantissa + format.letter + exponentText(format, exponent);
}

const scaled = (size: number, exponent: number, decimals: number): string => {
  const [m = "0", e = "0"] = size.toExponential(14).split("e");
  return Number(`${m}e${Number(e) - exponent}`).toFixed(decimals);
};

/** The sign stands right before the digits, after any text that leads them. */
function exponentText(format: Exponential, exponent: number): string {
  const parts = pieces(format.exponent);
  const first = parts.findIndex((p) => p.kind === "digit");
  const lead = parts
    .slice(0, first)
    .map((p) => (p.kind === "text" ? p.text : ""))
    .join("");
  const sign = exponent < 0 ? "-" : format.showPlus ? "+" : "";
  return lead + sign + fillWhole(parts.slice(first), String(Math.abs(exponent)), false, false);
}
