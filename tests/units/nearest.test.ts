/** The nearest name against the edit distance by its recursive definition (Levenshtein 1966; memory). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearest, nearestIs } from "../../src/units/nearest.ts";

const distance = (a: string, b: string): number =>
  a === "" || b === ""
    ? a.length + b.length
    : a[0] === b[0]
      ? distance(a.slice(1), b.slice(1))
      : 1 + Math.min(distance(a.slice(1), b), distance(a, b.slice(1)), distance(a.slice(1), b.slice(1)));
const word = fc.string({ unit: fc.constantFrom(..."abC"), maxLength: 6 });

describe("the nearest name", () => {
  it.each([
    ["kitten", ["sitting", "mitten", "kit"], "mitten"],
    ["a36", ["A572-50", "A36", "304"], "A36"],
    ["BEND.TONAGE", ["BEND.TONNAGE", "BEND.MAXLENGTH"], "BEND.TONNAGE"],
    ["x", ["cd", "ab"], "ab"], // of equals the first by name
    ["x", [], ""],
  ])("to %s", (given, names, expected) => expect(nearest(given, names)).toBe(expected));

  it("has the least distance, without regard to case", () => {
    fc.assert(
      fc.property(word, fc.array(word, { minLength: 1, maxLength: 5 }), (given, names) => {
        const far = (name: string) => distance(given.toLowerCase(), name.toLowerCase());
        const found = nearest(given, names);
        const least = names.filter((name) => far(name) === Math.min(...names.map(far)));
        expect(found).toBe([...least].sort()[0]); // of equals the first by name, whatever their order
      }),
    );
  });

  it("reads no more than 80 letters of what was typed", () => {
    expect(nearest(`${"a".repeat(80)}${"b".repeat(80)}`, ["b".repeat(90), "a".repeat(80)])).toBe("a".repeat(80));
    // With 80 letters the short name is 80 away and the long one 84; with all 200 it would be the other way round.
    expect(nearest("a".repeat(200), [`b${"a".repeat(163)}`, "a"])).toBe("a");
  });
});

describe("nearestIs", () => {
  it.each<[given: string, names: string[], says: string | undefined]>([
    ["Pase", ["Pace", "Profit as"], 'nearest is "Pace"'],
    ["Thickn", ["Thickness", "Quantity"], 'nearest is "Thickness"'],
    ["mild", ["304", "A36"], undefined],
    ["Alu 5052", ["A572-50", "5052-H32"], undefined],
    ["black steel", ["Acrylic", "A36"], undefined],
  ])("%s of %j", (given, names, says) => {
    expect(nearestIs(given, names)).toBe(says);
  });
});
