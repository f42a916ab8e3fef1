import { spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { valueAt } from "../../sheet/evaluate-on-grid.ts";
import { packageOf } from "../../sheet/make-package.ts";
import { builtCommand } from "./built-command.ts";

let home: string;
let bundle: string;
let folder: string;

beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), "shop-recalc-"));
  bundle = await builtCommand(home);
});
afterAll(() => rmSync(home, { recursive: true, force: true }));
beforeEach(() => {
  folder = mkdtempSync(join(home, "case-"));
});

function shop(args: readonly string[], input = ""): { code: number | null; out: string; err: string } {
  const { INIT_CWD: _, ...env } = process.env;
  const run = spawnSync(process.execPath, [bundle, ...args], { cwd: folder, input, encoding: "utf8", env });
  return { code: run.status, out: run.stdout, err: run.stderr };
}

const sheet = (formula: string, cached: string): Uint8Array =>
  packageOf({
    sheets: {
      Sheet1: `<sheetData><row r="1"><c r="A1"><v>2</v></c><c r="B1"><f>${formula}</f>${cached}</c></row></sheetData>`,
    },
  });

const put = (name: string, bytes: Uint8Array | string): string => {
  writeFileSync(join(folder, name), bytes);
  return name;
};
const valueIn = (name: string): unknown => valueAt(readWorkbook(readFileSync(join(folder, name))), "B1");

