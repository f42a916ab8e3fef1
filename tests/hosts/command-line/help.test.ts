import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { calc } from "../../../src/hosts/command-line/calc.ts";
import { freeze } from "../../../src/hosts/command-line/freeze.ts";
import { HELP, helpAsked, helpText } from "../../../src/hosts/command-line/help.ts";
import { UsageError } from "../../../src/hosts/command-line/usage.ts";
import { filesBelow } from "../../house-rules/sources.ts";

async function say(command: typeof calc, ...args: string[]) {
  let [text, notes] = ["", ""];
  const exit = await command(args, {
    functions: shopFunctions,
    version: "",
    interactive: false,
    input: async () => "",
    out: (words) => {
      text += words;
    },
    note: (words) => {
      notes += words;
    },
  });
  return { exit, text: text.trim(), notes };
}

describe("help", () => {
  it.each([
    [[], {}],
    [["--help"], {}],
    [["help"], {}],
    [["help", "start"], { command: "start" }],
    [["start", "--help"], { command: "start" }],
    [["calc", "-h"], { command: "calc" }],
    [["calc", "=1+1"], undefined],
  ])("of %j", (args, asked) => {
    expect(helpAsked(args)).toEqual(asked);
  });

  it("names every command that there is, and every option that one reads", () => {
    const main = filesBelow("src/hosts/command-line").find(({ path }) => path.endsWith("/commands.ts"))!.text;
    const commands = [...main.matchAll(/^ {2}(\w+): async \(\) =>/gm)].map(([, name]) => name!);
    expect([...commands].sort()).toEqual(Object.keys(HELP).sort());
    for (const name of commands) expect(helpText()).toContain(`\n${name} `);
    for (const { options = [] } of Object.values(HELP))
      expect(options.map(([name]) => name)).toEqual([...new Set(options.map(([name]) => name))]);
  });
});

describe("calc", () => {
  it.each([
    ["=SHOP.SHEET.THICKNESS('10 ga','A1011 CS')", "0.135 in"], // 15 U.S.C. 206: 5.625 lb/ft2, 0.1345 in
    ['=SHOP.SHEET.THICKNESS("10 ga","A1011 CS")', "0.135 in"],
    ["=1+1", "2"],
    ["=1/8000", "0.000125"],
    ["='A'&'B'", "AB"],
  ])("%s is %s", async (formula, answer) => {
    expect(await say(calc, formula)).toMatchObject({ exit: 0, text: answer });
  });

  it("with --full has every digit", async () => {
    expect(Number((await say(calc, "--full", "=1/3")).text)).toBeCloseTo(1 / 3, 14);
  });

  it("names the missing quotes, as one argument and as several", async () => {
    expect((await say(calc, "=SHOP.SHEET.THICKNESS(10 ga,A1011 CS)")).notes).toContain("text needs quotes");
    expect((await say(calc, "=SHOP.BEND.TONNAGE(A36,0.25,48,2)")).notes).toContain("text needs quotes");
    expect((await say(calc, "=SHOP.BEND.SETBACK(-1,0.16,90)")).notes).not.toContain("quotes");
    await expect(say(calc, "=SHOP.SHEET.THICKNESS(10", "ga,A36)")).rejects.toSatisfy(
      (problem) =>
        problem instanceof UsageError &&
        problem.message.includes("single") === false &&
        problem.message.includes("'A36'"),
    );
  });
});

describe("freeze", () => {
  const home = mkdtempSync(join(tmpdir(), "freeze-for-"));
  afterAll(() => rmSync(home, { recursive: true, force: true }));

  it("for the customer leaves no rate, cost, machine or other sheet in the file", { timeout: 120_000 }, async () => {
    const { readFileSync } = await import("node:fs");
    const { strFromU8, unzipSync } = await import("fflate");
    const { readWorkbook } = await import("../../../src/sheet/workbook/read-workbook.ts");
    const { lintWorkbook } = await import("../../tools/sample/lint.ts");
    const out = join(home, "quote.xlsx");
    expect((await say(freeze, "sample-workbooks/stage-job.xlsx", out, "--for", "customer")).exit).toBe(0);
    const bytes = new Uint8Array(readFileSync(out));
    expect(lintWorkbook(bytes)).toEqual([]);
    const { sheets } = readWorkbook(bytes);
    expect(sheets.map(({ name }) => name)).toEqual(["Quote", "About this copy"]);
    const before = readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx")));
    const quote = before.sheets.find(({ name }) => name === "Quote")!;
    // Why a line is not quoted is said in the customer's words.
    const said = (cell: unknown) => (/^no quote: /.test(String(cell)) ? "no quote" : cell || null);
    const plain = (values: typeof quote.values) => values.map((column) => (column ?? []).map(said));
    const held = plain(sheets[0]!.values)
      .flat()
      .filter((cell) => cell !== null);
    expect(held).toEqual(
      plain(quote.values)
        .flat()
        .filter((cell) => cell !== null),
    );
    const file = Object.values(unzipSync(bytes))
      .map((part) => strFromU8(part))
      .join("\n");
    for (const word of [
      "Overhead",
      "Mark-up",
      "Hourly",
      "Set-up (min)",
      "Second person",
      "Brake 1",
      "Shear 1",
      "Jet 1",
    ])
      expect(file).not.toContain(word);
  });

  it("for a colleague says so on its first sheet, and no State cell claims that anything runs", {
    timeout: 120_000,
  }, async () => {
    const { readFileSync } = await import("node:fs");
    const { readWorkbook } = await import("../../../src/sheet/workbook/read-workbook.ts");
    const out = join(home, "copy.xlsx");
    expect((await say(freeze, "sample-workbooks/stage-job.xlsx", out, "--for", "colleague")).exit).toBe(0);
    const { sheets } = readWorkbook(new Uint8Array(readFileSync(out)));
    expect(sheets[0]!.values.flat().join(" ")).toContain("for reading without the add-in");
    expect(sheets.flatMap(({ values }) => values.flat()).join(" ")).not.toContain("The functions are running");
  });

  it("for anybody else is exit 64", async () => {
    await expect(say(freeze, "a.xlsx", "b.xlsx", "--for", "friends")).rejects.toBeInstanceOf(UsageError);
  });
});
