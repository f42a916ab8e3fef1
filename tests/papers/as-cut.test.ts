/** Grain and flat of a line on its paper, held against how its blanks are really cut. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { cutsInOrder } from "../../src/bill/cut/cuts-in-order.ts";
import type { LinePlan } from "../../src/bill/lines/plan-line.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { bookOf } from "../../src/job/workbook-book.ts";
import { flatDrawing } from "../../src/papers/line-drawings.ts";
import { printOf } from "../../src/papers/papers.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";
import { mm } from "../../src/units/quantity.ts";
import { showPlain } from "../../src/units/show.ts";
import { toInternal } from "../../src/units/system.ts";

const book = bookOf(readWorkbook(readFileSync("sample-workbooks/stage-job.xlsx")));
const { plan } = jobPlan(book)!;
const HAIR = 1; // mm that the shear's grid may add to a blank

const sizes = (a: number, b: number): string =>
  [Math.max(a, b), Math.min(a, b)].map((side) => showPlain(mm(side), plan.shop.system)).join(" x ");
/** The side of the blank that lies along the rolling direction, of every piece of every pattern and sheet. */
const lying = new Map(plan.lines.flatMap(({ plan }) => (plan ? [[plan, new Set<"length" | "width">()] as const] : [])));
/** Sizes as they come off the shear, by line. */
const cutTo = new Map<LinePlan, Set<string>>();
for (const group of plan.groups) {
  const see = (name: string, along: number) => {
    const line = group.lineOf.get(name)!;
    const { length, width } = line.blank;
    if (Math.abs(length - width) > HAIR)
      lying.get(line)!.add(Math.abs(along - length) <= Math.abs(along - width) ? "length" : "width");
  };
  for (const { row } of group.plan ? cutsInOrder(group, plan.shop, []) : []) {
    const pattern = group.plan!.patterns.find(({ id }) => id === row.pattern)!;
    const isLong = group.sheetOf.get(pattern.stock)!.grain === "long";
    for (const { blank, w, h } of row.cuts.flatMap(({ falls, stays }) => [...falls, stays]))
      if (blank !== undefined) {
        see(blank, isLong ? w : h);
        const line = group.lineOf.get(blank)!;
        cutTo.set(line, (cutTo.get(line) ?? new Set()).add(sizes(w, h)));
      }
  }
  for (const { stock, placed } of group.jet)
    for (const { blank, w, h } of placed) see(blank, group.sheetOf.get(stock)!.grain === "long" ? w : h);
}

it("an arrow of the grain stands only where every blank is cut so, and nowhere else is a bend said to lie by it", () => {
  const seen = { arrow: 0, free: 0, bothWays: 0 };
  const wrong = [...lying].flatMap(([line, sides]) => {
    const drawn = flatDrawing(line, plan.shop.system);
    if (!drawn) return [];
    const hasArrow = drawn.svg.includes(">grain<");
    const saysFree = drawn.words.includes("grain as it comes") && drawn.svg.includes("Grain as it comes.");
    seen[hasArrow ? "arrow" : "free"]++;
    if (sides.size === 2) seen.bothWays++;
    // Bend lines lie across the blank's length, save those of a blank that is bent in the second direction alone.
    const isTurned = line.strips.length > 0 && line.line.main.angles.length === 0;
    const across = isTurned ? "width" : "length";
    const said = /(?:lines across the grain|along its length)\./.test(drawn.svg)
      ? across
      : /(?:lines along the grain|along its width)\./.test(drawn.svg)
        ? across === "length"
          ? "width"
          : "length"
        : undefined;
    const isRight = hasArrow
      ? said !== undefined && [...sides].every((side) => side === said)
      : said === undefined && saysFree;
    return isRight ? [] : [`${line.line.part}: ${said ?? "no arrow"}, cut ${[...sides].join(" and ")}`];
  });
  expect(wrong).toEqual([]);
  expect(Math.min(seen.arrow, seen.free, seen.bothWays)).toBeGreaterThan(0);
});

it("the flat on a set-up sheet and the one of BILL.BLANKS are the size that comes off the shear, to the last digit", () => {
  const about = { name: "x", version: "1", edition: "e", date: "2026-03-01", stale: 0, missing: [] };
  const papers = printOf(plan, about).papers;
  const sheet = book.find(({ name }) => name === "Blanks")!.rows;
  const [head, ...rows] = sheet.slice(sheet.findIndex(([first]) => first === "Part"));
  const column = (name: string) => head!.findIndex((heading) => String(heading).startsWith(name));
  const internal = (cell: unknown) => toInternal<"mm">(Number(cell), "length", plan.shop.system);
  const listed = rows.map((row) => ({
    part: row[column("Part")],
    flat: sizes(internal(row[column("Length")]), internal(row[column("Width")])),
  }));
  const differ = [...cutTo].flatMap(([line, cut]) => {
    const page = papers.find(({ title }) => title === `Set-up: ${line.line.part}`)!.pages[0]!;
    const [, long, short] = /<dt>Flat, in<\/dt><dd>([\d.]+) x ([\d.]+)/.exec(page)!;
    const said = [Number(long), Number(short)].sort((a, b) => b - a).join(" x ");
    return [...cut, ...listed.filter(({ part }) => part === line.line.part).map(({ flat }) => flat)]
      .map((size) => size.split(" x ").map(Number).join(" x "))
      .filter((size) => size !== said)
      .map((size) => `${line.line.part}: ${said}, cut ${size}`);
  });
  expect(Math.min(cutTo.size, listed.length)).toBeGreaterThan(50);
  expect(differ).toEqual([]);
}, 60_000);
