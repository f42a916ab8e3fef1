/** What the pane does where answers fail to come or are not understood: recalculate, check this Excel, explain, warn. */
import { afterEach, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../../src/cells/catalogue.ts";
import { PRODUCT_VERSION } from "../../../../src/cells/record/version.generated.ts";
import { CURRENT_EDITION } from "../../../../src/data/materials/editions.ts";
import { noteCall } from "../../../../src/hosts/excel/function-list.ts";
import { checkExcel } from "../../../../src/hosts/pane/excel/check-excel.ts";
import { explainCell } from "../../../../src/hosts/pane/excel/explain.ts";
import { recalculateAll } from "../../../../src/hosts/pane/excel/recalculate.ts";
import { versionWarning } from "../../../../src/hosts/pane/excel/version-warning.ts";
import { warnings } from "../../../../src/hosts/pane/excel/warnings.ts";
import { ZEROS } from "../../../../src/job/state-words.ts";
import { evaluateFormula } from "../../../../src/sheet/recalculate/calculate-one.ts";
import { CellError, isCellError } from "../../../../src/units/cell.ts";
import { FakeWorkbook, type Held, standIn } from "./stand-in.ts";

const task = { step: () => undefined };
const evaluate = (formula: string): Held => {
  const { value } = evaluateFormula(formula, shopFunctions);
  const one = Array.isArray(value) ? value[0]![0]! : value;
  return isCellError(one) ? one.code : (one ?? "");
};
function open(sheets: ConstructorParameters<typeof FakeWorkbook>[0], answers = evaluate): FakeWorkbook {
  const book = new FakeWorkbook(sheets, answers);
  Object.assign(globalThis, { Excel: standIn(book) });
  return book;
}
afterEach(() => {
  Reflect.deleteProperty(globalThis, "Excel");
});

describe("stuck", () => {
  it("everything is calculated again", async () => {
    const book = open({ Bill: [["=SHOP.BEND.SETBACK(0.04,0.16,90)"]] });
    book.at("Bill", 0, 0).value = "#BUSY!";
    expect(await recalculateAll(task)).toContain("being calculated again");
    expect(book.at("Bill", 0, 0).value).toBe(0.2);
  });
});

describe("check this Excel", () => {
  it.each<[string, (formula: string) => Held, RegExp]>([
    ["blank cells arrive as blank", evaluate, /^Blank cells arrive as blank/],
    ["blank cells arrive as 0", () => 0, /passes blank cells .* as 0.*update Excel/],
    ["the functions are not known", () => "#NAME?", /does not know the functions/],
  ])("says whether %s, and leaves no sheet behind", async (_, answers, said) => {
    const book = open({ Bill: [["a"]] }, answers);
    expect(await checkExcel(task)).toMatch(said);
    expect(book.sheets.map(({ name }) => name)).toEqual(["Bill"]);
  });

  it("leaves no sheet behind where it is ended while it waits", async () => {
    const book = open({ Bill: [["a"]] }, () => "#BUSY!");
    let steps = 0;
    const ending = {
      step: () => {
        if (++steps > 2) throw new Error("ended");
      },
    };
    await expect(checkExcel(ending)).rejects.toThrow("ended");
    expect(book.sheets.map(({ name }) => name)).toEqual(["Bill"]);
  });
});

describe("explain this cell", () => {
  /** A cell as Excel holds it: formula and what it shows. */
  const explained = async (formula: Held, value: Held, decimal = ".", others: Held[][] = []) => {
    const book = open({ Bill: [["", "", ""], ...others], "Other sheet": [["abc"]] });
    book.decimal = decimal;
    book.sheet("Bill").cells.set("0,0", { formula, value });
    book.active = { sheet: "Bill", row: 0, column: 0 };
    return explainCell(task);
  };

  it.each<[string, string, string, RegExp]>([
    [
      "a wrong unit",
      '=SHOP.BEND.SETBACK("4 stone",0.16,90)',
      "#VALUE!",
      /SHOP\.BEND\.SETBACK says: thickness must be .*; got "?4 stone/,
    ],
    ["a wrong unit in a cell", "=SHOP.BEND.SETBACK(A2,0.16,90)", "#VALUE!", /says: thickness must be .*4 stone/],
    ["a word in a range", "=SHOP.BEND.SETBACK($A$2:$A$3,0.16,90)", "#VALUE!", /says: thickness must be .*4 stone/],
    ["another sheet", "=SHOP.BEND.SETBACK('Other sheet'!A1,0.16,90)", "#VALUE!", /says: thickness must be .*abc/],
    ["a call inside a formula", '=ROUND(1+SHOP.BEND.SETBACK("x",0.16,90),2)', "#VALUE!", /says: thickness must be/],
    ["no answer", '=SHOP.SHEET.THICKNESS(99,"stainless")', "#N/A", /says: gauge must be .*99/],
    ["a name that does not exist", "=SHOP.BEND.SETBAK(1,1,90)", "#NAME?", /SHOP\.BEND\.SETBAK is not a function/],
    ["a call typed too early", "=SHOP.BEND.SETBACK(1,1,90)", "#NAME?", /press Repair formulas/],
    ["a copy of LibreOffice", "=_xldudf_shop_bend_setback(1,1,90)", "#NAME?", /LibreOffice/],
    ["a call that waits", "=SHOP.BEND.SETBACK(1,1,90)", "#BUSY!", /still being calculated/],
    [
      "what Excel works out",
      "=SHOP.BEND.SETBACK(SUM(A2:A3),0.16,90)",
      "#VALUE!",
      /"SUM\(A2:A3\)" is worked out by Excel/,
    ],
    [
      "a decimal comma read as two arguments",
      "=SHOP.BEND.SETBACK(0,4,0,16,90)",
      "#VALUE!",
      /says: arguments must be at most 4.*if 0\.4 is meant/,
    ],
    [
      "the same where it answers",
      "=SHOP.BEND.SETBACK(1,0,16)",
      0.14 as never,
      /look again.*if 0\.16 is meant, write 0\.16/,
    ],
    ["a right answer", "=SHOP.BEND.SETBACK(0.04,0.16,90)", 0.2 as never, /nothing to explain/],
    ["no call at all", "=1/0", "#DIV/0!", /calls no SHOP function/],
  ])("%s", async (_, formula, value, said) => {
    expect(await explained(formula, value, ".", [["4 stone"], [0.16]])).toMatch(said);
  });

  it.each([
    [".", "=SHOP.BEND.SETBACK(0,04;0,16;90)", "=SHOP.BEND.SETBACK(0.04,0.16,90)"],
    [",", "=SHOP.BEND.SETBACK(0.04,0.16,90)", "=SHOP.BEND.SETBACK(0,04;0,16;90)"],
    [".", 'SHOP.FLAT.LENGTH("2; 3,5; 2";90)', '=SHOP.FLAT.LENGTH("2; 3,5; 2",90)'],
    [".", "=SHOP.BEND.SETBACK(0.04,0.16,90)", "=SHOP.BEND.SETBACK(0.04,0.16,90)"],
  ])("a formula held as text where the decimal sign is %j: %s", async (decimal, typed, right) => {
    expect(await explained(typed, typed, decimal)).toContain(`Set the cell's format to General and enter: ${right}`);
  });
});

describe("warnings", () => {
  const versionCell = `Bracket Bill ${PRODUCT_VERSION}, materials ${CURRENT_EDITION.name}`;
  it("are none where all is well, and one for each thing that is not", () => {
    expect(warnings([{ name: "Read me", rows: [[versionCell, 1, null]] }])).toEqual([]);
    const rows = [["Bracket Bill 0.0.1, materials 2020.1", ZEROS, new CellError("#NAME?"), new CellError("#N/A")]];
    expect(warnings([{ name: "Read me", rows }])).toEqual([
      expect.stringContaining("0.0.1"),
      ZEROS,
      "1 cells stand at #NAME?: press Repair formulas.",
    ]);
  });
  it("say it when Excel calls by the list of another version", () => {
    noteCall("BEND.SETBACK", 3, 4);
    expect(warnings([]).join()).toContain("function list of another version");
  });
  it("compare versions also where the cell says that the list is an old one", () => {
    expect(versionWarning([{ name: "x", rows: [[`${versionCell}; Excel still uses`]] }])).toBeUndefined();
    expect(versionWarning([{ name: "x", rows: [["Bracket Bill 0.0.1, materials 2020.1; Excel"]] }])).toContain("0.0.1");
  });
});
