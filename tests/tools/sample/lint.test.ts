import { describe, expect, it } from "vitest";
import { lintParts } from "./lint.ts";

const METADATA = '<metadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>';
const SHEET = "xl/worksheets/sheet1.xml";
const lint = (rows: string, other: Record<string, string> = {}): string[] =>
  lintParts({
    "xl/metadata.xml": METADATA,
    [SHEET]: `<worksheet><sheetData>${rows}</sheetData></worksheet>`,
    ...other,
  }).map((problem) => problem.replace(`${SHEET}: `, ""));

const spill = (name: string, ref: string, attributes = ' cm="1"') =>
  `<c r="${name}"${attributes}><f t="array" ref="${ref}">SUM(1)</f><v>1</v></c>`;
const number = (name: string) => `<c r="${name}"><v>1</v></c>`;
const row = (index: number, cells: string) => `<row r="${index}">${cells}</row>`;

describe("the lint finds what the Open XML SDK does not see", () => {
  it.each<[string, string, string[]]>([
    ["a clean sheet", row(1, number("A1") + spill("B1", "B1:B2")) + row(2, number("B2")), []],
    ["a cell given twice", row(1, number("A1") + number("A1")), ["A1 is given twice"]],
    ["cells out of order", row(1, number("B1") + number("A1")), ["A1 stands after B1"]],
    ["a cell in the wrong row", row(1, number("A2")), ["A2 stands in row 1"]],
    ["rows out of order", row(2, "") + row(1, ""), ["row 1 stands after row 2"]],
    [
      "a formula that does not parse",
      row(1, '<c r="A1"><f>SUM(1,</f><v>1</v></c>'),
      ["A1 has a formula that does not parse"],
    ],
    ["a spill without its child", row(1, spill("A1", "A1:A2")), ["A1 fills row 2 column 1, which has no value"]],
    [
      "a spill whose child holds nothing",
      row(1, `${spill("A1", "A1:B1")}<c r="B1"/>`),
      ["A1 fills row 1 column 2, which has no value"],
    ],
    [
      "a spill whose child has a formula",
      row(1, `${spill("A1", "A1:B1")}<c r="B1"><f>1</f><v>1</v></c>`),
      ["A1 fills B1, which has a formula of its own"],
    ],
    [
      "two spills in one cell",
      row(1, spill("A1", "A1:B2") + spill("B1", "B1:B2")) + row(2, number("A2") + number("B2")),
      ["A1 fills B1, which has a formula of its own", "B1 and A1 fill the same cell", "B1 and A1 fill the same cell"],
    ],
    ["a spill that begins elsewhere", row(1, spill("A1", "B1:B2")), ["A1 is not the first cell of its range"]],
    ["an array formula without cm", row(1, spill("A1", "A1", "")), ["A1 is an array formula without cm"]],
    ["cm beyond the metadata", row(1, spill("A1", "A1", ' cm="2"')), ["A1 points at metadata record 2 of 1"]],
  ])("%s", (_, rows, problems) => {
    const found = lint(rows);
    expect(found).toHaveLength(problems.length);
    problems.forEach((problem, i) => {
      expect(found[i]).toContain(problem);
    });
  });

  it("cm without a metadata part", () => {
    expect(lint(row(1, spill("A1", "A1")), { "xl/metadata.xml": "" })).toEqual(["A1 points at metadata record 1 of 0"]);
  });

  it("a table whose header differs from its cell", () => {
    const parts = (cell: string) => ({
      "xl/worksheets/_rels/sheet1.xml.rels":
        '<Relationships><Relationship Target="../tables/table1.xml"/></Relationships>',
      "xl/tables/table1.xml":
        '<table name="Dies" ref="A1:A2"><tableColumns><tableColumn name="Die"/></tableColumns></table>',
      [SHEET]: `<worksheet><sheetData>${row(1, `<c r="A1" t="inlineStr"><is><t>${cell}</t></is></c>`)}</sheetData></worksheet>`,
    });
    expect(lint("", parts("Die"))).toEqual([]);
    expect(lint("", parts("Dies"))).toEqual(['table Dies calls a column "Die", its cell says "Dies"']);
  });
});