describe("shop recalc", () => {
  test("writes OUT, leaves IN, reports as JSON and exits 0", () => {
    const before = sheet("A1*4", "<v>1</v>");
    const { code, out } = shop(["recalc", put("in.xlsx", before), "out.xlsx", "--json"]);
    expect(code).toBe(0);
    expect(readFileSync(join(folder, "in.xlsx")).equals(Buffer.from(before))).toBe(true);
    expect(valueIn("out.xlsx")).toBe(8);
    const report = JSON.parse(out);
    expect(Object.keys(report)).toEqual(["version", "tool", "files", "totals"]);
    expect(report.files[0]).toMatchObject({
      in: "in.xlsx",
      out: "out.xlsx",
      status: "fresh",
      formulas: 1,
      recalculated: 1,
      changed: 1,
      refused: null,
    });
    expect(Object.keys(report.files[0])).toEqual([
      "in",
      "out",
      "status",
      "formulas",
      "recalculated",
      "changed",
      "kept",
      "stale",
      "circular",
      "differences",
      "refused",
      "seconds",
    ]);
    expect(report.totals).toMatchObject({
      files: 1,
      fresh: 1,
      stale: 0,
      different: 0,
      refused: 0,
      cached: 1,
      equal: 0,
    });
  });

  test("--in-place replaces the file and leaves nothing beside it", () => {
    expect(shop(["recalc", put("in.xlsx", sheet("A1*4", "<v>1</v>")), "--in-place"]).code).toBe(0);
    expect(valueIn("in.xlsx")).toBe(8);
    expect(readdirSync(folder)).toEqual(["in.xlsx"]);
  });

  test("the input is never the output unless asked", () => {
    put("in.xlsx", sheet("A1*4", "<v>1</v>"));
    for (const args of [["in.xlsx", "in.xlsx"], ["in.xlsx", "./in.xlsx"], ["in.xlsx"]])
      expect(shop(["recalc", ...args]).code).toBe(64);
    expect(valueIn("in.xlsx")).toBe(1);
  });

  test("--verify writes nothing but the report: equal 0, different 1", () => {
    put("right.xlsx", sheet("A1*4", "<v>8</v>"));
    put("wrong.xlsx", sheet("A1*4", "<v>9</v>"));
    expect(shop(["recalc", "right.xlsx", "--verify"]).code).toBe(0);
    expect(shop(["recalc", "wrong.xlsx", "--verify", "--report", "report.json"]).code).toBe(1);
    expect(JSON.parse(readFileSync(join(folder, "report.json"), "utf8")).files[0].differences).toEqual([
      { cell: "Sheet1!B1", stored: 9, computed: 8 },
    ]);
    expect(readdirSync(folder).sort()).toEqual(["report.json", "right.xlsx", "wrong.xlsx"]);
  });

  test("a folder: one bad file does not stop the rest, the highest exit code wins", () => {
    mkdirSync(join(folder, "in", "deep"), { recursive: true });
    put("in/a.xlsx", sheet("A1+1", "<v>0</v>"));
    put("in/bad.xlsx", "not a workbook at all, just words to fill the file");
    put("in/deep/b.xlsm", sheet("NOT.KNOWN(1)", "<v>5</v>"));
    const { code, out } = shop(["recalc", "in", "out", "--json", "--jobs", "2"]);
    expect(code).toBe(2);
    expect(JSON.parse(out).files.map((f: { in: string; status: string }) => [f.in, f.status])).toEqual([
      [join("in", "a.xlsx"), "fresh"],
      [join("in", "bad.xlsx"), "refused"],
      [join("in", "deep", "b.xlsm"), "stale"],
    ]);
    expect(valueIn("out/a.xlsx")).toBe(3);
    expect(valueIn("out/deep/b.xlsm")).toBe(5);
    expect(existsSync(join(folder, "out", "bad.xlsx"))).toBe(false);
  });

  test("a folder of links is not followed out of the tree, a link to a file within it is", () => {
    const before = sheet("A1*4", "<v>1</v>");
    mkdirSync(join(folder, "tree"));
    mkdirSync(join(folder, "outside"));
    for (const name of ["tree/a.xlsx", "outside/b.xlsx"]) put(name, before);
    symlinkSync("../outside", join(folder, "tree", "away"));
    symlinkSync("../outside/b.xlsx", join(folder, "tree", "b.xlsx"));
    symlinkSync("a.xlsx", join(folder, "tree", "c.xlsx"));
    const { out } = shop(["recalc", "tree", "--verify", "--json"]);
    expect(JSON.parse(out).files.map((file: { in: string }) => file.in)).toEqual(["tree/a.xlsx", "tree/c.xlsx"]);
  });

  test("OUT that is a device is refused, and the exit code says so", () => {
    const { code, out } = shop(["recalc", put("in.xlsx", sheet("A1*4", "<v>1</v>")), "/dev/null", "--json"]);
    expect(code).toBe(2);
    expect(JSON.parse(out).files[0].refused).toEqual({
      reason: "unwritable",
      message: "/dev/null must be a file; got a device",
    });
  });

  test("an input that is not there is refused", () => {
    const { code, err } = shop(["recalc", "missing.xlsx", "out.xlsx"]);
    expect(code).toBe(2);
    expect(err).toBe("missing.xlsx must be a file or a folder; got nothing of that name\n");
  });

  test("a report that cannot be written is a fault of the disk, not of the program", () => {
    const { code, err } = shop([
      "recalc",
      put("in.xlsx", sheet("A1*4", "<v>1</v>")),
      "out.xlsx",
      "--report",
      "no/r.json",
    ]);
    expect(code).toBe(2);
    expect(err).toContain("no/r.json must be in a folder that exists; got none there; make the folder first");
  });

  test("a file that takes too long is named, and the next one still runs", () => {
    mkdirSync(join(folder, "in"));
    put("in/long.xlsx", sheet("REDUCE(0,SEQUENCE(3000,1000),LAMBDA(a,b,a+SUM(SEQUENCE(1000))))", "<v>0</v>"));
    put("in/short.xlsx", sheet("A1+1", "<v>0</v>"));
    const { code, out } = shop(["recalc", "in", "out", "--json", "--jobs", "1", "--seconds", "3"]);
    const { files } = JSON.parse(out);
    expect(code).toBe(2);
    expect(files[0].refused).toEqual({
      reason: "time",
      message: "file must be done within 3 s; got no answer by then; give it more with --seconds",
    });
    expect(files[1].status).toBe("fresh");
  });

  test("--now answers TODAY", () => {
    expect(shop(["recalc", put("in.xlsx", sheet("TODAY()", "<v>1</v>")), "out.xlsx"]).code).toBe(1);
    expect(shop(["recalc", "in.xlsx", "out.xlsx", "--now", "2026-03-14"]).code).toBe(0);
    // 14 March 2026 is day 46095 of the 1900 system (45658 = 1 January 2025, plus 437 days).
    expect(valueIn("out.xlsx")).toBe(46_095);
  });

  test.each([
    [["--wrong"]],
    [["in.xlsx", "out.xlsx", "more.xlsx"]],
    [["in.xlsx", "out.xlsx", "--now", "yesterday"]],
    [["in.xlsx", "out.xlsx", "--jobs", "0"]],
  ])("%s is a usage error", (args) => {
    put("in.xlsx", sheet("1", "<v>1</v>"));
    expect(shop(["recalc", ...args]).code).toBe(64);
  });
});

