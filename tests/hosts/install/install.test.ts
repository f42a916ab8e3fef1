/** The install page in a real Chromium, served from a folder of some https server. */

import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { releaseFiles, zip } from "../../../src/hosts/install/archive.ts";
import { filesBelow } from "../../../src/tools/package/build-add-in.ts";
import { axeFindings } from "../axe-findings.ts";
import { launchedBrowser } from "../excel/browser.ts";
import { builtAddIn } from "../excel/built.ts";

const ADDRESS = "https://shop.example/addins/bill";
const TYPES: Readonly<Record<string, string>> = {
  html: "text/html; charset=utf-8",
  js: "text/javascript",
  css: "text/css",
  json: "application/json",
  png: "image/png",
};
let browser: Browser;
let folder: string;
let packed: Uint8Array;
beforeAll(async () => {
  folder = await builtAddIn("install");
  packed = zip(releaseFiles(filesBelow(await builtAddIn("install-there", { origin: ADDRESS }))));
  browser = await launchedBrowser();
}, 300_000);
afterAll(() => browser.close());

interface Server {
  readonly address?: string;
  /** Files this server does not have. */
  readonly missing?: readonly string[];
  /** Served as this type instead of the right one. */
  readonly types?: Readonly<Record<string, string>>;
}

async function opened({ address = ADDRESS, missing = [], types = {} }: Server, check: (page: Page) => Promise<void>) {
  const context = await browser.newContext({ viewport: { width: 320, height: 900 } });
  const page = await context.newPage();
  const elsewhere: string[] = [];
  await context.route(/^https?:/, (route) => {
    const url = route
      .request()
      .url()
      .replace(/[?#].*/, "");
    if (!url.startsWith(`${address}/`)) {
      elsewhere.push(url);
      return route.abort();
    }
    const path = url.slice(address.length + 1);
    if (missing.includes(path)) return route.fulfill({ status: 404 });
    const contentType = types[path] ?? TYPES[path.split(".").at(-1)!] ?? "application/octet-stream";
    return route.fulfill({ contentType, body: readFileSync(`${folder}/${path}`) });
  });
  await page.addInitScript(
    'globalThis.violations = []; addEventListener("securitypolicyviolation", (event) => violations.push(event.effectiveDirective));',
  );
  try {
    await page.goto(`${address}/install.html`);
    await check(page);
    expect(elsewhere).toEqual([]);
    expect(await page.evaluate("violations")).toEqual([]);
  } finally {
    await context.close();
  }
}
const state = (page: Page) => expect.poll(() => page.locator("#state").textContent(), { timeout: 15_000 });

async function downloaded(page: Page, words: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: words }).click(),
  ]);
  return readFileSync(await download.path());
}

describe("the install page", () => {
  it("makes the manifest and the package of its own address, byte for byte as a build for that address", () =>
    opened({}, async (page) => {
      await state(page).toContain(`Ready: all ${filesBelow(folder).size} files are served from ${ADDRESS}`);
      const manifest = await downloaded(page, "Download the manifest");
      expect(manifest.toString()).toContain(`${ADDRESS}/taskpane.html`);
      expect(manifest.toString()).not.toContain("localhost");
      expect((await downloaded(page, "Download the package")).equals(packed)).toBe(true);
    }));

  it("says which files were made for another address, and none where all were made for this one", async () => {
    await opened({}, (page) => state(page).toContain("manifest/bracket-bill.xml"));
    await opened({ address: "https://localhost:3000" }, async (page) => {
      await state(page).toContain("Ready: all");
      expect(await page.locator("#state").textContent()).not.toContain("another address");
    });
  });

  it.each<[string, Server, string]>([
    ["a missing script", { missing: ["long.js"] }, "long.js is missing on the server (404)"],
    ["a missing icon", { missing: ["assets/icon-80.png"] }, "assets/icon-80.png is missing on the server (404)"],
    [
      "a type that browsers refuse",
      { types: { "functions.json": "text/plain" } },
      "functions.json is served as text/plain",
    ],
  ])("names %s and offers nothing then", (_, server, problem) =>
    opened(server, async (page) => {
      await state(page).toContain("Not ready");
      await state(page).toContain(problem);
      expect(await page.locator("#state li").count()).toBe(1);
      expect(await page.getByRole("link", { name: /^Download/ }).count()).toBe(0);
    }),
  );

  it("says so where not even the list is there, and where the page came over plain http", async () => {
    await opened({ missing: ["files.json"] }, (page) => state(page).toContain("files.json is missing on the server"));
    await opened({ address: "http://shop.example/bill" }, (page) => state(page).toContain("only over https"));
  });

  it("has three steps for each place, says where it does not run, and clips nothing at 320 px", () =>
    opened({}, async (page) => {
      await state(page).toContain("Ready");
      const lists = page.locator("main > ol");
      expect(await lists.count()).toBe(4);
      for (let i = 0; i < 4; i++) expect(await lists.nth(i).locator("li").count()).toBe(3);
      const said = await page.locator("main").textContent();
      for (const words of ["iPad", "2021 or older", "open Excel again", "slower while the pane is closed", "24 hours"])
        expect(said).toContain(words);
      const clipped = await page.evaluate(() =>
        [...document.querySelectorAll("body *")]
          .filter((one) => one.getBoundingClientRect().right > innerWidth + 0.5)
          .map((one) => one.outerHTML.slice(0, 80)),
      );
      expect(clipped).toEqual([]);
      const faults = await axeFindings(page, "serious");
      expect(faults).toEqual([]);
    }));
});
