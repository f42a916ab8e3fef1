/** `shop print`: which papers there are, what stands on them, where they may and may not be written. */
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
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { print } from "../../src/hosts/command-line/print.ts";
import { UsageError } from "../../src/hosts/command-line/usage.ts";
import { Session } from "../../src/hosts/view/session.ts";
import { trade } from "../../src/hosts/view/trade.ts";
import { billJson } from "../../src/job/bill-json.ts";
import { calculatedBytes } from "../../src/job/building/calculated.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { bookOf } from "../../src/job/workbook-book.ts";
import { printOf } from "../../src/papers/papers.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";
import { longBill } from "../../src/tools/bench/view-bill.ts";
import { PARTS } from "../../src/tools/sample/stage-job/bill/job.ts";

const SAMPLE = "sample-workbooks/stage-job.xlsx";
/** A short bill, for what does not depend on its length. */
let small: string;
beforeAll(() => {
  small = join(home, "small.xlsx");
  writeFileSync(small, calculatedBytes(longBill(9)));
}, 60_000);
const home = mkdtempSync(join(tmpdir(), "print-test-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));

async function run(...args: string[]) {
  let out = "";
  let notes = "";
  const code = await print(args, {
    functions: shopFunctions,
    version: "0.0.0",
    out: (text) => (out += text),
    note: (text) => (notes += text),
    input: async () => "",
    interactive: false,
  });
  return { code, out, notes };
}
const filesIn = (folder: string) => readdirSync(folder, { recursive: true, encoding: "utf8" }).sort();

/** The short bill with parts renamed, as a person would type them. */
function renamed(...names: string[]): string {
  const bytes = new Uint8Array(readFileSync(small));
  const sheet = new Session(bytes, trade).names().findIndex(({ name }) => name === "Parts");
  const file = join(home, `renamed-${names.length}.xlsx`);
  writeFileSync(
    file,
    new Session(bytes, trade, [names.map((typed, i) => ({ sheet, row: 4 + i, column: 0, typed }))]).save(),
  );
  return file;
}

const sample = () => jobPlan(bookOf(readWorkbook(new Uint8Array(readFileSync(SAMPLE)))))!;

describe("the papers of the sample", () => {
  const folder = join(home, "papers");
  let told: { files: string[]; pages: number; pdf: string | null };
  beforeAll(async () => {
    const { code, out } = await run(SAMPLE, folder, "--no-pdf", "--json");
    expect(code).toBe(0);
    told = JSON.parse(out);
  }, 120_000);
  const paper = (file: string) => readFileSync(join(folder, file), "utf8");

  it("are the files that are told, and no others but the mark", () => {
    const written = filesIn(folder).filter(
      (name) => !["setup", "tools", "outline"].includes(name) && !name.startsWith("."),
    );
    expect(written).toEqual([...told.files].sort());
    const { papers, outlines } = printOf(sample().plan, {
      name: "",
      version: "",
      edition: "",
      date: "",
      stale: 0,
      missing: [],
    });
    expect([...told.files].sort()).toEqual([...papers, ...outlines].map(({ file }) => file).sort());
    expect(told.pdf).toBeNull();
  });

  it("have a set-up sheet for every line of the bill, and a page for every set of tools", () => {
    const setups = told.files.filter((file) => file.startsWith("setup/"));
    expect(setups).toHaveLength(PARTS.length);
    // More than two bends are shown hit by hit on a sheet of their own.
    const pages = (file: string) => paper(file).match(/class="page[" ]/g)!.length;
    expect(pages("setup/DF-01.html")).toBe(1);
    expect(pages("setup/LC-05.html")).toBe(2);
    const { setups: sets } = billJson(sample().plan);
    expect(told.files.filter((file) => file.startsWith("tools/"))).toHaveLength(sets.length);
  });

  it("have the flat of every part at true size, in millimeters", () => {
    const outline = paper("outline/DF-01.svg");
    // Flanges 2 and 3 in of 3/16 in A36 over a 1-1/2 in die, 24 in wide: 4.6612 in, as the sheet Blanks says.
    const [, width, height] = /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(outline)!;
    expect(Number(width)).toBeCloseTo(4.6612342622 * 25.4, 2);
    expect(Number(height)).toBeCloseTo(24 * 25.4, 2);
    expect(outline).toContain("holes and notches are not in it");
  });

  it("a set-up sheet shows drawing, back gauge, order, cautions and boxes to tick", () => {
    const sheet = paper("setup/DF-08.html");
    expect(sheet.match(/<svg xmlns/g)).toHaveLength(5); // flat, bent, either hit at the gauge, and the end of the last
    for (const words of ["Deck beam shoe", "Back gauge", "Guards", "First piece", 'class="box"'])
      expect(sheet).toContain(words);
    expect(sheet).toContain(">2.774<"); // 3 in flange less half the deduction, to the first bend line
    const tools = told.files.filter((file) => file.startsWith("tools/")).map(paper);
    for (const words of ["Hands off", "motor off, ram down", "DF-08"])
      expect(tools.some((page) => page.includes(words))).toBe(true);
  });

  it("the quote asks for the plan's total", () => {
    const { charges } = sample().plan.money;
    const total = charges.total.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
    expect(paper("quote.html")).toContain(`>${total}</td>`);
  });

  it("every sheet of the cut list is drawn", () => {
    const list = paper("cutlist.html");
    expect(list.match(/<figure class="plan[" ]/g)!.length).toBeGreaterThan(10);
    expect(list).toContain("Pull <strong>");
  });

  it("nothing is loaded from elsewhere and nothing runs", () => {
    for (const file of told.files) {
      const text = paper(file).replaceAll("http://www.w3.org/2000/svg", "");
      expect(text).not.toMatch(/<script|https?:|javascript:|\son\w+=/i);
    }
  });
});

