/** What the papers of a bill with every kind of line say, held against its plan: they decide nothing. */

import { beforeAll, describe, expect, it } from "vitest";
import { offcutsOf } from "../../src/bill/cut/offcuts.ts";
import { dayAndTime } from "../../src/bill/day.ts";
import { hitsOf } from "../../src/bill/lines/bent-strip.ts";
import { calendarOf } from "../../src/bill/nouns/calendar.ts";
import type { BillPlan } from "../../src/bill/plan.ts";
import { releaseOf } from "../../src/bill/release.ts";
import { problemsSay } from "../../src/bill/says.ts";
import { cutList } from "../../src/calc/cutting/cut-list.ts";
import { type Instant, instant } from "../../src/calc/schedule/calendar.ts";
import { finish } from "../../src/calc/schedule/finish.ts";
import { seconds } from "../../src/calc/time/seconds.ts";
import { SHOP_TABLES } from "../../src/cells/example/invented-shop.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { escapeMarkup } from "../../src/papers/drawing/svg.ts";
import { jobFigures } from "../../src/papers/job-figures.ts";
import { lineReport } from "../../src/papers/line-report.ts";
import { document } from "../../src/papers/page.ts";
import { type Print, printOf } from "../../src/papers/papers.ts";
import type { CellMatrix } from "../../src/units/cell.ts";
import { showReading } from "../../src/units/show.ts";
import { centsOf, rowsIn } from "./read-paper.ts";

const HEADER = [
  "Part",
  "Description",
  "Material",
  "Thickness",
  "Quantity",
  "Width",
  "Flanges",
  "Bend angles",
  "Cross flanges",
  "Cross angles",
  "Drawing radius",
  "Accepted",
  "Area",
  "Revision",
  "Holes",
  "Hole diameter",
];
const BILL: CellMatrix = [
  HEADER,
  ["ANGLE", "shelf angle", "A1011 CS", "11 ga", 40, 12, "2; 3", "90", null, null, null, null, "Deck", "B", 4, 0.5],
  ["ASKS", "asks for a radius", "A1011 CS", "11 ga", 10, 6, "2; 3", "90", null, null, 1.2, null, "Deck"],
  ["TOLD", "asked and accepted", "A1011 CS", "11 ga", 10, 6, "2; 3", "90", null, null, 1.2, "J. Poe, Mar 2", "Roof"],
  ["LONG", "longer than the bed", "A36", "1/4", 4, 130, "3; 3", "90", null, null, null, null, "Deck"],
  ["THICK", "for the waterjet", "304", "3/8", 3, 8, "6", null, null, null, null, null, "Roof", "rev. C", 2, 0.75],
  ["PLATE", "flat", "A1011 CS", "11 ga", 6, 5, "9", null, null, null, null, null, "Roof"],
  ["ZED", "", "A1011 CS", "11 ga", 6, 8, "2; 3; 2", "90; -90", null, null, null, null, "Roof"],
  ["TRAY", "", "A1011 CS", "14 ga", 4, null, "1.5; 8; 1.5", "90; 90", "1.5; 6; 1.5", "90; 90", null, null, "Roof"],
  ["WRONG", "", "steel", "1/4", 2, 8, "2; 3", "90", null, null, null, null, "Roof"],
  ["ABSENT", "", "A36", "2", 2, 8, "4", null, null, null, null, null, "Roof"],
];
const PLATE_FOR_THE_WATERJET = ["Stainless 3/8", "304", "3/8", 96, 48, null, 1190, 5, 0.25];
const JOB: CellMatrix = [
  ["Job", "Entry"],
  ["Job name", "Autumn tour"],
  ["Customer", "Harbor Stage"],
  ["Quote", "Q-117"],
  ["Start", "2026-03-02 07:00"],
  ["Due", "2026-03-20"],
  ["Currency", "USD"],
];
const BOOK = [
  { name: "Parts", rows: BILL },
  { name: "Job", rows: JOB },
  ...SHOP_TABLES.map(({ name, headers, rows }) => ({
    name,
    rows: [[...headers], ...rows.map((row) => [...row]), ...(headers[0] === "Stock" ? [PLATE_FOR_THE_WATERJET] : [])],
  })),
];

