import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { grownTable } from "../../../src/hosts/view/grown-table.ts";
import { Session } from "../../../src/hosts/view/session.ts";
import { trade } from "../../../src/hosts/view/trade.ts";
import { asTyped, typedValue } from "../../../src/hosts/view/typed-value.ts";
import { jobPlan } from "../../../src/job/job-plan.ts";
import { bookOf } from "../../../src/job/workbook-book.ts";
import { lineReport } from "../../../src/papers/line-report.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { PARTS } from "../../../src/tools/sample/stage-job/bill/job.ts";
import { Refusal } from "../../../src/units/refusal.ts";

const SAMPLE = new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"));
const sheetNamed = (session: Session, wanted: string) => session.names().findIndex(({ name }) => name === wanted);
const viewOf = (session: Session, wanted: string) => session.view(sheetNamed(session, wanted));
/** The bill's rows from its header, which is row 1. */
const lineAt = (session: Session, row: number) => session.line(row - session.board()!.header.row + 1);

describe("what is typed", () => {
  it.each([
    ["12", 12],
    [" -0.25 ", -0.25],
    ["1e3", 1000],
    [".5", 0.5],
    ["true", true],
    ["12.5 %", 0.125],
    ["", null],
    ["   ", null],
    // What the functions read by themselves stays as it was typed.
    ["3/16", "3/16"],
    ["4,5 mm", "4,5 mm"],
    ["10 ga", "10 ga"],
    ["2; 3", "2; 3"],
    ["'007", "007"],
  ])("%j becomes %j", (typed, value) => expect(typedValue(typed, false)).toBe(value));

  it("typed again, what a cell holds gives what it holds", () => {
    const held = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0), // no -0
      fc.boolean(),
      fc.constant(null),
      fc.string().filter((text) => text.trim() === text && text !== ""),
      fc.constantFrom("12", "true", "5 %", "=1", "'x", "1e5"),
    );
    fc.assert(
      fc.property(held, (value) => {
        expect(typedValue(asTyped(value, false)!, false)).toBe(value);
      }),
      { numRuns: 500 },
    );
    expect(asTyped("007", true)).toBe("007");
    expect(asTyped({ error: "#N/A" } as never, false)).toBeUndefined();
  });

  it("stays text in a cell of text", () => expect(typedValue("0.25", true)).toBe("0.25"));
  it.each(["=1", "1e999", "x".repeat(40_000)])("%.9s is refused", (typed) =>
    expect(() => typedValue(typed, false)).toThrow(Refusal),
  );
});

