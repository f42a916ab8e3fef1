/** A text about a fault holds versions, sizes and the refusal, and not a word of the file. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { faultPlaces, refusalRule } from "../../../src/hosts/command-line/report-text.ts";
import { packageOf } from "../../sheet/make-package.ts";
import { builtCommand } from "./built-command.ts";

let home: string;
let main: string;
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), "shop-report-"));
  main = await builtCommand(home);
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

function report(...args: string[]) {
  const { INIT_CWD: _, ...env } = process.env;
  const run = spawnSync(process.execPath, [main, "report", ...args], { cwd: home, env, encoding: "utf8" });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

it("names sizes and what happened, and nothing that stands in the workbook", () => {
  const cells = `<row r="1"><c r="A1" t="inlineStr"><is><t>Secret bracket</t></is></c><c r="B1"><f>PRIVATE.PRICE(7)</f><v>4711</v></c></row>`;
  writeFileSync(join(home, "customer.xlsx"), packageOf({ sheets: { Margins: `<sheetData>${cells}</sheetData>` } }));
  const { code, out } = report("customer.xlsx");
  expect(code).toBe(0);
  expect(out).toMatch(/^Bracket Bill \d+\.\d+\.\d+, Node \d+/);
  expect(out).toContain("Recalculation: stale, 1 formulas");
  expect(out).toContain("Kept: 1 unknown-function;");
  expect(out).not.toMatch(/Secret|PRIVATE|4711|Margins|customer/i);
});

it("is written where it is asked for, and the file that hangs is said to", () => {
  const long = "REDUCE(0,SEQUENCE(3000,1000),LAMBDA(a,b,a+SUM(SEQUENCE(1000))))";
  const cell = `<row r="1"><c r="A1"><f>${long}</f><v>1</v></c></row>`;
  writeFileSync(join(home, "long.xlsx"), packageOf({ sheets: { S: `<sheetData>${cell}</sheetData>` } }));
  expect(report("long.xlsx", "fault.txt", "--seconds", "0.5").code).toBe(0);
  expect(readFileSync(join(home, "fault.txt"), "utf8")).toContain(
    "Recalculation: refused, time: must be done within 0.5 s",
  );
  expect(readdirSync(home).filter((name) => name.endsWith(".tmp"))).toEqual([]);
});

it("a damaged package and a part list have their size, a missing file is refused", () => {
  writeFileSync(join(home, "cut.xlsx"), "PK and no more");
  writeFileSync(join(home, "parts.csv"), "Part,Material\nSecret,A36\n");
  expect(report("cut.xlsx").out).toContain("File: 14 bytes, a package that is refused");
  expect(report("parts.csv").out).toContain("File: 25 bytes, no package, 2 line ends");
  expect(report("parts.csv").out).not.toContain("Secret");
  expect(report("no.xlsx")).toMatchObject({ code: 2, out: "" });
});

it("a refusal keeps its rule, a fault its places", () => {
  expect(refusalRule('tables/Mine.xml must be as "Mine" says; got "1,000 $"; ask')).toBe('must be as "..." says');
  const stack = "TypeError: Secret 4711\n    at planOf (file:///home/me/shop/main.js:10:5)\n    at file:///x/y.js:1:2";
  expect(faultPlaces(stack)).toEqual(["  at planOf, main.js:10:5", "  at ?, y.js:1:2"]);
});
