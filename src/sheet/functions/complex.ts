import { CellError, type CellValue } from "../../units/cell.ts";
import { toText } from "../evaluate/coerce.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { numberText } from "../evaluate/number-text.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { DIV0, NUM, VALUE, type Value } from "../evaluate/value.ts";
import { define, defineIn, fail } from "./define.ts";

interface Complex {
  readonly re: number;
  readonly im: number;
  readonly unit: string;
}

const NUMBER = "[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?";
const PATTERN = new RegExp(`^(${NUMBER})?(?:([+-]?(?:(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?)?)([ij]))?$`);

function parse(value: CellValue): Complex {
  if (typeof value === "boolean") fail(VALUE);
  const text = toText(value);
  if (text instanceof CellError) fail(text);
  const trimmed = text.trim();
  if (trimmed === "") return { re: 0, im: 0, unit: "i" };
  // "3i" alone: the number belongs to the unit.
  const alone = new RegExp(`^(${NUMBER}|[+-])?([ij])$`).exec(trimmed);
  const coefficient = (s: string | undefined): number =>
    s === undefined || s === "" || s === "+" ? 1 : s === "-" ? -1 : Number(s);
  if (alone) return { re: 0, im: coefficient(alone[1]), unit: alone[2]! };
  const match = PATTERN.exec(trimmed);
  if (!match || match[1] === undefined) return fail(NUM);
  return { re: Number(match[1]), im: match[3] === undefined ? 0 : coefficient(match[2]), unit: match[3] ?? "i" };
}

function show({ re, im, unit }: Complex): string {
  if (!Number.isFinite(re) || !Number.isFinite(im)) return fail(NUM);
  if (im === 0) return numberText(re);
  const size = Math.abs(im) === 1 ? "" : numberText(Math.abs(im));
  const sign = im < 0 ? "-" : re === 0 ? "" : "+";
  return `${re === 0 ? "" : numberText(re)}${sign}${size}${unit}`;
}

const z = (re: number, im: number, unit = "i"): Complex => ({ re, im, unit });
const times = (a: Complex, b: Complex): Complex => z(a.re * b.re - a.im * b.im, a.re * b.im + a.im * b.re, a.unit);
function over(a: Complex, b: Complex): Complex {
  const size = b.re ** 2 + b.im ** 2;
  if (size === 0) fail(NUM);
  return z((a.re * b.re + a.im * b.im) / size, (a.im * b.re - a.re * b.im) / size, a.unit);
}
const polar = (size: number, angle: number, unit: string): Complex =>
  z(size * Math.cos(angle), size * Math.sin(angle), unit);
const size = (a: Complex): number => Math.hypot(a.re, a.im);
const angle = (a: Complex): number => (a.re === 0 && a.im === 0 ? fail(DIV0) : Math.atan2(a.im, a.re));
const log = (a: Complex): Complex => (size(a) === 0 ? fail(NUM) : z(Math.log(size(a)), angle(a), a.unit));
const sin = (a: Complex): Complex => z(Math.sin(a.re) * Math.cosh(a.im), Math.cos(a.re) * Math.sinh(a.im), a.unit);
const cos = (a: Complex): Complex => z(Math.cos(a.re) * Math.cosh(a.im), -Math.sin(a.re) * Math.sinh(a.im), a.unit);
const sinh = (a: Complex): Complex => z(Math.sinh(a.re) * Math.cos(a.im), Math.cosh(a.re) * Math.sin(a.im), a.unit);
const cosh = (a: Complex): Complex => z(Math.cosh(a.re) * Math.cos(a.im), Math.sinh(a.re) * Math.sin(a.im), a.unit);
const one = (a: Complex): Complex => z(1, 0, a.unit);
const divided = (a: Complex, by: number): Complex => z(a.re / by, a.im / by, a.unit);
const power = (a: Complex, n: number): Complex =>
  size(a) === 0 ? (n > 0 ? a : fail(NUM)) : polar(size(a) ** n, angle(a) * n, a.unit);

const unary = (name: string, compute: (a: Complex) => Complex): WorksheetFunction =>
  define(name, "v", (a) => show(compute(parse(a))));
const measure = (name: string, compute: (a: Complex) => number): WorksheetFunction =>
  define(name, "v", (a) => compute(parse(a)));

function all(frame: Frame, args: readonly Value[]): Complex[] {
  const list = args
    .flatMap((arg) => toMatrix(arg, frame).flat())
    .filter((v) => v !== null)
    .map(parse);
  return new Set(list.filter((a) => a.im !== 0).map((a) => a.unit)).size > 1 ? fail(VALUE) : list;
}

const unitOf = (list: readonly Complex[]): string => list.find((a) => a.im !== 0)?.unit ?? "i";

export const complex: readonly WorksheetFunction[] = [
  define("COMPLEX", "nn?T", (re, im, unit = "i") => (unit === "i" || unit === "j" ? show(z(re, im, unit)) : VALUE)),
  measure("IMREAL", (a) => a.re),
  measure("IMAGINARY", (a) => a.im),
  measure("IMABS", size),
  measure("IMARGUMENT", angle),
  unary("IMCONJUGATE", (a) => z(a.re, -a.im, a.unit)),
  unary("IMSQRT", (a) => (size(a) === 0 ? a : polar(Math.sqrt(size(a)), angle(a) / 2, a.unit))),
  unary("IMEXP", (a) => polar(Math.exp(a.re), a.im, a.unit)),
  unary("IMLN", log),
  unary("IMLOG10", (a) => divided(log(a), Math.LN10)),
  unary("IMLOG2", (a) => divided(log(a), Math.LN2)),
  unary("IMSIN", sin),
  unary("IMCOS", cos),
  unary("IMTAN", (a) => over(sin(a), cos(a))),
  unary("IMSINH", sinh),
  unary("IMCOSH", cosh),
  unary("IMSEC", (a) => over(one(a), cos(a))),
  unary("IMCSC", (a) => over(one(a), sin(a))),
  unary("IMCOT", (a) => over(cos(a), sin(a))),
  unary("IMSECH", (a) => over(one(a), cosh(a))),
  unary("IMCSCH", (a) => over(one(a), sinh(a))),
  define("IMPOWER", "vn", (a, n) => show(power(parse(a), n))),
  define("IMDIV", "vv", (a, b) => show(over(parse(a), parse(b)))),
  define("IMSUB", "vv", (a, b) => {
    const [x, y] = [parse(a), parse(b)];
    return show(z(x.re - y.re, x.im - y.im, x.im !== 0 ? x.unit : y.unit));
  }),
  defineIn("IMSUM", "a*", (frame, ...args) => {
    const list = all(frame, args);
    return show(list.reduce((a, b) => z(a.re + b.re, a.im + b.im, a.unit), z(0, 0, unitOf(list))));
  }),
  defineIn("IMPRODUCT", "a*", (frame, ...args) => {
    const list = all(frame, args);
    return show(list.reduce(times, z(1, 0, unitOf(list))));
  }),
];
