/** Values that a cell holds, that a person mistypes, that an attacker sends, and that no cell ever holds. */
import { CellError, ERROR_CODES } from "../../units/cell.ts";
import { pick } from "../random/random.ts";

export type Random = () => number;

export const upTo = (random: Random, most: number): number => Math.floor(random() * (most + 1));

/** Right for some argument of some function. */
const SOUND: readonly unknown[] = [
  ...[0, 1, 2, 3, 5, 8, 10, 12, 20, 45, 60, 90, 0.25, 0.125, 0.5, 1.5, 24, 48, 96, 120, 46083, 46083.375],
  ...["A36", "304", "6061-T6", "5052-H32", "C110 half hard", "mm", "in", "1/4", "10 ga", "16", "2; 3; 2", "90; 45"],
  ...[
    "good",
    "m",
    "across",
    "along",
    "rule",
    "mechanics",
    "Groover",
    "US shop",
    "highest",
    "typical",
    "2026.1",
    "3 mm",
  ],
];

/** What a header or a key may be called to reach what no data should reach. */
export const KEYS: readonly string[] = [
  ...["__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "valueOf", "length", "then"],
];

const ODD_NUMBERS = [
  ...[-1, -0, 1e-300, 5e-324, 1e300, Number.MAX_VALUE, Number.MAX_SAFE_INTEGER, 2 ** 53, 46026, 179.9999999, 180, 1e15],
  ...[Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0.1 + 0.2, 1e-9, 100, 365, 1e6],
];
const ODD_TEXTS = [
  ...["", " ", "\t\n", "abc", "-", "1e999", "n/a", "#REF!", "∞", "1,234", "3 kg", "2;;2", ";", "0x10", "१२", "½", "−5"],
  ...["=1+1", "+1", "@SUM(A1)", "-2+3", '=HYPERLINK("http://x")', "<script>alert(1)</script>", "<img src=x onerror=1>"],
  ...[
    "\u0000",
    "\ud800",
    "\u202e",
    "a\u0301",
    "💥",
    "../../etc/passwd",
    "%s%n",
    "$" + "{1}",
    "null",
    "NaN",
    "undefined",
  ],
  ...[
    "1/0",
    "1/3/5",
    "2 ft 6-1/2 in",
    "2' 6\"",
    "1".repeat(400),
    "x".repeat(5000),
    "1;".repeat(2000),
    " ".repeat(3000),
  ],
  ...KEYS,
];
const NEVER_IN_A_CELL: readonly (() => unknown)[] = [
  () => ({}),
  () => [],
  () => [[]],
  () => [[undefined]],
  () => [[1], [1, 2]],
  () => [[[1]]],
  () => [1, 2],
  () => [null],
  () => Symbol("x"),
  () => 1n,
  () => new Date(0),
  () => () => 1,
  () => /x/,
  () => new Map(),
  () => Object.create(null),
  () => JSON.parse('{"__proto__":{"polluted":1}}'),
  () => new Proxy({}, {}),
  () => new Number(5),
];

/** One cell: mostly sound, often odd, at times random letters or bits. */
export function cell(random: Random): unknown {
  const kind = random();
  if (kind < 0.45) return pick(random, SOUND);
  if (kind < 0.58) return pick(random, ODD_NUMBERS);
  if (kind < 0.74) return pick(random, ODD_TEXTS);
  if (kind < 0.8) return pick(random, [null, undefined, true, false]);
  if (kind < 0.84) return new CellError(pick(random, ERROR_CODES));
  if (kind < 0.92) return (random() - 0.5) * 10 ** (upTo(random, 24) - 12);
  return letters(random);
}

const LETTERS = "0123456789.,;/- '\"abcinmftgaxKT()[]{}<>=+*#°²\u00a0\u2044";
const letters = (random: Random): string =>
  Array.from({ length: upTo(random, 14) }, () => pick(random, [...LETTERS])).join("");

/** Anything at all, as an argument: a cell, a range, or what no caller should send. */
export function anything(random: Random): unknown {
  const kind = random();
  if (kind < 0.78) return cell(random);
  if (kind < 0.92) return range(random, 1 + upTo(random, 3), 1 + upTo(random, 3));
  return pick(random, NEVER_IN_A_CELL)();
}

const range = (random: Random, rows: number, columns: number): unknown[][] =>
  Array.from({ length: rows }, () => Array.from({ length: columns }, () => cell(random)));
