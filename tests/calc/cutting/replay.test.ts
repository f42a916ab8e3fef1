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

/** Sheets of 100 x 60 without trim, and cuts that are only what each test says of them. */
const SHEET = sheet("s", 100, 60, { quantity: 2 });
type Out = Draft["falls"][number];
const part = (id: string, w: number, h = 60, kind: Out["kind"] = "part"): Out => ({ id, kind, w: mm(w), h: mm(h) });
const scrap = (id: string, w: number, h = 60) => part(id, w, h, "scrap");
const done = (id: string, w: number, h = 60, name = "b"): Out => ({ ...part(id, w, h, "blank"), blank: name });
/** By the gauge at what falls first, unless it says otherwise. */
const cutOf = (seq: number, piece: string, falls: Out[], stays: Out, more: Partial<Draft> = {}): Draft => {
  const measure = falls[0]?.[more.axis ?? "w"] ?? mm(0);
  return {
    ...{ seq, visit: seq, setting: 0, stage: "strip", piece, copies: 1, axis: "w", by: "gauge", turn: false },
    ...{ gauge: measure, measure, length: mm(60), strokes: falls.length, falls, stays },
    ...more,
  };
};
interface Asked {
  readonly cuts: readonly Draft[];
  readonly blanks?: readonly (typeof BLANKS)[number][];
  readonly limits?: Parameters<typeof limits>[0];
  readonly stock?: Partial<typeof SHEET>;
  readonly yields?: Plan["patterns"][number]["yields"];
  readonly repeats?: number;
  readonly weightPerArea?: number;
}
function said({
  cuts,
  blanks = [],
  limits: more = {},
  stock = {},
  yields = [],
  repeats = 1,
  weightPerArea = 0,
}: Asked) {
  const layout = { direction: 0, parts: [] } as const;
  const patterns = [{ id: "1", stock: "s", w: mm(100), h: mm(60), repeats, yields, layout }];
  return replay({ patterns, cuts, leftOut: [] }, blanks, [{ ...SHEET, ...stock }], limits(more), weightPerArea);
}
/** What is said beside that a part is left half cut. */
const faultsOf = (asked: Asked) => said(asked).filter((fault) => !fault.includes("left half cut"));

