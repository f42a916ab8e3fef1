import { describe, expect, test } from "vitest";
import { cellName } from "../../src/sheet/formula/address.ts";
import { DEEPEST_NESTING } from "../../src/sheet/formula/depth.ts";
import { Calculator } from "../../src/sheet/graph/calculator.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";
import type { Workbook } from "../../src/sheet/workbook/workbook.ts";
import { CellError } from "../../src/units/cell.ts";
import { type Given, valueAt, workbookOf } from "./evaluate-on-grid.ts";
import { fakeFunctions } from "./fake-functions.ts";
import { packageOf } from "./make-package.ts";

function calculated(cells: Record<string, Given>, kind: "normal" | "dynamic" = "normal", rest: Partial<Workbook> = {}) {
  const workbook = workbookOf({ Sheet1: cells }, kind, rest);
  const calculator = new Calculator(workbook, { functions: fakeFunctions });
  calculator.calculateAll();
  return { workbook, calculator, at: (cell: string) => valueAt(workbook, cell) };
}

const names = (cells: Iterable<{ row: number; column: number }>): string[] =>
  [...cells].map((c) => cellName(c.row, c.column)).sort();

describe("order of calculation", () => {
  test("a chain of 100,000 cells written backwards needs no recursion", () => {
    const cells: Record<string, Given> = { A100000: 1 };
    for (let row = 1; row < 100_000; row++) cells[`A${row}`] = `=A${row + 1}+1`;
    expect(calculated(cells).at("A1")).toBe(100_000);
  });

  test("a running total over 20,000 rows adds every cell once", () => {
    const cells: Record<string, Given> = {};
    for (let row = 1; row <= 20_000; row++) {
      cells[`A${row}`] = row;
      cells[`B${row}`] = `=SUM(A$1:A${row})`;
    }
    // Gauss: n(n+1)/2.
    expect(calculated(cells).at("B20000")).toBe((20_000 * 20_001) / 2);
  });

  test("a reference made while evaluating waits for its cell", () => {
    const { at } = calculated({ A1: '=INDIRECT("B"&C1)', B2: "=C1*10", C1: "=1+1" });
    expect(at("A1")).toBe(20);
  });

  test("ordinary formulas take the cell in their own row out of a range, array formulas all of them", () => {
    expect(calculated({ A1: 1, A2: 2, A3: 3, B2: "=A1:A3*10" }).at("B2")).toBe(20);
    const { at } = calculated({ A1: 1, A2: 2, A3: 3, B2: "=A1:A3*10" }, "dynamic");
    expect([at("B2"), at("B3"), at("B4")]).toEqual([10, 20, 30]);
  });
});

describe("circular references", () => {
  test("are reported with the cells of the circle, and what depends on it is stale", () => {
    const { calculator } = calculated({ A1: "=B1+1", B1: "=C1", C1: "=A1", D1: "=C1*2", E1: "=5" });
    expect(calculator.circles.map(names)).toEqual([["A1", "B1", "C1"]]);
    expect(names(calculator.stale())).toEqual(["D1"]);
  });

  test("a branch that is not taken makes no circle", () => {
    const { calculator, at } = calculated({ A1: "=IF(TRUE,1,B1)", B1: "=A1+1" });
    expect(calculator.circles).toEqual([]);
    expect(at("B1")).toBe(2);
  });
});

