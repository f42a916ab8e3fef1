/** What a shear operator found wrong with earlier plans, one test each (the figures by hand; the rules common practice). */
import { describe, expect, test } from "vitest";
import { buildProblem } from "../../../src/calc/cutting/build-problem.ts";
import { orderCuts, sheetParts } from "../../../src/calc/cutting/cut-order.ts";
import { type Cut, type Plan, planCuts, replay } from "../../../src/calc/cutting/index.ts";
import { randomBill, shopBill } from "../../../src/tools/bench/cutting/shop-bills.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, limits, sheet, sheetsOf } from "./bills.ts";

const QUICK = { units: 2_000_000 };
const INCH = 25.4;
const inches = (value: number) => mm(value * INCH);

describe("the rack", () => {
  const full = sheet("full", 2400, 1200, { price: 100 as never });
  const wanted = [blank("b", 600, 400, 12)];

  test.each([
    ["a price of 0", 0],
    ["no price", null],
  ])("an offcut with %s keeps money and its bound", (_, price) => {
    const offcut = sheet("offcut", 700, 500, { price: price as never, quantity: 2, remnant: true });
    const plan = planCuts([blank("b", 600, 400, 14)], [full, offcut], limits(), { ...QUICK, least: "money" });
    // By hand: twelve on one sheet for 100 and two on the offcuts for nothing.
    expect(plan.value).toBe(100);
    expect(plan.sheets).toEqual([
      { stock: "full", count: 1 },
      { stock: "offcut", count: 2 },
    ]);
    expect(plan.bound).toBeLessThanOrEqual(100);
    expect(plan.bound).toBeGreaterThan(99);
  });

  test("an offcut that saves nothing is left on the rack", () => {
    const offcut = sheet("offcut", 700, 500, { price: null, quantity: 1, remnant: true });
    const plan = planCuts(wanted, [full, offcut], limits(), { ...QUICK, least: "money" });
    expect(plan.value).toBe(100);
    expect(plan.sheets).toEqual([{ stock: "full", count: 1 }]);
  });

  test("a 24 x 12 part comes from a 24 x 12 offcut whose edges are sheared, and not from one that must be trimmed", () => {
    const offcut = (edgesSheared: boolean) =>
      sheet("offcut", 24 * INCH, 12 * INCH, { quantity: 1, remnant: true, trim: inches(0.25), edgesSheared });
    const plan = (sheared: boolean) =>
      planCuts([blank("b", 24 * INCH, 12 * INCH, 1)], [full, offcut(sheared)], limits(), QUICK);
    expect(plan(true).sheets).toEqual([{ stock: "offcut", count: 1 }]);
    expect(plan(false).sheets).toEqual([{ stock: "full", count: 1 }]);
  });

  test("an offcut has a grain of its own", () => {
    const offcut = (grain: "w" | "h") => sheet("offcut", 600, 300, { quantity: 1, remnant: true, grain });
    const along = [blank("b", 600, 300, 1, "along")];
    expect(planCuts(along, [full, offcut("w")], limits(), QUICK).sheets[0]!.stock).toBe("offcut");
    expect(planCuts(along, [full, offcut("h")], limits(), QUICK).sheets[0]!.stock).toBe("full");
  });

  test("two lines of one part are two demands of one blank", () => {
    const lines = [blank("b", 600, 400, 5), blank("b", 600, 400, 7)];
    const plan = planCuts(lines, [full], limits(), QUICK);
    expect(plan.patterns.flatMap(({ yields }) => yields)).toEqual([{ blank: "b", count: 12 }]);
    expect(replay(plan, lines, [full], limits())).toEqual([]);
    expect(replay(plan, [lines[0]!], [full], limits()).join()).toMatch(/b: pieces cut must be 5; got 12, too many/);
  });
});