describe("what stands half cut and what is lifted", () => {
  const cuts = [
    cutOf(1, "1", [part("a", 10)], part("b", 90)),
    cutOf(2, "b", [part("c", 20)], part("d", 70)),
    cutOf(3, "d", [part("e", 30)], part("f", 40)),
  ];
  test("stacks are counted by size when a piece is taken up, the one in work not among them", () => {
    expect(faultsOf({ cuts, limits: { stacks: 2 } })).toEqual([]);
    expect(faultsOf({ cuts, limits: { stacks: 1 } })).toEqual(["cut 3: half-cut stacks must be at most 1; got 2"]);
    const alike = [
      cuts[0]!,
      cutOf(2, "b", [part("c", 10)], part("d", 80)),
      cutOf(3, "d", [part("e", 30)], part("f", 50)),
    ];
    expect(faultsOf({ cuts: alike, limits: { stacks: 1 } })).toEqual([]);
    // At one visit nothing is put down.
    const once = cuts.map((cut) => ({ ...cut, visit: 1 }));
    expect(faultsOf({ cuts: once, limits: { stacks: 0 } })).toEqual([]);
  });
  test("what is as large as the piece in work lies on its stack, and scrap and blanks on none", () => {
    const twin = [cutOf(1, "1", [part("a", 50)], part("b", 50)), cutOf(2, "b", [part("c", 20)], part("d", 30))];
    expect(faultsOf({ cuts: twin, limits: { stacks: 0 } })).toEqual([]);
    const tall = [
      twin[0]!,
      cutOf(2, "b", [scrap("c", 20)], part("d", 30)),
      cutOf(3, "a", [part("x", 10)], part("y", 40)),
    ];
    expect(faultsOf({ cuts: tall, limits: { stacks: 0 } }).filter((fault) => fault.includes("stacks"))).toEqual([
      "cut 3: half-cut stacks must be at most 0; got 1",
    ]);
  });
  test("a stack as wide as the piece in work, or as another one, is not it where their heights differ", () => {
    const across = { axis: "h", length: mm(50) } as const;
    const cuts = [
      cutOf(1, "1", [part("a", 50)], part("b", 50)),
      cutOf(2, "a", [part("c", 50, 20)], part("d", 50, 40), across),
      cutOf(3, "b", [part("e", 50, 25)], part("f", 50, 35), across),
      cutOf(4, "c", [part("g", 10, 20)], part("h", 40, 20), { length: mm(20) }),
    ];
    const stacks = (most: number) => faultsOf({ cuts, limits: { stacks: most, stages: 9 } });
    // Before the third cut c and d, before the fourth d, e and f, all 50 wide.
    expect(stacks(3)).toEqual([]);
    expect(stacks(2)).toEqual(["cut 4: half-cut stacks must be at most 2; got 3"]);
    expect(stacks(1)).toEqual([
      "cut 3: half-cut stacks must be at most 1; got 2",
      "cut 4: half-cut stacks must be at most 1; got 3",
    ]);
  });
  test("long stacks are fewer, from 4 ft on where the shop does not say from where", () => {
    expect(faultsOf({ cuts, limits: { longStack: 59, longStacks: 2 } })).toEqual([]);
    expect(faultsOf({ cuts, limits: { longStack: 59, longStacks: 1 } })).toEqual([
      "cut 3: half-cut stacks of long pieces must be at most 1; got 2",
    ]);
    expect(faultsOf({ cuts, limits: { longStack: 60, longStacks: 1 } })).toEqual([]);
    expect(faultsOf({ cuts, limits: { longStacks: 0 } })).toEqual([]);
  });
  test("by common practice four stand at once, two of them long", () => {
    const many = (length: number, count: number): Draft[] => {
      let rest = 100;
      return Array.from({ length: count }, (_, k) => {
        const wide = k + 2;
        rest -= wide;
        const falls = [part(`f${k}`, wide, length)];
        return cutOf(k + 1, k === 0 ? "1" : `r${k - 1}`, falls, part(`r${k}`, rest, length), { length: mm(length) });
      });
    };
    expect(faultsOf({ cuts: many(60, 5) })).toEqual([]);
    expect(faultsOf({ cuts: many(60, 6) })).toEqual(["cut 6: half-cut stacks must be at most 4; got 5"]);
    const tall = { h: mm(1300) };
    expect(faultsOf({ cuts: many(1300, 3), stock: tall })).toEqual([]);
    expect(faultsOf({ cuts: many(1300, 4), stock: tall })).toEqual([
      "cut 4: half-cut stacks of long pieces must be at most 2; got 3",
    ]);
  });
  test("a piece is no heavier than the shop lifts", () => {
    const asked = (heaviestLift?: number) =>
      faultsOf({ cuts, weightPerArea: 0.001, limits: heaviestLift === undefined ? {} : { heaviestLift } });
    // 100 x 60 x 0.001 kg, then 90 x 60 x 0.001.
    expect(asked()).toEqual([]);
    expect(asked(6)).toEqual([]);
    expect(asked(5.5)).toEqual(["cut 1: lift must be at most 5.5 kg; got 6.0"]);
    expect(asked(5)).toEqual([
      "cut 1: lift must be at most 5 kg; got 6.0",
      "cut 2: lift must be at most 5 kg; got 5.4",
    ]);
  });
});

