/** The page for people without Excel, by clicking and typing in a real Chromium. */
import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import axe from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Session } from "../../../src/hosts/view/session.ts";
import { trade } from "../../../src/hosts/view/trade.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { pageFiles } from "../../../src/tools/view/page-files.ts";
import { launchedBrowser } from "../excel/browser.ts";
import { type Look, type OpenedPage, openedPage } from "./opened-page.ts";

const SAMPLE = new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx"));
/** The page answers when it has calculated, however busy the machine is. */
const soon = (read: () => unknown) => expect.poll(read, { timeout: 40_000 });

let browser: Browser;
beforeAll(async () => {
  browser = await launchedBrowser();
}, 120_000);
afterAll(() => browser.close());

async function visit(name: string, look: Look, check: (opened: OpenedPage) => Promise<void>): Promise<void> {
  const opened = await openedPage(browser, SAMPLE, look);
  try {
    await check(opened);
    await opened.shot(name);
    expect(opened.complaints).toEqual([]);
    expect(opened.strangers).toEqual([]);
  } finally {
    await opened.close();
  }
}

/** A cell of the open sheet by its address. */
const cell = (page: Page, column: string, row: number) =>
  page
    .locator(".panel:not([hidden]) .tabulator-row")
    .filter({ has: page.locator(".tabulator-row-header", { hasText: new RegExp(`^\\s*${row}\\s*$`) }) })
    .locator(`[tabulator-field="c${column.charCodeAt(0) - 65}"]`);
async function type(page: Page, column: string, row: number, text: string): Promise<void> {
  await cell(page, column, row).dblclick();
  await page.locator(".tabulator-editing input").waitFor();
  await page.keyboard.press("ControlOrMeta+a");
  await page.keyboard.type(text === "" ? " " : text);
  await page.keyboard.press("Enter");
}
const figure = (page: Page, name: string) =>
  page.locator(`#line dt:text-is("${name}") + dd`).textContent({ timeout: 10_000 });
const status = (page: Page) => page.locator("#line .status").textContent();

/** The status of the bill's first line as its plan says it, with the thickness as it is or typed anew. */
function planned(thickness?: string): string {
  const session = new Session(SAMPLE, trade);
  const sheet = session.firstSheet();
  if (thickness !== undefined) session.edit({ sheet, row: 4, column: 4, typed: thickness });
  return session.look({ sheet, row: 4, column: 0 }).report!.status;
}

