/** Serves a workbook as `npm run view` does and opens it in a real Chromium, watching what it must not do. */
import { mkdirSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import type { Kept, ToSave } from "../../../src/tools/view/copy-file.ts";
import { pageFiles } from "../../../src/tools/view/page-files.ts";
import { servePage } from "../../../src/tools/view/serve.ts";

export interface OpenedPage {
  readonly page: Page;
  readonly url: string;
  /** What was saved, the last first. */
  readonly saved: Uint8Array[];
  readonly complaints: string[];
  /** Addresses asked for that are not this server's. */
  readonly strangers: string[];
  shot(name: string): Promise<void>;
  close(): Promise<void>;
}

export interface Look {
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: "light" | "dark";
  /** What the server answers to a save, and what is on disk, where it is not as usual. */
  readonly save?: (asked: ToSave) => Kept;
  readonly bytes?: () => Uint8Array;
}

/** Built once for every page that a test opens. */
export const FILES = pageFiles(process.cwd());

export async function openedPage(browser: Browser, bytes: Uint8Array, look: Look = {}): Promise<OpenedPage> {
  const { width = 1280, height = 860, colorScheme = "light" } = look;
  const saved: Uint8Array[] = [];
  const save = (asked: ToSave): Kept => {
    saved.unshift(asked.bytes);
    return look.save?.(asked) ?? { words: "Saved as copy.xlsx", name: "copy.xlsx", version: "1" };
  };
  const onDisk = () => look.bytes?.() ?? bytes;
  const served = await servePage(await FILES, { name: "stage-job.xlsx", bytes: onDisk, save });
  const context = await browser.newContext({ viewport: { width, height }, colorScheme });
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  const complaints: string[] = [];
  const strangers: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (problem) => complaints.push(String(problem)));
  context.on("request", (request) => {
    if (!request.url().startsWith(served.url)) strangers.push(request.url());
  });
  await page.addInitScript(() => {
    addEventListener("securitypolicyviolation", (event) => console.error(`policy: ${event.effectiveDirective}`));
  });
  await page.goto(served.url);
  await page.locator("#places [aria-current]").waitFor({ timeout: 60_000 });
  return {
    page,
    url: served.url,
    saved,
    complaints,
    strangers,
    shot: async (name) => {
      const folder = process.env["SCREENSHOTS"];
      if (!folder) return;
      mkdirSync(folder, { recursive: true });
      await page.screenshot({ path: `${folder}/view-${name}.png` });
    },
    close: async () => {
      await context.close();
      await served.close();
    },
  };
}