describe("a session", () => {
  it("opens at the bill and shows values in the workbook's own formats", () => {
    const session = new Session(SAMPLE, trade);
    expect(session.board()!.header).toEqual({ sheet: sheetNamed(session, "Parts"), row: 3, column: 0 });
    const answers = viewOf(session, "Answers");
    const flat = answers.cells[7]!.findIndex((cell) => cell?.text.startsWith("Flat length"));
    expect(answers.cells[8]![flat]).toEqual({ text: "4.661", kind: "number" });
    expect(session.notes()).toEqual([]);
  });

  it("changes nothing where it refuses, and the file stays the same bytes", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Answers");
    expect(() => session.edit({ sheet, row: 8, column: 0, typed: "1" })).toThrow(/edit it in Excel/);
    expect(() => session.edit({ sheet, row: 8, column: 6, typed: "1" })).toThrow(/filled by the formula in A9/);
    expect(() => session.edit({ sheet: sheetNamed(session, "Parts"), row: 3, column: 0, typed: "x" })).toThrow(
      /header/,
    );
    expect(Buffer.from(session.save()).equals(Buffer.from(SAMPLE))).toBe(true);
  });

  it("a line typed below the bill belongs to it: checked, saved, and there when the file is opened again", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Parts");
    const below = 4 + PARTS.length;
    const line = ["NEW-1", null, "12", "A36", "3/16", "2; 3", "90", "24", "V 1-1/2", "Plain"];
    line.forEach((typed, column) => {
      if (typed !== null) session.edit({ sheet, row: below, column, typed });
    });
    expect(session.look({ sheet, row: below, column: 0 }).line).toBe(below - 2);
    const { report } = lineAt(session, below);
    const bytes = session.save();
    const again = readWorkbook(bytes);
    const { plan } = jobPlan(bookOf(again))!;
    expect(report).toEqual(lineReport(plan.lines.at(-1)!, plan));
    // 2 x 3 in of 3/16 A36 on a 1-1/2 in die, as the other angles of the deck: nothing stops it.
    expect(report).toMatchObject({ part: "NEW-1", plan: plan.number });
    expect(report!.status).not.toBe("stop");
    expect(again.tables.find(({ name }) => name === "Parts")!.bottom).toBe(below);
    // Every other table is as it was.
    const bottoms = (workbook: ReturnType<typeof readWorkbook>) =>
      workbook.tables.filter(({ name }) => name !== "Parts").map(({ bottom }) => bottom);
    expect(bottoms(again)).toEqual(bottoms(readWorkbook(SAMPLE)));
    const checked = viewOf(new Session(bytes, trade), "Checks").cells.map((row) => row[0]?.text);
    expect(checked).toContain("NEW-1");
    // Taken back, the row is empty: the table keeps it and nobody minds.
    line.forEach((_, column) => {
      session.edit({ sheet, row: below, column, typed: "" });
    });
    session.finish();
    const checks = viewOf(session, "Checks").cells.map((row) => row[0]?.text);
    expect(checks).not.toContain("NEW-1");
    expect(checks).toContain(PARTS.at(-1)!.part);
  }, 60_000);

  it("grows no table into a row that is taken, nor one whose columns are calculated", () => {
    const workbook = readWorkbook(SAMPLE);
    const table = workbook.tables.find(({ name }) => name === "Parts")!;
    const at = { sheet: table.sheet, row: table.bottom + 1, column: table.left };
    expect(grownTable(workbook, at)?.xml).toContain(`:V${table.bottom + 2}"`);
    expect(grownTable(workbook, { ...at, row: at.row + 1 })).toBeUndefined();
    expect(grownTable(workbook, { ...at, column: table.right + 1 })).toBeUndefined();
    const sheet = workbook.sheets[table.sheet]!;
    sheet.values[table.right]![at.row] = "taken";
    expect(grownTable(workbook, at)).toBeUndefined();
    sheet.values[table.right]![at.row] = undefined;
    sheet.owners[table.left] ??= [];
    sheet.owners[table.left]![table.bottom] = sheet.owners.flat().find((owner) => owner) ?? ({ row: 0 } as never);
    expect(grownTable(workbook, at)).toBeUndefined();
  });

  it("every line's report is the plan's; after an edit, the new plan's", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Parts");
    const planNow = () => jobPlan(bookOf(readWorkbook(session.save())))!.plan;
    const before = planNow();
    before.lines.forEach((line, i) => {
      expect(lineAt(session, 4 + i).report).toEqual(lineReport(line, before));
    });
    session.edit({ sheet, row: 4, column: 4, typed: "1/4" });
    const { report } = lineAt(session, 4);
    const after = planNow();
    expect(after.number).not.toBe(before.number);
    expect(report).toEqual(lineReport(after.lines[0]!, after));
  }, 60_000);

  it("an edit taken back gives the answers there were", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Parts");
    session.finish(); // what was put off when the file was opened
    const there = [...session.edit({ sheet, row: 4, column: 4, typed: "1/4" }), ...session.finish()];
    const back = [...session.edit({ sheet, row: 4, column: 4, typed: "3/16" }), ...session.finish()];
    expect(there.length).toBeGreaterThan(4);
    expect(back.map(({ sheet, row, column }) => [sheet, row, column])).toEqual(
      there.map(({ sheet, row, column }) => [sheet, row, column]),
    );
    const before = new Session(SAMPLE, trade);
    const views = before.names().map((_, i) => before.view(i));
    for (const { sheet, row, column, cell } of back) expect(cell).toEqual(views[sheet]!.cells[row]?.[column] ?? null);
  });

  it("applies the fix of a line as one change, and refuses where there is none", () => {
    const session = new Session(SAMPLE, trade);
    const rows = session.board()!.lines.map(({ row }) => row);
    const mended = rows.flatMap((row) => {
      const { fix, report } = session.line(row);
      if (!fix) return [];
      expect(["Instruction", undefined], report!.part).toContain(fix.lacks[0]); // the sample's bill has all others
      const { done, says } = session.fix(row);
      const after = session.line(row).report!;
      session.edit(...done!.map(({ before, after: _, ...at }) => ({ ...at, typed: before })));
      expect(session.line(row).report, report!.part).toEqual(report);
      expect(says).toMatch(/^\d+ lines? changed, /);
      return [[report!.part, fix.reaches, after.status]];
    });
    expect(mended.length).toBeGreaterThan(5);
    for (const [part, promised, reached] of mended) expect(reached, part).toBe(promised);
    const clear = session.board()!.lines.find(({ status }) => status === "clear")!;
    expect(() => session.fix(clear.row)).toThrow("with a fix");
  });

  it("a fix whose column the bill has not adds the column, and takes it back, in the file too", () => {
    const session = new Session(SAMPLE, trade);
    const columnsOf = (now: Session) => {
      const { tables } = readWorkbook(now.save());
      const { right, left, columns } = tables.find(({ name }) => name === "Parts")!;
      expect(columns.length).toBe(right - left + 1);
      return columns;
    };
    const before = columnsOf(session);
    const { row } = session.board()!.lines.find(({ part }) => part === "WW-08")!;
    const { report, fix } = session.line(row);
    expect(fix!.says).toBe("Add the column Brake, use die V 3/4, Brake 1");
    const { done } = session.fix(row);
    expect(session.line(row).report!.status).toBe("clear");
    expect(columnsOf(session)).toEqual([...before, "Brake"]);
    // Opened again it says the same.
    const again = new Session(session.save(), trade);
    expect(again.line(row).report!.status).toBe("clear");
    const { header } = again.board()!;
    expect(again.view(header.sheet).cells[header.row]![before.length]!.text).toBe("Brake");
    // The heading of a column that is in use stays.
    const heading = { ...header, column: before.length };
    expect(() => session.edit({ ...heading, typed: "" })).toThrow("header of the table Parts");
    session.edit(...done!.map(({ before: was, after: _, ...at }) => ({ ...at, typed: was })));
    expect(session.line(row).report).toEqual(report);
    expect(columnsOf(session)).toEqual(before);
    session.edit(...done!.map(({ before: _, after, ...at }) => ({ ...at, typed: after })));
    expect(columnsOf(session)).toEqual([...before, "Brake"]);
  });

  it("a column is not added where a cell is in its way: what to do is said", () => {
    const session = new Session(SAMPLE, trade);
    const { header, lines } = session.board()!;
    const { row } = lines.find(({ part }) => part === "WW-08")!;
    const right = readWorkbook(SAMPLE).tables.find(({ name }) => name === "Parts")!.right + 1;
    session.edit({ sheet: header.sheet, row: header.row + 20, column: right, typed: "mine" });
    const { fix } = session.line(row);
    expect(fix!.lacks).toEqual(["Brake"]);
    expect(() => session.fix(row)).toThrow("Brake");
  });

  it("lists every line with the plan's status and the worst reason, and marks the cell that cannot be read", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Parts");
    session.edit({ sheet, row: 4, column: 3, typed: "steel" });
    const { plan } = jobPlan(bookOf(readWorkbook(session.save())))!;
    const { lines, faults } = session.board()!;
    expect(lines.map(({ part, status, isQuoted }) => [part, status, isQuoted])).toEqual(
      plan.lines.map(({ part, status, isQuoted }) => [part, status, isQuoted]),
    );
    expect(lines.filter(({ reason }) => reason === "").every(({ status }) => status === "clear")).toBe(true);
    expect(faults).toMatchObject([{ sheet, row: 4, column: 3 }]);
    expect(faults[0]!.says).toMatch(/^"Material" must be .*; got "steel"/);
    expect(session.figures()!.figures.map(({ name }) => name)).toEqual(["Price", "Sheets to pull", "Work", "Done"]);
  });

  it("puts a row into the bill and takes it out again; every other line is as it was", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Parts");
    const parts = () => session.board()!.lines.map(({ part }) => part);
    const before = parts();
    session.edit(...session.rowEdits({ sheet, row: 10, column: 2 }, "insert"));
    expect(parts()).toEqual(before.toSpliced(6, 0, "NEW"));
    session.edit(...session.rowEdits({ sheet, row: 10, column: 2 }, "remove"));
    expect(parts()).toEqual(before);
    expect(() => session.rowEdits({ sheet, row: 1, column: 0 }, "insert")).toThrow("below the table's header");
    const checks = sheetNamed(session, "Checks");
    expect(() => session.rowEdits({ sheet: checks, row: 9, column: 0 }, "remove")).toThrow(Refusal);
  });

  it("many cells typed at once below the bill are lines of it; where one of them is refused none is typed", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Parts");
    const below = 4 + PARTS.length;
    const line = ["P", "", "12", "A36", "3/16", "2; 3", "90", "24"];
    const cells = [0, 1, 2].flatMap((i) =>
      line.map((typed, column) => ({ sheet, row: below + i, column, typed: column === 0 ? `P${i}` : typed })),
    );
    const count = session.board()!.lines.length;
    expect(() => session.edit(...cells, { sheet, row: 5, column: 2, typed: "=1" })).toThrow(Refusal);
    expect(session.board()!.lines.length).toBe(count);
    session.edit(...cells);
    expect(
      session
        .board()!
        .lines.slice(-3)
        .map(({ part }) => part),
    ).toEqual(["P0", "P1", "P2"]);
    const table = readWorkbook(session.save()).tables.find(({ name }) => name === "Parts")!;
    expect(table.bottom).toBe(below + 2);
  });

  it("every sheet stands under one of the words a person looks for, and names the rows that head its tables", () => {
    const session = new Session(SAMPLE, trade);
    const more = session.names().filter(({ group }) => group === "More");
    expect(more.map(({ name }) => name)).toEqual(["Read me", "Functions"]);
    expect(viewOf(session, "Parts").headings).toEqual([3]);
    expect(viewOf(session, "Answers").headings).toContain(7);
    const shop = viewOf(session, "Shop");
    expect(shop.headings.length).toBe(10);
    expect(shop.headings.map((row) => shop.cells[row]![0]!.text)).toContain("Die");
    const headings = viewOf(session, "Parts").cells[3]!.map((cell) => cell?.text);
    expect(headings).toEqual(
      expect.arrayContaining(["Quantity", "Thickness (in)", "Bend angles (deg)", "Bend length (in)"]),
    );
    // A thickness is a number whatever it was typed as.
    expect(viewOf(session, "Parts").cells[4]![4]).toEqual({ text: "3/16", kind: "number" });
  });
});