describe("how a cut is measured", () => {
  const one = (falls: Out[], stays: Out, more: Partial<Draft> = {}, on: Asked["limits"] = {}) =>
    faultsOf({ cuts: [cutOf(1, "1", falls, stays, more)], limits: on });
  const byHand = { gauge: null } as const;
  test("a gauge is set for a cut by the gauge alone", () => {
    expect(one([part("a", 40)], part("b", 60), { by: "mark" }, { cutToMark: true })).toEqual([
      "cut 1: gauge must be set for a cut by the gauge and no other; got 40",
    ]);
    expect(one([part("a", 40)], part("b", 60), { by: "mark", ...byHand }, { cutToMark: true })).toEqual([]);
  });
  test("a mark only where the shop cuts to one", () => {
    expect(one([part("a", 40)], part("b", 60), { by: "mark", ...byHand })).toEqual([
      "cut 1: mark must be allowed by the shop; it is not",
    ]);
  });
  test("a front stop as far as it reaches", () => {
    const at = (frontReach?: number) =>
      one(
        [scrap("a", 40)],
        part("b", 60),
        { by: "front stop", measure: mm(60), ...byHand },
        frontReach === undefined ? {} : { frontReach },
      );
    expect(at(60)).toEqual([]);
    expect(at(59)).toEqual(["cut 1: front stop must be at most 59 mm; got 60"]);
    expect(at()).toEqual(["cut 1: front stop must be at most 0 mm; got 60"]);
  });
  test("a part, and its own size: of waste what stays is measured, by the gauge what falls", () => {
    const stop = { by: "front stop", ...byHand } as const;
    const reach = { frontReach: 100 };
    expect(one([scrap("a", 40)], part("b", 60), { ...stop, measure: mm(50) }, reach)).toEqual([
      "cut 1: what is measured must be 50 mm; got 60",
    ]);
    expect(one([part("a", 40)], part("b", 60), { ...stop, measure: mm(40) }, reach)).toEqual([]);
    expect(one([part("a", 40, 60, "remnant")], part("b", 60), { ...stop, measure: mm(60) }, reach)).toEqual([]);
    expect(one([scrap("a", 40)], scrap("b", 60), { ...stop, measure: mm(60) }, reach)).toEqual([
      "cut 1: what is measured must be a part; b is scrap",
    ]);
    expect(one([scrap("a", 40)], part("b", 60))).toEqual(["cut 1: what is measured must be a part; a is scrap"]);
    expect(one([part("a", 40)], part("b", 60), { measure: mm(41) })).toEqual([
      "cut 1: what is measured must be 41 mm; got 40",
    ]);
  });
  test("waste no thinner than the least trim or the sheet, wherever it lies", () => {
    const thin = (on: Asked["limits"]) => one([part("a", 96)], scrap("b", 4), {}, on);
    expect(thin({ leastTrim: 4 })).toEqual([]);
    expect(thin({ leastTrim: 5 })).toEqual(["cut 1: waste must be at least 5 mm wide; got 4"]);
    expect(thin({ thickness: 6, leastTrim: 5 })).toEqual(["cut 1: waste must be at least 6 mm wide; got 4"]);
    expect(one([part("a", 4)], part("b", 96), {}, { leastTrim: 5 })).toEqual([]);
    const falling = one(
      [scrap("a", 4)],
      part("b", 96),
      { by: "front stop", measure: mm(96), ...byHand },
      { leastTrim: 5, frontReach: 100 },
    );
    expect(falling).toEqual(["cut 1: waste must be at least 5 mm wide; got 4"]);
    const kept = one([part("a", 96)], part("b", 4, 60, "remnant"), {}, { leastTrim: 5 });
    expect(kept).toEqual(["cut 1: waste must be at least 5 mm wide; got 4"]);
  });
});