let plan: BillPlan;
let made: Print;
beforeAll(() => {
  const job = jobPlan(BOOK)!;
  plan = job.plan;
  made = printOf(plan, {
    name: "job.xlsx",
    version: "1",
    edition: "e",
    date: "2026-03-01",
    stale: 0,
    missing: job.missing,
  });
}, 60_000);
const paper = (file: string): string => made.papers.find((one) => one.file === file)!.pages.join("\n");
const setUp = (part: string): string => paper(`setup/${part}.html`);
const line = (part: string) => plan.lines.find((one) => one.part === part)!;
/** A part without the revision of its drawing. */
const unrevised = (cell: string): string => cell.replace(/ rev \w+$/, "");
const rowsOf = (markup: string, part: string) =>
  rowsIn(markup).filter((row) => row.slice(0, 2).some((cell) => unrevised(cell) === part));

describe("the bill of this test", () => {
  it("has lines of every kind", () => {
    const kinds = plan.lines.map(({ part, status, cutter }) => `${part} ${status} ${cutter ?? "not cut"}`);
    for (const kind of [
      "ANGLE clear shear",
      "ASKS check shear",
      "TOLD check shear",
      "LONG stop not cut",
      "THICK clear waterjet",
      "PLATE clear shear",
      "WRONG stop not cut",
    ])
      expect(kinds).toContain(kind);
    expect(line("ABSENT").isQuoted).toBe(false);
    expect(plan.quoted.length).toBeGreaterThan(5);
  });
});

describe("every paper", () => {
  it("carries the number of the plan on every page", () => {
    for (const { pages } of made.papers) for (const page of pages) expect(page).toContain(`plan ${plan.number}`);
  });

  it("names rows that nobody confirmed from the plate wherever something is set by them, and there alone", () => {
    expect(plan.notFromPlate).not.toEqual([]);
    const naming = made.papers.filter(({ pages }) =>
      pages.some((page) => page.includes("Not confirmed from the plate")),
    );
    const setBy = (file: string) => /^(setup|tools)\/|^(index|quote|cutlist)/.test(file);
    const stopped = plan.lines.filter(({ status }) => status === "stop").map(({ part }) => `setup/${part}.html`);
    const uncut = ["setup/ABSENT.html"];
    expect(naming.map(({ file }) => file)).toEqual(
      made.papers.map(({ file }) => file).filter((file) => setBy(file) && ![...stopped, ...uncut].includes(file)),
    );
    const [punch, die] = [line("ANGLE").plan!.tools!.punch!.name, line("ANGLE").plan!.tools!.die.name];
    expect(setUp("ANGLE")).toMatch(new RegExp(`Not confirmed from the plate: [^.]*\\b${punch}\\b[^.]*\\b${die}`));
    expect(setUp("PLATE")).not.toContain(die);
  });
});

