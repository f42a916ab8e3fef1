/** The layout of a sheet as a cell: whatever is printed is read as it was, and anything else is refused. */
import fc from "fast-check";
import { expect, it } from "vitest";
import type { PinnedNode, PinnedParts } from "../../../src/calc/cutting/types.ts";
import { readLayout, showLayout } from "../../../src/cells/parameters/cut-layout.ts";

const piece = fc.record({
  blank: fc.oneof(
    fc.constantFrom("A-1", "B 2 (2)", "2 x C", "D turned", 'x"y', "a,b", "along(A)", "Ü"),
    fc.string({ minLength: 1, maxLength: 6 }).filter((name) => name.trim() === name),
  ),
  turned: fc.boolean(),
});
const { node } = fc.letrec<{ node: PinnedNode; parts: PinnedParts }>((tie) => ({
  node: fc.oneof({ depthSize: "small", withCrossShrink: true }, piece, tie("parts")),
  parts: fc.record({
    direction: fc.constantFrom(0 as const, 1 as const),
    parts: fc.array(tie("node"), { minLength: 1, maxLength: 4 }),
  }),
}));

it("what is printed is read as it was", () => {
  fc.assert(
    fc.property(node, (one) => {
      const layout: PinnedParts = { direction: 0, parts: [one] };
      expect(readLayout(showLayout(layout), "it")).toEqual(layout);
    }),
    { numRuns: 500, seed: 30 },
  );
});

it("equal parts beside each other are counted", () => {
  const a = { blank: "A-1", turned: false };
  const stack = { direction: 1 as const, parts: [a, a, { blank: "B-2", turned: true }] };
  const text = "along(2 x across(2 x A-1, B-2 turned), A-1)";
  expect(showLayout({ direction: 0, parts: [stack, stack, a] })).toBe(text);
  expect(readLayout(` ${text.toUpperCase().replaceAll(" X ", "  x  ").replaceAll("(", " ( ")} `, "it")).toEqual({
    direction: 0,
    parts: [stack, stack, a],
  });
});

it.each([
  "",
  "A-1",
  "along()",
  "along(A-1",
  "along(A-1))",
  "along(A-1,)",
  "along(0 x A-1)",
  'along("A-1)',
  "along(99999 x A-1)",
  `${"along(99 x ".repeat(12)}A-1${")".repeat(12)}`,
  `${"along(".repeat(500)}A-1${")".repeat(500)}`,
])("%s is refused", (text) => {
  expect(() => readLayout(text, 'stock row 2 column "Pinned"')).toThrow(
    expect.objectContaining({ message: expect.stringMatching(/^stock row 2 column "Pinned" must be a layout/) }),
  );
});
