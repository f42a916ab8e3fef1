import fc from "fast-check";
import { expect, test } from "vitest";
import { noCustomFunctions } from "../../src/sheet/evaluate/custom-functions.ts";
import { cellName } from "../../src/sheet/formula/address.ts";
import { Calculator } from "../../src/sheet/graph/calculator.ts";
import { type Given, workbookOf } from "./evaluate-on-grid.ts";

const ROWS = 40;

/** A column filled down with one formula: relative, absolute, growing, beside, looked up, made while evaluating. */
const FILLS: readonly ((row: number) => string)[] = [
  (row) => `=A${row}*2+B${row}`,
  (row) => `=$A$3+A${row}`,
  (row) => `=SUM(A$1:A${row})`,
  (row) => `=SUM(A${row}:B${row})+COUNT($A$1:$B$${ROWS})`,
  (row) => `=SUM(A:A)-A${row}`,
  (row) => `=IF(A${row}>5,SUM($B$2:B$9),B${row})`,
  (row) => `=INDIRECT("A"&MOD(INT(B${row}),${ROWS})+1)`,
  (row) => `=SUM(OFFSET($A$1,0,0,MAX(1,MIN(${ROWS},INT(ABS(A${row})))),1))`,
  (row) => (row === 1 ? "=A1" : `=SUM(A${Math.max(1, row - 3)}:A${row})`),
  (row) => `=A${ROWS + 1 - row}+1`,
];

test("an edit gives what a calculation of the whole gives", () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: FILLS.length - 1 }), { minLength: 1, maxLength: 6 }),
      fc.array(
        fc.tuple(
          fc.integer({ min: 0, max: ROWS - 1 }),
          fc.integer({ min: 0, max: 1 }),
          fc.integer({ min: -9, max: 50 }),
        ),
        {
          minLength: 1,
          maxLength: 5,
        },
      ),
      (fills, edits) => {
        const cells: Record<string, Given> = {};
        for (let row = 1; row <= ROWS; row++) {
          cells[`A${row}`] = row;
          cells[`B${row}`] = (row * 7) % 11;
          fills.forEach((fill, i) => {
            cells[cellName(row - 1, 3 + i)] = FILLS[fill]!(row);
          });
        }
        const calculate = (given: Record<string, Given>) => {
          const calculator = new Calculator(workbookOf({ Sheet1: given }), { functions: noCustomFunctions });
          calculator.calculateAll();
          return calculator;
        };
        const edited = calculate(cells);
        for (const [row, column, value] of edits) {
          edited.change([{ sheet: 0, row, column, value }]);
          cells[cellName(row, column)] = value;
        }
        expect(edited.workbook.sheets[0]!.values).toEqual(calculate(cells).workbook.sheets[0]!.values);
      },
    ),
    { numRuns: 150 },
  );
});