describe("a bill without Excel", () => {
  it("an edited thickness changes flat, tons and status at once, beside the grid and on the sheet of answers", () =>
    visit("edited", {}, async ({ page }) => {
      await cell(page, "A", 5).click();
      await soon(() => status(page)).toContain(planned().toUpperCase());
      const before = [await figure(page, "Flat"), await figure(page, "Force")];
      await type(page, "E", 5, "1/4");
      await soon(() => figure(page, "Thickness")).toBe("0.25 in");
      expect(await status(page)).toContain(planned("1/4").toUpperCase());
      const after = [await figure(page, "Flat"), await figure(page, "Force")];
      expect(after[0]).not.toBe(before[0]);
      expect(after[1]).not.toBe(before[1]);
      await page.getByRole("tab", { name: "Answers" }).click();
      await soon(() => cell(page, "F", 9).textContent()).toBe(Number.parseFloat(after[0]!).toFixed(3));
      await cell(page, "A", 9).click();
      await soon(() => page.locator("#line h2").textContent()).toBe("DF-01");
    }));

  it("a wrong entry shows its sentence on the cell and above the grid", () =>
    visit("wrong", {}, async ({ page }) => {
      await type(page, "D", 5, "steel");
      await soon(() => status(page)).toContain("STOP");
      await soon(() => page.locator("#line .sentence").first().textContent()).toMatch(/must be .*; got "steel"/);
      await page.getByRole("tab", { name: "Answers" }).click();
      await soon(() => cell(page, "M", 9).textContent()).toBe("stop");
      const sentence = cell(page, "N", 9);
      await soon(() => sentence.textContent()).toMatch(/"Material" must be .*; got "steel"/);
      await sentence.click();
      await soon(() => page.locator("#content").textContent()).toMatch(/"Material" must be/);
      expect(await cell(page, "F", 10).textContent()).toMatch(/^\d/); // the other lines are right as before
    }));

  it("a calculated cell and a table's header are not typed over, and say why", () =>
    visit("locked", {}, async ({ page }) => {
      await cell(page, "E", 4).dblclick();
      await soon(() => page.getByRole("alert").textContent()).toContain("header of the table Parts");
      await page.getByRole("tab", { name: "Answers" }).click();
      await cell(page, "G", 10).dblclick();
      await soon(() => page.getByRole("alert").textContent()).toContain("filled by the formula in A9");
      await soon(() => page.locator(".tabulator-editing").count()).toBe(0);
    }));

  it("a formula that is typed is refused, and the cell keeps what it had", () =>
    visit("formula", {}, async ({ page }) => {
      await type(page, "C", 5, "=1+1");
      await soon(() => page.getByRole("alert").textContent()).toContain("formulas are changed in Excel");
      expect(await cell(page, "C", 5).textContent()).toBe("48");
    }));

  it("is typed by keyboard alone: arrows, a figure to begin, Enter, Escape", () =>
    visit("keyboard", {}, async ({ page }) => {
      await cell(page, "B", 5).click();
      await page.keyboard.press("ArrowRight");
      await soon(() => page.locator("#address").textContent()).toBe("C5");
      await page.keyboard.press("9");
      await page.locator(".tabulator-editing input").waitFor();
      await page.keyboard.type("6");
      await page.keyboard.press("Enter");
      await soon(() => cell(page, "C", 5).textContent()).toBe("96");
      await soon(() => figure(page, "Pieces")).toBe("96");
      await page.keyboard.press("7");
      await page.locator(".tabulator-editing input").waitFor();
      await page.keyboard.press("Escape");
      expect(await cell(page, "C", 5).textContent()).toBe("96");
    }));

  it("an edit is taken back and made again, by key and by button", () =>
    visit("undone", {}, async ({ page }) => {
      await cell(page, "A", 5).click();
      await soon(() => figure(page, "Thickness")).toBe("0.1875 in");
      expect(await page.locator("#undo").isDisabled()).toBe(true);
      await type(page, "E", 5, "1/4");
      await soon(() => figure(page, "Thickness")).toBe("0.25 in");
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => figure(page, "Thickness")).toBe("0.1875 in");
      expect(await cell(page, "E", 5).textContent()).toBe("3/16");
      await soon(() => page.locator("#message").textContent()).toBe("Undone: E5.");
      await page.locator("#redo").click();
      await soon(() => figure(page, "Thickness")).toBe("0.25 in");
      expect(await page.locator("#redo").isDisabled()).toBe(true);
      // From another sheet the one with the edit is shown again.
      await page.getByRole("tab", { name: "Answers" }).click();
      await page.locator("#undo").click();
      await soon(() => page.getByRole("tab", { selected: true }).textContent()).toBe("Parts");
      await soon(() => cell(page, "E", 5).textContent()).toBe("3/16");
      await soon(() => page.locator("#address").textContent()).toBe("E5");
      await soon(() => figure(page, "Thickness")).toBe("0.1875 in");
      await soon(() => page.locator("#message").textContent()).toBe("Undone: E5.");
    }));

  it("a fix is applied by a click, says what changed by it, and is taken back by one undo", () =>
    visit("fixed", {}, async ({ page }) => {
      await cell(page, "A", 22).click(); // RT-08, a flange that barely rests on its die
      await soon(() => page.locator("#line h2").textContent()).toBe("RT-08");
      const die = await cell(page, "I", 22).textContent();
      const button = page.getByRole("button", { name: /^Apply: die / });
      const wanted = (await button.textContent())!.replace("Apply: die ", "");
      await button.click();
      await soon(() => status(page)).toContain("CLEAR");
      expect(await cell(page, "I", 22).textContent()).toBe(wanted);
      await soon(() => page.locator("#message").textContent()).toBe("1 line changed, 1 now clear.");
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => status(page)).toContain("CHECK");
      expect(await cell(page, "I", 22).textContent()).toBe(die);
    }));

  it("what is saved opens again with the edit and its answers, and the rest of the file untouched", () =>
    visit("saved", {}, async ({ page, saved }) => {
      await type(page, "E", 5, "1/4");
      await soon(() => figure(page, "Thickness").catch(() => "")).toBe("0.25 in");
      await page.getByRole("button", { name: "Save a copy" }).click();
      await soon(() => page.getByRole("alert").textContent()).toBe("Saved as copy.xlsx");
      const [before, after] = [readWorkbook(SAMPLE), readWorkbook(saved[0]!)];
      const parts = after.sheets.find(({ name }) => name === "Parts")!;
      expect(parts.values[4]![4]).toBe("1/4");
      const changed = after.package.entries
        .filter((entry, i) => entry.crc !== before.package.entries[i]!.crc)
        .map(({ name }) => name);
      expect(changed.length).toBeGreaterThan(1);
      expect(changed.every((name) => /worksheets\/sheet\d+\.xml$/.test(name))).toBe(true);
      const again = await openedPage(browser, saved[0]!);
      await cell(again.page, "A", 5).click();
      await soon(() => figure(again.page, "Thickness").catch(() => "")).toBe("0.25 in");
      await again.close();
    }));

  it("the function guide is beside it", () =>
    visit("functions", {}, async ({ page }) => {
      await page.locator("#functions > summary").click();
      await page.getByLabel("What do you want to know?").fill("setback");
      await soon(() => page.locator("#functions details").first().textContent()).toContain("BEND.SETBACK");
    }));
});

