/** Drawings of cut sheets as a browser lays them out: no two texts lie on one another, none leaves its picture. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { type CutListRow, cutList, type Plan, planCuts } from "../../../src/calc/cutting/index.ts";
import { drawPattern } from "../../../src/papers/drawing/cut-plan.ts";
import { shopBill } from "../../../src/tools/bench/cutting/shop-bills.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";
import { mm } from "../../../src/units/quantity.ts";
import { launchedBrowser } from "../../hosts/excel/browser.ts";
import { look } from "./faults.ts";

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launchedBrowser();
  page = await browser.newPage();
}, 120_000);
afterAll(() => browser.close());

/** Names as shops have them, some long; sizes down to a clip; sheets that many small blanks share. */
function plan(seed: number): Plan {
  const unit = randomFrom(seed);
  const { blanks, stock, limits } = shopBill(seed);
  const some = blanks.slice(0, 4 + Math.floor(unit() * 14)).map((blank, i) => {
    const small = unit() < 0.4 ? 0.25 : 1;
    const id = unit() < 0.2 ? `FRAME-BRACKET-${i}` : `LC-${i}`;
    return { ...blank, id, w: mm(Math.max(25, blank.w * small)), h: mm(Math.max(25, blank.h * small)) };
  });
  return planCuts(some, stock, limits, { units: 60_000 });
}

/** So many sheets by chance, few cuts and many. */
function sheets(many: number): { plan: Plan; rows: readonly CutListRow[]; pattern: Plan["patterns"][number] }[] {
  const found = [];
  for (let seed = 1; found.length < many; seed++) {
    const planned = plan(seed);
    const rows = cutList(planned);
    for (const pattern of planned.patterns)
      found.push({ plan: planned, rows: rows.filter((row) => row.pattern === pattern.id), pattern });
  }
  return found.slice(0, many);
}

it("holds for 300 random sheets", async () => {
  const chosen = sheets(300);
  const svgs = chosen.map(
    ({ rows, pattern }, i) =>
      drawPattern(
        pattern,
        rows,
        {
          name: "Plate 3/16, mill edge",
          grain: i % 3 === 0 ? "h" : "w",
          edges: "mill edges, nothing trimmed",
          keys: new Map(pattern.yields.map(({ blank }, k) => [blank, "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[k % 26]!])),
          tags: new Map(pattern.yields.map(({ blank }) => [blank, "R1"])),
          room: rows.length <= 6 ? "half" : rows.length < 17 ? "whole" : "wide",
        },
        "in",
      ).svg,
  );
  const looked = await look(page, svgs, 0);
  const faults = looked.flatMap(({ found }, i) => found.map((words) => `${i}: ${words}`));
  const kinds = chosen.flatMap(({ pattern: { yields } }, i) =>
    yields.map(({ blank }, k) =>
      new RegExp(`>(?:\\d+ x )?${blank}<|>\\d*${"ABCDEFGHIJKLMNOPQRSTUVWXYZ"[k % 26]}<`).test(svgs[i]!),
    ),
  );
  // What has no room at all is named by the list of the cuts.
  expect(kinds.filter((isNamed) => isNamed).length / kinds.length).toBeGreaterThan(0.98);
  expect(looked.reduce((sum, { texts }) => sum + texts, 0)).toBeGreaterThan(3000);
  expect(faults.slice(0, 20)).toEqual([]);
}, 240_000);
