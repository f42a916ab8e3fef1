import { describe, expect, test } from "vitest";
import { evaluateFormula } from "../../../src/sheet/recalculate/calculate-one.ts";
import { CellError } from "../../../src/units/cell.ts";
import { fakeFunctions } from "../fake-functions.ts";

const evaluate = (formula: string) => evaluateFormula(formula, fakeFunctions);

describe("a workbook of one cell", () => {
  // Operators as in ECMA-376 part 1, 18.17.2.2 and Excel's documented precedence: unary minus binds before ^.
  test.each([
    ["1+2*3", 7],
    ["=-2^2", 4],
    ["=10%", 0.1],
    ['="3"+4', 7],
    ['="x"="X"', true],
    ['=2>"a"', false],
    ['="a"&1/3', "a0.333333333333333"],
    ["=SUM(1,,2)", 3],
    ["=IF(TRUE,,2)", 0],
    ["=LET(x,2,y,x*3,x+y)", 8],
    ["=LAMBDA(x,x+1)(3)", 4],
    ['=IFERROR(1/0,"none")', "none"],
  ])("%s", (formula, value) => {
    expect(evaluate(formula)).toEqual({ value, unit: null });
  });

  test("arrays combine as Excel's operators do", () => {
    expect(evaluate("={1,2}+{1;2}").value).toEqual([
      [2, 3],
      [3, 4],
    ]);
  });

  // Microsoft support article 78113 "Floating-point arithmetic may give inaccurate results" (memory).
  test("a sum that cancels is zero only as the last operation", () => {
    expect(evaluate("=0.5-0.4-0.1").value).toBe(0);
    expect(evaluate("=1*(0.5-0.4-0.1)").value).not.toBe(0);
    expect(evaluate("=(4/3-1)*3-1").value).toBe(0);
    expect(evaluate("=((4/3-1)*3-1)").value).toBe(-(2 ** -52));
  });
});

// Recalled from published experiments with Excel (memory).
test.each([
  ["1E+14", "100000000000000"],
  ["1E+15", "1E+15"],
  ["1234567890123450", "1234567890123450"],
  ["2^64", "18446744073709600000"],
  ["1E+20", "1E+20"],
])("%s joined to a text is %s", (number, text) => {
  expect(evaluate(`=${number}&""`).value).toBe(text);
});

describe("custom functions", () => {
  test.each([
    "SHOP.TEST.DOUBLE(2)",
    "=shop.test.double(2)",
    "=_xldudf_SHOP_TEST_DOUBLE(2)",
    "=[1]!_xldudf_SHOP_TEST_DOUBLE(2)",
  ])("%s is the same call and carries its unit", (formula) => {
    expect(evaluate(formula)).toEqual({ value: 4, unit: "mm" });
  });

  test("the unit is lost when the call is only part of the formula", () => {
    expect(evaluate("=SHOP.TEST.DOUBLE(2)+1")).toEqual({ value: 5, unit: null });
  });

  test("a refusal keeps its message through other functions", () => {
    expect(evaluate("=1+SUM(SHOP.TEST.REFUSE())").value).toEqual(new CellError("#N/A", "die must be owned; got none"));
    expect(evaluate("=IFERROR(SHOP.TEST.REFUSE(),5)").value).toBe(5);
  });
});

describe("what cannot be evaluated", () => {
  test.each(["1 +", "=", '="open', "=ROUND(1)", `=${"(".repeat(300)}1${")".repeat(300)}`])(
    "%s is #VALUE!",
    (formula) => {
      const { value } = evaluate(formula);
      expect(value).toBeInstanceOf(CellError);
      expect((value as CellError).code).toBe("#VALUE!");
      expect((value as CellError).message).toMatch(/^formula must be a worksheet formula; got /);
    },
  );

  test("an unknown function is #NAME? with the nearest name", () => {
    expect(evaluate("=SUMM(1)").value).toEqual(new CellError("#NAME?", "no function is called SUMM; nearest: SUM"));
    expect(evaluate("=SHOP.TEST.DOUBEL(1)").value).toEqual(
      new CellError("#NAME?", "no function is called SHOP.TEST.DOUBEL; nearest: SHOP.TEST.DOUBLE"),
    );
  });
});
