import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readWorkbook } from "../../../../src/sheet/workbook/read-workbook.ts";
import { PART_LIST } from "../../../../src/tools/sample/file.ts";
import { KINDS } from "../../../../src/tools/sample/part-list/kinds.ts";
import { LINES, plantedLines } from "../../../../src/tools/sample/part-list/parts.ts";
import type { CellValue } from "../../../../src/units/cell.ts";

const { sheets } = readWorkbook(new Uint8Array(readFileSync(PART_LIST.file)));
const valuesOf = (name: string) => sheets.find((sheet) => sheet.name === name)!.values;
/** A column by its header, without it. */
const column = (sheet: string, header: string): CellValue[] => {
  const found = valuesOf(sheet).find((cells) => cells?.[3] === header)!;
  return Array.from({ length: LINES }, (_, i) => found[4 + i] ?? null);
};
const planted = column("Parts", "Planted");
const status = column("Checks", "Status");
const says = { Sentence: column("Checks", "Sentence"), Notes: column("Checks", "Notes") };
const summary = (label: string): CellValue[] => {
  const row = valuesOf("Summary")[0]!.indexOf(label);
  return valuesOf("Summary").map((cells) => cells?.[row] ?? null);
};

describe("the list", () => {
  it("has 500 lines, no two the same", () => {
    const drawn = plantedLines().map(({ part: _, quantity: __, planted: ___, ...line }) => JSON.stringify(line));
    expect(drawn).toHaveLength(500);
    expect(new Set(drawn).size).toBe(500);
  });

  it("is the same every time it is made", () => {
    expect(plantedLines()).toEqual(plantedLines());
  });
});

describe("what was planted is found", () => {
  it.each(KINDS)("$name", ({ name, in: where, words }) => {
    const rows = planted.flatMap((kind, i) => (kind === name ? [i] : []));
    expect(rows.length).toBeGreaterThanOrEqual(4);
    for (const row of rows) {
      expect(String(says[where][row]), `line ${row + 1}`).toContain(words);
      expect(where === "Notes" ? ["stop", "check", "clear"] : ["stop", "check"], `line ${row + 1}`).toContain(
        status[row],
      );
    }
  });

  it("lines that were left good are not stopped and can be read", () => {
    const good = planted.flatMap((kind, i) => (kind === "none" ? [i] : []));
    expect(good.length).toBeGreaterThan(300);
    for (const row of good) {
      expect(["clear", "check"], `line ${row + 1}: ${says.Sentence[row]}`).toContain(status[row]);
    }
  });
});

describe("the summary", () => {
  it.each(["clear", "check", "stop"])("counts the lines that are %s", (word) => {
    expect(summary(word)[1]).toBe(status.filter((found) => found === word).length);
  });

  it("counts every line once", () => {
    const counts = ["clear", "check", "stop"].map((word) => Number(summary(word)[1]));
    expect(counts.reduce((sum, count) => sum + count)).toBe(LINES);
  });

  it.each(KINDS)("$name: as many as have its words", ({ name, in: where, words }) => {
    const has = says[where].map((text) => String(text).toLowerCase().includes(words.toLowerCase()));
    const row = summary(name);
    expect(row[3]).toBe(has.filter(Boolean).length);
    expect(row[4]).toBe(has.filter((found, i) => found && status[i] === "stop").length);
    expect(row[5]).toBe(planted.filter((kind) => kind === name).length);
    expect(row[6]).toBe(column("Checks", "Part")[has.indexOf(true)]);
  });
});
