import { describe, expect, test } from "vitest";
import { buildProblem } from "../../../src/calc/cutting/build-problem.ts";
import { gridDown } from "../../../src/calc/cutting/grid.ts";
import { planCuts } from "../../../src/calc/cutting/index.ts";
import { ALONG_X, ALONG_Y } from "../../../src/calc/cutting/problem.ts";
import { canBeSheared } from "../../../src/calc/cutting/shear-check.ts";
import { viewGroups } from "../../../src/calc/cutting/strip-views.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, limits, sheet } from "./bills.ts";

const BLADE = 2500;
const both = [ALONG_Y, ALONG_X];

/** The one kind of sheet of a problem, in millimeters. */
function kindOf(w: number, h: number, trim: number, more: { firstCut?: "along w" } = {}) {
  const shear = limits({ longestCut: BLADE });
  const kind = buildProblem([blank("b", 100, 100, 1)], [sheet("s", w, h, { trim: mm(trim) })], shear, more).sheets[0]!;
  const grid = gridDown(mm(1));
  return { roots: kind.roots, trimPartLimit: kind.trimPartLimit / grid, usable: [kind.w / grid, kind.h / grid] };
}

// By hand, blade 2500 mm: a cut between parts that follow each other along y runs along x over the whole width of what lies
// on the table; the first edge is trimmed over the full other side.
describe("which first cuts a blade of 2500 mm can make in a sheet", () => {
  test.each([
    ["small enough both ways", 2400, 1200, 6, both, Infinity],
    ["as long as the blade", 2500, 1200, 0, both, Infinity],
    ["longer than the blade, no trim", 3000, 1200, 0, [ALONG_X], Infinity],
    ["higher than the blade, no trim", 1200, 3000, 0, [ALONG_Y], Infinity],
    ["too long by less than the trim", 2505, 1200, 6, both, Infinity],
    ["too long by just the trim", 2506, 1200, 6, both, Infinity],
    ["too long by more than the trim: trimmed part by part", 2507, 1200, 6, [ALONG_X], BLADE],
    ["too high by less than the trim", 1200, 2505, 6, both, Infinity],
    ["too high by more than the trim", 1200, 2507, 6, [ALONG_Y], BLADE],
    ["too long, and as high as the blade", 3000, 2500, 6, [ALONG_X], BLADE],
    ["too long, and higher than the blade by less than the trim", 3000, 2503, 6, [], BLADE],
    ["both ways longer than the blade by less than the trim", 2505, 2504, 6, [], Infinity],
    ["too long and too high", 3000, 3000, 0, [], Infinity],
  ] as const)("%s: %d x %d, trim %d", (_, w, h, trim, roots, trimPartLimit) => {
    expect(kindOf(w, h, trim)).toEqual({ roots, trimPartLimit, usable: [w - trim, h - trim] });
  });

  test("only along the sheet's first side where that is asked for", () => {
    expect(kindOf(2400, 1200, 6, { firstCut: "along w" }).roots).toEqual([ALONG_Y]);
    expect(kindOf(3000, 1200, 6, { firstCut: "along w" }).roots).toEqual([]);
  });
});

describe("a sheet trimmed part by part", () => {
  const problem = buildProblem(
    [blank("wide", 2600, 1194, 1, "along"), blank("half", 1400, 1194, 2, "along")],
    [sheet("s", 3000, 1200, { trim: mm(6) })],
    limits({ longestCut: BLADE }),
    {},
  );
  const first = (item: number, count: number) => ({
    sheet: 0,
    root: { direction: ALONG_X, parts: Array.from({ length: count }, () => ({ item, turned: false })) } as const,
    items: Int32Array.of(item),
    counts: Float64Array.of(count),
  });
  test("has no first part longer than the blade", () => {
    expect(canBeSheared(problem, first(0, 1))).toBe(false);
    expect(canBeSheared(problem, first(1, 2))).toBe(true);
  });
});

