import { unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { recalculateBytes } from "../../src/sheet/recalculate/recalculate-bytes.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";
import { CellError } from "../../src/units/cell.ts";
import { valueAt } from "./evaluate-on-grid.ts";
import { fakeFunctions } from "./fake-functions.ts";
import { DYNAMIC_METADATA, MAIN, packageOf, zipOf } from "./make-package.ts";

const run = (bytes: Uint8Array, now?: number) =>
  recalculateBytes(bytes, { functions: fakeFunctions, now, verify: false, in: "in.xlsx", out: "out.xlsx" });

const textOf = (bytes: Uint8Array, part = "xl/worksheets/sheet1.xml"): string =>
  new TextDecoder().decode(unzipSync(bytes)[part]);

const sheetData = (xml: string): Uint8Array => packageOf({ sheets: { Sheet1: `<sheetData>${xml}</sheetData>` } });

describe("reading", () => {
  test("plain, rich, inline and escaped text, booleans, errors, numbers without an r attribute", () => {
    const bytes = packageOf({
      sheets: {
        Sheet1:
          '<sheetData><row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="inlineStr"><is><r><t>in</t></r><r><t>line</t></r></is></c></row><row><c t="b"><v>1</v></c><c t="e"><v>#N/A</v></c><c><v>1.5</v></c></row></sheetData>',
      },
      strings:
        '<si><r><t>rich</t></r><r><t xml:space="preserve"> text</t></r><rPh><t>no</t></rPh></si><si><t>a_x000D_b</t></si>',
    });
    const workbook = readWorkbook(bytes);
    expect(["A1", "B1", "C1", "A2", "B2", "C2"].map((cell) => valueAt(workbook, cell))).toEqual([
      "rich text",
      "a\rb",
      "inline",
      true,
      new CellError("#N/A"),
      1.5,
    ]);
  });

  // The parser reads what the quick reader of cells does not know: both must see the same.
  test.each([
    ["a comment", '<row r="1"><!-- one --><c r="A1"><v>4</v></c><c r="B1"><f>A1&amp;"&lt;"</f></c></row>'],
    ["character data", '<row r="1"><c r="A1"><v><![CDATA[4]]></v></c><c r="B1"><f>A1&amp;"&lt;"</f></c></row>'],
    ["a numbered sign", '<row r="1"><c r="A1"><v>&#52;</v></c><c r="B1"><f>A1&amp;"&#x3C;"</f></c></row>'],
    [
      "blanks and apostrophes",
      "<row r='1'>\n <c r='A1' ><v >4</v></c>\n <c r='B1'>\n<f>A1&amp;\"&lt;\"</f></c> </row>",
    ],
    [
      "rich inline text",
      '<row r="1"><c r="A1"><v>4</v></c><c r="B1"><f>A1&amp;C1</f></c><c r="C1" t="inlineStr"><is><r><t>&lt;</t></r></is></c></row>',
    ],
    [
      "a comment that quotes the tag",
      '<row r="1"><c r="A1"><v>4</v></c><c r="B1"><f>A1&amp;"&lt;"</f></c></row>',
      "<!-- <sheetData> -->",
    ],
  ])("%s", (_what, xml, before = "") => {
    const { output } = run(packageOf({ sheets: { Sheet1: `${before}<sheetData>${xml}</sheetData>` } }));
    expect(valueAt(readWorkbook(output!), "B1")).toBe("4<");
  });

  test.each([
    '<row r="1"><c r="A1"><v>&nosuch;</v></c></row>',
    '<row r="1"><c r="A1"><v>4</c></row>',
    '<row r="1"><c r="A1" r="B1"/></row>',
    '<row r="1"><c r="A1"><v>\u0001</v></c></row>',
    '<row r="1"><c r="A1"/>',
  ])("%s is refused", (xml) => {
    expect(run(sheetData(xml)).result.report.refused?.reason).toBe("damaged");
  });

  test("a prefixed main namespace", () => {
    const xml =
      '<?xml version="1.0"?><x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row r="1"><x:c r="A1"><x:v>4</x:v></x:c><x:c r="B1"><x:f>A1*2</x:f><x:v>7</x:v></x:c></x:row></x:sheetData></x:worksheet>';
    const { output } = run(packageOf({ sheets: { Sheet1: xml } }));
    expect(textOf(output!)).toBe(xml.replace("<x:v>7</x:v>", "<x:v>8</x:v>"));
  });

  // ISO/IEC 29500-1: the strict namespaces.
  test("a strict file stays strict", () => {
    const strict = (xml: string) =>
      xml
        .replaceAll(
          "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
          "http://purl.oclc.org/ooxml/spreadsheetml/main",
        )
        .replaceAll(
          "http://schemas.openxmlformats.org/officeDocument/2006/",
          "http://purl.oclc.org/ooxml/officeDocument/",
        );
    const parts = unzipSync(
      sheetData(
        '<row r="1"><c r="A1"><v>4</v></c><c r="B1"><f>A1*2</f><v>7</v></c><c r="C1" t="d"><v>2020-01-01</v></c></row>',
      ),
    );
    const bytes = zipOf(
      Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, strict(new TextDecoder().decode(part))])),
    );
    const { output, result } = run(bytes);
    expect(result.report.refused).toBeNull();
    expect(textOf(output!)).toBe(strict(textOf(bytes)).replace("<v>7</v>", "<v>8</v>"));
    expect(valueAt(readWorkbook(output!), "C1")).toBe(43_831);
  });

  test("an extension's element of the same name is not the table", () => {
    const table = `<table xmlns="${MAIN}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main" id="1" name="Parts" displayName="Parts" ref="A1:A3"><tableColumns count="1"><tableColumn id="1" name="Qty"/></tableColumns><extLst><ext uri="{504A1905-F514-4f6f-8877-14C23A59335A}"><x14:table altText="a"/></ext></extLst></table>`;
    const bytes = packageOf({
      sheets: {
        Sheet1:
          '<sheetData><row r="1"><c r="A1" t="str"><v>Qty</v></c><c r="B1"><f>SUM(Parts[Qty])</f></c></row><row r="2"><c r="A2"><v>2</v></c></row><row r="3"><c r="A3"><v>3</v></c></row></sheetData>',
      },
      tables: [table],
    });
    expect(valueAt(readWorkbook(run(bytes).output!), "B1")).toBe(5);
  });

  test("an extension's elements of the same names leave cells and rows alone", () => {
    const { output } = run(
      packageOf({
        sheets: {
          Sheet1:
            '<sheetData><row r="1"><c r="A1"><f>1+1</f><extLst><ext xmlns:o="urn:other"><o:row><o:c><o:v>9</o:v></o:c></o:row></ext></extLst></c><c r="B1"><f>A1+1</f></c></row></sheetData>',
        },
      }),
    );
    expect(valueAt(readWorkbook(output!), "B1")).toBe(3);
  });

  test("shared formulas shift with their cell", () => {
    const { output } = run(
      sheetData(
        '<row r="1"><c r="A1"><v>2</v></c><c r="B1"><f t="shared" ref="B1:B3" si="0">A1*$A$1</f><v>0</v></c></row><row r="2"><c r="A2"><v>3</v></c><c r="B2"><f t="shared" si="0"/><v>0</v></c></row><row r="3"><c r="A3"><v>4</v></c><c r="B3"><f t="shared" si="0"/><v>0</v></c></row>',
      ),
    );
    const workbook = readWorkbook(output!);
    expect(["B1", "B2", "B3"].map((cell) => valueAt(workbook, cell))).toEqual([4, 6, 8]);
    expect(textOf(output!)).toContain('<c r="B2"><f t="shared" si="0"/><v>6</v></c>');
  });

  // 1904-01-02 is 1 in the 1904 system (Microsoft, "Date systems in Excel").
  test("the 1904 date system", () => {
    const bytes = packageOf({
      properties: '<workbookPr date1904="1"/>',
      sheets: {
        Sheet1:
          '<sheetData><row r="1"><c r="A1"><f>DATE(1904,1,2)</f></c><c r="B1"><f>TEXT(1,"yyyy-mm-dd")</f></c></row></sheetData>',
      },
    });
    const workbook = readWorkbook(run(bytes).output!);
    expect([valueAt(workbook, "A1"), valueAt(workbook, "B1")]).toEqual([1, "1904-01-02"]);
  });

  test("three spellings of a custom function", () => {
    const call = (name: string, f: string): string => `<c r="${name}"><f>${f}</f><v>0</v></c>`;
    const xml = `<row r="1">${call("A1", "_xldudf_SHOP_TEST_DOUBLE(2)")}${call("B1", "[1]!_xldudf_SHOP_TEST_DOUBLE(3)")}${call("C1", "SHOP.TEST.DOUBLE(4)")}</row>`;
    const workbook = readWorkbook(run(sheetData(xml)).output!);
    expect(["A1", "B1", "C1"].map((cell) => valueAt(workbook, cell))).toEqual([4, 6, 8]);
  });

  test("a table's structured reference, with escaped column name", () => {
    const table =
      '<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" displayName="T" ref="A1:A3"><tableColumns><tableColumn name="Cost [$]"/></tableColumns></table>';
    const bytes = packageOf({
      tables: [table],
      sheets: {
        Sheet1:
          '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Cost [$]</t></is></c><c r="C1"><f>SUM(T[Cost \'[$\']])</f></c></row><row r="2"><c r="A2"><v>5</v></c></row><row r="3"><c r="A3"><v>6</v></c></row></sheetData>',
      },
    });
    expect(valueAt(readWorkbook(run(bytes).output!), "C1")).toBe(11);
  });
});

