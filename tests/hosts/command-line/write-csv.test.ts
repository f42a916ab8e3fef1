import { describe, expect, it } from "vitest";
import { writeCsv } from "../../../src/hosts/command-line/write-csv.ts";
import { csvRows } from "../../../src/job/part-list/csv.ts";

describe("a field of CSV", () => {
  it.each([
    ["plain", "plain"],
    [-1.5, "-1.5"],
    [undefined, ""],
    ["a, b", '"a, b"'],
    ['1/2" plate', '"1/2"" plate"'],
    ["two\nrows", '"two\nrows"'],
    ["=1+1", "'=1+1"],
    ["@SUM(A1)", "'@SUM(A1)"],
    ["+A, B", '"\'+A, B"'],
    ["-", "'-"],
    ["\tA", "'\tA"],
  ])("%j", (cell, written) => {
    expect(writeCsv([[cell]])).toBe(`${written}\n`);
  });

  it("reads back as it was", () => {
    const rows = [
      ["part", "reason"],
      ["A, B", 'needs 3/8", has\n1/4"'],
    ];
    expect([...csvRows(writeCsv(rows), ",")]).toEqual(rows);
  });
});
