import { existsSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { planChanges } from "../../../src/bill/changes/plan-changes.ts";
import { bill } from "../../../src/hosts/command-line/bill.ts";
import { compare } from "../../../src/hosts/command-line/compare.ts";
import { start } from "../../../src/hosts/command-line/start.ts";
import { UsageError } from "../../../src/hosts/command-line/usage.ts";
import { jobPlan } from "../../../src/job/job-plan.ts";
import { bookOf } from "../../../src/job/workbook-book.ts";
import { quotePage } from "../../../src/papers/quote.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { isCellError } from "../../../src/units/cell.ts";
import { lintWorkbook } from "../../tools/sample/lint.ts";
import { LIST, ONE_DIE, run, testFolder, workbook } from "./shop-book.ts";

const LONG = 120_000;
const file = testFolder();
const shop = file("shop.xlsx", workbook(...ONE_DIE));
const beside = (name: string): string => join(dirname(shop), name);
const bookIn = (path: string) => bookOf(readWorkbook(new Uint8Array(readFileSync(path))));
const parts = file("parts.csv", LIST.replace("B1,A1011 CS,banana", "B1,A1011 CS,10"));

describe("shop start", () => {
  it("makes a workbook of the parts and the shop whose plan is that of the list in that shop", {
    timeout: LONG,
  }, async () => {
    const out = beside("own.xlsx");
    const { exit, text } = await run(start, out, "--parts", parts, "--shop", shop);
    expect(exit).toBe(1);
    expect(text).toContain('row 8, C Thickness "10": 10 in thick? Write its unit: 10 ga, 10 mm or 10 in');
    expect(text).toContain('row 9, B Material "cheese": must be a material in the table');
    const bytes = new Uint8Array(readFileSync(out));
    expect(lintWorkbook(bytes)).toEqual([]);
    const { plan, missing } = jobPlan(bookIn(out))!;
    expect(missing).toEqual([]);
    const given = JSON.parse((await run(bill, parts, "--shop", shop, "--json")).text);
    expect(plan.lines.map(({ part, status }) => [part, status])).toEqual(
      given.lines.map(({ part, status }: { part: string; status: string }) => [part, status]),
    );
    expect(plan.totals.weight).toBeCloseTo(given.totals.weight / 2.2046226218, 3);
    // No error anywhere: what waits for dates says which cells of the job are still empty.
    const wrong = readWorkbook(bytes).sheets.filter(({ values }) => values.some((column) => column?.some(isCellError)));
    expect(wrong.map(({ name }) => name)).toEqual([]);
    const whatIf = bookIn(out).find(({ name }) => name === "What-if")!;
    expect(whatIf.rows.flat()).toContain(
      'no dates yet: type "Work can begin" and "Must leave by" into the table of the job',
    );
    // The customer's sheet says what the printed quote says, and nothing of the shop's rows and machines.
    const quote = bookIn(out).find(({ name }) => name === "Quote")!;
    const remarks = quote.rows.map((row) => String(row[5] ?? "")).filter((cell) => cell.startsWith("no quote"));
    expect(remarks).toEqual([
      "no quote: we have a question about this line",
      "no quote: we have a question about this line",
      "no quote: cannot be bent as drawn",
    ]);
    const printed = quotePage(plan, "2026-03-02");
    for (const remark of remarks) expect(printed).toContain(remark);
    const answers = bookIn(out).find(({ name }) => name === "Answers")!;
    expect(answers.rows.slice(8).filter(([part]) => part !== null)).toHaveLength(plan.lines.length);
  });

  it("keeps what finished jobs taught the shop: its own sheets and `bill` give one total", {
    timeout: LONG,
  }, async () => {
    const taught = ["Brake", "Shear", "Deburr"].flatMap((station) =>
      [40, 50, 60].map((minutes) => ["An earlier job", station, minutes / 60, minutes * 1.4]),
    );
    const finished = [["Part", "Station", "Estimated (h)", "Recorded (min)"], ...taught];
    const list = file("taught.csv", LIST.split("\n").slice(0, 7).join("\n"));
    const totalOf = async (name: string, from: string) => {
      const out = beside(name);
      await run(start, out, "--parts", list, "--shop", from);
      const sheet = (wanted: string) => bookIn(out).find(({ name: each }) => each === wanted)!.rows;
      const price = sheet("Price");
      const header = price.find((row) => row.includes("Unit price"))!;
      const total = price.find(([part]) => part === "Total")![header.indexOf("Price")];
      const { totals } = JSON.parse((await run(bill, out, "--json")).text);
      expect(total).toBeCloseTo(totals.price, 9);
      expect(sheet("Quote").flat()).toContain(total);
      expect(lintWorkbook(new Uint8Array(readFileSync(out)))).toEqual([]);
      return { total: Number(total), finished: sheet("Finished") };
    };
    const strips = [
      ["Material", "Contact", "K offset"],
      ["A1011 CS", "point", 0.02],
    ];
    const untaught = await totalOf("untaught.xlsx", shop);
    const own = await totalOf("taught.xlsx", file("taught-shop.xlsx", workbook(...ONE_DIE, finished, strips)));
    // Minutes that took 1.4 times the estimate in three jobs of each station cost more, and never 1.4 times as much.
    expect(own.total).toBeGreaterThan(1.02 * untaught.total);
    expect(own.total).toBeLessThan(1.4 * untaught.total);
    expect(own.finished.flat()).toContain("An earlier job");
    expect(untaught.finished.flat()).toContain("no finished jobs yet");
    expect((await totalOf("of-sample.xlsx", resolve("sample-workbooks/stage-job.xlsx"))).finished.flat()).toContain(
      "Lantern bracket",
    );
    // What test strips found comes along too.
    const { shop: read } = jobPlan(bookIn(beside("taught.xlsx")))!.plan;
    expect([read.corrections.length, read.finished.length]).toEqual([1, 9]);
  });

  it("without a list and a shop has one example of each, marked, and calculates", { timeout: LONG }, async () => {
    const out = beside("empty.xlsx");
    expect((await run(start, out)).exit).toBe(0);
    const { plan, missing } = jobPlan(bookIn(out))!;
    expect([missing, plan.lines.map(({ part, status }) => [part, status])]).toEqual([[], [["EXAMPLE", "clear"]]]);
    const rows = bookIn(out).find(({ name }) => name === "Shop")!.rows;
    const marked = rows.filter((row) => row.includes("example, not your shop")).map(([name]) => name);
    for (const name of ["Brake 1", "V 1", "Plain", "Shear 1", "Jet 1", "Sheet 11 ga"]) expect(marked).toContain(name);
    for (const name of ["Brake 2", "V 2", "Shear 2"]) expect(rows.map(([first]) => first)).not.toContain(name);
  });

  it("a length beside the flanges is taken as along the bend, and asked about; a refused list shows its columns", {
    timeout: LONG,
  }, async () => {
    const rows = "Item,Qty,Material,Thk (in),Leg A (in),Leg B (in),Angle,Len (in)\nB1,1,A1011 CS,0.12,2,3,90,8\n";
    const { exit, text } = await run(start, beside("length.xlsx"), "--parts", file("length.csv", rows), "--shop", shop);
    expect(exit).toBe(0);
    expect(text).toMatch(
      /^H +Len \(in\) +Width +inches; taken as along the bend: if .* \(--columns "H=; \.\.\.=Width"\)$/m,
    );
    const { notes } = await run(bill, file("length.csv", rows), "--shop", shop);
    expect(notes).toMatch(/H +Len \(in\) +Width +inches; taken as along the bend/);
    const refused = await run(bill, file("tickness.csv", rows.replace("Thk", "Dicke")), "--shop", shop);
    expect([refused.exit, refused.text]).toEqual([2, ""]);
    expect(refused.notes).toMatch(
      /--columns "\.\.\.=Thickness".*\nIts columns:\nA +Item +Part\n(.*\n)+D +Dicke \(in\) +not read/,
    );
  });

  it("never writes over a file, and refuses what it cannot read", async () => {
    const before = readFileSync(shop);
    expect(await run(start, shop)).toMatchObject({ exit: 2, text: "" });
    expect(readFileSync(shop).equals(before)).toBe(true);
    const out = beside("none.xlsx");
    const refused = await run(start, out, "--parts", file("x.csv", "a,b\n1,2\n"), "--shop", shop);
    expect([refused.exit, refused.text, existsSync(out)]).toEqual([2, "", false]);
    expect(refused.notes).toMatch(/^parts must be a list with a heading/);
  });

  it.each([
    ["nothing", []],
    ["no workbook", ["out.csv"]],
    ["an unknown sign", ["out.xlsx", "--decimal", "dot"]],
    ["an unknown order of dates", ["out.xlsx", "--dates", "us"]],
    ["an unknown unit", ["out.xlsx", "--units", "cm"]],
    ["an unknown heading", ["out.xlsx", "--heading", "first"]],
  ])("%s: exit 64 by the caller", async (_, args) => {
    await expect(run(start, ...args)).rejects.toBeInstanceOf(UsageError);
  });
});

describe("shop compare", () => {
  const made = (name: string, change: (list: string) => string) =>
    file(
      name,
      workbook(
        ...ONE_DIE,
        change(LIST)
          .split("\n")
          .map((row) =>
            LIST.split("\n")[0]!
              .split(",")
              .map((_, i) => row.split(",")[i] || null),
          ),
      ),
    );
  const old = made("old.xlsx", (list) => list);

  it("of a workbook with itself says that nothing has changed", async () => {
    expect(await run(compare, old, old)).toMatchObject({ exit: 0, text: "Nothing has changed.\n" });
  });

  it("names lines that come, go and differ, with what follows for the job", async () => {
    const now = made("now.xlsx", (list) =>
      list
        .replace("L1,A1011 CS,11 ga,20", "L1,A1011 CS,11 ga,40")
        .replace(/Z1.*\n/, "")
        .concat("\nN1,A1011 CS,11 ga,1,6,2; 3,90"),
    );
    const { exit, text } = await run(compare, old, now, "--json");
    const { lines, job } = JSON.parse(text);
    expect(exit).toBe(1);
    expect(lines.map(({ part, change }: Record<string, string>) => [part, change])).toContainEqual(["N1", "added"]);
    expect(lines.map(({ part, change }: Record<string, string>) => [part, change])).toContainEqual(["Z1", "gone"]);
    const first = lines.find(({ part }: { part: string }) => part === "L1");
    expect(first.differences).toContainEqual({ what: "Quantity", before: 20, after: 40, unit: "count" });
    // 20 more of L1 and the one of N1, without the ten of Z1.
    const pieces = job.find(({ what }: { what: string }) => what === "Pieces");
    expect(pieces.after - pieces.before).toBe(20 + 1 - 10);
  });

  it("says in words that a line could not be read before, and shows no figure beside itself", async () => {
    const unread = made("unread.xlsx", (list) => list.replace("L1,A1011 CS", "L1,cheese"));
    const { text } = await run(compare, unread, old);
    expect(text).toMatch(/^L1 +changed {2}could not be read before; now Quantity 20, Material A1011 CS/m);
    expect(text).not.toContain("none -> ");
    expect((await run(compare, old, unread)).text).toMatch(/cannot be read any more; before .*Quantity 20, /);
    const now = made("alike.xlsx", (list) => list.replace("L1,A1011 CS,11 ga,20", "L1,A1011 CS,11 ga,21"));
    const pairs = [...(await run(compare, old, now)).text.replace(/\s+/g, " ").matchAll(/([\d.]+) ?\w* -> ([\d.]+)/g)];
    expect(pairs.length).toBeGreaterThan(3);
    for (const [, was, is] of pairs) expect(is).not.toBe(was);
  });

  it("turned round says the opposite", () => {
    const now = made("then.xlsx", (list) => list.replace("H1,A1011 CS,12 ga,8", "H1,A1011 CS,12 ga,9"));
    const [before, after] = [jobPlan(bookIn(old))!.plan, jobPlan(bookIn(now))!.plan];
    const turned = planChanges(after, before);
    for (const { part, differences } of planChanges(before, after).lines)
      for (const { what, before: was, after: is } of differences)
        expect(turned.lines.find((line) => line.part === part)!.differences).toContainEqual({
          what,
          before: is,
          after: was,
        });
  });
});