// Microsoft's description of SUBTOTAL: filtered rows never count, rows hidden by hand only for 101 to 111.
describe("SUBTOTAL", () => {
  const rows =
    '<row r="1"><c r="A1" t="inlineStr"><is><t>Qty</t></is></c><c r="C1"><f>SUBTOTAL(9,A2:A4)</f></c><c r="D1"><f>SUBTOTAL(109,A2:A4)</f></c></row><row r="2"><c r="A2"><v>1</v></c></row><row r="3" hidden="1"><c r="A3"><v>10</v></c></row><row r="4"><c r="A4"><v>100</v></c></row>';
  const answers = (bytes: Uint8Array) => {
    const workbook = readWorkbook(run(bytes).output!);
    return [valueAt(workbook, "C1"), valueAt(workbook, "D1")];
  };

  test("counts a row hidden by hand with 9, not with 109", () => {
    expect(answers(packageOf({ sheets: { S: `<sheetData>${rows}</sheetData>` } }))).toEqual([111, 101]);
  });

  test("never counts a row that the sheet's or a table's filter hides", () => {
    const filter = '<autoFilter ref="A1:A4"><filterColumn colId="0"/></autoFilter>';
    expect(answers(packageOf({ sheets: { S: `<sheetData>${rows}</sheetData>${filter}` } }))).toEqual([101, 101]);
    const table = `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" displayName="T" ref="A1:A4">${filter}<tableColumns><tableColumn name="Qty"/></tableColumns></table>`;
    expect(answers(packageOf({ tables: [table], sheets: { S: `<sheetData>${rows}</sheetData>` } }))).toEqual([
      101, 101,
    ]);
  });
});

