/** What a registered function does with the arguments as Excel brings them, whatever its list of functions says. */
import { afterEach, describe, expect, it, vi } from "vitest";
import type { Argument } from "../../../src/cells/call/call.ts";
import { findRecord, RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import type { AnyRecord } from "../../../src/cells/record/record.ts";
import { excelFunction } from "../../../src/hosts/excel/excel-function.ts";
import { evaluateFormula } from "../../../src/sheet/recalculate/calculate-one.ts";

class ErrorStandIn {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}
const maker = { Error: ErrorStandIn };
/** As Microsoft's runtime makes it: its properties are getters of a class. */
class Invocation {
  get functionName() {
    return "ANY";
  }
}

/** Thrown or returned, the answer alone. */
function answerOf(record: AnyRecord, given: readonly unknown[]): unknown {
  try {
    return excelFunction(record, maker)(...given);
  } catch (problem) {
    return problem;
  }
}

/** The arguments of the record's own example, a block each, as Excel sends them. */
function exampleArguments({ name, example }: AnyRecord): unknown[] {
  let found: readonly Argument[] = [];
  evaluateFormula(example.formula, {
    ...shopFunctions,
    call: (called, given) => {
      if (findRecord(called)!.name === name) found = given;
      return shopFunctions.call(called, given);
    },
  });
  return found.map((one) => ((one ?? null) === null ? null : Array.isArray(one) ? one : [[one]]));
}

describe("a function called by the list of another version", () => {
  it.each(RECORDS.map((record) => [record.name, record] as const))(
    "%s answers the same with any number of its last arguments missing as with them omitted",
    (_, record) => {
      const count = Object.keys(record.parameters).length;
      const whole = [...exampleArguments(record), ...Array(count).fill(null)].slice(0, count);
      for (let missing = 0; missing <= count; missing++) {
        const known = whole.slice(0, count - missing);
        const omitted = answerOf(record, [...known, ...Array(missing).fill(null), new Invocation()]);
        expect(answerOf(record, [...known, new Invocation()]), `${missing} missing`).toEqual(omitted);
      }
    },
  );

  const setback = findRecord("BEND.SETBACK")!;
  const part = [[[0.04]], [[0.16]], [[90]], null];

  it("passes over newer arguments that were left out, and refuses one that was given", () => {
    expect(answerOf(setback, [...part, null, null, new Invocation()])).toEqual([[expect.closeTo(0.2, 12)]]);
    expect(answerOf(setback, [...part, [[1]], new Invocation()])).toEqual(
      new ErrorStandIn("#VALUE!", expect.stringMatching(/^arguments must be at most 4 .*; got 5$/)),
    );
  });

  it.each([
    ["an error", new ErrorStandIn("#DIV/0!"), "#DIV/0!"],
    ["a data type", { type: "Double", basicValue: 12 }, "#VALUE!"], // 12 is no unit
  ])("%s as the last argument stays an argument", (_, last, code) => {
    expect(answerOf(setback, [...part.slice(0, 3), last])).toEqual(expect.objectContaining({ code }));
  });
});

describe("the version in the cell", () => {
  afterEach(() => vi.resetModules());

  it("says that Excel's list is of another version once a call has shown it, and not before", async () => {
    vi.resetModules();
    const fresh = await import("../../../src/hosts/excel/excel-function.ts");
    const [version, setback] = [findRecord("VERSION")!, findRecord("BEND.SETBACK")!].map((record) =>
      fresh.excelFunction(record, maker),
    );
    setback!([[0.04]], [[0.16]], [[90]], null, new Invocation());
    expect(version!(new Invocation())).toMatch(/^Bracket Bill \S+, materials \S+$/);
    setback!([[0.04]], [[0.16]], [[90]], new Invocation());
    expect(version!(new Invocation())).toMatch(/; Excel still uses the function list of another version/);
  });
});
