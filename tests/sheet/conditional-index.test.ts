import { expect, test } from "vitest";
import { Calculator } from "../../src/sheet/graph/calculator.ts";
import { type Given, valueAt, workbookOf } from "./evaluate-on-grid.ts";
import { fakeFunctions } from "./fake-functions.ts";

/**
 * The first question about a range is answered by searching it, later ones by an index: both must say the same, also for
 * text that reads as a number, capitals, wildcards, comparisons and blanks.
 */
test("SUMIF and COUNTIFS answer alike with and without the index", () => {
  const words: Given[] = ["bolt", "Bolt", "nut", 5, "5", " 5 ", 5.0, "5.0", true, null, "", "b*t", "TRUE", "1/2", 0.5];
  const cells: Record<string, Given> = {};
  for (let row = 1; row <= 150; row++) {
    cells[`A${row}`] = words[row % words.length]!;
    cells[`B${row}`] = row;
    cells[`C${row}`] = row % 2 ? "x" : "y";
  }
  const criteria = ["bolt", "BOLT", "nut", "5", "=5", "<>5", ">4", "b*t", "b~*t", "", "=", "TRUE", "0.5", "none"];
  const formulas: Record<string, Given> = {};
  criteria.forEach((criterion, i) => {
    formulas[`E${i + 1}`] = `=SUMIF(A1:A150,"${criterion}",B1:B150)`;
    formulas[`F${i + 1}`] = `=COUNTIFS(A1:A150,"${criterion}",C1:C150,"x")`;
  });
  const together = workbookOf({ Sheet1: { ...cells, ...formulas } });
  new Calculator(together, { functions: fakeFunctions }).calculateAll();
  for (const [cell, formula] of Object.entries(formulas)) {
    const alone = workbookOf({ Sheet1: { ...cells, [cell]: formula } });
    new Calculator(alone, { functions: fakeFunctions }).calculateAll();
    expect([formula, valueAt(together, cell)]).toEqual([formula, valueAt(alone, cell)]);
  }
});
