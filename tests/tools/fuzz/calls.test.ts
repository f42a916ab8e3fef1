/** 20,000 random calls with anything in any argument; `npm run fuzz -- --calls N --seed S` makes as many as wanted. */
import { describe, expect, it } from "vitest";
import { problemOf } from "../../../src/tools/fuzz/judge-answer.ts";
import { randomCall } from "../../../src/tools/fuzz/random-call.ts";
import { tryCall } from "../../../src/tools/fuzz/try-call.ts";
import { CellError } from "../../../src/units/cell.ts";

const SEED = 20_261_125;

describe("anything in any argument of any function", () => {
  it.each([0, 5_000, 10_000, 15_000])("calls %i and the next 5,000: a finite value or a sentence", (from) => {
    const found = Array.from({ length: 5_000 }, (_, i) => ({ index: from + i, ...tryCall(SEED, from + i) }));
    expect(found.filter(({ problem }) => problem !== undefined)).toEqual([]);
  });

  it("a call is replayed by its seed and number", () => {
    const shown = () => JSON.stringify(randomCall(7, 1234).given, (_, value) => String(value));
    expect(shown()).toBe(shown());
    expect(randomCall(7, 1234).record).toBe(randomCall(7, 1234).record);
  });
});

describe("the judge", () => {
  const says = (message: string) => problemOf(new CellError("#VALUE!", message), []);

  it.each([
    [Number.NaN, "the number NaN"],
    [Number.POSITIVE_INFINITY, "the number Infinity"],
    [undefined, "a value of type undefined"],
    [[], "a block without rows"],
    [[[1], [1, 2]], "a ragged block"],
    [new CellError("#REF!"), "#REF! without a sentence"],
    [new CellError("#NUM!", "thickness must be a length; got 1"), "#NUM! with a sentence"],
  ])("objects to %j", (value, problem) => {
    expect(problemOf(value, [])).toContain(problem);
  });

  it.each([
    ["thickness is wrong", "outside the grammar"],
    ["thickness must be a length; got NaN", "a fault of our own"],
    ["BEND.DIE must be free of faults of its own; got x is not a function", "a fault of our own"],
    ["foo must be a length; got 1", "an unknown parameter"],
  ])("objects to %s", (message, problem) => {
    expect(says(message)).toContain(problem);
  });

  it("lets an error that came in pass, and a sentence of the grammar", () => {
    expect(problemOf(new CellError("#REF!"), [new CellError("#REF!")])).toBeUndefined();
    expect(says('thickness must be a length; got "NaN"; write 3 mm')).toBeUndefined();
    expect(
      problemOf(
        [
          [1, "a"],
          [true, null],
        ],
        [],
      ),
    ).toBeUndefined();
  });
});
