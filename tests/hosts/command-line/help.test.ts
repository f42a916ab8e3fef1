import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { bill } from "../../../src/hosts/command-line/bill.ts";
import { calc } from "../../../src/hosts/command-line/calc.ts";
import { functions } from "../../../src/hosts/command-line/catalogue.ts";
import { freeze } from "../../../src/hosts/command-line/freeze.ts";
import { HELP, helpAsked, helpText } from "../../../src/hosts/command-line/help.ts";
import { start } from "../../../src/hosts/command-line/start.ts";
import { upgrade } from "../../../src/hosts/command-line/upgrade.ts";
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
    // The page has a server of its own beside them.
    expect([...commands, "view"].sort()).toEqual(Object.keys(HELP).sort());
    for (const name of Object.keys(HELP)) expect(helpText()).toContain(`\n${name} `);
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

describe("a command that is not understood", () => {
  const said = (command: typeof calc, ...args: string[]) =>
    say(command, ...args).then(
      ({ notes }) => notes,
      (problem) => (problem as UsageError).message,
    );
  it.each<[what: string, command: typeof calc, args: string[], says: RegExp]>([
    [
      "an option",
      start,
      ["o.xlsx", "--part", "x.csv"],
      /^option must be one of --parts, .*; got --part; nearest is "--parts"$/,
    ],
    [
      "an option without its value",
      bill,
      ["a.csv", "--shop"],
      /^--shop must be followed by what it says; got nothing$/,
    ],
    ["an option that takes none", bill, ["a.xlsx", "--json=1"], /^--json must stand alone; got a value$/],
    [
      "a part list without a shop",
      bill,
      ["parts.csv"],
      /^bill must be followed by .*PARTS.csv --shop WORKBOOK.xlsx; got parts.csv$/,
    ],
    [
      "a name with a blank",
      start,
      ["my", "job.xlsx"],
      /; got my job.xlsx; a name with a blank stands in quotes: "my job.xlsx"$/,
    ],
    [
      "a function without arguments",
      calc,
      ["=SHOP.BILL.BREAKS()"],
      /^SHOP.BILL.BREAKS must be given its arguments; got blanks/,
    ],
    ["a function that is none", functions, ["BEND.TONAGE"], /; got BEND.TONAGE; nearest is "BEND.TONNAGE"$/],
  ])("%s is refused in the grammar of all refusals", async (_, command, args, says) => {
    expect((await said(command, ...args)).trim()).toMatch(says);
  });
  it("functions of one name says what each argument is, and names tables that no person types", async () => {
    const { text } = await say(functions, "shop.bill.breaks");
    expect(text).toContain('quantities: Quantities: a range, or text such as "10; 50; 100"');
    expect(text).toContain('=INDEX(SHOP.BILL.BREAKS("HB1","20; 50",bill,brakes,dies,punches,');
    expect((await say(functions)).text.split("\n").every((line) => line.length < 700)).toBe(true);
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
    // What the shop has yet to do, and what it calls its file, is not the customer's business.
    const OURS = ["Machines", "not confirmed from the plate", "confirmed from the plate"];
    const plain = (values: typeof quote.values) => values.map((column) => (column ?? []).map(said));
    const held = plain(sheets[0]!.values)
      .flat()
      .filter((cell) => cell !== null);
    expect(held).toEqual(
      plain(quote.values)
        .flat()
        .filter((cell) => cell !== null && !OURS.includes(String(cell))),
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
      "from the plate",
      "stage-job",
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
    const all = sheets.flatMap(({ values }) => values.flat()).join(" ");
    expect(all).not.toContain("The functions are running");
    expect(all).not.toContain("Type your own figures");
    expect(all).toContain("rates, shifts and sheets as tables.");
    // It has nothing to be brought up to date.
    const again = await say(upgrade, out, join(home, "again.xlsx"));
    expect(again.exit).toBe(2);
    expect(again.notes).toContain("must be a workbook with its formulas; got a copy of values");
  });

  it("for anybody else is exit 64", async () => {
    await expect(say(freeze, "a.xlsx", "b.xlsx", "--for", "friends")).rejects.toBeInstanceOf(UsageError);
  });
});
