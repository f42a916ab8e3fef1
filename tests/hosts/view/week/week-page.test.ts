/** The week's page in a real Chromium: by pointer, by keys, what somebody else changed, and its look. */

import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { weekFiles } from "../../../../src/tools/view/page-files.ts";
import { servePage } from "../../../../src/tools/view/serve.ts";
import { axeFindings } from "../../axe-findings.ts";
import { launchedBrowser } from "../../excel/browser.ts";

const NAMES = ["orchard-crates", "pier-railing", "school-lockers"];
const bytes = NAMES.map((name) => new Uint8Array(readFileSync(`sample-workbooks/week/${name}.xlsx`)));
const soon = (read: () => unknown) => expect.poll(read, { timeout: 40_000 });

let browser: Browser;
let files: Awaited<ReturnType<typeof weekFiles>>;
beforeAll(async () => {
  [browser, files] = await Promise.all([launchedBrowser(), weekFiles(process.cwd())]);
}, 120_000);
afterAll(() => browser.close());

interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "light" | "dark";
}

async function visit(name: string, look: Look, check: (page: Page) => Promise<void>, disk = bytes): Promise<void> {
  const { width = 1440, height = 900, colorScheme = "light" } = look;
  const save = () => ({ words: "", name: "", version: "" });
  const jobs = NAMES.map((file, i) => ({ name: `${file}.xlsx`, bytes: () => disk[i]!, save }));
  const served = await servePage(files, { jobs, names: NAMES, now: "2026-05-18T07:00", shop: undefined });
  const context = await browser.newContext({ viewport: { width, height }, colorScheme });
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  page.on("pageerror", (problem) => complaints.push(String(problem)));
  try {
    await page.goto(served.url);
    await page.locator(".bar.whole").nth(2).waitFor({ timeout: 60_000 });
    await soon(() => page.locator("#message").textContent()).toBe(""); // the search is through
    await check(page);
    const folder = process.env["SCREENSHOTS"];
    if (folder) await page.screenshot({ path: `${folder}/week-${name}.png` });
    expect(complaints).toEqual([]);
  } finally {
    await context.close();
    await served.close();
  }
}

const told = (page: Page) => page.locator("#told").textContent();
const said = (page: Page) => page.locator("#message").textContent();
const unfold = (page: Page) => page.getByRole("button", { name: "orchard-crates", exact: true }).click();

describe("the week's page", () => {
  it("names what is late, in its own color, and tries what would save it", () =>
    visit("late", {}, async (page) => {
      expect(await page.locator(".late-job h3").allTextContents()).toEqual([
        expect.stringMatching(/orchard-crates: late by /),
      ]);
      expect(await page.locator(".job.late .job-name").allTextContents()).toEqual(["orchard-crates"]);
      await page.getByRole("button", { name: "What would save it?" }).click();
      await soon(() => page.locator(".late-job li").count()).toBeGreaterThan(0);
    }));

  it("pins a bar by keys alone, shows what moved, and takes it back", () =>
    visit("keys", {}, async (page) => {
      await unfold(page);
      const bar = page.locator(".line-row .bar").first();
      await bar.focus();
      const before = await bar.getAttribute("aria-label");
      await page.keyboard.press("Enter");
      await soon(() => told(page)).toMatch(/ to \w{3} 2026-05-\d\d/);
      await page.keyboard.press("Shift+ArrowRight");
      await page.keyboard.press("Escape");
      expect(await told(page)).toBe(before);
      for (const key of ["Enter", "Shift+ArrowRight", "ArrowRight", "Enter"]) await page.keyboard.press(key);
      await soon(() => said(page)).toContain("Pinned");
      expect(await page.locator("#beside code").count()).toBe(1);
      expect(await bar.getAttribute("aria-label")).toContain("pinned for");
      expect(await page.evaluate(() => document.activeElement?.className)).toContain("pinned");
      expect(await page.locator(".was").count()).toBeGreaterThan(0);
      await page.keyboard.press("ControlOrMeta+z");
      await soon(() => said(page)).toBe("Undone.");
      expect(await bar.getAttribute("aria-label")).toBe(before);
      await page.keyboard.press("ArrowDown");
      expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-label"))).not.toBe(before);
    }));

  it("moves a whole job by pointer", () =>
    visit("pointer", {}, async (page) => {
      const box = (await page.locator(".bar.whole").nth(0).boundingBox())!;
      const day = (await page.locator(".head .day").first().boundingBox())!.width;
      await page.mouse.move(box.x + 10, box.y + 10);
      await page.mouse.down();
      await page.mouse.move(box.x + 10 + day, box.y + 10, { steps: 4 });
      await page.mouse.up();
      await soon(() => said(page)).toContain("Pinned");
      expect(await page.locator("#beside code").count()).toBeGreaterThan(1);
      expect((await page.locator(".bar.whole").nth(0).boundingBox())!.x).toBeGreaterThan(box.x + day / 2);
    }));

  it("says which file was changed on disk, and opens the bill of a job", () => {
    const disk = [...bytes];
    return visit(
      "changed",
      {},
      async (page) => {
        disk[1] = bytes[0]!;
        await page.evaluate(() => dispatchEvent(new Event("focus")));
        await soon(() => said(page)).toContain("Changed on disk since they were read: pier-railing.");
        const [bill] = await Promise.all([
          page.context().waitForEvent("page"),
          page.getByRole("link", { name: "bill" }).first().click(),
        ]);
        await soon(() => bill.locator("#file").textContent()).toBe("orchard-crates.xlsx");
        await soon(() => bill.locator("[role=option]").count()).toBeGreaterThan(0);
      },
      disk,
    );
  });

  it.each([
    ["wide", { width: 1440, height: 900, colorScheme: "light" }],
    ["dark", { width: 1280, height: 800, colorScheme: "dark" }],
    ["tablet", { width: 820, height: 1100, colorScheme: "light" }],
    ["phone", { width: 390, height: 844, colorScheme: "light" }],
  ] as const)("%s: stays within the screen, and axe-core finds nothing", (name, look) =>
    visit(name, look, async (page) => {
      await unfold(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(look.width);
      const findings = await axeFindings(page);
      expect(findings).toEqual([]);
    }),
  );
});
