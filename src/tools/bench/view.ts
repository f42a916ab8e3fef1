/**
 * `npm run bench:view [-- --json]`: what the page costs. Sizes as served, and, in a real browser, the first paint and the
 * time from Enter to the changed answer drawn, for the sample's bill and for one of 1,000 lines. Medians of several runs.
 */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { calculatedBytes } from "../../job/building/calculated.ts";
import { SAMPLE_FILE } from "../sample/file.ts";
import { PARTS } from "../sample/stage-job/bill/job.ts";
import { pageFiles } from "../view/page-files.ts";
import { servePage } from "../view/serve.ts";
import { medianOf } from "./spread.ts";
import { longBill } from "./view-bill.ts";

const RUNS = 9;
const LONG = 1000;
const VIEWPORT = { width: 1280, height: 800 };

async function main(args: readonly string[]): Promise<void> {
  const root = process.env["PROJECT_ROOT"] ?? process.cwd();
  const json = args.includes("--json");
  const say = (row: Record<string, unknown>) =>
    process.stdout.write(
      json
        ? `${JSON.stringify(row)}\n`
        : `${Object.entries(row)
            .map(([key, value]) => `${key} ${value}`)
            .join("  ")}\n`,
    );
  const files = await pageFiles(root);
  for (const [path, { content }] of files)
    say({ file: path === "" ? "index.html" : path, gzip_kb: Math.round(gzipSync(content).length / 100) / 10 });
  const { chromium } = await import("playwright-core");
  const { default: packaged } = await import("@sparticuz/chromium");
  const executablePath = process.env["CHROMIUM"] ?? (await packaged.executablePath());
  const browser = await chromium.launch({ executablePath, args: ["--no-sandbox"] });
  try {
    for (const [lines, bytes] of [
      [PARTS.length, new Uint8Array(readFileSync(resolve(root, SAMPLE_FILE)))],
      [LONG, calculatedBytes(longBill(LONG))],
    ] as const) {
      const served = await servePage(files, {
        name: "bench.xlsx",
        bytes: () => bytes,
        save: () => ({ words: "", name: "", version: "" }),
      });
      const paints: number[] = [];
      for (let run = 0; run < RUNS; run++) paints.push(await firstPaint(browser, served.url));
      const page = await browser.newPage({ viewport: VIEWPORT });
      await page.goto(served.url);
      await page.waitForSelector("[role=option]", { timeout: 120_000 });
      await page.waitForSelector("body:not(.old)", { timeout: 120_000 });
      const cell = page.locator('.grid [data-row="9"] [data-column="7"]');
      await page.getByRole("button", { name: "Bill", exact: true }).click();
      const times: number[] = [];
      const engineTimes: number[] = [];
      for (let run = 0; run < RUNS + 1; run++) {
        await cell.dblclick();
        await page.keyboard.type(String(18 + run / 8)); // no plan that is remembered
        await page.locator(".editing input").evaluate((input) => {
          performance.clearMarks();
          input.addEventListener("keydown", () => performance.mark("enter"), { capture: true });
        });
        await page.keyboard.press("Enter");
        await page.waitForFunction(() => performance.getEntriesByName("edit painted").length > 0);
        const { taken, engine } = await page.evaluate(() => {
          const at = (name: string) => performance.getEntriesByName(name)[0]?.startTime ?? Number.NaN;
          return { taken: at("edit painted") - at("enter"), engine: at("edit answered") - at("enter") };
        });
        if (run > 0) {
          times.push(taken);
          engineTimes.push(engine);
        }
        await page.waitForTimeout(300);
      }
      say({
        lines,
        first_paint_ms: median(paints),
        edit_ms: median(times),
        edit_max_ms: Math.round(Math.max(...times)),
        engine_ms: median(engineTimes),
        runs: times.length,
      });
      await page.close();
      await served.close();
    }
  } finally {
    await browser.close();
  }
}

const median = (list: readonly number[]): number => Math.round(medianOf(list));

/** Of a page that nobody has opened before, in milliseconds after it was asked for. */
async function firstPaint(browser: Browser, url: string): Promise<number> {
  const page = await browser.newPage({ viewport: VIEWPORT });
  await page.goto(url);
  await page.waitForFunction(() => performance.getEntriesByName("first-contentful-paint").length > 0);
  const taken = await page.evaluate(() => performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? 0);
  await page.close();
  return taken;
}

await main(process.argv.slice(2));
