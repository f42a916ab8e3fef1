/**
 * What a table says the strips of each width are worth, against every set of pieces side by side that a shear can part by
 * the rule in words: each is as wide as the strip or narrower by enough to be sized, and what is left over can be sheared off.
 */
import { describe, expect, test } from "vitest";
import { Budget } from "../../../src/calc/cutting/budget.ts";
import type { GaugeRule } from "../../../src/calc/cutting/gauge-rule.ts";
import { Knapsack } from "../../../src/calc/cutting/knapsack.ts";
import type { Problem } from "../../../src/calc/cutting/problem.ts";
import { StripGrid } from "../../../src/calc/cutting/strip-grid.ts";
import { StripTable } from "../../../src/calc/cutting/strip-table.ts";
import { type StripOption, viewGroups } from "../../../src/calc/cutting/strip-views.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";

const FREE: GaugeRule = {
  ...{ longestCut: Infinity, reach: Infinity, backReach: Infinity, frontReach: Infinity },
  ...{ leastDrop: 0, leastHold: 0, leastWaste: 0, twistWidth: 0, twistLength: 0 },
};
const RULES: readonly (readonly [string, Partial<GaugeRule>])[] = [
  ["no limits", {}],
  ["waste too thin to shear", { leastWaste: 2 }],
  ["a hold-down", { leastHold: 3 }],
  ["a hold-down and no front stop", { leastHold: 3, leastWaste: 1, frontReach: 0 }],
  ["a hold-down, thin waste and a front stop", { leastHold: 4, leastWaste: 1, frontReach: 6, backReach: 5 }],
  ["a least drop", { leastDrop: 4, leastWaste: 1 }],
  ["a gauge that does not reach far", { reach: 7, backReach: 7, frontReach: 0, leastHold: 1 }],
  ["a front stop beyond the gauge", { reach: 9, backReach: 5, frontReach: 9, leastHold: 2, leastDrop: 3 }],
];

/** A part that neither a stop measures nor the blade may let fall. */
const isFront = (extent: number, { reach, leastDrop }: GaugeRule) => extent > reach || extent < leastDrop;
/** By one more cut along the strip: the piece stays under the hold-downs against the front stop, or it falls and the waste stays. */
function canBeSized(across: number, waste: number, rule: GaugeRule): boolean {
  if (waste < rule.leastWaste) return false;
  const stays = across >= rule.leastHold && across <= rule.frontReach;
  return stays || (!isFront(across, rule) && waste >= rule.leastHold);
}
const isIn = ({ across }: StripOption, height: number, rule: GaugeRule) =>
  across === height || (across < height && canBeSized(across, height - across, rule));

function drawn(seed: number, rule: GaugeRule) {
  const unit = randomFrom(seed);
  const whole = (least: number, most: number) => least + Math.floor(unit() * (most - least + 1));
  const items = Array.from({ length: 4 }, () => ({ w: whole(2, 10), h: whole(2, 9), quantity: whole(1, 5) }));
  const sheets = [
    [21, 14],
    [16, 9],
  ] as const;
  const problem: Problem = {
    sheets: sheets.map(([w, h]) => ({
      ...{ w, h, available: Infinity, cost: w * h, remnantWorth: 0, roots: [1], trimPartLimit: Infinity },
    })),
    items: items.map((item) => ({ ...item, value: item.w * item.h })),
    plain: sheets.map(() => new Uint8Array(items.length).fill(1)),
    turned: sheets.map(() => new Uint8Array(items.length).fill(seed % 2)),
    stages: 2,
    rule,
    leastRemnant: 0,
  };
  return {
    problem,
    values: items.map(({ w, h }) => Math.round(w * h * (0.7 + unit() * 0.6))),
    remaining: items.map(({ quantity }, k) => (k === 3 && seed % 3 === 0 ? 0 : quantity)),
  };
}

describe.each(RULES)("strips on a shear with %s", (_, limits) => {
  const rule = { ...FREE, ...limits };
  const cases = Array.from({ length: 16 }, (__, seed) => {
    const { problem, values, remaining } = drawn(seed, rule);
    const [group] = viewGroups(problem, 1 + (seed % 3));
    const { options, views } = group!;
    const table = new StripTable(
      options,
      views,
      values,
      remaining,
      new StripGrid(rule, 1, 0),
      new Knapsack(),
      new Budget(Infinity),
      () => 1,
    );
    const most = ({ item, stack }: StripOption) => Math.floor(remaining[item]! / stack);
    const worth = ({ item, stack }: StripOption) => values[item]! * stack;
    const room = (of: readonly number[]) => Math.max(...of);
    const usable = options.filter(
      (each) =>
        values[each.item]! > 0 &&
        most(each) > 0 &&
        each.along <= room(views.map(({ length }) => length)) &&
        each.across <= room(views.map(({ height }) => height)),
    );
    /** Most worth of pieces beside one another in so much, each as often as it is wanted. */
    const fill = (of: readonly StripOption[], left: number, k = 0): number => {
      if (left < 0) return -Infinity;
      if (k === of.length) return 0;
      const option = of[k]!;
      let best = -Infinity;
      for (let n = 0; n <= most(option) && n * option.along <= left; n++)
        best = Math.max(best, n * worth(option) + fill(of, left - n * option.along, k + 1));
      return best;
    };
    /** All measured ones fall and the waste stays, or one stays in front that cannot fall, and the waste drops. */
    const byTrying = (height: number, length: number): number => {
      const there = usable.filter((each) => isIn(each, height, rule));
      const falling = there.filter(({ along }) => !isFront(along, rule));
      const fronts = there.filter(({ along }) => isFront(along, rule));
      return Math.max(
        fill(falling, length - Math.max(rule.leastHold, rule.leastWaste)),
        ...fronts.map((front) => worth(front) + fill(falling, length - rule.leastWaste - front.along)),
      );
    };
    return { table, views, usable, remaining, worth, byTrying };
  });

  test("have the widths of the pieces, rising, and are worth what every set tried is worth at most", () => {
    let fronted = 0;
    for (const { table, views, usable, byTrying } of cases) {
      expect(table.heights).toEqual([...new Set(usable.map(({ across }) => across))].sort((a, b) => a - b));
      for (const [level, height] of table.heights.entries())
        for (const [v, { length }] of views.entries()) {
          const most = byTrying(height, length);
          expect(table.worth(level, v)).toBe(most);
          if (most > 0 && table.strip(level, v).parts.some(({ option }) => isFront(option.along, rule))) fronted++;
        }
    }
    if (rule.leastDrop > 0 || rule.reach < Infinity) expect(fronted).toBeGreaterThan(5);
  });

  test("read back as pieces that are worth it, fit and are wanted, so often as they say", () => {
    for (const { table, views, remaining, worth } of cases)
      for (const [level, height] of table.heights.entries())
        for (const [v, { length }] of views.entries()) {
          if (!(table.worth(level, v) > 0)) continue;
          const strip = table.strip(level, v);
          expect(strip.height).toBe(height);
          const sum = (of: (option: StripOption) => number) =>
            strip.parts.reduce((total, { option, copies }) => total + copies * of(option), 0);
          expect(sum(worth)).toBe(table.worth(level, v));
          expect(sum(({ along }) => along)).toBeLessThanOrEqual(length - rule.leastWaste);
          const often = strip.parts.map(({ option: { item, stack }, copies }) =>
            Math.floor(remaining[item]! / (copies * stack)),
          );
          expect(table.mostCopies(level, v)).toBe(Math.max(1, Math.min(...often)));
          for (const { option } of strip.parts) expect(isIn(option, height, rule)).toBe(true);
        }
  });
});