describe("names from the workbook", () => {
  it("cannot lead out of the folder, become markup, or overwrite one another", async () => {
    const folder = join(home, "deep", "er", "names");
    const file = renamed(
      "../../../evil",
      "..\\..\\evil",
      "<script>alert(1)</script>",
      "con",
      "A/B",
      "a b",
      "A:B",
      "...",
    );
    const { code, out } = await run(file, folder, "--no-pdf", "--json");
    expect(code).toBe(0);
    const { files } = JSON.parse(out) as { files: string[] };
    expect(files.filter((file) => file.startsWith("setup/"))).toEqual(
      expect.arrayContaining([
        "setup/evil.html",
        "setup/evil-2.html",
        "setup/script-alert-1-script.html",
        "setup/con-part.html",
        "setup/A-B.html",
        "setup/a-b-2.html",
        "setup/A-B-3.html",
        "setup/part.html",
      ]),
    );
    expect(new Set(files.map((name) => name.toLowerCase())).size).toBe(files.length);
    expect(filesIn(join(home, "deep"))).toHaveLength(files.length + 6); // er, names, setup, tools, outline and the mark
    expect(readFileSync(join(folder, "index.html"), "utf8")).not.toContain("<script>");
  }, 120_000);
});

describe("the folder", () => {
  it("may be empty, absent, or ours; a second print replaces the first", async () => {
    const folder = join(home, "twice");
    mkdirSync(folder);
    expect((await run(small, folder, "--no-pdf")).code).toBe(0);
    const first = filesIn(folder);
    expect((await run(renamed("OTHER"), folder, "--no-pdf")).code).toBe(0);
    expect(filesIn(folder).filter((name) => !first.includes(name))).toEqual(["outline/OTHER.svg", "setup/OTHER.html"]);
    expect(existsSync(join(folder, "setup/DF-01-0.html"))).toBe(false);
  }, 120_000);

  it.each<[string, (folder: string) => void]>([
    ["holds somebody else's file", (folder) => writeFileSync(join(folder, "tax.txt"), "mine")],
    ["holds a mark that is no mark of ours", (folder) => writeFileSync(join(folder, ".bracket-bill-print.json"), "x")],
    [
      "has a link in place of setup",
      (folder) => {
        mkdirSync(join(home, "elsewhere"), { recursive: true });
        symlinkSync(join(home, "elsewhere"), join(folder, "setup"));
        writeFileSync(join(folder, ".bracket-bill-print.json"), '{"files":["setup/x.html"]}');
      },
    ],
  ])("is refused with exit 2 and left alone when it %s", async (name, prepare) => {
    const folder = join(home, name.replaceAll(" ", "-").replaceAll("'", ""));
    mkdirSync(folder);
    prepare(folder);
    const before = filesIn(folder);
    const { code, notes } = await run(small, folder, "--no-pdf");
    expect(code).toBe(2);
    expect(notes).not.toBe("");
    expect(filesIn(folder)).toEqual(before);
  });

  it("a mark that names files outside does not get them removed", async () => {
    const folder = join(home, "tampered");
    mkdirSync(folder);
    writeFileSync(join(home, "precious.html"), "mine");
    writeFileSync(
      join(folder, ".bracket-bill-print.json"),
      '{"files":["../precious.html","setup/../../precious.html"]}',
    );
    expect((await run(small, folder, "--no-pdf")).code).toBe(0);
    expect(existsSync(join(home, "precious.html"))).toBe(true);
  }, 120_000);
});

describe("what is refused", () => {
  it("a file that is not a workbook: exit 2, and nothing is written", async () => {
    const file = join(home, "no.xlsx");
    writeFileSync(file, "not a zip");
    const folder = join(home, "nothing");
    expect((await run(file, folder)).code).toBe(2);
    expect(existsSync(folder)).toBe(false);
  });

  it.each([[["a.xlsx"]], [[SAMPLE, "out", "more"]], [[SAMPLE, "out", "--color"]]])("%j is wrong use", async (args) => {
    await expect(run(...args)).rejects.toBeInstanceOf(UsageError);
  });
});

describe("the pack", () => {
  it("is one PDF of all pages, where a browser is present", async () => {
    const folder = join(home, "pack");
    const { code, out } = await run(small, folder, "--json");
    expect(code).toBe(0);
    const { pdf, pages } = JSON.parse(out) as { pdf: string; pages: number };
    expect(pdf).toBe("pack.pdf");
    const bytes = readFileSync(join(folder, "pack.pdf"));
    expect(bytes.subarray(0, 5).toString("latin1")).toBe("%PDF-");
    const counted = bytes.toString("latin1").match(/\/Type\s*\/Page[^s]/g)!.length;
    expect(counted).toBe(pages);
    expect(pages).toBeGreaterThan(filesIn(join(folder, "setup")).length);
  }, 180_000);

  it("is left out, with a note, where there is no browser", async () => {
    const folder = join(home, "packless");
    vi.stubEnv("CHROMIUM", join(home, "absent-browser"));
    try {
      const { code, out, notes } = await run(small, folder, "--json");
      expect([code, JSON.parse(out).pdf]).toEqual([0, null]);
      expect(notes).toContain("no browser found");
    } finally {
      vi.unstubAllEnvs();
    }
  }, 120_000);
});