describe("what a cut leaves", () => {
  const one = (falls: Out[], stays: Out, more: Partial<Draft> = {}, on: Asked["limits"] = {}) =>
    faultsOf({ cuts: [cutOf(1, "1", falls, stays, more)], limits: on });
  test("a part that falls is as wide as the shear drops, and the rest as the hold-downs grip", () => {
    expect(one([part("a", 40)], part("b", 60), {}, { leastDrop: 40, leastHold: 60 })).toEqual([]);
    expect(one([part("a", 40)], part("b", 60), {}, { leastDrop: 41 })).toEqual([
      "cut 1: drop must be at least 41 mm; got 40",
    ]);
    expect(one([part("a", 40)], part("b", 60), {}, { leastHold: 61 })).toEqual([
      "cut 1: hold must be at least 61 mm; got 60",
    ]);
    expect(one([part("a", 30), part("c", 30)], part("b", 40), {}, { leastHold: 50 })).toEqual([
      "cut 1: hold must be at least 50 mm; got 40",
    ]);
  });
  test("a gauge reaches so far and comes so near, and what falls is what it is set to", () => {
    expect(one([part("a", 40)], part("b", 60), {}, { reach: 40, nearestGauge: 40 })).toEqual([]);
    expect(one([part("a", 40)], part("b", 60), {}, { reach: 39 })).toEqual([
      "cut 1: gauge must be at most 39 mm; got 40",
    ]);
    expect(one([part("a", 40)], part("b", 60), {}, { nearestGauge: 41 })).toEqual([
      "cut 1: gauge must be at least 41 mm; got 40",
    ]);
    expect(one([part("a", 40)], part("b", 60), { gauge: mm(39) })).toEqual([
      "cut 1: what falls must measure the gauge's 39 mm; got 40",
    ]);
  });
  test("a part twists that is narrow for the sheet and long for its width, either limit alone or both", () => {
    const twist = (on: Asked["limits"]) => one([part("a", 4)], part("b", 96), {}, { thickness: 1, ...on });
    const says = ["cut 1: a part that falls must not twist; 4 x 60 mm does"];
    expect(twist({ twistWidth: 5 })).toEqual(says);
    expect(twist({ twistWidth: 4 })).toEqual([]);
    expect(twist({ twistLength: 14 })).toEqual(says);
    expect(twist({ twistLength: 15 })).toEqual([]);
    expect(twist({ twistWidth: 5, twistLength: 14 })).toEqual(says);
    expect(twist({ twistWidth: 4, twistLength: 14 })).toEqual([]);
    expect(twist({ twistWidth: 5, twistLength: 15 })).toEqual([]);
    // What stays does not fall, and waste may twist.
    expect(one([part("a", 96)], part("b", 4), {}, { thickness: 1, twistWidth: 5 })).toEqual([]);
    expect(one([part("a", 4)], part("b", 96), {}, { twistWidth: 5 })).toEqual([]);
  });
  test("what stays measures what is left, both ways", () => {
    expect(one([part("a", 40)], part("b", 59))).toEqual(["cut 1: b must measure what is left, 60 mm; got 59"]);
    expect(one([part("a", 40)], part("b", 60, 50))).toEqual(["cut 1: b must measure what is left, 60 mm; got 60"]);
    expect(one([part("a", 40, 59)], part("b", 60))).toEqual(["cut 1: a must keep the piece's 60 mm; got 59"]);
    expect(one([part("a", 40), part("c", 60)], scrap("b", 0), {}, {}).join("; ")).toContain(
      "something must stay in front of the blade; 1 is used up",
    );
  });
  test("behind a front stop what falls is wide enough to drop", () => {
    const behind = (leastDrop: number, kind: Out["kind"] = "part") =>
      one(
        [part("a", 40, 60, kind)],
        part("b", 60),
        { by: "front stop", gauge: null, measure: mm(kind === "part" ? 40 : 60) },
        { frontReach: 100, leastDrop },
      );
    expect(behind(40)).toEqual([]);
    expect(behind(61).at(-1)).toBe("cut 1: what falls behind a front stop must be at least 61 mm; got 60");
    expect(behind(61, "scrap")).toEqual([]);
  });
  test("behind the gauge what stays need not drop, and what is cut to a mark may lie beyond the gauge", () => {
    expect(one([part("a", 60)], part("b", 40), {}, { leastDrop: 50 })).toEqual([]);
    const marked = { by: "mark", gauge: null, measure: mm(60) } as const;
    expect(one([part("a", 60)], part("b", 40), marked, { cutToMark: true, reach: 50, nearestGauge: 70 })).toEqual([]);
    const stop = { by: "front stop", gauge: null, measure: mm(70) } as const;
    expect(one([part("a", 70)], part("b", 30), stop, { frontReach: 100, leastDrop: 30 })).toEqual([]);
    const kept = { by: "front stop", gauge: null, measure: mm(90) } as const;
    expect(one([part("a", 10, 60, "remnant")], part("b", 90), kept, { frontReach: 100, leastDrop: 30 })).toEqual([]);
  });
  test("a cut from which nothing falls is a fault, not the end of the check", () => {
    expect(
      one([], part("b", 100), { by: "front stop", gauge: null, measure: mm(9) }, { frontReach: 100, leastDrop: 200 }),
    ).toEqual([]);
  });
  test("strokes are one a fall and copy, copies those of the piece, and a cut as long as the piece is wide", () => {
    expect(one([part("a", 40), part("c", 40)], part("b", 20), { gauge: mm(40), strokes: 1 })).toEqual([
      "cut 1: strokes must be copies times falls, 2; got 1",
    ]);
    expect(one([part("a", 40)], part("b", 60), { length: mm(59) })).toEqual([
      "cut 1: cut length must be the piece's 60 mm; got 59",
    ]);
    expect(one([part("a", 40)], part("b", 60), {}, { longestCut: 59 })).toEqual([
      "cut 1: cut length must be at most 59 mm; got 60",
    ]);
    expect(one([part("a", 40)], part("b", 60), {}, { longestCut: 60 })).toEqual([]);
    const twice = [cutOf(1, "1", [part("a", 40)], part("b", 60), { copies: 2, strokes: 2 })];
    expect(faultsOf({ cuts: twice, repeats: 2 })).toEqual([]);
    expect(faultsOf({ cuts: twice })).toEqual([
      "cut 1: copies must be 1; got 2",
      "cut 1: strokes must be copies times falls, 1; got 2",
    ]);
  });
  test("a level begins where the cuts turn; sizing and edges are none", () => {
    const cuts = (stage: Draft["stage"] = "strip") => [
      cutOf(1, "1", [part("a", 40)], part("b", 60)),
      cutOf(2, "b", [part("c", 20)], part("d", 40)),
      cutOf(3, "d", [part("e", 40, 30)], part("f", 40, 30), { axis: "h", length: mm(40) }),
      cutOf(4, "e", [part("g", 10, 30)], part("h", 30, 30), { length: mm(30), stage }),
    ];
    expect(faultsOf({ cuts: cuts(), limits: { stages: 3 } })).toEqual([]);
    expect(faultsOf({ cuts: cuts(), limits: { stages: 2 } })).toEqual([
      "cut 4: cuts must be at most 2 stages deep; got 3",
    ]);
    expect(faultsOf({ cuts: cuts("size"), limits: { stages: 2 } })).toEqual([]);
  });
  test("a name is used once", () => {
    const cuts = [cutOf(1, "1", [part("a", 40)], part("b", 60)), cutOf(2, "b", [part("a", 20)], part("1", 40))];
    expect(faultsOf({ cuts })).toEqual([
      "cut 2: piece names must be new; a is in use",
      "cut 2: piece names must be new; 1 is in use",
    ]);
    expect(said({ cuts: cuts.slice(0, 1) })).toEqual(
      ["a", "b"].map((id) => `piece ${id} must end as a blank, a remnant or scrap; it is left half cut`),
    );
  });
});

