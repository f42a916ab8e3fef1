/** Microsoft's own office.js from its npm package: a development dependency, used here and never shipped. */
import { existsSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Page } from "playwright-core";

const FOLDER = resolve("node_modules/@microsoft/office-js/dist");
const SERVED = "https://appsforoffice.microsoft.com/lib/1/hosted/";

/** Where the package is not installed these tests are skipped, with this word. */
export const hasOfficeJs = existsSync(`${FOLDER}/office.js`);
export const SKIPPED = hasOfficeJs ? "" : " (skipped: @microsoft/office-js is not installed)";

/** What the page asks of Microsoft's server comes from the package; anything else it asks for is noted and missing. */
export async function routeOfficeJs(page: Page, missing: string[] = []): Promise<void> {
  await page.route(/^https:\/\/(?:appsforoffice\.microsoft\.com|ajax\.aspnetcdn\.com)\//, (route) => {
    const url = route.request().url();
    const file = `${FOLDER}/${url.startsWith(SERVED) ? url.slice(SERVED.length) : "absent"}`;
    if (existsSync(file)) return route.fulfill({ contentType: "text/javascript", body: readFileSync(file) });
    missing.push(url);
    return route.fulfill({ status: 404 });
  });
}

/** What each Excel writes behind the page's address, so that office.js loads that platform's file. */
export const PLATFORMS = {
  Windows: { query: "_host_Info=Excel$Win32$16.01$en-US$$$$0", file: "excel-win32-16.01.js" },
  Mac: { query: "_host_Info=Excel$Mac$16.00$en-US$$$$0", file: "excel-mac-16.00.js" },
  web: { query: "_host_Info=Excel$Web$16.00$en-US$$$$0", file: "excel-web-16.00.js" },
} as const;
export type Platform = keyof typeof PLATFORMS;