describe("the look", () => {
  it.each([
    ["wide-light", { width: 1280, colorScheme: "light" }],
    ["wide-dark", { width: 1280, colorScheme: "dark" }],
    ["narrow-light", { width: 320, colorScheme: "light" }],
    ["narrow-dark", { width: 320, colorScheme: "dark" }],
  ] as const)(
    "%s: nothing outside the grid is clipped or lies on something else, and axe-core finds nothing serious",
    (name, look) =>
      visit(name, look, async ({ page }) => {
        await cell(page, "A", 12).click();
        await soon(() => page.locator("#line svg").count()).toBe(3);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(look.width);
        expect(await clipped(page)).toEqual([]);
        expect(await overlapping(page)).toEqual([]);
        const faults = await page.evaluate(`${axe.source}; axe.run().then(({ violations }) => violations.filter(
        ({ impact }) => impact === "serious" || impact === "critical").map(({ id, nodes }) => id + " " + nodes[0].html))`);
        expect(faults).toEqual([]);
      }),
  );

  it("the checks for clipping and overlap find what is wrong", () =>
    visit("spoilt", { width: 320 }, async ({ page }) => {
      await cell(page, "A", 12).click();
      await soon(() => page.locator("#line svg").count()).toBe(3);
      await page.evaluate(() => {
        document.querySelector<HTMLElement>(".sentence, .note")!.style.width = "500px";
        document.querySelector<HTMLElement>("#line dl")!.style.marginTop = "-40px";
      });
      expect(await clipped(page)).not.toEqual([]);
      expect(await overlapping(page)).not.toEqual([]);
    }));
});

const clipped = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("header *, #tabs *, #cell, #message, #line *, footer *")]
      .filter((one) => !(one instanceof SVGElement) || one.tagName === "svg")
      .filter((one) => one.getBoundingClientRect().right > innerWidth + 0.5)
      .map((one) => `${one.tagName} ${one.textContent!.slice(0, 30)}`),
  );
/** Blocks that follow one another must not lie on one another; letters of a drawing neither. */
const overlapping = (page: Page) =>
  page.evaluate(() => {
    const boxes = [...document.querySelectorAll("#line article > *, #line svg text")].map((one) => ({
      kind: one instanceof SVGElement ? one.closest("svg")! : one.parentElement!,
      words: one.textContent!.slice(0, 30),
      box: one.getBoundingClientRect(),
    }));
    return boxes.flatMap((one, i) =>
      boxes
        .slice(i + 1)
        .filter(
          ({ kind, box }) =>
            kind === one.kind &&
            one.box.bottom > box.top + 2 &&
            box.bottom > one.box.top + 2 &&
            one.box.right > box.left + 2 &&
            box.right > one.box.left + 2,
        )
        .map(({ words }) => `${one.words} / ${words}`),
    );
  });

describe("what it weighs", () => {
  it("the engine stays within its limit", async () => {
    const files = await pageFiles(process.cwd());
    const size = (name: string) => gzipSync(files.get(name)!.content).length;
    expect(size("engine.js")).toBeLessThanOrEqual(200_000);
    expect(size("page.js")).toBeLessThanOrEqual(150_000); // nearly all of it is the grid
  });
});