describe("a workbook that asks for iteration", () => {
  const iteration = { count: 100, delta: 0.001 };
  const circle = { A1: 1000, B1: "=A1-C1", C1: "=B1*0.1", D1: "=ROUND(B1,0)" };

  test("has its circles calculated to the end, and nothing is stale", () => {
    // A bonus of 10 % of what is left after the bonus: B = A - 0.1 B, so that B = A / 1.1.
    const { calculator, at } = calculated(circle, "normal", { iteration: { count: 100, delta: 1e-9 } });
    expect(at("B1")).toBeCloseTo(1000 / 1.1, 6);
    expect([at("D1"), calculator.circles, [...calculator.stale()]]).toEqual([909, [], []]);
    calculator.change([{ sheet: 0, row: 0, column: 0, value: 2200 }]);
    expect([at("B1"), at("D1")]).toEqual([expect.closeTo(2000, 6), 2000]);
  });

  test("counts on by as many rounds as it says", () => {
    const { at } = calculated({ A1: "=A1+1", B1: "=A1*2" }, "normal", { iteration: { ...iteration, count: 7 } });
    expect([at("A1"), at("B1")]).toEqual([7, 14]);
  });

  test("ends early where no number moves more than it says", () => {
    // Newton's way to the root of 2 doubles the digits: far fewer than a million rounds.
    const { at } = calculated({ A1: "=IF(A1=0,1,(A1+2/A1)/2)" }, "normal", { iteration: { count: 1e6, delta: 1e-12 } });
    expect(at("A1")).toBeCloseTo(Math.SQRT2, 12);
  });

  test("keeps a circle that would take too long, and reports it", () => {
    const { calculator } = calculated(circle, "normal", { iteration: { count: 1e8, delta: 0 } });
    expect(calculator.circles.map(names)).toEqual([["B1", "C1"]]);
  });
});

describe("spills", () => {
  test("fill their cells and shrink again", () => {
    const { calculator, at } = calculated({ A1: 3, B1: "=SEQUENCE(A1)", D1: "=SUM(B1:B9)" }, "dynamic");
    expect([at("B3"), at("D1")]).toEqual([3, 6]);
    calculator.change([{ sheet: 0, row: 0, column: 0, value: 2 }]);
    expect([at("B2"), at("B3"), at("D1")]).toEqual([2, null, 3]);
    calculator.change([{ sheet: 0, row: 0, column: 0, value: 4 }]);
    expect([at("B4"), at("D1")]).toEqual([4, 10]);
  });

  test("that are blocked show #SPILL! until the way is free", () => {
    const { at, calculator } = calculated({ A1: "=SEQUENCE(3)", A3: "in the way" }, "dynamic");
    expect(at("A1")).toEqual(new CellError("#SPILL!"));
    expect(at("A3")).toBe("in the way");
    expect(calculator.circles).toEqual([]);
  });

  test("A1# reads the whole spill", () => {
    expect(calculated({ A1: "=SEQUENCE(4)", C1: "=SUM(A1#)" }, "dynamic").at("C1")).toBe(10);
  });
});

describe("incremental recalculation", () => {
  test("a changed cell recalculates exactly its dependants", () => {
    const { calculator, at } = calculated({ A1: 1, A2: 2, B1: "=A1*2", B2: "=A2*2", C1: "=SUM(B1:B2)", D1: "=7" });
    expect(names(calculator.change([{ sheet: 0, row: 0, column: 0, value: 10 }]))).toEqual(["B1", "C1"]);
    expect([at("B1"), at("B2"), at("C1"), at("D1")]).toEqual([20, 4, 24, 7]);
  });
});

describe("what cannot be calculated is kept", () => {
  test("an unknown function, an external link, a clock without --now; everything else goes on", () => {
    const { calculator, at } = calculated({
      A1: "=NO.SUCH.THING(1)",
      A2: "=[1]Sheet1!B2+1",
      A3: "=TODAY()",
      A4: "=RAND()",
      A5: "=A1+1",
      B1: "=IF(FALSE,NO.SUCH.THING(1),5)",
    });
    const kept = [...calculator.formulas()].filter((cell) => cell.kept);
    expect(kept.map((cell) => [cellName(cell.row, cell.column), cell.kept!.reason])).toEqual([
      ["A1", "unknown-function"],
      ["A2", "external-link"],
      ["A3", "volatile"],
      ["A4", "volatile"],
    ]);
    expect(names(calculator.stale())).toEqual(["A5"]);
    expect(at("B1")).toBe(5);
  });

  test("an array beyond the engine's own limit", () => {
    const { workbook, at } = calculated({
      A1: "=ROWS(SEQUENCE(3000,2000))",
      A2: "=SUM(MUNIT(3000))",
      A3: "=SUM(SEQUENCE(1000,1000)*1)",
    });
    expect(workbook.sheets[0]!.formulas.map(({ kept }) => kept?.detail)).toEqual([
      "an array of 6000000 cells; the limit is 5000000",
      "an array of 9000000 cells; the limit is 5000000",
      undefined,
    ]);
    expect(at("A3")).toBe(500_000_500_000);
  });

  test("IFERROR does not hide it", () => {
    const { calculator } = calculated({ A1: "=IFERROR(NO.SUCH.THING(1),0)" });
    expect([...calculator.formulas()][0]!.kept?.reason).toBe("unknown-function");
  });
});