describe("edge trims of the cut list", () => {
  const trims = (w: number, trim: number) =>
    planCuts([blank("b", 600, 500, 8)], [sheet("s", w, 1200, { trim: mm(trim) })], limits({ longestCut: BLADE }), {
      units: 100_000,
    }).cuts.flatMap(({ stage, length, axis }) => (stage === "trim" ? [`${length} ${axis}`] : []));
  // By hand: the long edge first, then the short one; with a blade too short for the long edge the short one first.
  test.each([
    ["two, the long edge first", 2500, 6, ["2500 h", "1194 w"]],
    ["two, the short edge first", 2506, 6, ["1200 w", "2500 h"]],
    ["none where there is no trim", 3000, 0, []],
  ] as const)("%s: %d x 1200, trim %d", (_, w, trim, expected) => {
    expect(trims(w, trim)).toEqual(expected);
  });

  test("the short edge of the sheet, then the long edge of every part", () => {
    const [first, ...parts] = trims(3000, 6);
    expect(first).toBe("1200 w");
    expect(parts.length).toBeGreaterThan(1);
    for (const part of parts) expect(part).toMatch(/ h$/);
  });
});

test("trims are made at no setting, every other cut at one that was counted", () => {
  const plan = planCuts([blank("b", 600, 500, 8)], [sheet("s", 2500, 1200, { trim: mm(6) })], limits(), {
    units: 100_000,
  });
  for (const { gauge, setting } of plan.cuts) expect(setting === 0).toBe(gauge === null);
  expect(new Set(plan.cuts.map(({ setting }) => setting))).toEqual(
    new Set(Array.from({ length: plan.settings + 1 }, (_, i) => i)),
  );
});

test("only a blank that is asked for is left out", () => {
  const plan = planCuts(
    [blank("b", 600, 500, 8), blank("none", 9000, 500, 0), blank("huge", 9000, 500, 2)],
    [sheet("s", 2500, 1200)],
    limits(),
    { units: 100_000 },
  );
  expect(plan.leftOut.map((line) => [line.blank, line.count])).toEqual([["huge", 2]]);
});

describe("pieces stacked across a strip", () => {
  const options = (more: Parameters<typeof limits>[0]) => {
    const shear = limits(more);
    const problem = buildProblem([blank("b", 400, 100, 3, "along")], [sheet("s", 1000, 1000)], shear, {});
    const along = viewGroups(problem, 3).find(({ views }) => views.some(({ direction }) => direction === ALONG_Y))!;
    return along.options.map(({ across, stack }) => [across / gridDown(mm(1)), stack]);
  };
  const three = [100, 200, 300].map((across, k) => [across, k + 1]);
  // By hand: to be parted from its neighbor each must fall behind the blade or be held in front.
  test.each([
    ["as many as there are", {}, three],
    ["as wide as the gauge reaches", { reach: 100 }, three],
    ["none wider than the gauge reaches", { reach: 99 }, three.slice(0, 1)],
    ["as narrow as the least drop", { leastDrop: 100 }, three],
    ["none narrower than the least drop", { leastDrop: 101 }, three.slice(0, 1)],
    ["as narrow as the hold-downs grip", { leastHold: 100 }, three],
    ["none narrower than the hold-downs grip", { leastHold: 101 }, three.slice(0, 1)],
  ] as const)("%s", (_, more, expected) => {
    expect(options(more)).toEqual(expected);
  });
});

test("a bill of as many pieces as may be is planned, one more is refused", () => {
  const plan = (quantity: number) =>
    planCuts([blank("b", 500, 500, quantity)], [sheet("s", 1000, 1000)], limits(), { units: 1000 });
  expect(plan(20_000).sheets).toEqual([{ stock: "s", count: 5000 }]);
  expect(() => plan(20_001)).toThrow("pieces in all must be at most 20000; got 20001; plan the bill in parts");
});