describe("front stops and marks", () => {
  const blanks = [blank("a", 40 * INCH, 20 * INCH, 12, "along"), blank("b", 30 * INCH, 10 * INCH, 16, "along")];
  const stock = [sheet("s", 120 * INCH, 48 * INCH)];
  const on = (more: Parameters<typeof limits>[0]) => planCuts(blanks, stock, limits(more), QUICK);

  test("a reach of 24 in with a front stop takes at most one sheet more than without the limit", () => {
    const reach = 24 * INCH;
    const free = sheetsOf(on({}));
    const plan = on({ reach, frontReach: 96 * INCH });
    expect(plan.leftOut).toEqual([]);
    expect(sheetsOf(plan)).toBeLessThanOrEqual(free + 1);
    expect(plan.cuts.some(({ by }) => by === "front stop")).toBe(true);
    expect(plan.cuts.some(({ by, stage }) => by === "mark" && stage !== "trim")).toBe(false);
  });

  test("where there is no stop a cut is made to a mark, with its dimension", () => {
    const plan = on({ reach: 24 * INCH, cutToMark: true });
    const marked = plan.cuts.filter(({ by, stage }) => by === "mark" && stage !== "trim");
    expect(marked.length).toBeGreaterThan(0);
    for (const { gauge, measure } of marked) {
      expect(gauge).toBeNull();
      expect(measure).toBeGreaterThan(24 * INCH);
    }
  });
});

test("the gauge is set to a part and never to the scrap, and nothing thinner than the sheet is sheared off", () => {
  const { blanks, stock, limits: shear, weightPerArea } = shopBill(3);
  const plan = planCuts(blanks, stock, shear, { units: 5_000_000, weightPerArea });
  for (const { by, falls, stays, axis, stage } of plan.cuts) {
    if (by === "gauge") for (const { kind } of falls) expect(["part", "blank"]).toContain(kind);
    for (const { kind, [axis]: extent } of [...falls, stays]) {
      if (kind === "scrap" && stage !== "trim") expect(extent).toBeGreaterThanOrEqual(shear.thickness! - 0.01);
    }
  }
});

test("an edge trim is never under the thickness", () => {
  const stock = [sheet("s", 1000, 500, { trim: mm(0.7) })];
  const plan = planCuts([blank("b", 300, 200, 3)], stock, limits({ thickness: 4.76 }), QUICK);
  const trims = plan.cuts.filter(({ stage }) => stage === "trim");
  expect(trims).toHaveLength(2);
  for (const { falls, axis } of trims) expect(falls[0]![axis]).toBeCloseTo(4.76, 2);
});

test("more work never makes the plan worse, and the bound holds at any time", () => {
  const { blanks, stock, limits: shear } = shopBill(6);
  const plans = [1e6, 1e7, 4e7].map((units) => planCuts(blanks, stock, shear, { units }));
  for (const { bound } of plans) for (const { value } of plans) expect(bound).toBeLessThanOrEqual(value * (1 + 1e-9));
  for (let k = 1; k < plans.length; k++) expect(plans[k]!.value).toBeLessThanOrEqual(plans[k - 1]!.value);
});

const BILL = shopBill(5);
const PLAN = planCuts(BILL.blanks, BILL.stock, BILL.limits, { units: 5_000_000, weightPerArea: BILL.weightPerArea });

describe("what is kept low", () => {
  const options = { units: 3_000_000, weightPerArea: BILL.weightPerArea };
  const plan = (more: Parameters<typeof planCuts>[3]) =>
    planCuts(BILL.blanks, BILL.stock, BILL.limits, { ...options, ...more });

  test("with a price on the minute metal and time together never count more", () => {
    const perMinute = 20_000;
    const total = ({ value, minutes }: Plan) => value + perMinute * minutes;
    expect(total(plan({ perMinute }))).toBeLessThanOrEqual(total(plan({})));
    expect(plan({ perMinute: Infinity }).minutes).toBeLessThanOrEqual(plan({}).minutes);
  });

  test("the number of sheets where that is asked for", () => {
    const fewest = plan({ least: "sheets" });
    expect(fewest.value).toBe(sheetsOf(fewest));
    expect(sheetsOf(fewest)).toBeLessThanOrEqual(sheetsOf(plan({})));
    expect(fewest.bound).toBeLessThanOrEqual(fewest.value);
  });

  test("the parts wanted first come from the first sheets", () => {
    const blanks = [blank("later", 900, 450, 4), { ...blank("soon", 800, 300, 3), due: 5 }];
    const { patterns } = planCuts(blanks, [sheet("s", 1000, 1000)], limits(), QUICK);
    const soon = patterns.map(({ yields }) => yields.some((line) => line.blank === "soon"));
    expect(patterns.length).toBeGreaterThan(1);
    expect(soon).toEqual([...soon].sort((a, b) => Number(b) - Number(a)));
  });
});

