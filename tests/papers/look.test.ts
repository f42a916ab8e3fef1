/** The papers in a real Chromium: as they print on a letter sheet, and on a telephone at the machine. */

import { mkdirSync, readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { jobPlan } from "../../src/job/job-plan.ts";
import { bookOf } from "../../src/job/workbook-book.ts";
import { type Paper, document as whole } from "../../src/papers/page.ts";
import { printOf } from "../../src/papers/papers.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";
import { axeFindings } from "../hosts/axe-findings.ts";
import { launchedBrowser } from "../hosts/excel/browser.ts";

/** CSS pixels are 1/96 in; a letter sheet less its margins is 191.9 x 258.4 mm. */
const PX_PER_MM = 96 / 25.4;
const SHEET = { width: Math.round(191.9 * PX_PER_MM), height: Math.floor(258.4 * PX_PER_MM) };

let browser: Browser;
/** One for all papers. */
let page: Page;
let made: readonly Paper[];
beforeAll(async () => {
  const book = bookOf(readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"))));
  const { plan, missing } = jobPlan(book)!;
  const about = { name: "stage-job.xlsx", version: "0", edition: "e", date: "2026-01-01", stale: 0, missing };
  made = printOf(plan, about).papers;
  browser = await launchedBrowser();
  page = await browser.newPage();
}, 120_000);
afterAll(() => browser.close());

async function shown(paper: Paper, width: number, media: "print" | "screen", check: (page: Page) => Promise<void>) {
  await page.setViewportSize({ width, height: SHEET.height });
  await page.emulateMedia({ media });
  await page.setContent(whole(paper.title, [paper]));
  await check(page);
  const folder = process.env["SCREENSHOTS"];
  if (folder) {
    mkdirSync(folder, { recursive: true });
    await page.screenshot({ path: `${folder}/paper-${paper.file.replaceAll("/", "-")}-${width}.png` });
  }
}
/** Sheets with many cuts are printed with the long side across. */
async function tooWide(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const [isWide, width] of [
    [true, Math.round(255.4 * PX_PER_MM)],
    [false, SHEET.width],
  ] as const) {
    await page.setViewportSize({ width, height: SHEET.height });
    const over = await page.evaluate(
      (isWide) =>
        [...document.querySelectorAll("h1, h2, p, li, dd, dt, td, th, figure, svg")]
          .filter((one) => (one.closest(".across") !== null) === isWide)
          .filter((one) => one.getBoundingClientRect().right > innerWidth + 1)
          .map((one) => `${one.tagName} ${one.textContent!.slice(0, 30)}`),
      isWide,
    );
    found.push(...over);
  }
  return found;
}

describe("the papers", () => {
  it("every page of a set-up and of a line fits on one sheet of paper", async () => {
    const wanted = made.filter(({ file }) => file.startsWith("setup/") || file.startsWith("tools/"));
    const over: string[] = [];
    for (const paper of wanted)
      await shown({ ...paper, title: "" }, SHEET.width, "print", async (page) => {
        const heights = await page.evaluate(() =>
          [...document.querySelectorAll(".page")].map((one) => one.getBoundingClientRect().height),
        );
        expect(heights).toHaveLength(paper.pages.length);
        if (heights.some((height) => height > SHEET.height)) over.push(`${paper.file} ${Math.max(...heights)}`);
      });
    expect(over).toEqual([]);
  }, 240_000);

  it("nothing runs off the paper, and axe-core finds nothing serious, in one paper of every kind", async () => {
    // DF-09 has two bends, LC-05 more, which go on a sheet of their own.
    const shownOf = ["setup/DF-09.html", "setup/LC-05.html", "tools/1.html"];
    const papers = made.filter(({ file }) => !file.includes("/") || shownOf.includes(file));
    expect(papers.length).toBeGreaterThan(shownOf.length);
    for (const paper of papers)
      await shown(paper, SHEET.width, "print", async (page) => {
        expect(await tooWide(page), paper.file).toEqual([]);
        const faults = await axeFindings(page, "serious");
        expect(faults, paper.file).toEqual([]);
      });
  }, 240_000);

  it("a set-up sheet is read on a telephone without scrolling sideways", () =>
    shown(made.find(({ file }) => file === "setup/DF-09.html")!, 320, "screen", async (page) => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
      expect(await page.locator("svg").count()).toBe(1);
    }));
});
