import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../../src/cells/catalogue.ts";
import { BRAKES, SHEARS } from "../../../../src/cells/example/invented-shop.ts";
import { calculatedBytes } from "../../../../src/job/building/calculated.ts";
import type { WorkbookModel } from "../../../../src/job/xlsx/model.ts";
import { writeWorkbookModel } from "../../../../src/job/xlsx/write.ts";
import { cellName } from "../../../../src/sheet/formula/address.ts";
import { Calculator } from "../../../../src/sheet/graph/calculator.ts";
import { evaluateFormula } from "../../../../src/sheet/recalculate/calculate-one.ts";
import { recalculateBytes } from "../../../../src/sheet/recalculate/recalculate-bytes.ts";
import { readWorkbook } from "../../../../src/sheet/workbook/read-workbook.ts";
import type { Workbook } from "../../../../src/sheet/workbook/workbook.ts";
import { SAMPLE_FILE } from "../../../../src/tools/sample/file.ts";
import { PARTS } from "../../../../src/tools/sample/stage-job/bill/job.ts";
import { sampleModel } from "../../../../src/tools/sample/stage-job/workbook.ts";
import type { CellValue } from "../../../../src/units/cell.ts";

const stored = new Uint8Array(readFileSync(SAMPLE_FILE));
/** The bill and its answers without the sheets that cut, time and price it: quick to calculate many times. */
const KEPT = ["Read me", "Shop", "Parts", "Job", "Finished", "Answers", "Calculation", "Checks"];
const billModel: WorkbookModel = {
  ...sampleModel(),
  sheets: sampleModel().sheets.filter(({ name }) => KEPT.includes(name)),
};
const bill = calculatedBytes(billModel);
const verify = (bytes: Uint8Array) =>
  recalculateBytes(bytes, { functions: shopFunctions, now: undefined, verify: true, in: SAMPLE_FILE, out: null })
    .result;

describe("the check of stored answers", () => {
  it("would be caught with one wrong figure", () => {
    const workbook = readWorkbook(bill);
    const wrong = writeWorkbookModel(billModel, (sheet, cell) => {
      const matrix = resultOf(workbook, sheet.name, cell.row - 1, cell.column - 1);
      return sheet.name === "Answers" && cell.row === 9 && cell.column === 1
        ? matrix.map((row, i) => (i === 5 ? row.map((value, at) => (at === 6 ? 99 : value)) : row))
        : matrix;
    });
    const { report } = verify(wrong);
    expect(report.status).toBe("different");
    expect(report.differences.map(({ cell }) => cell)).toEqual(["Answers!G14"]);
  });
});

describe("one changed input changes exactly what depends on it", () => {
  const change = (sheetName: string, row: number, column: number, value: CellValue) => {
    const workbook = readWorkbook(bill);
    const calculator = new Calculator(workbook, { functions: shopFunctions });
    calculator.calculateAll();
    const before = allValues(workbook);
    calculator.change([{ sheet: workbook.sheets.findIndex(({ name }) => name === sheetName), row, column, value }]);
    const after = allValues(workbook);
    const changed = [...new Set([...before.keys(), ...after.keys()])].filter(
      (cell) => before.get(cell) !== after.get(cell),
    );
    return changed.sort();
  };

  it("the quantity of the first line: its own cells, the pieces, and nothing of another line", () => {
    const cells = change("Parts", 4, 2, 50);
    expect(cells).toContain("Answers!C9");
    expect(cells.filter((cell) => cell.startsWith("Answers!"))).toEqual(["Answers!C5", "Answers!C9"]);
    expect(cells.filter((cell) => cell.startsWith("Checks!")).map((cell) => cell.replace(/[A-Z]+(?=\d)/, ""))).toEqual([
      "Checks!5",
    ]);
  });

  it("the description of the second line", () => {
    expect(change("Parts", 5, 1, "Deck ledger angle, 4 ft").filter((cell) => !cell.startsWith("Checks!"))).toEqual([
      "Answers!B10",
      "Parts!B6",
    ]);
  });

  it("the angle of a die that one line uses", () => {
    const [row, column] = shopCell("V 1 wide", 2);
    // Bent on an 80-degree die the sheet no longer bottoms: the line is clear, and the counts with it.
    const line = 9 + PARTS.findIndex(({ part }) => part === "CS-07");
    const cells = change("Shop", row, column, 80);
    expect(cells).toContain(`Shop!${cellName(row, column)}`);
    expect(cells).toContain(`Answers!M${line}`);
    const elsewhere = cells.filter((cell) => /^Answers!M\d+$/.test(cell) && cell !== `Answers!M${line}`);
    expect(elsewhere).toEqual([]);
  });

  it("the part that the first calculation shows", () => {
    const cells = change("Calculation", 4, 1, "DF-01");
    expect(cells.length).toBeGreaterThan(5);
    expect(cells.filter((cell) => !cell.startsWith("Calculation!"))).toEqual([]);
  });

  it("a full calculation agrees with the partial one", () => {
    const partial = readWorkbook(bill);
    const calculator = new Calculator(partial, { functions: shopFunctions });
    calculator.calculateAll();
    const input = { sheet: 2, row: 11, column: 4, value: "5/16" };
    calculator.change([input]);
    const whole = readWorkbook(bill);
    whole.sheets[input.sheet]!.set(input.row, input.column, input.value);
    new Calculator(whole, { functions: shopFunctions }).calculateAll();
    expect([...allValues(partial)].sort()).toEqual([...allValues(whole)].sort());
  });

  it("reaches the customer's page", { timeout: 120_000 }, () => {
    const workbook = readWorkbook(stored);
    const quote = workbook.sheets.find(({ name }) => name === "Quote")!;
    const row = quote.values[0]!.indexOf("DF-01");
    const before = [2, 3, 4].map((column) => quote.values[column]![row]);
    workbook.sheets[2]!.set(4, 2, 96);
    new Calculator(workbook, { functions: shopFunctions }).calculateAll();
    const [quantity, unitPrice, total] = [2, 3, 4].map((column) => Number(quote.values[column]![row]));
    expect(before[0]).toBe(48);
    expect(quantity).toBe(96);
    expect(total).toBeCloseTo(96 * unitPrice!, 9);
    expect(total).toBeGreaterThan(Number(before[2]));
  });
});

