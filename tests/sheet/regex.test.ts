import fc from "fast-check";
import { expect, test } from "vitest";
import { allMatches } from "../../src/sheet/functions/regex-match.ts";
import { compilePattern } from "../../src/sheet/functions/regex-program.ts";
import { wildcard } from "../../src/sheet/functions/wildcards.ts";

/** Patterns that mean the same here and in JavaScript; nothing empty is repeated, where the two would differ. */
const pattern = fc.letrec<{ atom: string; piece: string; whole: string }>((tie) => ({
  atom: fc.oneof(
    { maxDepth: 3 },
    fc.constantFrom("a", "b", "c", ".", "[ab]", "[^a]", "\\d", "\\w", "\\s", "1", "(?:ab|a)", "(b|bc)"),
    tie("whole").map((inner) => `(a(?:${inner}))`),
  ),
  piece: fc
    .tuple(tie("atom"), fc.constantFrom("", "", "*", "+", "?", "*?", "+?", "??", "{2}", "{1,2}", "{1,}?"))
    .map(([atom, repeated]) => atom + repeated),
  whole: fc.oneof(
    { maxDepth: 3 },
    fc.array(tie("piece"), { minLength: 1, maxLength: 4 }).map((pieces) => pieces.join("")),
    fc.tuple(tie("whole"), tie("whole")).map(([a, b]) => `${a}|${b}`),
    tie("whole").map((inner) => `\\b${inner}`),
  ),
})).whole;
const text = fc.string({ unit: fc.constantFrom("a", "b", "c", "1", " ", "A"), maxLength: 12 });

test("finds what JavaScript's own expressions find", () => {
  fc.assert(
    fc.property(pattern, text, fc.boolean(), (source, given, ignoreCase) => {
      const wanted = [...given.matchAll(new RegExp(source, ignoreCase ? "gi" : "g"))].map(([match]) => match);
      const found = [...allMatches(compilePattern(source, ignoreCase), given)].map(([from, to]) =>
        given.slice(from, to),
      );
      expect(found).toEqual(wanted);
    }),
    { numRuns: 3_000 },
  );
});

const pieces = fc.string({ unit: fc.constantFrom("a", "b", "*", "?", "~*", "B"), maxLength: 7 });

test("wildcards fit what the same expression fits", () => {
  fc.assert(
    fc.property(pieces, text, (given, within) => {
      const source = given.replace(/~\*|\*|\?/g, (sign) => ({ "~*": "\\*", "*": "[^]*", "?": "[^]" })[sign]!);
      expect(wildcard(given).fits(within)).toBe(new RegExp(`^${source}$`, "i").test(within));
      expect(wildcard(given).search(within, 0)).toBe(within.search(new RegExp(source, "i")));
    }),
    { numRuns: 3_000 },
  );
});

test("a long text and a pattern of many stars take no time", () => {
  const long = "a".repeat(30_000);
  expect(wildcard("*a*a*a*a*a*a*a*b").fits(long)).toBe(false);
  expect([...allMatches(compilePattern("(a*)*(a*)*b", false), long)]).toEqual([]);
});
