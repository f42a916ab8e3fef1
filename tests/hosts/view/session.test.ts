import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Session } from "../../../src/hosts/view/session.ts";
import { trade } from "../../../src/hosts/view/trade.ts";
import { asTyped, typedValue } from "../../../src/hosts/view/typed-value.ts";
import { Refusal } from "../../../src/units/refusal.ts";

const SAMPLE = new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"));
const sheetNamed = (session: Session, wanted: string) => session.views().findIndex(({ name }) => name === wanted);

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
    const views = session.views();
    expect(views[session.firstSheet()]!.name).toBe("Parts");
    const answers = views[sheetNamed(session, "Answers")]!;
    expect(answers.cells[8]![6]).toEqual({ text: "4.647", kind: "number" });
    expect(session.notes()).toEqual([]);
  });

  it("changes nothing where it refuses, and the file stays the same bytes", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Answers");
    expect(() => session.edit({ sheet, row: 8, column: 6, typed: "1" })).toThrow(/formulas are changed in Excel/);
    expect(() => session.edit({ sheet: sheetNamed(session, "Parts"), row: 3, column: 0, typed: "x" })).toThrow(
      /header/,
    );
    expect(Buffer.from(session.save()).equals(Buffer.from(SAMPLE))).toBe(true);
  });

  it("an edit taken back gives the answers there were", () => {
    const session = new Session(SAMPLE, trade);
    const sheet = sheetNamed(session, "Parts");
    const there = session.edit({ sheet, row: 4, column: 4, typed: "1/4" });
    const back = session.edit({ sheet, row: 4, column: 4, typed: "3/16" });
    expect(there.length).toBeGreaterThan(4);
    expect(back.map(({ sheet, row, column }) => [sheet, row, column])).toEqual(
      there.map(({ sheet, row, column }) => [sheet, row, column]),
    );
    const before = new Session(SAMPLE, trade).views();
    for (const { sheet, row, column, cell } of back) expect(cell).toEqual(before[sheet]!.cells[row]![column] ?? null);
  });
});
