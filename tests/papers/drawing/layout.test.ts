/** Drawings as a browser lays them out: no two texts lie on one another, none leaves its picture, all can be read. */
import fc from "fast-check";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { BentPart } from "../../../src/calc/bend/order/part.ts";
import { plainPress } from "../../../src/calc/bend/order/plain-press.ts";
import { drawBentProfile } from "../../../src/papers/drawing/bent-profile.ts";
import { drawAtGauge } from "../../../src/papers/drawing/end-of-bend.ts";
import { drawFlat } from "../../../src/papers/drawing/flat-blank.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import { launchedBrowser } from "../../hosts/excel/browser.ts";
import { look } from "./faults.ts";

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await launchedBrowser();
  page = await browser.newPage();
}, 120_000);
afterAll(() => browser.close());

const DEDUCTION_SHARE = 1.7; // of the thickness, about that of a right angle at r = t

const strip = (most: number) =>
  fc
    .record({
      thickness: fc.constantFrom(0.9, 1.5, 3.4, 6.35),
      flanges: fc.array(fc.double({ min: 12, max: 900, noNaN: true }), { minLength: 2, maxLength: most + 1 }),
      angles: fc.array(fc.constantFrom(90, -90, 45, 120, -30, 88.5), { minLength: most, maxLength: most }),
    })
    .map(
      ({ thickness, flanges, angles }): BentPart => ({
        thickness: mm(thickness),
        flanges: flanges.map(mm),
        bends: flanges.slice(1).map((_, i) => ({
          angle: degrees(angles[i]!),
          insideRadius: mm(thickness),
          deduction: mm((DEDUCTION_SHARE * thickness * Math.abs(angles[i]!)) / 90),
        })),
      }),
    );

/** Millimeters of paper. */
const LEAST = (7.5 * 25.4) / 72;

const PRESS = plainPress(
  { name: "V", opening: mm(25.4), angle: degrees(80) },
  { name: "P", angle: degrees(60), nose: mm(1) },
);

/** The pictures of a part by chance; none where no sheet can be so. */
function pictures(part: BentPart, cross: BentPart | undefined, side: number, grain: "across" | "along" | undefined) {
  try {
    const hit = { bend: 1, gaugedEnd: "first" } as const;
    const base = {
      part,
      press: PRESS,
      finished: [],
      hit,
      springback: degrees(2),
      turnedTo: degrees(92),
      name: "X",
      drawn: "",
    };
    return [
      drawFlat(part, mm(side), "in", { grain, cross }).svg,
      drawBentProfile(part, "in").svg,
      drawAtGauge({ ...base, obstacle: undefined, stop: mm(part.flanges[0]! - part.bends[0]!.deduction / 2) }, "in")
        .svg,
    ];
  } catch (problem) {
    if (problem instanceof Refusal) return [];
    throw problem;
  }
}

it("holds for 300 random parts, trays among them", async () => {
  const parts = fc.sample(
    fc.record({
      part: strip(8),
      cross: fc.option(strip(4), { nil: undefined, freq: 4 }),
      side: fc.double({ min: 5, max: 2500, noNaN: true }),
      grain: fc.constantFrom("across" as const, "along" as const, undefined),
    }),
    { numRuns: 1300, seed: 2026 },
  );
  const drawn = parts
    .map(({ part, cross, side, grain }) =>
      pictures(part, cross && { ...cross, thickness: part.thickness }, side, grain),
    )
    .filter((svgs) => svgs.length === 3)
    .slice(0, 300);
  expect(drawn).toHaveLength(300);
  const looked = await look(page, drawn.flat(), LEAST);
  expect(looked.reduce((sum, { texts }) => sum + texts, 0)).toBeGreaterThan(3000);
  expect(looked.flatMap(({ found }) => found).slice(0, 20)).toEqual([]);
  // A picture wider than a sheet of paper would be shrunk, and its letters with it.
  expect(Math.max(...looked.map(({ width }) => width))).toBeLessThan(188);
}, 240_000);

it("would find texts that meet, leave, are too small or lie on a line that is seen", async () => {
  const svg = (inside: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 50 20" font-size="3.5">${inside}</svg>`;
  const ground = '<rect class="paper" x="4" y="6" width="10" height="6" stroke="none"/>';
  const [line, word] = ['<line x1="0" y1="9" x2="50" y2="9" stroke="black"/>', '<text x="5" y="10">abc</text>'];
  const [meet, leave, small, fine, crossed, broken, over] = await look(
    page,
    [
      svg('<text x="5" y="10">abc</text><text x="6" y="10">def</text>'),
      svg('<text x="48" y="10">abc</text>'),
      svg('<text x="5" y="10" font-size="2">abc</text>'),
      svg('<text x="5" y="10">abc</text><text x="40" y="15" transform="rotate(-90 40 15)">def</text>'),
      svg(line + word),
      svg(line + ground + word),
      svg(ground + word + line),
    ],
    LEAST,
  );
  expect(meet!.found).toEqual(["abc lies on def"]);
  expect(leave!.found).toEqual(["abc leaves the picture"]);
  expect(small!.found).toEqual(["abc is too small"]);
  expect(fine!.found).toEqual([]);
  expect(crossed!.found).toEqual(["abc lies on a line"]);
  expect(broken!.found).toEqual([]);
  expect(over!.found).toEqual(["abc lies on a line"]);
});
