/** The State cell of a sample: running, not running, and an Excel that passes blanks as 0. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { onlyWhenRunning, stateCell, stateFormula } from "../../../src/job/building/state.ts";
import { RUNNING } from "../../../src/job/state-words.ts";
import type { CustomFunctions } from "../../../src/sheet/evaluate/custom-functions.ts";
import { evaluateFormula } from "../../../src/sheet/recalculate/calculate-one.ts";
import { sampleModel } from "../../../src/tools/sample/stage-job/workbook.ts";

/** C1:C2 of a workbook without cells is blank. */
const state = (version: string, functions: CustomFunctions = shopFunctions) =>
  evaluateFormula(stateFormula(version, "C1:C2"), functions).value;

describe("the State cell", () => {
  it("says that the functions run where they answer and blanks arrive as blanks", () => {
    expect(state('"Bracket Bill"')).toBe(RUNNING);
  });
  it("says so where they do not answer", () => {
    expect(state("NA()")).toMatch(/NOT running/);
  });
  it("says what to do where this Excel passes blanks as 0, and nothing is quoted then", () => {
    const zeros: CustomFunctions = {
      ...shopFunctions,
      call: (name) => shopFunctions.call(name, [[[0], [0]]]),
    };
    const said = state('"Bracket Bill"', zeros);
    expect(said).toMatch(/passes blank cells .* as 0.*update Excel/);
    expect(evaluateFormula(onlyWhenRunning(`"${said}"`, "12.5"), shopFunctions).value).toBe("no quote: see State");
    expect(evaluateFormula(onlyWhenRunning(`"${RUNNING}"`, "12.5"), shopFunctions).value).toBe(12.5);
  });
  it("is stored as a cell that calls a function", () => {
    expect(stateCell(6, 2, "B5", "A4:B4")).toMatchObject({ row: 6, column: 2, spills: ["strong"] });
    expect(stateCell(6, 2, "B5", "A4:B4").formula).toContain("_xldudf_SHOP_EMPTY_CELLS(A4:B4)");
  });
});

describe("money of a job's workbook", () => {
  it.each(["Price", "Summary", "Quote"])(
    "%s has none where the functions do not run, nor where blanks come as 0",
    (name) => {
      const { cells } = sampleModel().sheets.find((sheet) => sheet.name === name)!;
      const asked = cells.filter(({ formula }) => /_xldudf_|"Total"/.test(formula ?? ""));
      expect(asked.length).toBeGreaterThan(0);
      for (const { formula } of asked) expect(formula).toMatch(/^IF\('Read me'!B6="The functions are running\.",/);
    },
  );
});