describe("a set-up sheet", () => {
  const mark = (part: string) => /<span class="status">(\w+)</.exec(setUp(part))![1];
  it.each([
    ["ANGLE", "CLEAR"],
    ["ASKS", "HOLD"],
    ["TOLD", "CHECK"],
    ["LONG", "STOP"],
    ["WRONG", "STOP"],
    ["PLATE", "CLEAR"],
  ])("of %s says %s", (part, wanted) => expect(mark(part)).toBe(wanted));

  it("says every sentence of its line, and names who accepted", () => {
    for (const { part, findings } of plan.lines)
      for (const sentence of problemsSay(findings, "in")) expect(setUp(part)).toContain(escapeMarkup(sentence));
    expect(setUp("TOLD")).toContain("J. Poe, Mar 2");
    expect(setUp("ANGLE")).not.toContain('class="findings"><li>Fix');
  });

  it("of a stopped line sets no gauge; of a plate says that it is only cut; of a wrong one has no drawing", () => {
    expect(setUp("LONG")).toContain("Do not make this part");
    expect(setUp("LONG")).not.toContain('class="stops"');
    expect(setUp("PLATE")).toContain("No bends: cut only.");
    expect(setUp("PLATE")).toContain("<svg");
    expect(setUp("WRONG")).not.toContain("<svg");
  });

  it("has the hits of the plan's own order, with their settings and turns", () => {
    for (const { part, status, plan: planned } of plan.lines) {
      if (!planned || status === "stop") continue;
      // Letters in a second direction, as in the drawing of the flat.
      const named = (bend: number, direction: number) => (direction === 0 ? `${bend}` : "ABCDEF"[bend - 1]);
      const hits = planned.strips.flatMap((strip, direction) =>
        hitsOf(strip).map((hit) => ({ ...hit, name: named(hit.bend, direction) })),
      );
      const shown = rowsIn(/class="stops".*/s.exec(setUp(part))?.[0] ?? "").filter(
        (row) => row.length === 9 && /^\d+$/.test(row[0]!),
      );
      expect(shown.map(([, bend, , , setting]) => [bend, setting!.split(" ")[0]])).toEqual(
        hits.map(({ name, stop }) => [name, showReading(stop, "in").split(" ")[0]]),
      );
      expect(shown.map(([, , , , , , moves]) => moves!.includes("flip over"))).toEqual(
        hits.map(({ flipped }) => flipped),
      );
      expect(shown.map(([, , , , , , moves]) => moves!.includes("end for end"))).toEqual(
        hits.map(({ turned }) => turned),
      );
    }
    // A Z is turned over between its bends, whatever the order: one bend is up and one is down.
    expect(setUp("ZED")).toMatch(/flip over, (same end|end for end)</);
    expect(setUp("ZED")).toMatch(/drawn side (up|down)</);
    expect(setUp("TRAY")).toContain("quarter turn, drawn side up");
  });

  it("shows the radius and the deduction the flat is made with", () => {
    const { bend, blank } = line("ANGLE").plan!;
    const figures = new Map(lineReport(line("ANGLE"), plan).figures);
    // Plane geometry: the flat is both flanges less the deduction.
    expect(Number.parseFloat(figures.get("Flat")!) + Number.parseFloat(figures.get("Deduction")!)).toBeCloseTo(5, 3);
    expect(blank.length + bend!.deduction).toBeCloseTo(5 * 25.4, 9);
    expect(Number.parseFloat(figures.get("Inside radius")!)).toBeCloseTo(bend!.radius / 25.4, 3);
  });
});

