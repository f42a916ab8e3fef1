/** The same content has the same number, however it was made; another content has another one. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { contentId } from "../../src/units/content.ts";

const plain = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: "small" },
    fc.integer(),
    fc.string({ maxLength: 4 }),
    fc.boolean(),
    fc.constant(null),
    fc.constant(undefined),
    fc.array(tie("value"), { maxLength: 3 }),
    fc.dictionary(fc.string({ maxLength: 3 }), tie("value"), { maxKeys: 3 }),
  ),
})).value;

describe("content", () => {
  it("a copy is the same, and what differs is not", () => {
    fc.assert(
      fc.property(plain, plain, (one, other) => {
        expect(contentId(structuredClone(one))).toBe(contentId(one));
        // JSON with a sign for undefined tells these values apart by other means.
        const text = (value: unknown) => JSON.stringify(value, (_, item) => (item === undefined ? "undefined!" : item));
        if (text(one) === text(other)) expect(contentId(one)).toBe(contentId(other));
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    [1, "1"],
    [null, "null"],
    [undefined, null],
    [0, false],
    [
      [1, 2],
      [2, 1],
    ],
    [
      [1, [2]],
      [[1], 2],
    ],
    [["1,2"], ["1", "2"]],
    [{ a: 1 }, { b: 1 }],
    [{ a: 1 }, [1]],
    [new Map([["a", 1]]), { a: 1 }],
    [new Map([["a", 1]]), new Map([["a", 2]])],
    [new Set([1]), [1]],
    [[undefined], []],
    [{ "a:1,b": 2 }, { a: 1, b: 2 }],
    [{ [`a:${contentId(1)},b`]: 2 }, { a: 1, b: 2 }],
  ])("%j is not %j", (one, other) => expect(contentId(one)).not.toBe(contentId(other)));

  it("a key that holds nothing is no key", () => {
    expect(contentId({ a: 1, b: undefined })).toBe(contentId({ a: 1 }));
    expect(contentId(new Map([["a", [1]]]))).toBe(contentId(new Map([["a", [1]]])));
  });
});