interface AnswerLine {
  readonly part: CellValue;
  readonly quantity: CellValue;
  readonly flat: CellValue;
  readonly radius: CellValue;
  readonly tons: CellValue;
  readonly weight: CellValue;
  readonly status: CellValue;
  readonly sentence: CellValue;
}

/** The lines of the sheet Answers, by their headers. */
function answerLines(workbook: Workbook): AnswerLine[] {
  const { values, lastRow } = workbook.sheets.find(({ name }) => name === "Answers")!;
  const header = values[0]!.indexOf("Part");
  const column = (title: string) => values.findIndex((cells) => cells?.[header] === title);
  const at = (row: number, title: string): CellValue => values[column(title)]?.[row] ?? null;
  return Array.from({ length: lastRow - header }, (_, i) => header + 1 + i)
    .filter((row) => at(row, "Part") !== null)
    .map((row) => ({
      part: at(row, "Part"),
      quantity: at(row, "Quantity"),
      flat: at(row, "Flat length (in)"),
      radius: at(row, "Inside radius (in)"),
      tons: at(row, "Force (US ton)"),
      weight: at(row, "Weight each (lb)"),
      status: at(row, "Status"),
      sentence: at(row, "What is wrong"),
    }));
}

describe("the job", () => {
  let lines: AnswerLine[];
  beforeAll(() => {
    lines = answerLines(readWorkbook(stored));
  });

  it("has 60 to 100 lines, each answered", () => {
    expect(PARTS.length).toBeGreaterThanOrEqual(60);
    expect(PARTS.length).toBeLessThanOrEqual(100);
    expect(lines).toHaveLength(PARTS.length);
    for (const { part, flat, weight, radius, tons, status } of lines) {
      const isCutOnly = ["FH-01", "FH-05"].includes(String(part));
      for (const figure of isCutOnly ? [flat, weight] : [flat, weight, radius, tons])
        expect(figure, String(part)).toBeGreaterThan(0);
      expect(["clear", "check", "stop"]).toContain(status);
    }
  });

  /** Worked by hand from the bill; density of steel 0.284 lb/in^3: Groover 5e Table 4.1. */
  it.each([
    // (3 + 5 + 3 less two deductions) x 10 x 1/4 x 0.284; a square bend in 1/4 over 2 in takes 0.45 to 0.47 in.
    ["DF-08", 11 - 2 * 0.46, (11 - 2 * 0.46) * 10 * 0.25 * 0.284],
    // 24 in of 3/16; over 1-1/2 in the radius is about 1/4 in: 5 - (2 x 0.4375 - pi/2 x (0.25 + 0.42 x 0.1875)).
    ["DF-01", 5 - (2 * 0.4375 - (Math.PI / 2) * 0.32875), 4.65 * 24 * 0.1875 * 0.284],
  ])("%s comes out as worked by hand: flat within 1/32 in, weight within 1 %%", (name, flat, weight) => {
    const line = lines.find(({ part }) => part === name)!;
    expect(Math.abs(Number(line.flat) - flat)).toBeLessThan(1 / 32);
    expect(Math.abs(Number(line.weight) / weight - 1)).toBeLessThan(0.01);
  });

  it("adds up on the sheet as its lines do, without those that are not quoted", () => {
    const { sheets } = readWorkbook(stored);
    const answers = sheets.find(({ name }) => name === "Answers")!;
    const checks = sheets.find(({ name }) => name === "Checks")!;
    const total = (label: string) => {
      for (const [column, cells] of answers.values.entries()) {
        const row = cells?.indexOf(label) ?? -1;
        if (row >= 0 && row < 8) return answers.values[column + 1]![row];
      }
      return undefined;
    };
    const quoted = checks.values.find((cells) => cells?.[3] === "Quoted")!.slice(4, 4 + lines.length);
    expect(total("Lines")).toBe(PARTS.length);
    expect(total("Quoted")).toBe(quoted.filter((word) => word === "yes").length);
    expect(total("Pieces quoted")).toBe(
      lines.reduce((sum, { quantity }, i) => sum + (quoted[i] === "yes" ? Number(quantity) : 0), 0),
    );
    for (const word of ["stop", "check", "clear"])
      expect(total(word), word).toBe(lines.filter(({ status }) => status === word).length);
  });

  it("writes thicknesses the way bills come in", () => {
    const written = PARTS.map(({ thickness }) => thickness);
    for (const form of [/^\d+ ga$/, /^\d+ mm$/, /^\d,\d mm$/, /^\d+\/\d+$/])
      expect(written.some((thickness) => typeof thickness === "string" && form.test(thickness))).toBe(true);
    expect(written.some((thickness) => typeof thickness === "number")).toBe(true);
  });

  it("stops at least 8 lines, of at least 6 reasons, and has others that need a look", () => {
    // The leading sentence without its figures and names is the reason.
    const reason = (sentence: CellValue) =>
      String(sentence)
        .split(/[.;:](?:\s|$)/)[0]!
        .replace(/[\d.]+|\b[A-Z]\S*/g, "#");
    const stops = lines.filter(({ status }) => status === "stop");
    expect(new Set(stops.map(({ sentence }) => reason(sentence))).size).toBeGreaterThanOrEqual(6);
    expect(stops.length).toBeGreaterThanOrEqual(8);
    expect(lines.filter(({ status }) => status === "check").length).toBeGreaterThanOrEqual(5);
    expect(lines.filter(({ status }) => status === "clear").length).toBeGreaterThanOrEqual(30);
  });

  it("is an invented shop with machines of sizes of its own", () => {
    expect(BRAKES.rows.map(([, force]) => force)).not.toContain(220);
    expect(BRAKES.rows.map(([, , bed]) => bed)).not.toContain(156);
    expect(SHEARS.rows.map(([, thickness]) => thickness)).not.toContain(0.25);
  });
});

