/**
 * No regular expression of the program can be made to hang by a text. A checker (redos-detector) clears those whose
 * backtracking is bounded. The others get the texts that make such expressions slow: their own signs, one or two of them
 * over and over, and an end that cannot match. Quadratic ones answer within milliseconds; cubic and worse are ended.
 */
import { Script } from "node:vm";
import { parse } from "acorn";
import { transformSync } from "esbuild";
import { isSafe } from "redos-detector";
import { describe, expect, it } from "vitest";
import { filesBelow } from "./sources.ts";

const LENGTH = 3_000;
const MOST_PUMPS = 60;
const HANG_MS = 3_000; // a hundred times what the slowest sound one needs
const CHECKER = { maxScore: 200, maxSteps: 20_000, timeout: 300 };

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

/** The first text that hangs the expression: that is not answered within so many milliseconds. */
function hangsOn({ source, flags }: Pick<Found, "source" | "flags">, timeout = HANG_MS): string | undefined {
  const scope = globalThis as unknown as { $text?: string; $expression?: RegExp };
  scope.$expression = new RegExp(source, flags);
  const run = new Script("$expression.lastIndex = 0; $expression.test($text)");
  for (const pump of pumps(source))
    for (const end of ENDS) {
      scope.$text = pump.repeat(Math.ceil(LENGTH / pump.length)) + end;
      try {
        run.runInThisContext({ timeout });
      } catch {
        return `${JSON.stringify(pump)} over and over${end && ", then another sign"}`;
      }
    }
  return undefined;
}

const all = filesBelow("src")
  .filter(({ path }) => !path.startsWith("src/tools/"))
  .flatMap(({ path, text }) => expressionsOf(path, text));
const suspects = all.filter(({ source, flags }) => !isSafe(new RegExp(source, flags), CHECKER).safe);

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
