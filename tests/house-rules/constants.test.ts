/**
 * No figure without a source. In src/calc a numeric literal must stand on a line with, or under, a comment that says
 * where it comes from; in src/data every declaration with figures must. Literals that only carry structure are free.
 */
import { describe, expect, it } from "vitest";
import { codeOnly, filesBelow, type SourceFile } from "./sources.ts";

/**
 * Free: indices, counts, powers and halves (0-4, 0.5, 10 as the base of a logarithm or of decimal places) and the
 * angles of plain geometry (90, 180, 360). They are not facts about a trade.
 */
const STRUCTURAL = new Set([0, 0.5, 1, 2, 3, 4, 10, 90, 180, 360]);

/** How a source is marked; "chosen" and "numerical" are for limits and tolerances that we set ourselves. */
const MARK = /\b(?:read|memory|derived|common practice|fitted|by definition|chosen|numerical|geometry)\b/;

/**
 * Numerical machinery: tolerances, buffers and steps of searches and solvers are no facts about a trade. There, powers of
 * 2 and 10 are free, and any comment in the same paragraph will do, or a mark in the comment above the declaration.
 */
const MACHINERY = ["src/calc/cutting/", "src/calc/bend/order/", "src/calc/bend/mechanics/", "src/calc/schedule/"];
const isPowerOf = (base: number, value: number): boolean => Number.isInteger(Math.log(value) / Math.log(base));
const isMachinery = (value: number): boolean =>
  isPowerOf(2, value) || Math.abs(Math.log10(value) - Math.round(Math.log10(value))) < 1e-12;

const LITERAL = /(?<![\w.$])(?:0x[\da-f]+|\d[\d_]*\.?[\d_]*(?:e[-+]?\d+)?|\.\d+)n?/gi;
const literals = (line: string): number[] =>
  [...line.matchAll(LITERAL)].map(([text]) => Number(text.replace(/[_n]/g, "")));

/** The statement up to and including this line, with the comment above it. */
function words(lines: readonly string[], index: number): string {
  let first = index;
  while (first > 0 && !/[;{}]\s*$/.test(codeOnly(lines[first - 1]!)) && lines[first - 1]!.trim() !== "") first--;
  return lines.slice(first, index + 1).join("\n");
}

/** The lines around this one up to the next blank ones. */
function paragraph(lines: readonly string[], index: number): string {
  let [first, last] = [index, index];
  while (first > 0 && lines[first - 1]!.trim() !== "") first--;
  while (last < lines.length - 1 && lines[last + 1]!.trim() !== "") last++;
  return lines.slice(first, last + 1).join("\n");
}

/** The comment that the top-level declaration around this line begins with. */
function heading(lines: readonly string[], index: number): string {
  const start = lines.slice(0, index + 1).findLastIndex((line) => line.startsWith("/**"));
  const end = lines.findIndex((line, i) => i >= start && line.includes("*/"));
  return start < 0 ? "" : lines.slice(start, end + 1).join("\n");
}

function unsourced({ path, text }: SourceFile): string[] {
  const isMachine = MACHINERY.some((folder) => path.startsWith(folder));
  const lines = text.split("\n");
  return codeOnly(text)
    .split("\n")
    .flatMap((line, i) => {
      const figures = literals(line).filter((value) => !STRUCTURAL.has(value) && !(isMachine && isMachinery(value)));
      if (figures.length === 0) return [];
      const isSaid = isMachine
        ? /\/[/*]/.test(paragraph(lines, i)) || MARK.test(heading(lines, i))
        : MARK.test(words(lines, i));
      return isSaid ? [] : [`${path}:${i + 1} ${figures.join(", ")}`];
    });
}

describe("no unsourced constant", () => {
  it("in calc every figure says where it comes from", () => {
    expect(filesBelow("src/calc").flatMap(unsourced)).toEqual([]);
  });

  it("the rule finds a bare figure and lets a sourced one pass", () => {
    const file = (text: string) => unsourced({ path: "src/calc/bend/x.ts", text });
    expect(file("const share = 0.42;\n")).toEqual(["src/calc/bend/x.ts:1 0.42"]);
    expect(file("// a comment that names nothing\nconst share = 0.42;\n")).toHaveLength(1);
    expect(file("const share = 0.42; // fitted on air bends\n")).toEqual([]);
    expect(file("// Groover 5e (read)\nconst share = 0.42;\n")).toEqual([]);
    expect(file('const a = x[2] * 180; // "7.5"\nconst b = "9.81 in a text";\n')).toEqual([]);
  });

  it("in data every declaration with figures names a mark or a source that does", () => {
    const bare = filesBelow("src/data").flatMap(({ path, text }) => {
      const constants = [...text.matchAll(/const ([A-Z_0-9]+(?:SOURCE)?) =\s*[`"]/g)].map((match) => match[1]!);
      return declarations(text)
        .filter(({ code }) => literals(codeOnly(code)).some((value) => !STRUCTURAL.has(value)))
        .filter(({ code }) => !MARK.test(code) && !constants.some((name) => code.includes(name)))
        .map(({ code, line }) => `${path}:${line} ${code.split("\n").find((row) => /const/.test(row)) ?? ""}`);
    });
    expect(bare).toEqual([]);
  });
});

/** Top-level statements, each with the comment above it. */
function declarations(text: string): { code: string; line: number }[] {
  const found: { code: string; line: number }[] = [];
  let start = 0;
  const lines = text.split("\n");
  lines.forEach((line, i) => {
    if (/^(?:\}|\]|\))?.*;\s*(?:\/\/.*)?$/.test(line) && !/^\s/.test(line)) {
      found.push({ code: lines.slice(start, i + 1).join("\n"), line: start + 1 });
      start = i + 1;
    }
  });
  return found;
}
