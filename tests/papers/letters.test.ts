/** The pack of the sample as it comes out of the printer: how many sheets, and letters that can be read at arm's length. */
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { print } from "../../src/hosts/command-line/print.ts";
import { letterSizes } from "./pdf-letters.ts";

/** The owner's own measure of what a paper may hold. */
const [LEAST_PT, MOST_PAGES] = [7.5, 140];

const home = mkdtempSync(join(tmpdir(), "letters-"));
afterAll(() => rmSync(home, { recursive: true, force: true }));
let pdf: Buffer;
beforeAll(async () => {
  const quiet = { out: () => undefined, note: () => undefined, input: async () => "", interactive: false };
  await print(["sample-workbooks/stage-job.xlsx", join(home, "papers")], {
    functions: shopFunctions,
    version: "0.0.0",
    ...quiet,
  });
  pdf = readFileSync(join(home, "papers", "pack.pdf"));
}, 180_000);

it("no letter of any paper is under 7.5 pt on the sheet", () => {
  const pages = letterSizes(pdf);
  expect(pages.length).toBeGreaterThan(60);
  expect(pages.flat().length).toBeGreaterThan(5000);
  expect(pages.flat().reduce((least, size) => Math.min(least, size))).toBeGreaterThanOrEqual(LEAST_PT - 0.01);
});

it("the pack of the sample is at most 140 sheets of paper", () => {
  expect(pdf.toString("latin1").match(/\/Type ?\/Page\b/g)?.length).toBeLessThanOrEqual(MOST_PAGES);
});
