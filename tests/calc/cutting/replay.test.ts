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
    cut.measure = mm(extent);
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
    /gauge must be set for a cut by the gauge and no other; got null/,
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

/** A sheet of 100 x 60, trimmed by 6 twice over its height and cut to a blank of 40 x 60, 48 of it left: by hand. */
const HAND = {
  blanks: [blank("b", 40, 60, 1)],
  stock: [sheet("s", 100, 60, { trim: mm(6), quantity: 1 })],
  plan(): { patterns: Plan["patterns"]; cuts: Draft[]; leftOut: Plan["leftOut"] } {
    const cut = (seq: number, more: Partial<Draft>): Draft => ({
      ...{ seq, setting: 0, stage: "trim", piece: "1", copies: 1, axis: "w", gauge: null, length: mm(60) },
      ...{ falls: [], stays: out("1", "part", 0), strokes: 1, turn: false, by: "mark", measure: mm(6), visit: seq },
      ...more,
    });
    const layout = { direction: 0, parts: [{ item: 0, turned: false }] } as const;
    return {
      patterns: [
        { id: "1", stock: "s", w: mm(100), h: mm(60), repeats: 1, yields: [{ blank: "b", count: 1 }], layout },
      ],
      cuts: [
        cut(1, { falls: [out("1.1", "scrap", 6)], stays: out("1.2", "part", 94) }),
        cut(2, {
          stage: "strip",
          piece: "1.2",
          gauge: mm(40),
          by: "gauge",
          measure: mm(40),
          falls: [{ ...out("1.2.1", "blank", 40), blank: "b" }],
          stays: out("1.2.2", "scrap", 54),
        }),
      ],
      leftOut: [],
    };
  },
};
const out = (id: string, kind: "part" | "blank" | "scrap", w: number) => ({ id, kind, w: mm(w), h: mm(60) });

describe("replay of a plan made by hand", () => {
  const faults = (change: (plan: ReturnType<typeof HAND.plan>) => void, blanks = HAND.blanks) => {
    const plan = HAND.plan();
    change(plan);
    return replay(plan, blanks, HAND.stock, limits());
  };

  test("finds nothing wrong with it", () => {
    expect(faults(() => {})).toEqual([]);
  });

  test.each([0, 1.5, -1, Number.NaN])("refuses %s repeats of a pattern", (repeats) => {
    expect(faults((plan) => Object.assign(plan.patterns[0]!, { repeats })).join("\n")).toContain(
      `pattern 1: repeats must be a whole number above 0; got ${repeats}`,
    );
  });

  test("refuses an edge trimmed twice", () => {
    const twice = faults((plan) => {
      plan.cuts[1]!.piece = "1.2t";
      plan.cuts[1]!.stays = out("1.2.2", "scrap", 48);
      plan.cuts.splice(1, 0, {
        ...plan.cuts[0]!,
        piece: "1.2",
        falls: [out("1.3", "scrap", 6)],
        stays: out("1.2t", "part", 88),
      });
    });
    expect(twice).toEqual(["cut 1: edge must be trimmed once; the w of 1.2 was trimmed before"]);
  });

  test("refuses a cut that leaves nothing in front of the blade", () => {
    const used = faults((plan) => {
      plan.cuts[1]!.falls = [out("1.2.1", "scrap", 40), out("1.2.3", "scrap", 40), out("1.2.4", "scrap", 14)];
    });
    expect(used.join("\n")).toContain("cut 2: something must stay in front of the blade; 1.2 is used up");
  });

  test("refuses a piece that grows sideways as it falls", () => {
    const grown = faults((plan) => {
      plan.cuts[1]!.falls = [{ ...plan.cuts[1]!.falls[0]!, h: mm(61) }];
    });
    expect(grown[0]).toBe("cut 2: 1.2.1 must keep the piece's 60 mm; got 61");
  });

  test("counts what the plan says it leaves out", () => {
    const asked = (quantity: number, ...counts: number[]) =>
      faults(
        (plan) => {
          plan.leftOut = counts.map((count) => ({ blank: "b", count, reason: "no stock" }));
          plan.leftOut = [...plan.leftOut, { blank: "another", count: 9, reason: "no stock" }];
        },
        [blank("b", 40, 60, quantity)],
      );
    expect(asked(6, 2, 3)).toEqual([]);
    expect(asked(7, 2, 3)).toEqual(["b: pieces cut must be 2; got 1, too few"]);
    expect(asked(5, 2, 3)).toEqual(["b: pieces cut must be 0; got 1, too many"]);
  });
});

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