describe("order on the floor", () => {
  test("never more than four stacks half cut, nor two of long pieces", () => {
    expect(PLAN.stacks).toBeLessThanOrEqual(4);
    expect(PLAN.longStacks).toBeLessThanOrEqual(2);
    expect(PLAN.warnings).toEqual([]);
  });

  test.each([5, 13, 18, 20, 25, 38])("the floor is never too full: shop bill %i", (seed) => {
    const { blanks, stock, limits: shear, weightPerArea } = shopBill(seed);
    const { warnings } = planCuts(blanks, stock, shear, { units: 300_000, weightPerArea });
    expect(warnings).toEqual([]);
  });

  test("strips of one size lie on one stack, whatever is cut from them, and are crosscut at one setting", () => {
    const blanks = [blank("long", 600, 100, 2), blank("mid", 380, 100, 1), blank("short", 90, 100, 4)];
    const stock = [sheet("s", 1000, 200)];
    const options = { weightPerArea: 1e-6 };
    const strip = (...items: number[]) => ({
      direction: 0 as const,
      parts: items.map((item) => ({ item, turned: false })),
    });
    const layout = { direction: 1 as const, parts: [strip(0, 1), strip(0, 2, 2, 2, 2)] };
    const pattern = { id: "1", stock: "s", w: mm(1000), h: mm(200), repeats: 1, yields: [], layout };
    const problem = buildProblem(blanks, stock, limits(), options);
    const toOrder = { problem, blanks, stock, limits: limits(), options };
    const { cuts, settings } = orderCuts([pattern], sheetParts([pattern], toOrder), toOrder, 1);
    const measures = cuts.map(({ measure }) => Math.round(measure));
    // Parted in two strips, both cut at 600, then the rest of one at 380 and of the other at 90.
    expect(measures.slice(0, 3)).toEqual([100, 600, 600]);
    expect(settings).toBe(4);
  });

  test("a heavy strip is taken up once and what is left of it is light: alike strips are crosscut at one setting", () => {
    const blanks = [blank("long", 600, 300, 3), blank("mid", 250, 300, 3)];
    const stock = [sheet("s", 1000, 920)];
    // A strip of 1000 x 300 weighs 30 kg, of which 40 x 300 or less are set down again after the first two cuts.
    const options = { weightPerArea: 1e-4 };
    const problem = buildProblem(blanks, stock, limits(), options);
    const toOrder = { problem, blanks, stock, limits: limits(), options };
    const strip = { direction: 0 as const, parts: [0, 1].map((item) => ({ item, turned: false })) };
    const layout = { direction: 1 as const, parts: [strip, strip, strip] };
    const pattern = { id: "1", stock: "s", w: mm(1000), h: mm(920), repeats: 1, yields: [], layout };
    const { settings, heavyLifts } = orderCuts([pattern], sheetParts([pattern], toOrder), toOrder, 1);
    // Strips at 300, then 600 on all three and 250 on all three; heavy are the sheet and each strip once.
    expect(settings).toBe(3);
    expect(heavyLifts).toBe(4);
  });

  test.each([
    ["two long stacks: set down for the first two strips, and light after the next two", 2, 2],
    ["room for all strips: never set down", 6, 1],
  ])("a sheet of six strips to be cut on, %s", (_, longStacks, lifts) => {
    // By hand: 45 kg, 28 kg without the two widest strips and 13 kg without four; no strip is over 9 kg.
    const widths = [600, 550, 500, 480, 450, 420];
    const strips = widths.map((_, i) => ({
      direction: 1 as const,
      parts: [0, 1].map(() => ({ blank: `b${i}`, turned: false })),
    }));
    const stock = [sheet("s", 3000, 1500, { quantity: 1, pinned: { direction: 0, parts: strips } })];
    const blanks = widths.map((width, i) => blank(`b${i}`, width, 750, 2));
    const plan = planCuts(blanks, stock, limits({ stacks: 8, longStacks }), { ...QUICK, weightPerArea: 1e-5 });
    expect([plan.leastHeavyLifts, plan.heavyLifts]).toEqual([lifts, lifts]);
    expect(plan.longStacks).toBeLessThanOrEqual(longStacks);
  });
  test("heavy pieces are taken up hardly oftener than they must", () => {
    expect(PLAN.leastHeavyLifts).toBeGreaterThan(0);
    expect(PLAN.heavyLifts).toBeGreaterThanOrEqual(PLAN.leastHeavyLifts);
    expect(PLAN.heavyLifts).toBeLessThanOrEqual(1.5 * PLAN.leastHeavyLifts);
  });

  test("settings, lifts and minutes by hand: 100 sheets stripped at one setting, light strips crosscut at another", () => {
    const plan = planCuts([blank("b", 500, 250, 400)], [sheet("s", 1000, 500)], limits(), {
      ...QUICK,
      weightPerArea: 1e-5,
      pace: { setting: 60, liftPerKilogram: 1, turn: 6, stroke: 3, mark: 0, heavy: 4 },
    });
    // Each sheet of 5 kg: one stroke in two strips of 2.5 kg, each of them one stroke more; a turn for each strip.
    expect(plan.settings).toBe(2);
    expect(plan.heavyLifts).toBe(100);
    expect(plan.leastHeavyLifts).toBe(100);
    expect(plan.minutes).toBeCloseTo((2 * 60 + 100 * 5 + 200 * 2.5 + 200 * 6 + 300 * 3) / 60, 6);
  });
});

