/** Long work that a person stops, and files that are not workbooks: the page says so, and what was open stays. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { calculatedBytes } from "../../../src/job/building/calculated.ts";
import { longBill } from "../../../src/tools/bench/view-bill.ts";
import { launchedBrowser } from "../excel/browser.ts";
import { type OpenedPage, openedPage } from "./opened-page.ts";

const LINES = 400; // enough that its cut plans take a while
const soon = (read: () => unknown) => expect.poll(read, { timeout: 40_000 });
const said = (page: Page) => page.locator("#message").textContent();

let browser: Browser;
let opened: OpenedPage;
beforeAll(async () => {
  browser = await launchedBrowser();
  opened = await openedPage(browser, calculatedBytes(longBill(LINES)));
}, 120_000);
afterAll(async () => {
  await opened.close();
  await browser.close();
});

const drop = (page: Page, name: string, content: string) =>
  page.evaluate(
    ([file, text]) => {
      const data = new DataTransfer();
      data.items.add(new File([text], file));
      dispatchEvent(new DragEvent("drop", { dataTransfer: data }));
    },
    [name, content] as const,
  );

describe("the page", () => {
  it("begins work that was ended only when it is asked for again", async () => {
    const { page } = opened;
    await page.locator("#cancel:not([hidden])").click();
    await soon(() => said(page)).toContain("Stopped; nothing was changed.");
    await soon(() => page.getByRole("button", { name: "Work them out" }).count()).toBe(1);
    await page.waitForTimeout(2000); // longer than the pause after which it begins by itself
    expect(await page.locator("#progress-words").textContent()).toBe("");
    expect(await page.locator("[role=option]").count()).toBe(LINES);
    await page.getByRole("button", { name: "Work them out" }).click();
    await soon(() => page.locator("#figures dd").count()).toBeGreaterThan(0);
  });

  it("names a file that is not a workbook, keeps the open one, and mentions no command", async () => {
    const { page } = opened;
    const name = await page.locator("#file").textContent();
    await drop(page, "torn.xlsx", "no workbook");
    await soon(() => said(page)).toMatch(/^torn\.xlsx: .*got no zip/);
    expect(await page.locator("#file").textContent()).toBe(name);
    await drop(page, "drawing.pdf", "%PDF-1.4");
    const read = page.locator(".start [role=status]");
    await soon(() => read.textContent()).toContain("It cannot be read");
    expect(await read.textContent()).not.toContain("--");
    expect(await said(page)).toBe("");
  });
});