describe("writing", () => {
  const styled =
    '<row r="1" spans="1:2" ht="20"><c r="A1" s="3"><v>5</v></c><c r="B1" s="4" ph="1"><f ca="1">A1*3</f><v>1</v></c></row>';

  test("changes the value and nothing else", () => {
    const before = sheetData(styled);
    const { output, result } = run(before);
    expect(textOf(output!)).toBe(textOf(before).replace("<v>1</v>", "<v>15</v>"));
    expect(result.report.changed).toBe(1);
    const [a, b] = [unzipSync(before), unzipSync(output!)];
    expect(Object.keys(b)).toEqual(Object.keys(a));
    for (const name of Object.keys(a).filter((n) => !n.includes("sheet1.xml"))) expect(b[name]).toEqual(a[name]);
  });

  test("nothing changed: the output is the input, byte by byte, and the input stays as it was", () => {
    const bytes = Buffer.from(sheetData(styled.replace("<v>1</v>", "<v>15</v>")));
    const copy = Buffer.from(bytes);
    expect(Buffer.compare(Buffer.from(run(bytes).output!), copy)).toBe(0);
    const stale = Buffer.from(sheetData(styled));
    const untouched = Buffer.from(stale);
    run(stale);
    expect(Buffer.compare(stale, untouched)).toBe(0);
  });

  test("twice the same", () => {
    expect(run(sheetData(styled)).output).toEqual(run(sheetData(styled)).output);
  });

  test("what is written can be recalculated again without a change", () => {
    const first = run(sheetData(styled)).output!;
    expect(run(first).result.report).toMatchObject({ status: "fresh", changed: 0 });
  });

  test("a value of another type gets its type; text is escaped", () => {
    const { output } = run(
      sheetData(
        '<row r="1"><c r="A1" t="b"><f>"a&lt;b"&amp;CHAR(10)&amp;" "</f><v>1</v></c><c r="B1" t="str"><f>1/0</f><v>x</v></c></row>',
      ),
    );
    expect(textOf(output!)).toContain(
      '<c r="A1" t="str"><f>"a&lt;b"&amp;CHAR(10)&amp;" "</f><v xml:space="preserve">a&lt;b\n </v></c>',
    );
    expect(textOf(output!)).toContain('<c r="B1" t="e"><f>1/0</f><v>#DIV/0!</v></c>');
  });

  test("a spill that grows takes cells and rows, one that shrinks leaves none behind", () => {
    const spilled = (count: number, stored: string): Uint8Array =>
      packageOf({
        metadata: DYNAMIC_METADATA,
        sheets: {
          Sheet1: `<dimension ref="A1:B2"/><sheetData><row r="1" spans="1:2"><c r="A1"><v>${count}</v></c><c r="B1" cm="1"><f t="array" ref="${stored}">_xlfn.SEQUENCE(A1)</f><v>1</v></c></row><row r="2"><c r="B2"><v>2</v></c></row></sheetData>`,
        },
      });
    const grown = textOf(run(spilled(4, "B1:B2")).output!);
    expect(grown).toContain('<f t="array" ref="B1:B4">_xlfn.SEQUENCE(A1)</f>');
    expect(grown).toContain(
      '<row r="3"><c r="B3"><v>3</v></c></row><row r="4"><c r="B4"><v>4</v></c></row></sheetData>',
    );
    expect(grown).toContain('<dimension ref="A1:B4"/>');
    const shrunk = textOf(run(spilled(1, "B1:B2")).output!);
    expect(shrunk).toContain('ref="B1"');
    expect(shrunk).toContain('<c r="B2"/>');
  });

  test("--now moves TODAY; without it the cell keeps its value and is reported", () => {
    const bytes = sheetData('<row r="1"><c r="A1"><f>TODAY()</f><v>40000</v></c></row>');
    expect(run(bytes).result.report).toMatchObject({
      status: "stale",
      kept: [{ cell: "Sheet1!A1", reason: "volatile" }],
    });
    expect(valueAt(readWorkbook(run(bytes, 46_095.4).output!), "A1")).toBe(46_095);
  });
});

describe("verifying", () => {
  test("leaves no cached value to lean on, names what differs and what it left out", () => {
    const bytes = sheetData(
      '<row r="1"><c r="A1"><f>1+1</f><v>2</v></c><c r="B1"><f>A1*2</f><v>5</v></c><c r="C1"><f>NO.SUCH(1)</f><v>7</v></c><c r="D1"><f>C1+1</f><v>8</v></c></row>',
    );
    const { result, output } = recalculateBytes(bytes, {
      functions: fakeFunctions,
      now: undefined,
      verify: true,
      in: "in.xlsx",
      out: null,
    });
    expect(output).toBeUndefined();
    expect(result.report).toMatchObject({
      status: "different",
      differences: [{ cell: "Sheet1!B1", stored: 5, computed: 4 }],
      kept: [{ cell: "Sheet1!C1", reason: "unknown-function" }],
      stale: ["Sheet1!D1"],
    });
    expect(result.counts).toEqual({
      cached: 4,
      equal: 1,
      excluded: { "unknown-function": 1, "external-link": 0, volatile: 0, dependant: 1 },
    });
  });
});