describe("the replay fails on each limit broken once", () => {
  type Draft = { -readonly [K in keyof Cut]: Cut[K] };
  const faults = (change: (cuts: Draft[]) => void, more: Partial<typeof BILL.limits> = {}): string => {
    const cuts = structuredClone(PLAN.cuts) as Draft[];
    change(cuts);
    const plan: Plan = { ...PLAN, cuts };
    return replay(plan, BILL.blanks, BILL.stock, { ...BILL.limits, ...more }, BILL.weightPerArea).join("\n");
  };
  const gauged = PLAN.cuts.findIndex(({ by }) => by === "gauge");
  const front = PLAN.cuts.findIndex(({ by }) => by === "front stop");

  test("not at all on the plan as it is", () => expect(faults(() => {})).toBe(""));
  test("a gauge under the least", () =>
    expect(faults(() => {}, { nearestGauge: inches(9) })).toMatch(/gauge must be at least/));
  test("a trim under the least", () =>
    expect(faults(() => {}, { leastTrim: inches(1) })).toMatch(/edge trim must be 25.4/));
  test("waste thinner than the sheet", () =>
    expect(faults(() => {}, { thickness: inches(0.24) })).toMatch(/waste must be at least/));
  test("a lift over the limit", () =>
    expect(faults(() => {}, { heaviestLift: 20 })).toMatch(/lift must be at most 20 kg/));
  test("a stack over the limit", () =>
    expect(faults(() => {}, { stacks: 1 })).toMatch(/half-cut stacks must be at most 1/));
  test("a long stack over the limit", () =>
    expect(faults(() => {}, { longStacks: 0 })).toMatch(/stacks of long pieces must be at most 0/));
  test("a piece that no hold-down holds", () =>
    expect(faults(() => {}, { leastHold: inches(20) })).toMatch(/hold must be at least/));
  test("a part that twists", () =>
    expect(faults(() => {}, { twistWidth: 40, twistLength: 4 })).toMatch(/must not twist/));
  test("a front stop out of reach", () => {
    expect(front).toBeGreaterThan(-1);
    expect(faults(() => {}, { frontReach: inches(10) })).toMatch(/front stop must be at most 254/);
  });
  test("a mark where the shop cuts to none", () => {
    const marked = (cuts: Draft[]) => {
      cuts[gauged]!.by = "mark";
      cuts[gauged]!.gauge = null;
    };
    expect(faults(marked, { cutToMark: false })).toMatch(/mark must be allowed/);
    expect(faults(marked)).toBe("");
  });
  test("a gauge set to the scrap", () =>
    expect(
      faults((cuts) => {
        cuts[gauged]!.falls = cuts[gauged]!.falls.map((fall) => ({ ...fall, kind: "scrap" }));
      }),
    ).toMatch(/what is measured must be a part/));
  test("a measure that is not the part's", () =>
    expect(
      faults((cuts) => {
        cuts[gauged]!.measure = mm(cuts[gauged]!.measure + 1);
      }),
    ).toMatch(/what is measured must be/));
});

test.each(Array.from({ length: 30 }, (_, k) => 5000 + k))(
  "random bill %i with offcuts, grain, reach, front stops and twist passes the replay",
  (seed) => {
    const bill = randomBill(seed);
    const plan = planCuts(bill.blanks, bill.stock, bill.limits, {
      units: 1_000_000,
      weightPerArea: bill.weightPerArea,
    });
    expect(replay(plan, bill.blanks, bill.stock, bill.limits, bill.weightPerArea)).toEqual([]);
  },
);
