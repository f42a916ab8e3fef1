/** No file and no formula holds or fills the computer, whatever command is given it; ordinary faults are said, with exit 2. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { calculatedBytes } from "../../../src/job/building/calculated.ts";
import { longBill } from "../../../src/tools/bench/view-bill.ts";
import { packageOf } from "../../sheet/make-package.ts";
import { builtCommand } from "./built-command.ts";

let home: string;
let main: string;
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), "shop-guard-"));
  main = await builtCommand(home);
  // A short bill: what is refused of a file does not hang on its length.
  writeFileSync(join(home, "job.xlsx"), calculatedBytes(longBill(9)));
  const book = (formula: string) =>
    packageOf({
      sheets: { Sheet1: `<sheetData><row r="1"><c r="A1"><f>${formula}</f><v>1</v></c></row></sheetData>` },
    });
  writeFileSync(join(home, "long.xlsx"), book(`REDUCE(0,SEQUENCE(3000,1000),LAMBDA(a,b,a+SUM(SEQUENCE(1000))))`));
  writeFileSync(join(home, "parts.csv"), "Part,Material,Thickness,Width,Flanges,Bend angles\nL1,A36,1/4,6,2; 3,90\n");
  spawnSync("mkfifo", [join(home, "pipe")]);
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

function shop(args: readonly string[], input = "") {
  const { INIT_CWD: _, ...env } = process.env;
  const run = spawnSync(process.execPath, [main, ...args], { cwd: home, env, input, encoding: "utf8" });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

describe("a command that takes too long", () => {
  it.each([
    [["freeze", "long.xlsx", "out.xlsx"]],
    [["print", "long.xlsx", "papers", "--no-pdf"]],
    [["calc", "=REDUCE(0,SEQUENCE(3000,1000),LAMBDA(a,b,a+SUM(SEQUENCE(1000))))"]],
  ])("%s is ended and says so", (args) => {
    expect(shop([...args, "--seconds", "0.5"])).toEqual({
      code: 2,
      out: "",
      err: `shop ${args[0]} must be done within 0.5 s; got no answer by then; give it more with --seconds\n`,
    });
    expect(readdirSync(home)).not.toContain("papers");
    expect(readdirSync(home)).not.toContain("out.xlsx");
  });

  it("a list of many formulas has that time for each answer", () => {
    const one = "=SUM(SEQUENCE(20000))";
    const { code, out } = shop(["calc", "--seconds", "1"], `${one}\n`.repeat(400));
    expect(code).toBe(0);
    expect(out.trimEnd().split("\n")).toEqual(Array(400).fill("200010000"));
  });
});

describe("a command that takes too much memory", () => {
  it.each([
    [["freeze", "job.xlsx", "out.xlsx"]],
    [["bill", "job.xlsx"]],
    [["check", "parts.csv", "--shop", "job.xlsx"]],
    [["print", "job.xlsx", "papers", "--no-pdf"]],
  ])("%s is ended and says so", (args) => {
    expect(shop([...args, "--memory", "8"])).toEqual({
      code: 2,
      out: "",
      err: `shop ${args[0]} must be done within 8 MB; got no answer with that; give it more with --memory\n`,
    });
  });

  it("limits must be numbers", () => {
    expect(shop(["bill", "job.xlsx", "--memory", "much"])).toEqual({
      code: 64,
      out: "",
      err: "--memory must be a positive number; got much\n",
    });
  });
});

describe("an ordinary fault of a file", () => {
  const exists = "must be a file that exists; got nothing of that name";
  it.each([
    [["bill", "no.xlsx"], `no.xlsx ${exists}`],
    [["check", "no.csv", "--shop", "job.xlsx"], `no.csv ${exists}`],
    [["check", "parts.csv", "--shop", "no.xlsx"], `no.xlsx ${exists}`],
    [["freeze", "no.xlsx", "out.xlsx"], `no.xlsx ${exists}`],
    [["print", "no.xlsx", "papers"], `no.xlsx ${exists}`],
    [["bill", "pipe"], "pipe must be a file; got a pipe"],
    [["check", "pipe", "--shop", "job.xlsx"], "pipe must be a file; got a pipe"],
    [["freeze", "pipe", "out.xlsx"], "pipe must be a file; got a pipe"],
    [["print", "/dev/zero", "papers"], "/dev/zero must be a file; got a device"],
    [["freeze", "job.xlsx", "/dev/null"], "/dev/null must be a file; got a device"],
    [
      ["freeze", "job.xlsx", "no/out.xlsx"],
      "no/out.xlsx must be in a folder that exists; got none there; make the folder first",
    ],
    [
      ["print", "job.xlsx", "parts.csv"],
      "parts.csv must be a folder that is new, empty or from an earlier print; got a file or a link; give another name",
    ],
  ])("%s is refused in one sentence, and nothing is left", (args, words) => {
    const before = readdirSync(home);
    const { code, out, err } = shop(args);
    expect([code, out]).toEqual([2, ""]);
    expect(
      err
        .trimEnd()
        .split("\n")
        .map((line) => line.replaceAll(`${home}/`, "")),
    ).toEqual([words]);
    expect(readdirSync(home)).toEqual(before);
  });

  it("a full standard output is not our fault", () => {
    const { INIT_CWD: _, ...env } = process.env;
    const run = spawnSync("sh", ["-c", `"$0" "$1" bill job.xlsx > /dev/full`, process.execPath, main], {
      cwd: home,
      env,
      encoding: "utf8",
    });
    expect(run.status).toBe(2);
    expect(run.stderr).toContain("standard output must be on a disk with room for it; got a full one");
  });
});