describe("the trim of an edge", () => {
  const trimmed = (deep: number, stock: Partial<typeof SHEET>, on: Asked["limits"] = {}) =>
    faultsOf({
      cuts: [cutOf(1, "1", [scrap("a", deep)], part("b", 100 - deep), { stage: "trim", by: "mark", gauge: null })],
      stock,
      limits: on,
    });
  test("is the stock's, no thinner than the sheet or the least, and none of a sheared edge", () => {
    expect(trimmed(6, { trim: mm(6) })).toEqual([]);
    expect(trimmed(8, { trim: mm(6) }, { leastTrim: 8 })).toEqual([]);
    expect(trimmed(9, { trim: mm(6) }, { leastTrim: 8, thickness: 9 })).toEqual([]);
    expect(trimmed(6, { trim: mm(6) }, { leastTrim: 8 })).toEqual(["cut 1: edge trim must be 8 mm; got 6"]);
    expect(trimmed(6, { trim: mm(6), edgesSheared: true })).toEqual(["cut 1: edge trim must be 0 mm; got 6"]);
    expect(trimmed(6, {}, { leastTrim: 8 })).toEqual(["cut 1: edge trim must be 0 mm; got 6"]);
  });
  test("is one piece, once a side, and both sides may be trimmed", () => {
    const trim = { stage: "trim", by: "mark", gauge: null } as const;
    const stock = { trim: mm(6) };
    const two = [cutOf(1, "1", [scrap("a", 6), scrap("c", 6)], part("b", 88), trim)];
    expect(faultsOf({ cuts: two, stock })).toEqual(["cut 1: edge trim must be 6 mm; got 6"]);
    const none = [cutOf(1, "1", [], part("b", 100), trim)];
    expect(faultsOf({ cuts: none, stock })).toEqual(["cut 1: edge trim must be 6 mm; got 0"]);
    const both = [
      cutOf(1, "1", [scrap("a", 6)], part("b", 94), trim),
      cutOf(2, "b", [scrap("c", 94, 6)], part("d", 94, 54), { ...trim, axis: "h", length: mm(94) }),
    ];
    expect(faultsOf({ cuts: both, stock, limits: { stages: 0 } })).toEqual([]);
  });
});

