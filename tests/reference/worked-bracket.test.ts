/** The worked bracket holds before any of our functions is asked: in an ordinary spreadsheet, line by line. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { noCustomFunctions } from "../../src/sheet/evaluate/custom-functions.ts";
import { evaluateFormula } from "../../src/sheet/recalculate/calculate-one.ts";
import { recalculateBytes } from "../../src/sheet/recalculate/recalculate-bytes.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";
import { writeWorkbookModel } from "../../src/tools/sample/xlsx/write.ts";
import { cellsInLibreOffice, HAS_LIBREOFFICE } from "./in-libreoffice.ts";
import { WORKED_BRACKET } from "./worked-bracket.ts";

const ORDINARY = { functions: noCustomFunctions, now: undefined, verify: false, in: "worked", out: "worked" };
const numbered = WORKED_BRACKET.map((line, i) => [i + 1, line] as const);

describe("the worked bracket in ordinary formulas", () => {
  const named = (formula: string) => formula.replace(/\bB(\d+)\b/g, "line_$1");
  const bindings = WORKED_BRACKET.map(({ formula }, i) => `line_${i + 1},${named(formula)}`).join(",");

  it.each(numbered)("line %i, the headless engine", (n, { value }) => {
    const answer = evaluateFormula(`=LET(${bindings},line_${n})`, shopFunctions);
    expect(answer.value).toBeCloseTo(value, 8);
  });

  // The workbook holds no answers: whoever opens it has to work them out.
  const workbook = writeWorkbookModel(
    {
      title: "One bracket by hand",
      sheets: [
        {
          name: "Bracket",
          widths: [60, 16, 8, 60],
          cells: WORKED_BRACKET.flatMap(({ what, formula, unit, source }, i) => [
            { row: i + 1, column: 1, value: what },
            { row: i + 1, column: 2, formula },
            { row: i + 1, column: 3, value: unit },
            { row: i + 1, column: 4, value: source },
          ]),
          print: { landscape: false },
        },
      ],
    },
    () => undefined,
  );

  it("all lines of a workbook, the headless engine, which needs no function of ours for it", () => {
    const { sheets } = readWorkbook(recalculateBytes(workbook, ORDINARY).output!);
    const computed = WORKED_BRACKET.map((_, i) => sheets[0]!.values[1]![i]);
    computed.forEach((value, i) => {
      expect(value, `line ${i + 1}`).toBeCloseTo(WORKED_BRACKET[i]!.value, 8);
    });
  });

  it.skipIf(!HAS_LIBREOFFICE)(
    "all lines of the same workbook, LibreOffice",
    () => {
      const rows = cellsInLibreOffice(workbook);
      expect(rows).toHaveLength(WORKED_BRACKET.length);
      rows.forEach(([name, computed], i) => {
        const { what, value } = WORKED_BRACKET[i]!;
        expect(name).toBe(what);
        expect(Number(computed), `line ${i + 1}`).toBeCloseTo(value, 8);
      });
    },
    120_000,
  );
});
