import { describe, expect, it } from "vitest";
import { fromExcel, toExcel } from "../../../src/hosts/excel/excel-value.ts";
import { CellError } from "../../../src/units/cell.ts";

class ErrorStandIn {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}
const maker = { Error: ErrorStandIn };

describe("what Excel passes", () => {
  it.each([
    ["a number", 0.25, 0.25],
    ["text", "10 ga", "10 ga"],
    ["a boolean", true, true],
    ["nothing", null, null],
    ["nothing at all", undefined, null],
    ["empty text", "", ""],
    ["a block of one cell", [[0.25]], [[0.25]]],
    [
      "a block with a blank",
      [
        [1, null],
        ["", 2],
      ],
      [
        [1, null],
        ["", 2],
      ],
    ],
    ["an empty block", [], [[null]]],
    ["a plain list, read as a row each", [1, 2], [[1], [2]]],
    [
      "rows of unequal length",
      [[1, 2], [3]],
      [
        [1, 2],
        [3, null],
      ],
    ],
    ["a currency as another build words it", { type: "Double", primitive: 12.5 }, 12.5],
    ["a currency, which carries its number", { type: "FormattedNumber", basicValue: 12.5 }, 12.5],
  ])("%s", (_, given, read) => expect(fromExcel(given)).toEqual(read));

  it.each([
    ["as an object", new ErrorStandIn("#DIV/0!"), new CellError("#DIV/0!")],
    ["as an object with a text", new ErrorStandIn("#N/A", "no die"), new CellError("#N/A", "no die")],
    ["as text", "#REF!", new CellError("#REF!")],
    ["as a data type", { type: "Error", basicType: "Error", basicValue: "#NAME?" }, new CellError("#NAME?")],
  ])("an error %s", (_, given, read) => expect(fromExcel(given)).toEqual(read));

  it("what no cell can hold becomes an error with a sentence", () => {
    for (const strange of [{}, () => 1, Symbol("x"), 10n, { basicValue: {} }])
      expect(fromExcel(strange)).toEqual(new CellError("#VALUE!", expect.stringMatching(/^argument must be .+; got /)));
  });
});

describe("what Excel gets back", () => {
  it("a single value stands in a block where the function may spill", () => {
    expect(toExcel(0.2, true, maker)).toEqual([[0.2]]);
    expect(toExcel("1.0", false, maker)).toBe("1.0");
    expect(toExcel(null, true, maker)).toEqual([[""]]);
  });

  it("an error alone is thrown, with its sentence", () => {
    expect(() => toExcel(new CellError("#VALUE!", "k must be given; got nothing"), true, maker)).toThrow(
      expect.objectContaining({ code: "#VALUE!", message: "k must be given; got nothing" }),
    );
  });

  it("an error in a block stays in its place", () => {
    expect(
      toExcel(
        [
          [1, new CellError("#N/A", "no die")],
          [null, false],
        ],
        true,
        maker,
      ),
    ).toEqual([
      [1, new ErrorStandIn("#N/A", "no die")],
      ["", false],
    ]);
  });

  it("only #VALUE! and #N/A carry a text; a code that functions cannot return becomes #VALUE! that names it", () => {
    expect(toExcel([[new CellError("#DIV/0!", "lost")]], true, maker)).toEqual([[new ErrorStandIn("#DIV/0!")]]);
    for (const code of ["#SPILL!", "#NAME?", "#REF!"] as const)
      expect(toExcel([[new CellError(code)]], true, maker)).toEqual([
        [new ErrorStandIn("#VALUE!", `argument must be free of errors; got ${code}`)],
      ]);
  });
});
