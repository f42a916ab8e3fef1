/** The built pane in a real Chromium, by clicking, with the stand-in where Excel's objects would be. */

import { mkdirSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { jobPlan } from "../../../../src/job/job-plan.ts";
import { bookOf } from "../../../../src/job/workbook-book.ts";
import { lineList } from "../../../../src/papers/line-list.ts";
import { readWorkbook } from "../../../../src/sheet/workbook/read-workbook.ts";
import { isCellError } from "../../../../src/units/cell.ts";
import { axeFindings } from "../../axe-findings.ts";
import { launchedBrowser } from "../../excel/browser.ts";
import { releasedAddIn } from "../../excel/built.ts";
import { served } from "../../excel/served.ts";
import { standInScript } from "./stand-in-script.ts";

/** The page answers when it has calculated, however busy the machine is. */
const soon = (read: () => unknown) => expect.poll(read, { timeout: 15_000 });

let browser: Browser;
let server: Awaited<ReturnType<typeof served>>;
let folder: string;
let script: string;
beforeAll(async () => {
  folder = await releasedAddIn();
  server = await served(folder);
  browser = await launchedBrowser();
  const book = bookOf(readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"))));
  script = await standInScript(
    Object.fromEntries(
      book.map(({ name, rows }) => [
        name,
        rows.map((row) => row.map((cell) => (isCellError(cell) ? cell.code : cell))),
      ]),
    ),
  );
}, 300_000);
afterAll(async () => {
  await browser.close();
  await server.close();
});

const OFFICE = `globalThis.violations = [];
  addEventListener("securitypolicyviolation", (event) => violations.push(event.effectiveDirective));
  globalThis.Office = { onReady: () => Promise.resolve({ host: "Excel" }) };`;

async function inExcel(
  name: string,
  look: { width?: number; colorScheme?: "light" | "dark" },
  check: (page: Page) => Promise<void>,
) {
  const { width = 360, colorScheme = "light" } = look;
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
  const page = await context.newPage();
  page.setDefaultTimeout(8000);
  const problems: string[] = [];
  page.on("pageerror", (problem) => problems.push(String(problem)));
  await page.addInitScript(script);
  await page.route("https://appsforoffice.microsoft.com/**", (route) =>
    route.fulfill({ contentType: "text/javascript", body: OFFICE }),
  );
  await page.goto(`${server.origin}/taskpane.html`);
  await page.getByRole("button", { name: "Freeze" }).waitFor();
  try {
    await check(page);
    const shots = process.env["SCREENSHOTS"];
    if (shots) {
      mkdirSync(shots, { recursive: true });
      await page.screenshot({ path: `${shots}/pane-${name}.png` });
    }
    expect(problems).toEqual([]);
    expect(await page.evaluate("violations")).toEqual([]);
  } finally {
    await context.close();
  }
}
const said = (page: Page) => page.locator("#said").textContent();
const select = (page: Page, sheet: string, row: number, column: number) =>
  page.evaluate(
    ([s, r, c]) => (globalThis as never as { fake: { select(...a: unknown[]): Promise<void> } }).fake.select(s, r, c),
    [sheet, row, column] as const,
  );
const fake = <T>(page: Page, expression: string) => page.evaluate(`fake.${expression}`) as Promise<T>;

describe("the pane beside a workbook", () => {
  it("draws and checks the line that is selected, as the selection moves", () =>
    inExcel("selected", {}, async (page) => {
      await select(page, "Parts", 4, 2);
      await soon(() => page.locator(".line h2").textContent()).toContain("DF-01");
      await soon(() => page.locator(".line svg").count()).toBeGreaterThanOrEqual(3);
      await select(page, "Parts", 12, 0);
      await soon(() => page.locator(".line h2").textContent()).toContain("DF-09");
      expect(await page.locator(".line .badge").textContent()).toContain("STOP");
      await select(page, "Parts", 0, 0);
      await soon(() => page.locator(".hint").textContent()).toContain("Select a line");
    }));

  it("counts the lines as the plan does; a number filters them, and a line that is clicked is selected in Excel", () =>
    inExcel("counters", {}, async (page) => {
      const book = bookOf(readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"))));
      const { plan, table } = jobPlan(book)!;
      const lines = lineList(plan);
      const stops = lines.filter(({ status }) => status === "stop");
      const stop = page.locator(".counters .stop");
      await soon(() => stop.locator("b").textContent()).toBe(String(stops.length));
      await stop.click();
      expect(await page.locator(".job-lines li b").allTextContents()).toEqual(stops.map(({ part }) => part));
      await page.locator(".job-lines li button").nth(1).click();
      await soon(() => page.locator(".line h2").textContent()).toContain(stops[1]!.part);
      expect(await fake(page, "active")).toEqual({
        sheet: "Parts",
        row: table.top + stops[1]!.row - 1,
        column: table.left,
      });
      await page.locator(".counters .late").click();
      await soon(() => page.locator(".counters .late b").textContent()).toMatch(/^\d+$/);
      await page.locator(".counters .late").click();
      await soon(() => page.locator(".job-lines li").count()).toBe(0);
    }));

  it("inserts a function's example by a click", () =>
    inExcel("insert", {}, async (page) => {
      await select(page, "Parts", 90, 3);
      await page.getByLabel("What do you want to know?").fill("setback");
      await page.locator("summary").first().click();
      await page.getByRole("button", { name: "Insert here" }).click();
      await soon(() => said(page)).toContain("Inserted in Parts!R91C4");
      expect(await fake(page, 'at("Parts", 90, 3).formula')).toContain("=");
    }));

  it("repairs and freezes by a click, and starts a bill only where there is none", () =>
    inExcel("repaired", {}, async (page) => {
      await fake(
        page,
        'sheet("Parts").cells.set("95,0", { formula: "=_xldudf_SHOP_BEND_SETBACK(1,1,90)", value: "#NAME?" })',
      );
      await page.getByRole("button", { name: "Repair formulas" }).click();
      await soon(() => said(page)).toBe("1 formulas entered again.");
      expect(await fake(page, 'at("Parts", 95, 0).value')).toBe(0.2);
      await page.getByRole("button", { name: "Freeze" }).click();
      await soon(() => said(page)).toContain("Parts frozen");
      expect(await fake(page, 'at("Parts frozen", 95, 0).formula')).toBe(0.2);
      await page.getByRole("button", { name: "Stuck? Recalculate all" }).click();
      await soon(() => said(page)).toContain("being calculated again");
      await select(page, "Parts", 95, 0);
      await page.getByRole("button", { name: "Explain this cell" }).click();
      await soon(() => said(page)).toContain("nothing to explain");
      await page.getByRole("button", { name: "Check this Excel" }).click();
      await soon(() => said(page)).toContain("passes blank cells"); // this stand-in answers 0.2 to everything
      await page.getByRole("button", { name: "Start a bill" }).click();
      await soon(() => said(page)).toContain("nothing was changed");
    }));

  it.each([
    ["narrow-light", { width: 320, colorScheme: "light" }],
    ["narrow-dark", { width: 320, colorScheme: "dark" }],
    ["zoomed", { width: 180, colorScheme: "light" }], // 360 px at 200 %
  ] as const)("%s: nothing is clipped, and axe-core finds nothing serious", (name, look) =>
    inExcel(name, look, async (page) => {
      await select(page, "Parts", 12, 0);
      await soon(() => page.locator(".line svg").count()).toBeGreaterThanOrEqual(3);
      const clipped = await page.evaluate(() =>
        [...document.querySelectorAll("body *")]
          .filter((one) => !(one instanceof SVGElement) || one.tagName === "svg")
          .filter((one) => one.getBoundingClientRect().right > innerWidth + 0.5)
          .map((one) => `${one.tagName} ${one.textContent!.slice(0, 30)}`),
      );
      expect(clipped).toEqual([]);
      const faults = await axeFindings(page, "serious");
      expect(faults).toEqual([]);
    }),
  );

  it("all of it weighs at most 200 KB gzip", () => {
    const weight = (file: string) => gzipSync(readFileSync(`${folder}/${file}`)).length;
    const all = ["taskpane.html", "pane.css", "functions.js", "pane.js"].map(weight);
    expect(all.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(200_000);
  });
});
