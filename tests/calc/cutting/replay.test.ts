import { describe, expect, test } from "vitest";
import { type Cut, type Plan, planCuts, replay } from "../../../src/calc/cutting/index.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, limits, sheet } from "./bills.ts";

const BLANKS = [
  blank("long", 900, 200, 4, "along"),
  blank("plate", 300, 260, 7),
  blank("small", 150, 80, 11, "across"),
];
const STOCK = [sheet("full", 2438, 1219, { trim: mm(6), quantity: 3 })];
const LIMITS = limits({ longestCut: 2440, reach: 1000, nearestGauge: 8, leastDrop: 25, leastHold: 20 });
const PLAN = planCuts(BLANKS, STOCK, LIMITS, { units: 2_000_000 });

type Draft = { -readonly [K in keyof Cut]: Cut[K] };
const firstGauged = PLAN.cuts.findIndex(({ gauge }) => gauge !== null);

/** The plan with one cut changed. */
function withCut(at: number, change: (cut: Draft) => void): Plan {
  const cuts = structuredClone(PLAN.cuts) as Draft[];
  change(cuts[at] as Draft);
  return { ...PLAN, cuts };
}

/** Makes what falls at the first gauged cut measure `extent` along its axis. */
const withGauge = (extent: number): Plan =>
  withCut(firstGauged, (cut) => {
    cut.gauge = mm(extent);
    cut.falls = cut.falls.map((fall) => ({ ...fall, [cut.axis]: mm(extent) }));
  });

const blankCut = PLAN.cuts.findIndex(({ falls }) => falls.some(({ blank }) => blank === "long"));

const CORRUPTIONS: readonly [string, () => Plan, RegExp][] = [
  ["a gauge beyond the reach", () => withGauge(1100), /gauge must be at most 1000 mm; got 1100/],
  ["a gauge nearer than the nearest stop", () => withGauge(5), /gauge must be at least 8 mm; got 5/],
  ["a drop too narrow", () => withGauge(20), /drop must be at least 25 mm; got 20/],
  [
    "a cut longer than it says",
    () =>
      withCut(firstGauged, (cut) => {
        cut.length = mm(cut.length - 50);
      }),
    /cut length must be the piece's .* mm; got/,
  ],
  [
    "a piece that is not on the table",
    () =>
      withCut(firstGauged, (cut) => {
        cut.piece = "nowhere";
      }),
    /piece must be on the table; nowhere is not/,
  ],
  [
    "a piece cut twice",
    () => ({ ...PLAN, cuts: [...PLAN.cuts, { ...PLAN.cuts[firstGauged]!, seq: 999 }] }),
    /piece must still be whole; .* was cut before/,
  ],
  [
    "more copies than sheets",
    () =>
      withCut(firstGauged, (cut) => {
        cut.copies = cut.copies + 1;
      }),
    /copies must be \d+; got/,
  ],
  [
    "an edge trim deeper than the stock's",
    () =>
      withCut(0, (cut) => {
        cut.falls = cut.falls.map((fall) => ({ ...fall, [cut.axis]: mm(40) }));
      }),
    /edge trim must be 6 mm; got 40/,
  ],
  [
    "a cut without a gauge that is no trim",
    () =>
      withCut(firstGauged, (cut) => {
        cut.gauge = null;
      }),
    /gauge must be set for every cut but an edge trim; got none/,
  ],
  [
    "a finished piece called by another blank's name",
    () =>
      withCut(blankCut, (cut) => {
        cut.falls = cut.falls.map((fall) => (fall.blank === "long" ? { ...fall, blank: "plate" } : fall));
      }),
    /plate must measure 300 x 260 mm; got/,
  ],
  [
    "a piece that stays half cut",
    () => ({ ...PLAN, cuts: PLAN.cuts.slice(0, -1) }),
    /must end as a blank, a remnant or scrap; it is left half cut/,
  ],
  [
    "sheets that are not on stock",
    () => ({ ...PLAN, patterns: PLAN.patterns.map((pattern) => ({ ...pattern, repeats: 9 })) }),
    /sheets pulled must be at most 3; got/,
  ],
  [
    "a stock line that does not exist",
    () => ({ ...PLAN, patterns: PLAN.patterns.map((pattern) => ({ ...pattern, stock: "gone" })) }),
    /stock must be one of the stock lines; got gone/,
  ],
  [
    "strokes that are not copies times falls",
    () =>
      withCut(firstGauged, (cut) => {
        cut.strokes = cut.strokes + 1;
      }),
    /strokes must be copies times falls/,
  ],
];

describe("replay", () => {
  test("finds nothing wrong with the plan as it is", () => {
    expect(replay(PLAN, BLANKS, STOCK, LIMITS)).toEqual([]);
  });

  test.each(CORRUPTIONS)("refuses %s", (_, corrupt, message) => {
    expect(replay(corrupt(), BLANKS, STOCK, LIMITS).join("\n")).toMatch(message);
  });

  test("refuses a plan for a bill that asks for more, for fewer, or the grain the other way", () => {
    const asked = (change: Partial<(typeof BLANKS)[number]>) =>
      replay(PLAN, [{ ...BLANKS[0]!, ...change }, ...BLANKS.slice(1)], STOCK, LIMITS).join("\n");
    expect(asked({ quantity: 5 })).toMatch(/long: pieces cut must be 5; got 4, too few/);
    expect(asked({ quantity: 3 })).toMatch(/long: pieces cut must be 3; got 4, too many/);
    expect(asked({ grain: "across" })).toMatch(/long must keep its grain across its first size/);
  });

  test("refuses a plan on a shear with a shorter blade, a wider hold-down, or fewer stages", () => {
    const on = (more: Parameters<typeof limits>[0]) =>
      replay(PLAN, BLANKS, STOCK, { ...LIMITS, ...limits({ ...LIMITS, ...more }) }).join("\n");
    expect(on({ longestCut: 1000 })).toMatch(/cut length must be at most 1000 mm/);
    expect(on({ leastHold: 1200 })).toMatch(/hold must be at least 1200 mm/);
    expect(on({ stages: 1 })).toMatch(/cuts must be at most 1 stages deep/);
  });
});