describe("what an operator asked", () => {
  it("holes as the bill states them, on the set-up sheet and where they are cut; nothing where there are none", () => {
    expect(setUp("ANGLE")).toContain("4 holes 0.5 in; positions by the drawing");
    expect(setUp("ASKS")).not.toContain("by the drawing");
    for (const [part, words] of [
      ["ANGLE", "4 holes 0.5 in"],
      ["THICK", "2 holes 0.75 in"],
      ["PLATE", ""],
    ] as const)
      expect(rowsOf(paper("cutlist.html"), part).find((row) => row.length === 8)![5]).toBe(words);
  });

  it("a revision where the bill has one, on every paper that names the part", () => {
    for (const file of ["setup/ANGLE.html", "cutlist.html", "load-in.html", "quote.html"])
      expect(paper(file)).toContain("ANGLE rev B");
    expect(setUp("THICK")).toContain("<h1>THICK rev C</h1>");
    expect(setUp("PLATE")).toContain("<h1>PLATE</h1>");
    // At the foot of its sheet too, on a screen and on paper.
    expect(setUp("ANGLE")).toMatch(/"foot-line">[^<]* · ANGLE rev B · [^<]*, plan /);
    expect(document("all", made.papers)).toMatch(/@page foot-\d+ \{ @bottom-left \{ content: "[^"]* · ANGLE rev B · /);
  });

  it("a hold: its word large, why, and who lets it go; nothing of it on a line that may run", () => {
    expect(setUp("ASKS")).toMatch(/class="halt">HOLD<.*asks for radius.*Accepted by/s);
    expect(setUp("TOLD")).not.toContain('class="halt"');
    const held = plan.lines.filter((one) => releaseOf(one) === "HOLD").map(({ part }) => part);
    const rows = rowsIn(paper("cutlist.html")).filter((row) => row.length === 10);
    expect(held).toContain("ASKS");
    for (const part of plan.quoted.map((one) => one.part)) {
      const cut = rows.filter((row) => `${row[5]} ${row[6]}`.includes(` x ${part}`));
      expect(cut.every((row) => row[5]!.includes(`HOLD ${part}`) === held.includes(part))).toBe(true);
    }
    expect(rows.filter((row) => row[5]!.includes("HOLD")).length).toBeGreaterThan(0);
  });

  it("what money is counted in, as the job says it, and a blank where it does not", () => {
    const quote = paper("quote.html");
    expect(quote).toMatch(/>Price each, USD<.*>Price, USD</s);
    const bare = jobPlan(
      BOOK.map((sheet) => (sheet.name === "Job" ? { ...sheet, rows: JOB.slice(0, -1) } : sheet)),
    )!.plan;
    const about = { name: "x", version: "1", edition: "e", date: "2026-03-01", stale: 0, missing: [] };
    const unsaid = printOf(bare, about)
      .papers.find(({ file }) => file === "quote.html")!
      .pages.join("");
    expect(unsaid).toMatch(/<dt>Currency<\/dt><dd>_+</);
    expect(unsaid).not.toMatch(/USD|\$/);
  });

  it("one thing about a time that is past, and the machines of a station that add up to it", () => {
    const index = (date: string) =>
      printOf(plan, { name: "x", version: "1", edition: "e", date, stale: 0, missing: [] }).papers[0]!.pages.join("");
    expect(index("2026-03-20")).toMatch(/every line is in time|late: /);
    expect(index("2026-03-21")).toContain("is past");
    expect(index("2026-03-21")).not.toContain("in time");
    const brake = plan.dates.stations.find(({ station }) => station === "Brake")!;
    expect(brake.machines.length).toBeGreaterThan(0);
    expect(brake.machines.reduce((sum, { load }) => sum + load, 0)).toBeCloseTo(brake.load, 6);
  });

  it("the finish and the latest start of the plan itself: begun then it keeps every date, begun two hours later it does not", () => {
    const begunAt = (start: Instant) =>
      jobPlan(BOOK.map((sheet) => (sheet.name === "Job" ? { ...sheet, rows: beginning(dayAndTime(start)) } : sheet)))!
        .plan.dates;
    const beginning = (start: string): CellMatrix => JOB.map((row) => (row[0] === "Start" ? ["Start", start] : row));
    const { dates } = plan;
    const latest = dates.latestStart();
    if (latest === undefined || latest === "past") throw new Error(`a time was expected; got ${latest}`);
    expect(latest).toBeGreaterThan(plan.shop.job.start!);
    const then = begunAt(latest);
    expect([...then.lines.values()].filter(({ asItIs, due }) => asItIs > due)).toEqual([]);
    const later = begunAt(finish(latest, seconds(2 * 3600), calendarOf(plan.shop.calendar)));
    expect([...later.lines.values()].some(({ lateBy }) => lateBy > 0)).toBe(true);

    expect(later.latestStart()).toBe("past");

    const last = dayAndTime(dates.finish!);
    expect(last).toBe(dayAndTime(instant(Math.max(...[...dates.lines.values()].map(({ asItIs }) => asItIs)))));
    expect(paper("index.html")).toContain(`<dt>Done</dt><dd>${last} `);
    expect(paper("index.html")).toContain(`<dt>Latest start</dt><dd>${dayAndTime(latest)} `);
    expect(jobFigures(plan, "2026-03-01").figures.find(({ name }) => name === "Done")!.value).toBe(last);
    expect(jobFigures(plan, "2026-03-21").figures.find(({ name }) => name === "Done")!.beside).toContain("is past");
  });
});

describe("the cover", () => {
  it("gives the number of the set-up that a line's own sheet names, and hours of one decimal", () => {
    const index = made.papers[0]!.pages.join("");
    const numbered = rowsIn(index).filter((row) => row.length === 4 && /^\w+ \d+$/.test(row[2]!));
    expect(numbered.length).toBeGreaterThan(1);
    for (const [part, , cut] of numbered)
      expect(paper(`setup/${part}.html`)).toContain(`Set-up ${/\d+$/.exec(cut!)![0]} of `);
    const hours = rowsIn(index).filter(
      (row) => row.length === 4 && /^[\d.]+$/.test(row[1]!) && /^[\d.]*$/.test(row[2]!),
    );
    expect(hours.length).toBeGreaterThan(0);
    for (const [, own] of hours) expect(own).toMatch(/^\d+\.\d$/);
  });
});

describe("the cut list", () => {
  it("cuts every quoted piece once, with its extras, and nothing else", () => {
    for (const { part, isQuoted, plan: planned } of plan.lines) {
      const cut = rowsOf(paper("cutlist.html"), part).filter((row) => row.length === 8);
      expect(cut.map((row) => Number(row[4]))).toEqual(isQuoted ? [planned!.blanks] : []);
    }
  });

  it("pulls the sheets of the plan and draws its patterns", () => {
    const pages = made.papers.find(({ file }) => file === "cutlist.html")!.pages;
    const pulled = [...pages[0]!.matchAll(/Pull <strong>(\d+)</g)].map(([, count]) => Number(count));
    expect(pulled).toEqual(plan.groups.map(({ uses }) => uses.reduce((sum, { count }) => sum + count, 0)));
    const patterns = plan.groups.flatMap((group) =>
      (group.plan?.patterns ?? []).map((pattern) => ({ group, pattern })),
    );
    expect(patterns.length).toBeGreaterThan(1);
    patterns.forEach(({ group, pattern }, i) => {
      const page = pages[i + 1]!;
      expect(page.match(/<figure class="plan[" ]/g)).toHaveLength(1);
      expect(page).toContain(`Pattern ${pattern.id}: cut ${pattern.repeats} `);
      const cuts = cutList(group.plan!).filter((row) => row.pattern === pattern.id);
      expect(rowsIn(page).filter((row) => row.length === 10)).toHaveLength(cuts.length);
      for (const { blank, count } of pattern.yields)
        expect(rowsIn(page).find((row) => row.length === 7 && row[1] === blank)![2]).toBe(`${count * pattern.repeats}`);
      // A tag for every offcut of the sheet, on its page alone.
      const own = offcutsOf(plan.groups).filter((offcut) => offcut.group === group && offcut.pattern === pattern.id);
      expect([...page.matchAll(/<p class="tag"><strong>[^:]*: (R\d+)</g)].map(([, tag]) => tag)).toEqual(
        own.map(({ tag }) => tag),
      );
    });
    expect(pages.some((page) => page.includes("waterjet") && page.includes("THICK"))).toBe(true);
  });

  it("lists what is not cut with the reason", () => {
    const left = made.papers.find(({ file }) => file === "cutlist.html")!.pages.at(-1)!;
    for (const { part, isQuoted } of plan.lines) expect(rowsOf(left, part)).toHaveLength(isQuoted ? 0 : 1);
    expect(rowsOf(left, "ABSENT")[0]![1]).toContain("not in Stock");
    expect(rowsOf(left, "WRONG")[0]![1]).toContain("steel");
  });
});

