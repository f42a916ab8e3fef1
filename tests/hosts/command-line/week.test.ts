import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { releaseOf } from "../../../src/bill/release.ts";
import { problemsSay } from "../../../src/bill/says.ts";
import type { WeekJob } from "../../../src/bill/week/steps.ts";
import { week } from "../../../src/hosts/command-line/week.ts";
import { SCHEMA } from "../../../src/job/schema.ts";
import { weekJob } from "../../../src/job/week-jobs.ts";
import { WEEK_JSON, type WeekJson } from "../../../src/job/week-json.ts";
import { bookOf } from "../../../src/job/workbook-book.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";
import { JOB, ONE_DIE, run, testFolder, workbook } from "./shop-book.ts";

const write = testFolder();
const NOW = ["--now", "2026-03-02T07:00"];

const BILL = ["Part", "Material", "Thickness", "Quantity", "Width", "Flanges", "Bend angles", "Done", "Started"];
const bill = (...rows: readonly (readonly CellValue[])[]): CellMatrix => [
  BILL,
  ...rows.map((row) => BILL.map((_, i) => row[i] ?? null)),
];
const line = (part: string, quantity: number, ...marks: CellValue[]): CellValue[] => [
  part,
  "A1011 CS",
  "11 ga",
  quantity,
  6,
  "2; 3",
  90,
  ...marks,
];
const dueOn = (due: string): CellMatrix => JOB.map((row) => (row[0] === "Must leave by" ? [row[0], due] : row));
const book = (name: string, rows: CellMatrix, job: CellMatrix = JOB, shop = ONE_DIE): string =>
  write(`${name}.xlsx`, workbook(rows, ...shop.slice(0, -1), job));
const asked = async (...args: string[]): Promise<WeekJson & { exit: number }> => {
  const { exit, text } = await run(week, ...args, ...NOW, "--json");
  return { ...WEEK_JSON.parse(JSON.parse(text)), exit };
};