describe("what a plan yields", () => {
  const b = (w: number, h: number, grain: "free" | "along" | "across" = "free", quantity = 1) =>
    blank("b", w, h, quantity, grain);
  const made = (of: Out, asked: Partial<Asked> = {}) =>
    said({ cuts: [cutOf(1, "1", [of], scrap("z", 100 - of.w))], ...asked });
  test("is blanks of the bill, of their size either way round, and as many as are wanted", () => {
    expect(made(done("a", 40), { blanks: [b(40, 60)] })).toEqual([]);
    expect(made(done("a", 40), { blanks: [b(60, 40)] })).toEqual([]);
    expect(made(done("a", 40), { blanks: [b(40, 61)] })).toEqual(["piece a: b must measure 40 x 61 mm; got 40 x 60"]);
    expect(made(done("a", 40), { blanks: [b(41, 60)] })).toEqual(["piece a: b must measure 41 x 60 mm; got 40 x 60"]);
    expect(made(done("a", 40), { blanks: [b(60, 41)] })).toEqual(["piece a: b must measure 60 x 41 mm; got 40 x 60"]);
    expect(made(done("a", 40), { blanks: [b(61, 40)] })).toEqual(["piece a: b must measure 61 x 40 mm; got 40 x 60"]);
    expect(made(done("a", 40, 60, "x"))).toEqual(["piece a: blank must be one of the bill's; got x"]);
    expect(made(done("a", 40), { blanks: [b(40, 60), b(40, 60)] })).toEqual([
      "b: pieces cut must be 2; got 1, too few",
    ]);
    const both = [cutOf(1, "1", [done("a", 40)], scrap("z", 60), { copies: 2, strokes: 2 })];
    expect(said({ cuts: both, repeats: 2, blanks: [b(40, 60, "free", 2)] })).toEqual([]);
  });
  test("keeps its grain: along its first size, or across it, as the sheet was rolled", () => {
    const says = (grain: string) => [`piece a: b must keep its grain ${grain} its first size; it lies the other way`];
    const lies = (grain: "along" | "across", rolled: "w" | "h", w = 40, h = 60) =>
      made(done("a", 40), { blanks: [b(w, h, grain)], stock: { grain: rolled } });
    expect([lies("along", "w"), lies("across", "h")]).toEqual([[], []]);
    expect([lies("across", "w"), lies("along", "h")]).toEqual([says("across"), says("along")]);
    expect([lies("along", "w", 60, 40), lies("across", "h", 60, 40)]).toEqual([says("along"), says("across")]);
    expect([lies("across", "w", 60, 40), lies("along", "h", 60, 40)]).toEqual([[], []]);
  });
  test("of a sheet that is a blank as it is needs no cut", () => {
    const whole = { cuts: [], blanks: [blank("b", 100, 60, 1)] };
    expect(said({ ...whole, yields: [{ blank: "b", count: 1 }] })).toEqual([]);
    const left = [
      "piece 1 must end as a blank, a remnant or scrap; it is left half cut",
      "b: pieces cut must be 1; got 0, too few",
    ];
    expect(said({ ...whole, yields: [{ blank: "b", count: 2 }] })).toEqual(left);
    expect(said({ ...whole, yields: [1, 2].map(() => ({ blank: "b", count: 1 })) })).toEqual(left);
  });
  test("comes from no more sheets than there are, over all patterns", () => {
    const layout = { direction: 0, parts: [] } as const;
    const pattern = (id: string, repeats: number) => ({
      id,
      stock: "s",
      w: mm(100),
      h: mm(60),
      repeats,
      yields: [],
      layout,
    });
    const sheets = (...repeats: number[]) =>
      replay(
        { patterns: repeats.map((each, i) => pattern(String(i), each)), cuts: [], leftOut: [] },
        [],
        [SHEET],
        limits(),
      ).filter((fault) => fault.startsWith("stock"));
    expect([sheets(2), sheets(1, 1)]).toEqual([[], []]);
    expect(sheets(1, 2)).toEqual(["stock s: sheets pulled must be at most 2; got 3"]);
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
