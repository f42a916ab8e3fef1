import { describe, expect, it } from "vitest";
import type { BillLine } from "../../../src/tools/demo/bill.ts";
import { printBill, WIDTH, wrap } from "../../../src/tools/demo/print.ts";
import { CellError } from "../../../src/units/cell.ts";

const line = (changes: Partial<BillLine>): BillLine => ({
  part: "X-01",
  quantity: 12,
  material: "A36",
  thickness: "3/16",
  flat: 4.6474,
  weight: 118.82,
  die: "V 1-1/2",
  radius: 0.2372,
  tons: 9.137,
  status: "clear",
  sentence: "No problem found against the tables given; the machine's plate decides.",
  ...changes,
});
const LONG = "Needs about 220 US ton, more than the brake has. ".repeat(8).trim();

describe("the printed bill", () => {
  it("fits 120 columns, in characters every terminal has", () => {
    const text = printBill([line({}), line({ status: "stop", sentence: LONG }), line({ sentence: LONG })]);
    for (const row of text.split("\n")) expect(row.length).toBeLessThanOrEqual(WIDTH);
    expect(text).toMatch(/^[\x20-\x7e\n]*$/);
  });

  it("shows figures to the decimals of the shop floor", () => {
    expect(printBill([line({})])).toContain(
      "X-01    12  A36       3/16     4.647   118.8  V 1-1/2     0.24    9.1  clear",
    );
  });

  it("says in full what stops a line, and cuts the note of a clear one", () => {
    const words = (text: string) => text.replace(/\s+/g, " ");
    expect(words(printBill([line({ status: "stop", sentence: LONG })]))).toContain(LONG);
    expect(words(printBill([line({ sentence: LONG })]))).not.toContain(LONG);
    expect(printBill([line({ sentence: LONG })])).toContain("...");
  });

  it("shows an error cell by its code and counts it in no total", () => {
    const text = printBill([line({}), line({ weight: new CellError("#VALUE!", "why"), status: "unreadable" })]);
    expect(text).toContain("#VALUE!".slice(0, 6));
    expect(text).toContain("2 lines, 24 pieces, 118.8 lb");
    expect(text).toContain("1 unreadable");
  });

  it("counts lines by status", () => {
    const text = printBill([line({}), line({ status: "check" }), line({ status: "check" })]);
    expect(text).toMatch(/ 1 clear {2}/);
    expect(text).toMatch(/ 2 check {2}/);
    expect(text).not.toMatch(/\d stop/);
  });
});

describe("wrapping", () => {
  it.each<[string, number, string[]]>([
    ["one two three", 7, ["one two", "three"]],
    ["one", 7, ["one"]],
    ["incomprehensibly long", 5, ["incomprehensibly", "long"]],
    ["", 5, [""]],
  ])("%j in %i columns", (text, width, lines) => {
    expect(wrap(text, width)).toEqual(lines);
  });
});