describe("shop week", () => {
  const first = book("first", bill(line("A", 200), line("B", 50, "Shear")));
  const second = book("second", bill(line("C", 400)), dueOn("2026-03-02 08:00"));

  it("plans the open jobs together; exit 1 where one is late", async () => {
    const found = await asked(first, second);
    expect(found.exit).toBe(1);
    expect(found.jobs.map(({ job, late_hours }) => [job, late_hours > 0])).toEqual([
      ["first", false],
      ["second", true],
    ]);
    expect(found.steps.filter(({ part }) => part === "B").map(({ station }) => station)).toEqual(["Brake"]);
    expect(found.rescues.every(({ job, saves_hours }) => job === "second" && saves_hours > 0)).toBe(true);
    expect(found.days.reduce((sum, { load_hours }) => sum + load_hours, 0)).toBeCloseTo(
      found.steps.reduce((sum, { set_up_minutes, run_minutes }) => sum + (set_up_minutes + run_minutes!) / 60, 0),
      3,
    );
    expect((await asked(first)).exit).toBe(0);
  });

  it("says the same in words, at most 100 columns wide", async () => {
    const { text } = await run(week, first, second, ...NOW);
    expect(text).toMatch(/^2 jobs, \d+ steps from 2026-03-02 07:00/);
    expect(text).toContain("What would save second:");
    expect(text.split("\n").every((row, i) => i === 0 || row.length <= 100)).toBe(true);
  });

  it("says how long each job may wait, where that is asked for", async () => {
    const { jobs } = await asked(first, second, "--latest");
    expect(jobs[0]!.planned_latest_start! > "2026-03-02T07:00:00").toBe(true);
    const { text } = await run(week, first, ...NOW, "--latest");
    expect(text).toMatch(/nobody later:\n {2}first: 2026-03-/);
  });

  it("takes a bill: its earliest date, and the others as they were", async () => {
    const bill_ = book("third", bill(line("N", 300)), dueOn("2026-03-03 12:00"));
    const alone = await asked(first, second);
    const found = await asked(first, second, "--take", bill_);
    expect(found.take!.job).toBe("third");
    expect(found.take!.earliest).not.toBeNull();
    for (const { job, late_hours } of alone.jobs)
      expect(found.jobs.find((each) => each.job === job)!.late_hours).toBeLessThanOrEqual(late_hours + 1e-9);
  });

  it("shows a late job against its own date when a bill is taken, and says apart what is kept", async () => {
    const bill_ = book("fourth", bill(line("N", 20)), dueOn("2026-03-13 12:00"));
    const alone = await asked(first, second);
    const found = await asked(first, second, "--take", bill_);
    const [was, is] = [alone, found].map(({ jobs }) => jobs.find(({ job }) => job === "second")!);
    expect(is!.due).toBe("2026-03-02T08:00:00");
    expect(is!.late_hours).toBeGreaterThan(0);
    expect(is!.late_hours).toBeLessThanOrEqual(was!.late_hours + 1e-9);
    expect(found.take!.kept).toEqual([{ job: "second", leaves: was!.finish }]);
  });

  it("begins with the plan before, and keeps its near part", async () => {
    const before = await asked(first, second);
    const { exit: _, ...written } = before;
    const last = write("last.json", JSON.stringify(written));
    const found = await asked(second, first, "--last", last, "--frozen", "4");
    const near = (of: WeekJson) =>
      of.steps
        .filter(({ begins }) => begins < "2026-03-02T11:00:00")
        .map(({ key, begins }) => [key, begins])
        .sort();
    expect(near(found)).toEqual(near(before));
    expect([before.moved, found.moved]).toEqual([null, []]);
    const rushed = book("first", bill(line("A", 200), line("B", 50, "Shear"), line("E", 90)));
    const { text } = await run(week, rushed, second, "--last", last, ...NOW);
    expect(text).toMatch(/Moved since the plan before:\n {2}\w+: \d+ steps? moves?; done /);
    await expect(run(week, first, "--last", last, "--frozen", "-3", ...NOW)).rejects.toMatchObject({
      message: "--frozen must be a positive number; got -3",
    });
    expect((await run(week, first, "--last", first, ...NOW)).exit).toBe(2);
    await expect(run(week, first, "--frozen", "4", ...NOW)).rejects.toMatchObject({
      message: expect.stringContaining("--last"),
    });
  });

  it("prints an overview and a sheet a day for every machine", async () => {
    const folder = join(dirname(first), "week");
    const { exit } = await run(week, first, second, ...NOW, "--print", folder, "--no-pdf");
    expect(exit).toBe(1);
    const overview = readFileSync(join(folder, "index.html"), "utf8");
    expect(overview).toContain("What would save second");
    const sheet = readFileSync(join(folder, "station", "Brake-2.html"), "utf8");
    expect(sheet).toContain("Mon 2026-03-02");
    for (const part of ["A", "B", "C"]) expect(sheet).toContain(`<td class="short">${part}</td>`);
    expect(sheet).toContain("lock out before reaching behind");
    // What to bend, of which sheet, how hard, and which steps decide.
    for (const words of ["<th", "Force", "tons", "A1011 CS 0.120 in", "\u25c6", ">Line<"])
      expect(sheet).toContain(words);
    const cut = readFileSync(join(folder, "station", "Shear-1.html"), "utf8");
    expect(cut).toMatch(/blank [\d.]+ in x 6 in/);
  });
});

describe("a day sheet", () => {
  it("warns of a line that is held, in the words of its check", async () => {
    const file = "sample-workbooks/week/school-lockers.xlsx";
    const { plan } = weekJob("school-lockers", bookOf(readWorkbook(readFileSync(file)))).job as WeekJob;
    const held = plan.lines.filter((each) => each.isQuoted && releaseOf(each) === "HOLD");
    expect(held.length).toBeGreaterThan(0);
    const folder = join(dirname(write("held.txt", "")), "held");
    await run(week, join(process.cwd(), file), "--now", "2026-05-18T07:00", "--print", folder, "--no-pdf");
    const sheets = readdirSync(join(folder, "station")).map((name) =>
      readFileSync(join(folder, "station", name), "utf8"),
    );
    for (const { part, findings } of held) {
      const [worst] = problemsSay(findings, plan.shop.system);
      expect(
        sheets.filter((sheet) => sheet.includes(`HOLD school-lockers, ${part}: ${worst}`)).length,
        part,
      ).toBeGreaterThan(1);
    }
  });
});