describe("the note about dead functions", () => {
  const { sheets } = readWorkbook(stored);
  const version = sheets[0]!.formulas.find(({ text }) => text.includes("VERSION"))!;
  const state = sheets[0]!.formulas.find(({ text }) => text.startsWith("IF(ISERROR("))!;
  const withVersion = (value: string) => {
    const text = state.text.replace(cellName(version.row, version.column), value);
    expect(text).not.toBe(state.text);
    return evaluateFormula(text, {
      namespace: "SHOP",
      resolve: () => "EMPTY.CELLS", // as in an Excel that hands blanks over
      names: () => ["EMPTY.CELLS"],
      call: () => ({ value: 2, unit: null }),
    }).value;
  };

  it("shows by an ordinary formula when SHOP.VERSION is an error, as it is where the add-in is missing", () => {
    expect(withVersion("#NAME?")).toMatch(/NOT running/);
    expect(withVersion('"Bracket Bill 0.1.0"')).toBe("The functions are running.");
  });

  it("shows on the sheet of the answers too", () => {
    const answers = sheets.find(({ name }) => name === "Answers")!;
    expect(answers.formulas.map(({ text }) => text)).toContain(`'Read me'!${cellName(state.row, state.column)}`);
  });
});

const shopCell = (die: string, column: number): [number, number] => {
  const shop = readWorkbook(stored).sheets.find(({ name }) => name === "Shop")!;
  return [shop.values[0]!.indexOf(die), column];
};

function allValues({ sheets }: Workbook): Map<string, CellValue> {
  const found = new Map<string, CellValue>();
  for (const sheet of sheets)
    sheet.values.forEach((cells, column) => {
      cells?.forEach((value, row) => {
        if (value !== undefined && value !== null) found.set(`${sheet.name}!${cellName(row, column)}`, value);
      });
    });
  return found;
}

function resultOf({ sheets }: Workbook, name: string, row: number, column: number): CellValue[][] {
  const sheet = sheets.find((found) => found.name === name)!;
  const formula = sheet.formulas.find((cell) => cell.row === row && cell.column === column)!;
  const { top, left, bottom, right } = formula.ref ?? { top: row, left: column, bottom: row, right: column };
  return Array.from({ length: bottom - top + 1 }, (_, r) =>
    Array.from({ length: right - left + 1 }, (_, c) => sheet.values[left + c]?.[top + r] ?? null),
  );
}