describe("load-in, quote, first pieces and outlines", () => {
  it("the truck is loaded in the plan's order with quoted lines alone", () => {
    const loaded = rowsIn(paper("load-in.html")).filter((row) => row.length === 11);
    expect(loaded.map(([, part]) => unrevised(part!))).toEqual(plan.load.map(({ plan: { line } }) => line.part));
    expect(loaded.map(([order]) => Number(order))).toEqual(plan.load.map((_, i) => i + 1));
    for (const { part, isQuoted } of plan.lines)
      expect(loaded.some((row) => unrevised(row[1]!) === part)).toBe(isQuoted);
  });

  it("the quote's prices are the plan's and add up to its total; the rest says why it has none", () => {
    const all = rowsIn(paper("quote.html"));
    const lines = all
      .filter((row) => row.length === 5 && line(unrevised(row[0]!)))
      .map(([part, ...row]) => [unrevised(part!), ...row]);
    expect(lines.map(([part]) => part)).toEqual(plan.quoted.map(({ part }) => part));
    for (const [part, , , each, price] of lines) {
      const wanted = plan.priceOf(plan.quoted.find((one) => one.part === part)!);
      expect([centsOf(each!), centsOf(price!)]).toEqual([
        Math.round(wanted.unitPrice * 100),
        Math.round(wanted.price * 100),
      ]);
    }
    const total = all.find(([words]) => words === "Total")!;
    const charges = all.filter(([words]) => words === "Minimum charge" || words === "Rush");
    const sum = [...lines, ...charges].reduce((so, row) => so + centsOf(row[4]!), 0);
    expect(centsOf(total[4]!)).toBe(sum);
    expect(centsOf(total[4]!)).toBe(Math.round(plan.money.charges.total * 100));
    const left = plan.lines.length - plan.quoted.length;
    expect(total[1]).toBe(`without ${left} lines`);
    expect(all.filter((row) => row[2]?.startsWith("no quote: "))).toHaveLength(left);
    // Which machines the shop has, and what they are rated, is its own affair.
    const { brakes, dies, punches, shears, waterjets } = plan.shop;
    for (const { name } of [...brakes, ...dies, ...punches, ...shears, ...waterjets])
      for (const row of all) expect(row[2] ?? "").not.toMatch(new RegExp(`\\b${name}\\b`));
    expect(all.find(([part]) => part === "LONG")?.[2]).toBe("no quote: cannot be bent as drawn");
  });

  it("the quote's head is the job's", () => {
    for (const words of ["Quote Q-117", "Harbor Stage", "Autumn tour", "2026-03-02 07:00", "2026-03-20<"])
      expect(paper("quote.html")).toContain(words);
  });

  it("stopped lines have no first piece, no strip and no outline", () => {
    for (const { part, status } of plan.lines)
      expect(setUp(part).includes("First piece: make one")).toBe(status !== "stop");
    expect(paper("test-strip.html")).not.toContain("LONG");
    expect(made.outlines.map(({ file }) => file)).toEqual(plan.quoted.map(({ part }) => `outline/${part}.svg`));
  });

  it("a shop that states nothing to load or price by gets a sentence, not an error", () => {
    const { plan: bare } = jobPlan([{ name: "Parts", rows: BILL }])!;
    const about = { name: "x", version: "1", edition: "e", date: "2026-03-01", stale: 0, missing: [] };
    const papers = new Map(printOf(bare, about).papers.map(({ file, pages }) => [file, pages.join("")]));
    expect(papers.get("quote.html")).toMatch(/No prices: \w+ must be given/);
    expect(papers.get("load-in.html")).toMatch(/No order of loading: .* must be/);
    expect(papers.get("cutlist.html")).toContain("No sheet is cut.");
    // Nobody looked at its bends: it is not clear to run.
    expect(papers.get("setup/ANGLE.html")).toMatch(/>HOLD<.*No tools: Not checked/s);
  });
});