describe("names and tables", () => {
  const table = {
    name: "Parts",
    sheet: 0,
    top: 0,
    left: 0,
    bottom: 3,
    right: 1,
    headerRows: 1,
    totalsRows: 0,
    columns: ["Qty", "Price"],
  };
  const cells = { A1: "Qty", B1: "Price", A2: 2, B2: 10, A3: 3, B3: 20, A4: 4, B4: 30 };

  test("structured references name columns, rows and headers", () => {
    const { at } = calculated(
      {
        ...cells,
        D1: "=SUM(Parts[Price])",
        D2: "=Parts[[#This Row],[Qty]]*Parts[[#This Row],[Price]]",
        D5: "=Parts[[#Headers],[Price]]",
        D6: "=ROWS(Parts[#All])",
      },
      "normal",
      { tables: [table] },
    );
    expect([at("D1"), at("D2"), at("D5"), at("D6")]).toEqual([60, 20, "Price", 4]);
  });

  test("a sheet's own name comes before the workbook's; relative names count from the cell", () => {
    const { at } = calculated({ ...cells, D1: "=Rate", D3: "=Left2*1" }, "normal", {
      names: [
        { name: "Rate", scope: undefined, text: "1", macro: false },
        { name: "Rate", scope: 0, text: "2", macro: false },
        { name: "Left2", scope: undefined, text: "Sheet1!XFC1", macro: false },
      ],
    });
    expect([at("D1"), at("D3")]).toEqual([2, 20]);
  });

  test("a custom function gets its range as rows", () => {
    expect(calculated({ ...cells, D1: "=SUM(SHOP.TEST.DOUBLE(A2:A4))" }).at("D1")).toBe(18);
  });
});

describe("nesting", () => {
  test("past the stated depth the cell is kept, and nothing crashes", () => {
    const nested = (depth: number): string => `=${"(".repeat(depth)}1${")".repeat(depth)}`;
    const { calculator, at } = calculated({
      A1: nested(DEEPEST_NESTING),
      A2: nested(DEEPEST_NESTING + 1),
      A3: `=${"-".repeat(20_000)}1`,
    });
    expect(at("A1")).toBe(1);
    expect([...calculator.formulas()].map((cell) => cell.kept?.reason)).toEqual([
      undefined,
      "depth",
      "unsupported-syntax",
    ]);
  });

  test("a long chain of terms is not deep", () => {
    expect(calculated({ A1: `=${new Array(4000).fill("1").join("+")}` }).at("A1")).toBe(4000);
  });
});

test("iteration is read from the workbook, with the standard's defaults", () => {
  const sheets = { Sheet1: "<sheetData/>" };
  const read = (workbook: string) => readWorkbook(packageOf({ sheets, workbook })).iteration;
  // ECMA-376 part 1, 18.2.2: iterateCount 100 and iterateDelta 0.001 where nothing is said.
  expect(read('<calcPr iterate="1"/>')).toEqual({ count: 100, delta: 0.001 });
  expect(read('<calcPr iterate="true" iterateCount="7" iterateDelta="1E-4"/>')).toEqual({ count: 7, delta: 1e-4 });
  expect([read('<calcPr calcId="1"/>'), read('<calcPr iterate="0"/>'), read("")]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
});
