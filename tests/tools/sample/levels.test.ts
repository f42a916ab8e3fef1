/**
 * SHOP calls that wait for SHOP calls: Excel hands a call over, gets its answer 50 to 500 ms later and only then starts
 * what depends on it (Microsoft's runtime, measured), so every level is felt. So is every call: one stands for a block.
 */
import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import type { WorkbookModel } from "../../../src/job/xlsx/model.ts";
import { writeWorkbookModel } from "../../../src/job/xlsx/write.ts";
import { cellName } from "../../../src/sheet/formula/address.ts";
import { Calculator } from "../../../src/sheet/graph/calculator.ts";
import { coverage } from "../../../src/sheet/graph/dependants.ts";
import type { FormulaCell } from "../../../src/sheet/workbook/formula-cell.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { SAMPLES } from "../../../src/tools/sample/file.ts";

const MOST_LEVELS = 4;
const SHOP_CALL = /_xldudf_SHOP_\w+\(|[()"]/g;

/** How many SHOP calls of one formula wait for each other: SHOP(1+SHOP()) is 2, SHOP()+SHOP() is 1. */
function nesting(text: string): number {
  const open: boolean[] = [];
  let [deepest, isText] = [0, false];
  for (const [mark] of text.matchAll(SHOP_CALL)) {
    if (mark === '"') isText = !isText;
    else if (isText) continue;
    else if (mark === ")") open.pop();
    else {
      open.push(mark !== "(");
      deepest = Math.max(deepest, open.filter(Boolean).length);
    }
  }
  return deepest;
}

function calculated(bytes: Uint8Array) {
  const workbook = readWorkbook(bytes);
  const calculator = new Calculator(workbook, { functions: shopFunctions });
  calculator.calculateAll();
  return { workbook, cells: [...calculator.formulas()], readers: calculator.readers() };
}

/** The longest chain of calls in a workbook, as the cells that wait for each other. */
function longestChain({ workbook, cells, readers }: ReturnType<typeof calculated>): {
  levels: number;
  chain: string[];
} {
  const known = new Map<FormulaCell, { levels: number; chain: string[] }>();
  const from = (cell: FormulaCell): { levels: number; chain: string[] } => {
    const ready = known.get(cell);
    if (ready) return ready;
    known.set(cell, { levels: 0, chain: [] }); // a circle would come back here
    let after: { levels: number; chain: string[] } = { levels: 0, chain: [] };
    // Those who read it by way of others as well: no chain gets longer by leaving one out.
    for (const reader of readers.all([{ sheet: cell.sheet, area: coverage(cell) }])) {
      const next = from(reader);
      if (next.levels > after.levels) after = next;
    }
    const own = nesting(cell.text);
    const name = `${workbook.sheets[cell.sheet]!.name}!${cellName(cell.row, cell.column)}`;
    const found = own === 0 ? after : { levels: own + after.levels, chain: [name, ...after.chain] };
    known.set(cell, found);
    return found;
  };
  return cells.map(from).reduce((most, one) => (one.levels > most.levels ? one : most), { levels: 0, chain: [] });
}

/** A SHOP call that is filled down instead of taking the whole column. */
function filledDown({ workbook, cells }: ReturnType<typeof calculated>): string[] {
  const at = new Map(cells.map((cell) => [`${cell.sheet} ${cell.row} ${cell.column}`, cell]));
  return cells.flatMap((cell) => {
    const below = at.get(`${cell.sheet} ${coverage(cell).bottom + 1} ${cell.column}`);
    const isSame = nesting(cell.text) > 0 && below?.template === cell.template;
    return isSame ? [`${workbook.sheets[cell.sheet]!.name}!${cellName(cell.row, cell.column)}`] : [];
  });
}

describe.each(SAMPLES)("$file", ({ file }) => {
  let book: ReturnType<typeof calculated>;
  beforeAll(() => {
    book = calculated(new Uint8Array(readFileSync(file)));
  }, 120_000);

  it(`lets SHOP calls wait for SHOP calls over at most ${MOST_LEVELS} levels`, () => {
    const { levels, chain } = longestChain(book);
    expect(levels, chain.join(" -> ")).toBeGreaterThan(0);
    expect(levels, chain.join(" -> ")).toBeLessThanOrEqual(MOST_LEVELS);
  });

  it("has one call for a block, none filled down", () => expect(filledDown(book)).toEqual([]));
});

describe("these rules themselves", () => {
  const setback = (argument: string) => `_xldudf_SHOP_BEND_SETBACK(${argument},0.16,90)`;
  const workbook = (...formulas: string[]) => {
    const cells = formulas.map((formula, i) => ({ row: i + 1, column: 1, formula, spills: ["plain" as const] }));
    const model: WorkbookModel = {
      title: "x",
      sheets: [{ name: "S", widths: [9], cells, print: { landscape: false } }],
    };
    return calculated(writeWorkbookModel(model, () => undefined));
  };
  it("count calls inside a call and through other cells, and no text that looks like one", () => {
    expect(nesting(`ROUND(${setback(setback("1"))},2)+${setback("1")}`)).toBe(2);
    expect(nesting(`IF(A1="${setback("(")}",1,2)`)).toBe(0);
    expect(longestChain(workbook(setback("1"), "A1+1", setback("A2"), setback(setback("A3"))))).toEqual({
      levels: 4,
      chain: ["S!A1", "S!A3", "S!A4"],
    });
  });
  it("find a call that was filled down", () => {
    expect(filledDown(workbook(setback("B1"), setback("B2")))).toEqual(["S!A1"]);
    expect(filledDown(workbook(setback("B1"), setback("B9")))).toEqual([]);
  });
});