describe("shop calc", () => {
  test("one formula a line on standard input, one JSON object a line", () => {
    const { code, out } = shop(
      ["calc", "--json"],
      '1+1\r\n\r\n={1,2;3,4}\r\n=1/0\r\n=SUMM(1)\r\n1 +\r\n={1,#N/A}\r\n="a"\r\n',
    );
    expect(code).toBe(0);
    expect(
      out
        .trimEnd()
        .split("\n")
        .map((line) => JSON.parse(line)),
    ).toEqual([
      { value: 2, unit: null },
      { value: null },
      {
        value: [
          [1, 2],
          [3, 4],
        ],
        unit: null,
      },
      { error: { code: "#DIV/0!", message: "division by zero" } },
      { error: { code: "#NAME?", message: "no function is called SUMM; nearest: SUM" } },
      { error: { code: "#VALUE!", message: expect.stringMatching(/^formula must be a worksheet formula; got 1 \+/) } },
      { value: [[1, { error: { code: "#N/A", message: expect.any(String) } }]], unit: null },
      { value: "a", unit: null },
    ]);
  });

  test("for a person: value, rows by tabs, errors on standard error with exit 1", () => {
    expect(shop(["calc", "={1,2;3,4}"])).toMatchObject({ code: 0, out: "1\t2\n3\t4\n" });
    expect(shop(["calc", "-2+1"])).toMatchObject({ code: 0, out: "-1\n" });
    expect(shop(["calc", "=1/0"])).toMatchObject({ code: 1, out: "#DIV/0!\n", err: "division by zero\n" });
    expect(shop(["calc", "--nonsense", "1"]).code).toBe(64);
  });
});

test("a disk that takes no more keeps the old file whole, in one sentence", () => {
  const padded = packageOf({
    sheets: {
      Sheet1: `<sheetData><row r="1"><c r="A1"><v>2</v></c><c r="B1"><f>A1*4</f><v>1</v></c></row></sheetData>`,
    },
    more: {
      "xl/media/noise.bin": Array.from({ length: 9_000 }, (_, i) =>
        (((i * 48_271) % 65_537) * 31_337).toString(36),
      ).join(""),
    },
  });
  put("in.xlsx", padded);
  expect(padded.length).toBeGreaterThan(4 * 1024);
  const { INIT_CWD: _, ...env } = process.env;
  // The shell's limit on the size of a file, in blocks of 512 or 1024 bytes, stands for a full disk.
  const run = spawnSync(
    "sh",
    ["-c", `ulimit -f 2; exec "$0" "$1" recalc in.xlsx --in-place`, process.execPath, bundle],
    {
      cwd: folder,
      encoding: "utf8",
      env,
    },
  );
  expect(run.status).toBe(2);
  expect(run.stderr).toContain("in.xlsx must be of a size the disk takes; got more than that; nothing was changed");
  expect(readFileSync(join(folder, "in.xlsx")).equals(Buffer.from(padded))).toBe(true);
  expect(readdirSync(folder)).toEqual(["in.xlsx"]);
});
