/**
 * No regular expression of the program can be made to hang by a text. A checker (redos-detector) clears those whose
 * backtracking is bounded. The others get the texts that make such expressions slow: their own signs, one or two of them
 * over and over, and an end that cannot match. Quadratic ones answer within milliseconds; cubic and worse are ended.
 */
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { Script } from "node:vm";
import { parse } from "acorn";
import { transformSync } from "esbuild";
import { isSafe } from "redos-detector";
import { describe, expect, it } from "vitest";
import { filesBelow, root } from "./sources.ts";

const LENGTH = 3_000;
const MOST_PUMPS = 60;
const HANG_MS = 3_000; // a hundred times what the slowest sound one needs
const CHECKER_VERSION: string = JSON.parse(
  readFileSync(`${root}/node_modules/redos-detector/package.json`, "utf8"),
).version;
const CHECKER = { maxScore: 200, maxSteps: 20_000, timeout: 60 };

interface Found {
  readonly file: string;
  readonly source: string;
  readonly flags: string;
}

/** Every literal expression of a file. */
function expressionsOf(file: string, text: string): Found[] {
  const found: Found[] = [];
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) for (const part of node) visit(part);
    if (typeof node !== "object" || node === null || !("type" in node)) return;
    if ("regex" in node && node.regex) {
      const { pattern, flags } = node.regex as { pattern: string; flags: string };
      found.push({ file, source: pattern, flags });
    }
    for (const part of Object.values(node)) visit(part);
  };
  visit(parse(transformSync(text, { loader: "ts" }).code, { ecmaVersion: "latest", sourceType: "module" }));
  return found;
}

/** Texts to be repeated: signs that the expression itself names, alone and in pairs, and some of each common class. */
function pumps(source: string): string[] {
  const bare = source.replace(/\\[a-zA-Z]|[()|?*+{}^$]/g, "");
  const signs = [...new Set([...bare.replace(/[[\]\\]/g, ""), " ", "0", "a"])].slice(0, 12);
  const whole = bare.replace(/\[[^\]]*\]/g, "");
  const pairs = signs.flatMap((a) => signs.map((b) => a + b));
  return [...signs, ...(whole ? [whole] : []), "0,", "a ", '""', "\\a", ...pairs].slice(0, MOST_PUMPS);
}

const ENDS = ["", "\u0000"];

/**
 * The first text that hangs the expression: that is not answered within so many milliseconds. They are tried one after
 * another in one go, since a limit of time costs more than most answers; the one that was tried when it ended is tried
 * again with all the time for itself.
 */
function hangsOn({ source, flags }: Pick<Found, "source" | "flags">, timeout = HANG_MS): string | undefined {
  const tried = pumps(source).flatMap((pump) => ENDS.map((end) => ({ pump, end })));
  const scope = globalThis as unknown as { $texts?: string[]; $at: number; $expression?: RegExp };
  scope.$expression = new RegExp(source, flags);
  scope.$texts = tried.map(({ pump, end }) => pump.repeat(Math.ceil(LENGTH / pump.length)) + end);
  const run = new Script(
    "for (; $at < $texts.length; $at++) { $expression.lastIndex = 0; $expression.test($texts[$at]); }",
  );
  for (scope.$at = 0; scope.$at < tried.length; ) {
    const first = scope.$at;
    try {
      run.runInThisContext({ timeout });
    } catch {
      const { pump, end } = tried[scope.$at]!;
      if (scope.$at === first) return `${JSON.stringify(pump)} over and over${end && ", then another sign"}`;
    }
  }
  return undefined;
}

const all = filesBelow("src")
  .filter(({ path }) => !path.startsWith("src/tools/"))
  .flatMap(({ path, text }) => expressionsOf(path, text));

/** What the checker said once is kept between runs: with its limit of time it takes up to 60 ms an expression, and what it has not cleared by then is tried with texts. */
const DECIDED = `${root}/.build/regular-expressions-${CHECKER_VERSION}-${JSON.stringify(CHECKER).replace(/\W+/g, "-")}.json`;
const decided: Record<string, boolean> = existsSync(DECIDED) ? JSON.parse(readFileSync(DECIDED, "utf8")) : {};
const isCleared = ({ source, flags }: Found): boolean =>
  (decided[`${source}/${flags}`] ??= isSafe(new RegExp(source, flags), CHECKER).safe);
const suspects = all.filter((each) => !isCleared(each));
mkdirSync(`${root}/.build`, { recursive: true });
writeFileSync(`${DECIDED}-${process.pid}`, JSON.stringify(decided));
renameSync(`${DECIDED}-${process.pid}`, DECIDED);

describe("regular expressions", () => {
  it("are found", () => {
    expect(all.length).toBeGreaterThan(100);
    expect(suspects.length).toBeLessThan(all.length);
  });

  it("never hang on a text of their own signs", () => {
    const hanging = suspects.flatMap((each) => {
      const text = hangsOn(each);
      return text === undefined ? [] : [`${each.file} /${each.source}/${each.flags} on ${text}`];
    });
    expect(hanging).toEqual([]);
  }, 300_000);

  it("that do hang would be found: exponential and cubic", () => {
    expect(isSafe(/^(a+)+$/, CHECKER).safe).toBe(false);
    expect(hangsOn({ source: "^(a+)+$", flags: "" }, HANG_MS / 6)).toBeDefined();
    expect(hangsOn({ source: "^(\\d+,?)*;$", flags: "" }, HANG_MS / 6)).toBeDefined();
    expect(hangsOn({ source: "^\\s*-?\\s*0?\\s*b$", flags: "" }, HANG_MS / 6)).toBeDefined();
  }, 60_000);
});
