import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import { calledIn } from "../../../src/job/building/formulas.ts";
import { cellName } from "../../../src/sheet/formula/address.ts";
import { Calculator } from "../../../src/sheet/graph/calculator.ts";
import { DONE, type FormulaCell } from "../../../src/sheet/workbook/formula-cell.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import type { Sheet } from "../../../src/sheet/workbook/sheet.ts";
import { RELEASED } from "../../../src/tools/generate/recorded-release.ts";
import { type CellValue, isCellError } from "../../../src/units/cell.ts";
import { underRule } from "../../cells/example/tables.ts";

const LONG = 120_000;
const contract = new Set(RECORDS.filter((record) => record.contract === true).map(({ name }) => name));
/** Of WORKING and SOURCE too: they explain, and explanations may get better. */
const isContract = ({ text }: FormulaCell): boolean => {
  const called = calledIn(text);
  return called.length > 0 && called.every((name) => contract.has(name));
};

const filesOf = (version: string) => readdirSync(`${RELEASED}/${version}`).map((name) => `${version}/${name}`);
const files = readdirSync(RELEASED).flatMap(filesOf);
const bytesOf = (file: string) => new Uint8Array(readFileSync(`${RELEASED}/${file}`));

const valuesAt = (sheet: Sheet, { row, column, ref }: FormulaCell): Map<string, CellValue> => {
  const { top, left, bottom, right } = ref ?? { top: row, left: column, bottom: row, right: column };
  const found = new Map<string, CellValue>();
  for (let r = top; r <= bottom; r++)
    for (let c = left; c <= right; c++) found.set(`${sheet.name}!${cellName(r, c)}`, sheet.values[c]?.[r] ?? null);
  return found;
};

/** These workbooks are of the edition of their release, which a call names where it means that one to stay. */
const underItsEdition: typeof shopFunctions = {
  ...shopFunctions,
  call: (name, args, ...more) => shopFunctions.call(name, underRule(name, args as CellValue[]), ...more),
};

/** Calculates the formulas that call contract functions alone, each from the values that were stored beside it. */
function contractAnswers(file: string) {
  const workbook = readWorkbook(bytesOf(file));
  const calculator = new Calculator(workbook, { functions: underItsEdition });
  const before = new Map<string, CellValue>();
  const called = new Set<string>();
  for (const sheet of workbook.sheets) {
    const kept = sheet.formulas.filter(isContract);
    for (const cell of sheet.formulas) if (!isContract(cell)) cell.state = DONE;
    sheet.formulas.splice(0, sheet.formulas.length, ...kept);
    for (const cell of kept) {
      for (const [name, value] of valuesAt(sheet, cell)) before.set(name, value);
      for (const name of calledIn(cell.text)) called.add(name);
    }
  }
  const chosen = [...calculator.formulas()];
  for (const { sheet, row, column, ref } of chosen) {
    const { top, left, bottom, right } = ref ?? { top: row, left: column, bottom: row, right: column };
    for (let r = top; r <= bottom; r++)
      for (let c = left; c <= right; c++) workbook.sheets[sheet]!.set(r, c, undefined);
  }
  calculator.calculateAll();
  const after = new Map<string, CellValue>();
  for (const cell of chosen)
    for (const [name, value] of valuesAt(workbook.sheets[cell.sheet]!, cell)) after.set(name, value);
  return { before, after, called };
}

describe.each(files)("the sample of %s", (file) => {
  it("is calculated whole by this version", { timeout: LONG }, () => {
    const workbook = readWorkbook(bytesOf(file));
    const calculator = new Calculator(workbook, { functions: shopFunctions });
    calculator.calculateAll();
    const left = [...calculator.formulas()].filter(({ kept, circular }) => kept !== undefined || circular);
    expect(left.map(({ text, kept }) => `${kept?.detail}: ${text}`)).toEqual([]);
  });

  it("gets the same answers of contract functions", () => {
    const { before, after } = contractAnswers(file);
    expect([...after.keys()]).toEqual([...before.keys()]);
    for (const [cell, value] of before) {
      const now = after.get(cell);
      if (typeof value === "number") expect(now, cell).toBeCloseTo(value, 9);
      else if (isCellError(value))
        expect(isCellError(now as CellValue) && (now as typeof value).code, cell).toBe(value.code);
      else expect(now, cell).toBe(value);
    }
  });
});

/** How many contract functions there were when a version went out. */
const CONTRACTS: Readonly<Record<string, number>> = { "0.1.0": 15 };

it.each(readdirSync(RELEASED))("the samples of %s show every contract function of their day", (version) => {
  const called = new Set(filesOf(version).flatMap((file) => [...contractAnswers(file).called]));
  expect(called.size).toBe(CONTRACTS[version]);
});
