import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Argument, callRecord } from "../../src/cells/call/call.ts";
import { RECORDS } from "../../src/cells/catalogue.ts";
import { CellError, type CellValue, ERROR_CODES } from "../../src/units/cell.ts";
import { exampleArguments } from "./example-call.ts";

const SOUND: readonly CellValue[] = [
  0.25,
  2,
  90,
  3,
  1,
  0,
  45,
  "A36",
  "304",
  "6061-T6",
  "mm",
  "in",
  "1/4",
  "10 ga",
  "2; 3; 2",
  "m",
  "good",
];
const ODD: readonly CellValue[] = [
  null,
  "",
  " ",
  "abc",
  "-",
  "1e999",
  "n/a",
  "∞",
  "1,234",
  "3 kg",
  "2;;2",
  ";",
  true,
  false,
  -1,
  -0,
  1e-300,
  5e-324,
  1e300,
  Number.MAX_VALUE,
  46026,
  179.9999999,
  180,
  new CellError("#REF!"),
  "__proto__",
  "x".repeat(5000),
];
const cell = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(...SOUND) },
  { weight: 3, arbitrary: fc.constantFrom(...ODD) },
  { weight: 1, arbitrary: fc.double({ noNaN: true }) },
  { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
);
const matrix = fc
  .tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 }))
  .chain(([rows, columns]) =>
    fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows }),
  );
const argument: fc.Arbitrary<Argument> = fc.oneof(
  { weight: 6, arbitrary: cell as fc.Arbitrary<Argument> },
  { weight: 1, arbitrary: matrix as fc.Arbitrary<Argument> },
  { weight: 1, arbitrary: fc.constant(undefined) },
);

const GRAMMAR = /^\S.* must be .+; got .+/s;
const ERROR_FREE_TEXT = /free of faults of its own|undefined|NaN|\[object/;

/** Errors that came in as arguments go out as they are; every other one has a code of ours and the grammar. */
function expectSound(value: CellValue | undefined): void {
  if (value instanceof CellError) {
    expect(ERROR_CODES).toContain(value.code);
    if (value.message === undefined) return; // passed through, or a range too short
    expect(["#VALUE!", "#N/A"]).toContain(value.code);
    expect(value.message).toMatch(GRAMMAR);
    expect(value.message).not.toMatch(ERROR_FREE_TEXT);
  } else if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
  else expect(value === null || typeof value === "string" || typeof value === "boolean").toBe(true);
}

describe("whatever comes in, a value or a sentence comes out: never NaN, Infinity, undefined or a crash", () => {
  it.each(RECORDS.map((record) => [record.name, record] as const))("%s", (_, record) => {
    const count = Object.keys(record.parameters).length;
    const example = exampleArguments(record);
    const mixed = fc.array(fc.option(argument, { nil: undefined }), { minLength: 0, maxLength: Math.min(count, 10) });
    fc.assert(
      fc.property(mixed, fc.boolean(), fc.nat(), (given, keepsExample, place) => {
        // Half of the calls are the example with one argument changed: they get past the readers.
        const used = keepsExample ? [...example] : given;
        if (keepsExample && count > 0) {
          while (used.length < count) used.push(undefined);
          used[place % count] = given[0];
        }
        const { value } = callRecord(record, used);
        const cells = Array.isArray(value) ? value.flat() : [value];
        for (const each of cells) expectSound(each);
      }),
      { numRuns: 300 },
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    "%d, which no cell holds but a caller's arithmetic may",
    (given) => {
      for (const record of RECORDS)
        for (const [i, { shape }] of Object.values(record.parameters).entries()) {
          if (shape === "table" || shape === "data") continue;
          const used = exampleArguments(record);
          used[i] = given;
          const { value } = callRecord(record, used);
          for (const each of Array.isArray(value) ? value.flat() : [value]) expectSound(each);
        }
    },
  );
});