describe("what a day sheet says of a line", () => {
  it("is its description, its holes at the drill, the count a piece at a bench, and the sheets at the shear", async () => {
    const more = ["Description", "Holes", "Hole diameter", "Hole distance", "Operations"];
    const row = [...line("G", 40), null, null, "Gusset", 4, 0.25, 1.5, "Weld 3"];
    const file = book("gusset", [[...BILL, ...more], row]);
    const folder = join(dirname(file), "gusset");
    await run(week, file, ...NOW, "--print", folder, "--no-pdf");
    const sheet = (name: string) => readFileSync(join(folder, "station", `${name}.html`), "utf8");
    expect(sheet("Drill")).toContain(">Gusset; 4 holes 0.25 in<");
    expect(sheet("Weld")).toContain(">Gusset; 3 a piece<");
    const { plan } = weekJob("gusset", bookOf(readWorkbook(readFileSync(file)))).job as WeekJob;
    const cuts = plan.groups[0]!.plan!.patterns;
    expect(sheet("Shear-1")).toMatch(new RegExp(`blank [^<]*, of [^<]+ \\(sheets? 1[^<]* of ${cuts.length}\\)<`));
  });
});

describe("what is wrong is named and the rest is planned", () => {
  const good = book("good", bill(line("A", 20)));

  it("a line without a quote: its reason, the count beside its job, and exit 1", async () => {
    const part = book("part", bill(line("A", 20), line("B", 20).with(1, "cheese")));
    const { exit, jobs, faults, take } = await asked(part);
    expect([exit, jobs[0]!.without_lines, take]).toEqual([1, 1, null]);
    expect(faults.at(-1)).toMatch(/^part, B: not planned, no quote: .*"Material".*cheese/);
    const { text } = await run(week, good, "--take", part, ...NOW);
    expect(text).toMatch(/^2 jobs, \d+ steps from 2026-03-02 07:00, without 1 line:/);
    expect(text).toMatch(/\npart \(new\) .* without 1 line\n/);
    expect(text).toMatch(/at the earliest,\s+without 1 line/);
  });

  it("a workbook of a later release, one without a bill, and a file that is not a workbook", async () => {
    const later = write("later.xlsx", workbook([["Schema", SCHEMA + 1]], bill(line("A", 20)), ...ONE_DIE));
    const bare = write("bare.xlsx", workbook(...ONE_DIE));
    const text = write("text.xlsx", "no workbook");
    const { faults, jobs, exit } = await asked(good, later, bare, text);
    expect(exit).toBe(2);
    expect(jobs.map(({ job }) => job)).toEqual(["good"]);
    expect(faults).toEqual([
      `good: of an earlier release (schema 1); shop upgrade brings it up to date`,
      `later: not planned: of a later release (schema ${SCHEMA + 1}, this one reads ${SCHEMA})`,
      expect.stringContaining("bare: not planned: no bill"),
      expect.stringContaining("text.xlsx"),
    ]);
  });

  it("a line marked twice, a mark nobody understands, a due date in the past", async () => {
    const twice = book("twice", bill(line("A", 20, "Shear; Shear"), line("B", 20, "Oven")), dueOn("2026-02-20"));
    const { faults, jobs } = await asked(twice);
    expect(jobs[0]!.finish).not.toBeNull();
    expect(faults.slice(1)).toEqual([
      expect.stringMatching(/^twice, A \(row \d+, column "Done"\): "Shear" is marked twice/),
      expect.stringMatching(/^twice, B \(row \d+, column "Done"\): "Oven" is left out/),
      expect.stringContaining("twice: due 2026-02-20T23:59:59, which is past"),
    ]);
  });

  it("each bad mark by its row and column, while the others of its line and job count", async () => {
    const marked = book(
      "marked",
      bill(
        line("A", 20, "Shear", "Brake soon 12:00"),
        line("B", 20, "Oven"),
        line("C", 20, "Shear", "Brake 2026-02-30 07:00"),
        line("D", 20, "", "Shear 2026-03-02 06:45"),
      ),
    );
    const { faults, steps } = await asked(marked);
    expect(faults.slice(1).map((fault) => fault.replace(/row \d+/, "row"))).toEqual([
      'marked: bill row column "Started" must be a station and a time, such as "Brake 2026-05-18 06:30"; got "Brake soon 12:00"; this mark is left out',
      'marked: bill row column "Started" must be a station and a time, such as "Brake 2026-05-18 06:30"; got "2026-02-30 07:00"',
      'marked, B (row, column "Done"): "Oven" is left out, the line has no work there; nearest is "Shear"',
    ]);
    const rows = faults.slice(1).map((fault) => Number(/row (\d+)/.exec(fault)![1]));
    expect([rows[1]! - rows[0]!, rows[2]! - rows[0]!]).toEqual([2, 1]);
    const at = (part: string) => steps.filter((each) => each.part === part).map(({ station }) => station);
    expect([at("A"), at("B"), at("C")]).toEqual([["Brake"], ["Shear", "Brake"], ["Brake"]]);
    expect(steps.filter(({ started }) => started).map(({ part }) => part)).toEqual(["D"]);
  });

  it("a mark by its machine, one by another machine, one that other marks leave behind, and no mark", async () => {
    const { steps: free } = await asked(good);
    const [shear, brake] = ["Shear", "Brake"].map((name) => free.find(({ station }) => station === name)!.machine);
    const marked = book(
      "machines",
      bill(
        line("A", 20, shear!, `${brake} 2026-03-02 06:50`),
        line("B", 20, "Brake", "Shear 2026-03-02 06:00"),
        line("C", 20, "no"),
        line("D", 20, "Shear, Brake"),
      ),
    );
    const { faults, steps } = await asked(marked);
    const at = (part: string) => steps.filter((each) => each.part === part).map((each) => each.station);
    expect(["A", "B", "C", "D"].map(at)).toEqual([["Brake"], [], ["Shear", "Brake"], ["Shear", "Brake"]]);
    expect(steps.filter(({ started }) => started).map(({ machine }) => machine)).toEqual([brake]);
    expect(
      faults.filter((fault) => fault.startsWith("machines, ")).map((fault) => fault.replace(/ \(.*?\)/, "")),
    ).toEqual([
      expect.stringMatching(/^machines, B: "Shear" counts as done, since work that comes after it/),
      'machines, D: "Shear, Brake" is left out; separate stations by ";"',
    ]);
  });

  it("the headline is without a job that cannot be read, in words and on paper", async () => {
    const torn = write("torn.xlsx", "no workbook");
    const folder = join(dirname(good), "headline");
    const { text, exit } = await run(week, good, torn, ...NOW, "--print", folder, "--no-pdf");
    expect(exit).toBe(2);
    expect(text.split("\n")[0]).toContain(", without 1 job (torn):");
    expect(readFileSync(join(folder, "index.html"), "utf8")).toContain("without 1 job (torn)");
  });

  it("a bill taken that is there already, or is done, says so", async () => {
    const same = await run(week, good, ...NOW, "--take", good);
    expect(same.text).toContain("good cannot be taken: same as good.");
    const done = book("done", bill(line("Z", 7, "yes")));
    expect((await run(week, good, ...NOW, "--take", done)).text).toContain("done cannot be taken: nothing open.");
    const latest = (await run(week, good, done, ...NOW, "--latest")).text;
    expect(latest).toMatch(/nobody later:\n(?: {2}.*\n)* {2}done: nothing open/);
  });

  it("a workbook given twice", async () => {
    const { faults, jobs } = await asked(good, good);
    expect(jobs.length).toBe(1);
    expect(faults[0]).toBe("a workbook is given twice; it is planned once");
  });

  it("shifts nobody has, and shops that differ", async () => {
    const closed = ONE_DIE.map((table) =>
      table[0]![0] === "Day"
        ? [
            ["Day", "Start", "End"],
            ["2026-05-25", null, null],
          ]
        : table,
    );
    const shut = book("shut", bill(line("B", 20)), JOB, closed);
    const slow = ONE_DIE.map((table) =>
      table[0]![0] === "Station" ? table.map((row) => (row[0] === "Brake" ? row.with(2, 99) : row)) : table,
    );
    const other = book("other", bill(line("C", 20)), JOB, slow);
    const { faults, jobs } = await asked(good, shut, other);
    expect(jobs.map(({ finish }) => finish === null)).toEqual([false, false, false]);
    expect(faults).toContain("shut: its calendar has no shift; it is planned in the shop's");
    expect(faults.some((fault) => fault.startsWith("other: stations differ from those of good"))).toBe(true);
    const ruled = await asked(good, shut, other, "--shop", good);
    expect(ruled.faults.some((fault) => fault.includes("differ"))).toBe(false);
    const alone = await run(week, shut, ...NOW);
    expect([alone.exit, alone.text]).toEqual([2, ""]);
    expect(alone.notes).toContain("calendar must be one with a shift");
  });

  it("nothing at all", async () => {
    const missing = await run(week, join(dirname(good), "none.xlsx"), ...NOW);
    expect([missing.exit, missing.text]).toEqual([2, ""]);
    await expect(run(week, ...NOW)).rejects.toMatchObject({ message: expect.stringContaining("week takes JOB.xlsx") });
    await expect(run(week, good, "--now", "soon")).rejects.toMatchObject({
      message: expect.stringContaining("--now must be"),
    });
  });
});
