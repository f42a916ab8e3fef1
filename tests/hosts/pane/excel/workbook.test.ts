/** What the pane does to a workbook, against the stand-in: insert, start, repair, freeze, follow, warn. */

import { readFileSync } from "node:fs";
import { afterEach, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../../src/cells/catalogue.ts";
import { PRODUCT_VERSION } from "../../../../src/cells/record/version.generated.ts";
import { CURRENT_EDITION } from "../../../../src/data/materials/editions.ts";
import { applyFix } from "../../../../src/hosts/pane/excel/apply-fix.ts";
import { freezeWorkbook } from "../../../../src/hosts/pane/excel/freeze.ts";
import { insertHere } from "../../../../src/hosts/pane/excel/insert.ts";
import { readBook } from "../../../../src/hosts/pane/excel/read-book.ts";
import { repairFormulas } from "../../../../src/hosts/pane/excel/repair.ts";
import { SelectedLine } from "../../../../src/hosts/pane/excel/selected-line.ts";
import { startBill } from "../../../../src/hosts/pane/excel/start-bill.ts";
import { Ended } from "../../../../src/hosts/pane/excel/task.ts";
import { versionWarning } from "../../../../src/hosts/pane/excel/version-warning.ts";
import type { FixOffer } from "../../../../src/job/fix-cells.ts";
import { type JobPlan, jobPlan } from "../../../../src/job/job-plan.ts";
import { bookOf } from "../../../../src/job/workbook-book.ts";
import { type LineReport, lineReport } from "../../../../src/papers/line-report.ts";
import { evaluateFormula } from "../../../../src/sheet/recalculate/calculate-one.ts";
import { readWorkbook } from "../../../../src/sheet/workbook/read-workbook.ts";
import { isCellError } from "../../../../src/units/cell.ts";
import { FakeWorkbook, type Held, standIn } from "./stand-in.ts";

const task = { step: () => undefined };
const evaluate = (formula: string): Held => {
  const { value } = evaluateFormula(formula, shopFunctions);
  const one = Array.isArray(value) ? value[0]![0]! : value;
  return isCellError(one) ? one.code : (one ?? "");
};
function open(sheets: ConstructorParameters<typeof FakeWorkbook>[0]): FakeWorkbook {
  const book = new FakeWorkbook(sheets, evaluate);
  Object.assign(globalThis, { Excel: standIn(book) });
  return book;
}
afterEach(() => {
  Reflect.deleteProperty(globalThis, "Excel");
});
/** As Excel leaves a call that it did not know when it was typed. */
const leave = (book: FakeWorkbook, row: number, column: number, formula: string, sheet = "Bill") =>
  book.sheet(sheet).cells.set(`${row},${column}`, { formula, value: "#NAME?" });

describe("insert here", () => {
  const FORMULA = "=SHOP.BEND.SETBACK(0.04,0.16,90)";
  it("puts the example into the selected cell, where it is calculated", async () => {
    const book = open({ Bill: [] });
    expect(await insertHere(FORMULA, task)).toContain("Inserted in Bill!R1C1");
    expect(book.at("Bill", 0, 0)).toEqual({ formula: FORMULA, value: 0.2 });
  });

  it("never writes over what is there", async () => {
    const book = open({ Bill: [["mine"]] });
    expect(await insertHere(FORMULA, task)).toContain("select an empty cell");
    expect(book.at("Bill", 0, 0).value).toBe("mine");
  });
});

describe("start a bill", () => {
  const TODAY = 46_100;
  it("adds the sheets that shop start writes: examples that plan, tables that its formulas name", async () => {
    const book = open({ Sheet1: [] });
    expect(await startBill(task, undefined, TODAY)).toContain("Added Read me, Shop, Parts, Job, Answers");
    const [job] = await Excel.run(async (context) => [jobPlan(await readBook(context))]);
    expect(job!.missing).toEqual([]);
    expect(job!.plan.lines.map(({ part, status }) => [part, status])).toEqual([["EXAMPLE", "clear"]]);
    expect(book.at("Checks", 3, 0).formula).toMatch(/^=SHOP\.BILL\.CHECK\(Parts\[#All\],Brakes\[#All\]/);
    expect(book.tables).toEqual(expect.arrayContaining(["Parts", "Brakes", "Dies", "Punches", "Stock", "Job"]));
  });

  it("fills the parts of a list, as text where Excel would make a day of it, and says what it did not understand", async () => {
    const book = open({ Sheet1: [] });
    const text = "Item No.,Qty,Matl,Thk (in),Width (in),Length (in)\nA-1,4,A36,3/16,6,8\nA-2,4,HRS,10 ga,6,8\n";
    const words = await startBill(task, { name: "list.csv", bytes: new TextEncoder().encode(text) }, TODAY);
    expect(words).toContain('row 3, C Matl "HRS": must be a material in the table');
    const [job] = await Excel.run(async (context) => [jobPlan(await readBook(context))]);
    expect(job!.plan.lines.map(({ part }) => part)).toEqual(["A-1", "A-2"]);
    expect(job!.plan.lines[1]!.status).toBe("stop");
    expect(book.at("Parts", 5, 4).value).toBe("10 ga");
  });

  it("touches no sheet that is there", async () => {
    const book = open({ parts: [["my own"]] });
    expect(await startBill(task, undefined, TODAY)).toContain("Added Shop.");
    expect(book.at("parts", 0, 0).value).toBe("my own");
    expect(await startBill(task, undefined, TODAY)).toContain("nothing was changed");
  });
});

describe("repair formulas", () => {
  it("enters again what stands at #NAME?, however it was stored", async () => {
    const book = open({ Bill: [["a"]] });
    const calls = [
      "=SHOP.BEND.SETBACK(0.04,0.16,90)",
      "=_xldudf_SHOP_BEND_SETBACK(0.04,0.16,90)",
      "=[1]!_xldudf_SHOP_BEND_SETBACK(0.04,0.16,90)",
      "=shop.bend.setback(0.04,0.16,90)",
      "=1+ROUND(SHOP.BEND.SETBACK(0.04,0.16,90),2)",
    ];
    calls.forEach((formula, row) => {
      leave(book, row, 1, formula);
    });
    expect(await repairFormulas(task)).toBe("5 formulas entered again.");
    expect(calls.map((_, row) => book.at("Bill", row, 1).value)).toEqual([0.2, 0.2, 0.2, 0.2, 1.2]);
  });

  it("says what it left and why, and leaves everything else alone", async () => {
    const book = open({ Bill: [["=1+1", "#NAME? in a text"]], Locked: [["x"]] });
    book.sheet("Locked").isProtected = true;
    leave(book, 1, 0, "=SHOP.BEND.NOTHING(1)");
    leave(book, 2, 0, "=SOMEBODY.ELSES(1)");
    leave(book, 1, 0, "=SHOP.BEND.SETBACK(0.04,0.16,90)", "Locked");
    const said = await repairFormulas(task);
    expect(said).toContain("0 formulas entered again. 2 left as they were");
    expect(said).toContain("Bill, row 2: SHOP.BEND.NOTHING is not a function of this version");
    expect(said).toContain("Locked, row 2: its sheet is protected");
    expect(book.at("Bill", 2, 0).formula).toBe("=SOMEBODY.ELSES(1)");
    expect(book.at("Bill", 0, 0).value).toBe(2);
  });

  it("leaves a copy that LibreOffice saved alone and names the cause", async () => {
    const book = open({ Bill: [["a"]] });
    leave(book, 1, 0, "=_xldudf_shop_bend_setback(0.04,0.16,90)");
    expect(await repairFormulas(task)).toContain("LibreOffice stores #NAME?");
    expect(book.at("Bill", 1, 0).value).toBe("#NAME?");
  });

  it("says so when there is nothing to repair", async () => {
    open({ Bill: [["=1+1"]] });
    expect(await repairFormulas(task)).toBe("No call stands at #NAME?.");
  });

  it("can be ended between two sheets, and what was done stands", async () => {
    const book = open({ Bill: [["a"]], Next: [["a"]] });
    leave(book, 1, 0, "=SHOP.BEND.SETBACK(0.04,0.16,90)");
    leave(book, 1, 0, "=SHOP.BEND.SETBACK(0.04,0.16,90)", "Next");
    const ending = {
      step: (words: string) => {
        if (words.includes("Next")) throw new Ended();
      },
    };
    await expect(repairFormulas(ending)).rejects.toBeInstanceOf(Ended);
    expect([book.at("Bill", 1, 0).value, book.at("Next", 1, 0).value]).toEqual([0.2, "#NAME?"]);
  });
});

describe("freeze", () => {
  it("copies what calculates into sheets of values, and says version, edition and date", async () => {
    const book = open({ Bill: [["setback", "=SHOP.BEND.SETBACK(0.04,0.16,90)"]], Notes: [["no formula"]] });
    const said = await freezeWorkbook(task, new Date("2026-03-14T09:00:00Z"));
    expect(said).toBe("Frozen as values: Bill frozen.");
    expect(book.sheets.map(({ name }) => name)).toEqual(["Bill", "Notes", "Bill frozen", "Bill frozen 2"]);
    expect(book.at("Bill frozen", 0, 1)).toEqual({ formula: 0.2, value: 0.2 });
    expect(book.at("Bill", 0, 1).formula).toContain("=SHOP");
    const words = [...book.sheet("Bill frozen 2").cells.values()].map(({ value }) => value).join(" ");
    expect(words).toContain(`Bracket Bill ${PRODUCT_VERSION}, materials of edition ${CURRENT_EDITION.name}`);
    expect(words).toContain("2026-03-14T09:00");
  });

  it("a second time makes new sheets under names that fit", async () => {
    const book = open({ ["A long name".padEnd(31, "x")]: [["=1+1"]] });
    await freezeWorkbook(task, new Date(0));
    await freezeWorkbook(task, new Date(0));
    expect(book.sheets.every(({ name }) => name.length <= 31)).toBe(true);
    expect(new Set(book.sheets.map(({ name }) => name)).size).toBe(book.sheets.length);
  });

  it("text that reads like a formula, a figure or a day stays text", async () => {
    const book = open({ Bill: [["'=1+1", "'-B", "=1+1", "1/4", "304"]] });
    expect(book.at("Bill", 0, 0)).toEqual({ formula: "=1+1", value: "=1+1" });
    await freezeWorkbook(task, new Date(0));
    expect(book.at("Bill frozen", 0, 0)).toEqual({ formula: "=1+1", value: "=1+1" });
    expect(book.at("Bill frozen", 0, 1).value).toBe("-B");
    expect(book.at("Bill frozen", 0, 2)).toEqual({ formula: 2, value: 2 });
    expect(book.at("Bill frozen", 0, 3).value).toBe("1/4");
    expect(book.at("Bill frozen", 0, 4).value).toBe("304");
  });

  it("counts the cells that had no answer, in the sentence and in the notice", async () => {
    const book = open({ Bill: [["=1+1", "#NAME?"]] });
    leave(book, 1, 0, "=SHOP.OLDER(1)");
    expect(await freezeWorkbook(task, new Date(0))).toContain("Cells without an answer yet: 1;");
    const words = [...book.sheet("Bill frozen 2").cells.values()].map(({ value }) => value).join(" ");
    expect(words).toContain("1 cells were not calculated");
  });

  it("a locked sheet is frozen too; one with a password is skipped, said, and leaves no copy", async () => {
    const book = open({ Locked: [["=1+1"]], Secret: [["=2+2"]] });
    book.sheet("Locked").isProtected = true;
    Object.assign(book.sheet("Secret"), { isProtected: true, hasPassword: true });
    const said = await freezeWorkbook(task, new Date(0));
    expect(said).toBe("Frozen as values: Locked frozen. Skipped, protected by a password: Secret.");
    expect(book.sheets.map(({ name }) => name)).toEqual(["Locked", "Secret", "Locked frozen", "Bill frozen"]);
    expect(book.at("Locked frozen", 0, 0)).toEqual({ formula: 2, value: 2 });
    expect(book.sheet("Locked").isProtected).toBe(true);
  });

  it("says so where nothing calculates", async () => {
    const book = open({ Notes: [["text"]] });
    expect(await freezeWorkbook(task, new Date(0))).toContain("nothing was frozen");
    expect(book.sheets).toHaveLength(1);
  });
});

const sheetsOf = () => {
  const book = bookOf(readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"))));
  return Object.fromEntries(
    book.map(({ name, rows }) => [name, rows.map((row) => row.map((cell) => (isCellError(cell) ? cell.code : cell)))]),
  );
};

describe("the selected line", () => {
  it("is drawn and checked as the selection moves, without reading the workbook again", async () => {
    const sheets = sheetsOf();
    const book = open(sheets);
    const { plan } = jobPlan(Object.entries(sheets).map(([name, rows]) => ({ name, rows: rows as never })))!;
    const shown: (LineReport | undefined)[] = [];
    await new SelectedLine((report) => shown.push(report)).follow();
    expect(shown).toEqual([undefined]);
    await book.select("Parts", 4, 2);
    expect(shown.at(-1)).toEqual(lineReport(plan.lines[0]!, plan));
    expect(shown.at(-1)).toMatchObject({ part: "DF-01", status: plan.lines[0]!.status, plan: plan.number });
    expect(shown.at(-1)!.drawings).toHaveLength(3);
    const before = book.trips;
    await book.select("Answers", 9, 0);
    expect(shown.at(-1)!.part).toBe("DF-02");
    expect(book.trips - before).toBe(1);
  });

  it("follows a change of the workbook", async () => {
    const book = open(sheetsOf());
    const shown: (LineReport | undefined)[] = [];
    await new SelectedLine((report) => shown.push(report)).follow();
    await book.select("Parts", 4, 4);
    book.enter(book.sheet("Parts"), 4, 3, "steel");
    for (const listener of book.listeners.changed) await listener();
    expect(shown.at(-1)!.status).toBe("stop");
    expect(shown.at(-1)!.sentences[0]).toMatch(/must be .*; got "steel"/);
  });
});

describe("a fix of the selected line", () => {
  /** FH-02 and RT-08 of the sample are mended by a die; the stand-in calculates nothing, so that the plan is the pane's own. */
  async function offered(row: number) {
    const book = open(sheetsOf());
    let last: { job: JobPlan; fix: FixOffer | undefined; report: LineReport | undefined } | undefined;
    await new SelectedLine((report, job, fix) => {
      last = { report, job: job!, fix };
    }).follow();
    const look = async () => {
      await book.select("Parts", row, 0);
      for (const listener of book.listeners.changed) await listener();
      return last!;
    };
    return { book, look };
  }
  const cellsOf = (fix: FixOffer | undefined) => fix?.cells ?? [];

  it("is typed into its cells, says what has changed, and is taken back", async () => {
    const { book, look } = await offered(21); // RT-08, a flange that barely rests
    const { job, fix, report } = await look();
    expect([report!.part, report!.status, fix!.reaches]).toEqual(["RT-08", "check", "clear"]);
    const cells = cellsOf(fix);
    const held = cells.map(({ row, column }) => book.at("Parts", row, column));
    const { words, undo } = await applyFix(task, job, cells);
    expect(words).toMatch(/typed: 1 line changed, 1 now clear\.$/);
    expect(cells.map(({ row, column }) => book.at("Parts", row, column).value)).toEqual(
      cells.map(({ value }) => value),
    );
    expect((await look()).report!.status).toBe(fix!.reaches);
    expect(await undo!(task)).toContain("Undone");
    expect(cells.map(({ row, column }) => book.at("Parts", row, column))).toEqual(held);
    expect((await look()).report!.status).toBe("check");
  });

  it("does not write over a formula, and writes nothing then", async () => {
    const { book, look } = await offered(21);
    const { job, fix } = await look();
    const [cell] = cellsOf(fix);
    book.enter(book.sheet("Parts"), cell!.row, cell!.column, "=1+1");
    const { words, undo } = await applyFix(task, job, cellsOf(fix));
    expect(words).toContain("holds a formula");
    expect(undo).toBeUndefined();
    expect(book.at("Parts", cell!.row, cell!.column).formula).toBe("=1+1");
  });
});

describe("the warning about versions", () => {
  const said = (version: string) => [
    { name: "Read me", rows: [[null, `Bracket Bill ${version}, materials ${CURRENT_EDITION.name}`]] },
  ];
  it("names both where they differ", () => {
    expect(versionWarning(said("0.0.1"))).toContain(
      `calculated by version 0.0.1 with materials ${CURRENT_EDITION.name}; here runs version ${PRODUCT_VERSION}`,
    );
  });
  it.each([[said(PRODUCT_VERSION)], [[{ name: "x", rows: [["Bracket Bill is nice"]] }]], [[]]])(
    "is silent otherwise",
    (book) => {
      expect(versionWarning(book)).toBeUndefined();
    },
  );
});
