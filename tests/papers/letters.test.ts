/**
 * The pack of the sample as it comes out of the printer: how many sheets, letters that can be read at arm's length, and what
 * an operator who has nothing but its words can write down.
 */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { hitsOf } from "../../src/bill/lines/bent-strip.ts";
import { releaseOf } from "../../src/bill/release.ts";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { print } from "../../src/hosts/command-line/print.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { bookOf } from "../../src/job/workbook-book.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";
import { letterSizes } from "./pdf-letters.ts";
import { pdfPages } from "./pdf-text.ts";

/** The owner's own measure of what a paper may hold. */
const [LEAST_PT, MOST_PAGES] = [7.5, 140];

const home = mkdtempSync(join(tmpdir(), "letters-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));
let pdf: Buffer;
let pages: string[][];
beforeAll(async () => {
  const quiet = { out: () => undefined, note: () => undefined, input: async () => "", interactive: false };
  await print(["sample-workbooks/stage-job.xlsx", join(home, "papers")], {
    functions: shopFunctions,
    version: "0.0.0",
    ...quiet,
  });
  pdf = readFileSync(join(home, "papers", "pack.pdf"));
  pages = pdfPages(pdf);
}, 180_000);

it("no letter of any paper is under 7.5 pt on the sheet", () => {
  const letters = letterSizes(pdf);
  expect(letters.length).toBeGreaterThan(60);
  expect(letters.flat().length).toBeGreaterThan(5000);
  expect(letters.flat().reduce((least, size) => Math.min(least, size))).toBeGreaterThanOrEqual(LEAST_PT - 0.01);
});

it("the pack of the sample is at most 140 sheets of paper", () => {
  expect(pdf.toString("latin1").match(/\/Type ?\/Page\b/g)?.length).toBeLessThanOrEqual(MOST_PAGES);
});

it("a held line without an order says so on one sheet, with nothing that could be taken for its hits", () => {
  const held = jobPlan(bookOf(readWorkbook(readFileSync("sample-workbooks/stage-job.xlsx"))))!.plan.lines.filter(
    (line) => releaseOf(line) === "HOLD" && line.plan!.strips.some(({ order }) => !order.feasible),
  );
  expect(held.length).toBeGreaterThan(0);
  for (const { part } of held) {
    const own = pages.filter(([first]) => first!.trim().startsWith(part));
    expect(own).toHaveLength(1);
    expect(own[0]!.join("\n")).toContain("no hits, stops or depths are given");
    expect(own[0]!.join("\n")).not.toMatch(/Back gauge, in|Depth, in/);
  }
});

/** Five parts of different kinds: one bend with holes, a channel, one that is turned, angles that are not square, a plate of 1/4. */
const FIVE = ["DF-01", "DF-04", "LC-05", "RT-07", "WW-04"];

it.each(FIVE)("flat, order, angles and settings of %s can be written down from the words alone", (part) => {
  const lines = pages.find(([first]) => first!.startsWith(part) && !first!.includes("hit by hit"))!;
  const { line, blank, strips } = jobPlan(
    bookOf(readWorkbook(readFileSync("sample-workbooks/stage-job.xlsx"))),
  )!.plan.lines.find((one) => one.part === part)!.plan!;
  const inches = (value: number) => value / 25.4;

  const flat = lines
    .flatMap((words) => /^\s*([\d.]+) x ([\d.]+)\s/.exec(words) ?? [])
    .slice(1, 3)
    .map(Number);
  expect(lines.some((words) => words.includes("Flat, in"))).toBe(true);
  expect(flat[0]).toBeCloseTo(inches(blank.length), 3);
  expect(flat[1]).toBeCloseTo(inches(blank.width), 3);

  // Hit, bend, turned by (with the angle inside where it is not square), bend to, back gauge (with 1/64), gauge off, move, depth.
  const HIT =
    /^\s*(\d+) +(\d+) +([\d.]+)°(?: down)?(?: +([\d.]+)° inside)? +([\d.]+)° +([\d.]+)(?: +(\d+ )?\d+\/\d+)? +(edge \d|(?:leaning )?flange \d|round of flange \d) +(drawn side up|drawn side down|as it lies|turn end for end|flip over, same end|flip over, end for end) +([\d.]+)\s*$/;
  const read = lines.flatMap((words) => {
    const found = HIT.exec(words.normalize("NFKC")); // ligatures and blanks that do not break
    return found ? [found] : [];
  });
  const [strip] = strips;
  const hits = hitsOf(strip!);
  expect(read.map(([, hit, bend]) => [Number(hit), Number(bend)])).toEqual(hits.map(({ bend }, i) => [i + 1, bend]));
  read.forEach(([, , , turned, inside, bendTo, gauge, , off, move, depth], i) => {
    const { bend, stop, datum, gaugedEnd, turned: isTurned, flipped } = hits[i]!;
    const { angle } = strip!.part.bends[bend - 1]!;
    expect(Number(turned)).toBe(Math.abs(angle));
    expect(inside === undefined ? 90 : Number(inside)).toBe(180 - Math.abs(angle));
    expect(Math.abs(Number(bendTo) - Math.abs(angle) - strip!.springback[bend - 1]!)).toBeLessThanOrEqual(0.25 + 1e-9);
    expect(Number(bendTo) % 0.5).toBe(0);
    expect(Number(gauge)).toBeCloseTo(inches(stop), 3);
    expect(Number(depth)).toBeCloseTo(inches(strip!.depths[bend - 1]!), 3);
    expect(off).toContain(datum.on === "edge" ? `edge ${gaugedEnd === "first" ? 1 : 2}` : `flange ${datum.flange}`);
    expect([move!.includes("end for end"), move!.includes("flip")]).toEqual([isTurned, flipped]);
  });

  // Holes: what the bill has of them, and that the rest is the drawing's.
  const holes = lines.find((words) => words.normalize("NFKC").includes("positions by the drawing"));
  expect(holes !== undefined).toBe(line.holes > 0 || line.holeDistance !== undefined);
  if (line.holes > 0) {
    const [, count, diameter] = /(\d+) holes? ([\d.]+) in/.exec(holes!)!;
    expect([Number(count), Number(diameter) * 25.4]).toEqual([line.holes, expect.closeTo(line.holeDiameter!, 3)]);
  }
});

it("a page of a cut sheet or a set-up never stands without its heading", () => {
  const HEADED =
    /^(Pattern \d+ of \d+, \d+ sheets?: |Set-up \d+ of \d+: |Pull list|[A-Z]{2}-\d\d\b|.*, (Shear \d|waterjet)$|Cut list)/;
  const from = pages.findIndex(([first]) => first!.startsWith("Test strips"));
  expect(from).toBeGreaterThan(60);
  expect(
    pages
      .slice(1, from)
      .filter(([first]) => !HEADED.test(first!.trim()))
      .map(([first]) => first),
  ).toEqual([]);
});
