/** The page in a real Chromium: by clicking and typing, narrow and wide, light and dark. */

import { mkdirSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { RECORDS } from "../../../src/cells/catalogue.ts";
import { axeFindings } from "../axe-findings.ts";
import { launchedBrowser } from "../excel/browser.ts";
import { releasedAddIn } from "../excel/built.ts";
import { type Opened, openedPane } from "../excel/opened-pane.ts";
import { served } from "../excel/served.ts";

let browser: Browser;
let server: Awaited<ReturnType<typeof served>>;
beforeAll(async () => {
  server = await served(await releasedAddIn());
  browser = await launchedBrowser();
}, 300_000);
afterAll(async () => {
  await browser.close();
  await server.close();
});

/** Opens the page, runs the check, and keeps a picture where the environment variable SCREENSHOTS names a folder. */
async function look(name: string, options: Parameters<typeof openedPane>[2], check: (opened: Opened) => Promise<void>) {
  const opened = await openedPane(browser, server.origin, options);
  try {
    await check(opened);
    const folder = process.env["SCREENSHOTS"];
    if (folder) {
      mkdirSync(folder, { recursive: true });
      await opened.page.screenshot({ path: `${folder}/${name}.png` });
    }
    expect(opened.complaints).toEqual([]);
    expect(await opened.page.evaluate("violations")).toEqual([]);
  } finally {
    await opened.close();
  }
}

const focused = (page: Page) => page.evaluate(() => document.activeElement!.textContent || document.activeElement!.id);
const openAll = (page: Page) =>
  page.evaluate(() => {
    for (const card of document.querySelectorAll("details")) card.open = true;
  });
/** Elements whose content runs past the right edge, of the window or of themselves. */
const clipped = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("body *")]
      .filter((one) => {
        const box = one.getBoundingClientRect();
        return (
          box.right > innerWidth + 0.5 ||
          (one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== "inline")
        );
      })
      .map((one) => `${one.tagName} ${one.textContent!.slice(0, 40)}`),
  );
/** Names and questions that lie on one another. */
const overlapping = (page: Page) =>
  page.evaluate(() => {
    const boxes = [...document.querySelectorAll("summary, .help")].map((one) => one.getBoundingClientRect());
    return boxes.filter((box, i) =>
      boxes.some((other, j) => j > i && box.bottom > other.top + 1 && other.bottom > box.top + 1),
    ).length;
  });

describe("the page about the add-in", () => {
  it("is reached from the guide and clips nothing at 320 px", () =>
    look("about", { width: 320 }, async ({ page }) => {
      await page.getByRole("link", { name: "About" }).click();
      await page.waitForURL("**/about.html");
      expect(await page.getByRole("heading", { level: 2 }).allTextContents()).toEqual(["Support", "Privacy", "Terms"]);
      expect(await clipped(page)).toEqual([]);
      expect((await page.request.get(`${server.origin}/third-party-notices.txt`)).ok()).toBe(true);
      await page.goBack();
    }));
});

describe("the function guide", () => {
  it("shows every function, grouped by topic", () =>
    look("all", {}, async ({ page }) => {
      expect(await page.locator("summary").count()).toBe(RECORDS.length);
      expect(await page.getByRole("status").textContent()).toBe(`${RECORDS.length} of ${RECORDS.length} functions`);
      const topics = await page.locator("h2").allTextContents();
      expect(topics).toEqual([...new Set(RECORDS.map(({ name }) => name.split(".")[0]))]);
    }));

  it("finds a function by what is typed and explains its arguments", () =>
    look("found", {}, async ({ page }) => {
      await page.getByLabel("What do you want to know?").fill("setback");
      await page.locator("summary").first().click();
      const card = page.locator("details").first();
      expect(await card.getAttribute("open")).not.toBeNull();
      for (const text of [
        "=SHOP.BEND.SETBACK(thickness, radius, bend_angle, [units])",
        "bend_angle",
        "optional",
        "gives 0.2",
      ])
        await expect.poll(() => card.textContent()).toContain(text);
      expect(await page.getByText("Angle", { exact: false }).first().isVisible()).toBe(true);
    }));

  it("says so when nothing answers", () =>
    look("nothing", {}, async ({ page }) => {
      await page.getByLabel("What do you want to know?").fill("unicorn");
      expect(await page.getByRole("status").textContent()).toBe("No function matches that");
      expect(await page.locator("summary").count()).toBe(0);
    }));

  it("is usable by keyboard alone", () =>
    look("keyboard", {}, async ({ page }) => {
      await page.keyboard.press("Tab");
      expect(await focused(page)).toBe("search");
      await page.keyboard.type("bend tonnage");
      await page.keyboard.press("ArrowDown");
      expect(await focused(page)).toContain("SHOP.BEND.TONNAGE");
      const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineWidth);
      expect(Number.parseFloat(outline)).toBeGreaterThanOrEqual(2);
      await page.keyboard.press("Enter");
      await expect.poll(() => page.locator("details[open] dt").count()).toBeGreaterThan(4);
      await page.keyboard.press("ArrowUp");
      expect(await focused(page)).toBe("search");
      await page.keyboard.press("Escape");
      expect(await page.locator("summary").count()).toBe(RECORDS.length);
    }));

  it("opens the function that Excel's help link names", () =>
    look("help-link", { fragment: "#BEND.TONNAGE" }, async ({ page }) => {
      expect(await focused(page)).toContain("SHOP.BEND.TONNAGE");
      await expect.poll(() => page.locator("details[open] .help").isVisible()).toBe(true);
      const [summary, search] = await Promise.all(
        [page.locator("details[open] summary"), page.locator(".search")].map((one) => one.boundingBox()),
      );
      expect(summary!.y).toBeGreaterThanOrEqual(search!.y + search!.height); // not hidden behind the search field
    }));

  it.each([
    ["narrow-light", { width: 320, colorScheme: "light" }],
    ["narrow-dark", { width: 320, colorScheme: "dark" }],
    ["zoomed", { width: 180, height: 400, colorScheme: "light" }], // 360 px wide at 200 %
    ["wide", { width: 1000, colorScheme: "light" }],
  ] as const)("%s: with everything open nothing is clipped, overlaps or fails axe-core", (name, options) =>
    look(name, options, async ({ page }) => {
      await openAll(page);
      await expect.poll(() => page.locator(".help").count()).toBe(RECORDS.length);
      expect(await clipped(page)).toEqual([]);
      expect(await overlapping(page)).toBe(0);
      const faults = await axeFindings(page, "serious");
      expect(faults).toEqual([]);
    }),
  );

  it("the checks for clipping and overlap find what is wrong", () =>
    look("spoiled", { width: 320 }, async ({ page }) => {
      await page.evaluate(() => {
        document.querySelector<HTMLElement>(".question")!.style.width = "400px";
        document.querySelectorAll<HTMLElement>(".card")[2]!.style.marginTop = "-60px";
      });
      expect(await clipped(page)).not.toEqual([]);
      expect(await overlapping(page)).toBeGreaterThan(0);
    }));
});
