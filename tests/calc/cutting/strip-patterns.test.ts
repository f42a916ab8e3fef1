/**
 * The dearest strips and patterns of strips against every strip and every pattern there is, listed by trial on a small
 * sheet; where the shear has limits, against every pattern that it can part.
 */
import { describe, expect, test } from "vitest";
import { Budget } from "../../../src/calc/cutting/budget.ts";
import { frontPart, type GaugeRule } from "../../../src/calc/cutting/gauge-rule.ts";
import { Knapsack } from "../../../src/calc/cutting/knapsack.ts";
import type { CutPattern } from "../../../src/calc/cutting/pattern.ts";
import type { Problem } from "../../../src/calc/cutting/problem.ts";
import { layoutCanBeSheared } from "../../../src/calc/cutting/shear-check.ts";
import { StripGrid } from "../../../src/calc/cutting/strip-grid.ts";
import { StripPatterns, type StripRules } from "../../../src/calc/cutting/strip-patterns.ts";
import { StripTable } from "../../../src/calc/cutting/strip-table.ts";
import { viewGroups } from "../../../src/calc/cutting/strip-views.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";

const FREE: GaugeRule = {
  ...{ longestCut: Infinity, reach: Infinity, backReach: Infinity, frontReach: Infinity },
  ...{ leastDrop: 0, leastHold: 0, leastWaste: 0, twistWidth: 0, twistLength: 0 },
};
interface Item {
  readonly w: number;
  readonly h: number;
  readonly quantity: number;
}
const problemOf = (
  items: readonly Item[],
  sheets: readonly [number, number][],
  rule = FREE,
  turned = 0,
  roots: readonly (0 | 1)[] = [0, 1],
): Problem => ({
  sheets: sheets.map(([w, h]) => ({
    ...{ w, h, available: Infinity, cost: w * h, remnantWorth: 0, roots, trimPartLimit: Infinity },
  })),
  items: items.map((item) => ({ ...item, value: item.w * item.h })),
  plain: sheets.map(() => new Uint8Array(items.length).fill(1)),
  turned: sheets.map(() => new Uint8Array(items.length).fill(turned)),
  stages: 2,
  rule,
  leastRemnant: 0,
});
const patterns = (problem: Problem, rules?: StripRules) =>
  new StripPatterns(problem, new Budget(Infinity), 1, null, rules);

type Way = readonly [along: number, across: number, item: number];
/** Every set of pieces beside one another in a strip, each within what is wanted of it, with the strip's width. */
function stripsOf(
  ways: readonly Way[],
  length: number,
  wanted: readonly number[],
): { height: number; counts: number[] }[] {
  const strips: { height: number; counts: number[] }[] = [];
  const fill = (k: number, left: number, height: number, counts: number[]) => {
    if (k === ways.length) {
      if (height > 0) strips.push({ height, counts });
      return;
    }
    const [along, across, item] = ways[k]!;
    for (let n = 0; n * along <= left && counts[item]! + n <= wanted[item]!; n++) {
      const more = counts.map((count, i) => (i === item ? count + n : count));
      fill(k + 1, left - n * along, n > 0 ? Math.max(height, across) : height, more);
    }
  };
  fill(
    0,
    length,
    0,
    wanted.map(() => 0),
  );
  return strips;
}
const waysOf = (items: readonly Item[], isAlongY: boolean, turned: boolean): Way[] =>
  items.flatMap(({ w, h }, item) => {
    const plain: Way = isAlongY ? [w, h, item] : [h, w, item];
    return turned && w !== h ? [plain, [plain[1], plain[0], item] as Way] : [plain];
  });

/** Most worth on one sheet: strips over it, each within what is wanted, and all together where asked. */
function mostWorth(
  items: readonly Item[],
  [w, h]: readonly [number, number],
  values: readonly number[],
  wanted: readonly number[],
  isTogether: boolean,
  turned = false,
): number {
  let most = 0;
  for (const isAlongY of [true, false]) {
    const [length, height] = isAlongY ? [w, h] : [h, w];
    const strips = stripsOf(waysOf(items, isAlongY, turned), length, wanted);
    const worth = ({ counts }: { counts: readonly number[] }) =>
      counts.reduce((sum, count, i) => sum + count * values[i]!, 0);
    if (!isTogether) {
      const best = new Array<number>(height + 1).fill(0);
      for (let x = 1; x <= height; x++)
        for (const strip of strips)
          if (strip.height <= x) best[x] = Math.max(best[x]!, best[x - strip.height]! + worth(strip));
      most = Math.max(most, best[height]!);
      continue;
    }
    const stack = (from: number, left: number, counts: readonly number[]) => {
      most = Math.max(most, worth({ counts }));
      for (let k = from; k < strips.length; k++) {
        const strip = strips[k]!;
        const sum = counts.map((count, i) => count + strip.counts[i]!);
        if (strip.height <= left && sum.every((count, i) => count <= wanted[i]!)) stack(k, left - strip.height, sum);
      }
    };
    stack(
      0,
      height,
      wanted.map(() => 0),
    );
  }
  return most;
}

const drawn = (seed: number, kinds: number, most: number) => {
  const unit = randomFrom(seed);
  const items = Array.from(
    { length: kinds },
    (): Item => ({
      w: 3 + Math.floor(unit() * 8),
      h: 2 + Math.floor(unit() * 7),
      quantity: 1 + Math.floor(unit() * most),
    }),
  );
  return {
    items,
    values: items.map(({ w, h }) => w * h * (0.7 + unit() * 0.6)),
    wanted: items.map(({ quantity }) => quantity),
  };
};
const worthOf = (pattern: CutPattern | null, values: readonly number[]): number =>
  pattern === null ? 0 : [...pattern.items].reduce((sum, item, k) => sum + values[item]! * pattern.counts[k]!, 0);
const all = () => true;

/** Every part of a pattern lies within the one that holds it, and what is left is what a shear can part. */
function fits(pattern: CutPattern, { items, sheets, rule }: Problem): boolean {
  const size = (node: CutPattern["root"]["parts"][number]): [number, number] => {
    if ("item" in node) {
      const { w, h } = items[node.item]!;
      return node.turned ? [h, w] : [w, h];
    }
    const sizes = node.parts.map(size);
    const along = (axis: number) =>
      axis === node.direction
        ? sizes.reduce((sum, each) => sum + each[axis]!, 0)
        : Math.max(...sizes.map((each) => each[axis]!));
    return [along(0), along(1)];
  };
  const { w, h } = sheets[pattern.sheet]!;
  const parted = (node: CutPattern["root"], room: [number, number]): boolean => {
    const axis = node.direction;
    const extents = node.parts.map((part) => size(part)[axis]!);
    const waste = room[axis]! - extents.reduce((a, b) => a + b, 0);
    if (waste < 0 || frontPart(extents, extents.length, waste, rule) === -2) return false;
    return node.parts.every((part, i) => {
      const own: [number, number] = axis === 0 ? [extents[i]!, room[1]!] : [room[0]!, extents[i]!];
      if (!("item" in part)) return parted(part, own);
      const across = size(part)[1 - axis]!;
      return across <= own[1 - axis]! && frontPart([across], 1, own[1 - axis]! - across, rule) !== -2;
    });
  };
  return parted(pattern.root, [w, h]);
}

describe("strips on a shear without limits", () => {
  test.each(Array.from({ length: 12 }, (_, k) => k))(
    "bill %i: a sheet saves what every pattern of strips tried saves",
    (seed) => {
      const { items, values, wanted } = drawn(seed, 4, 5);
      const sheet = [20, 14] as const;
      const problem = problemOf(items, [[...sheet]]);
      const { ratio, patterns: found } = patterns(problem, { keepToDemand: true }).saving(values, wanted, all, [100]);
      // A strip is laid as often as the demand for its pieces lasts, or as often as it fits: each strip keeps to it.
      const most = mostWorth(items, sheet, values, wanted, false);
      expect(ratio * 100).toBeLessThanOrEqual(most + 1e-9);
      const free = patterns(problem).saving(values, wanted, all, [100]);
      expect(free.ratio * 100).toBeCloseTo(most, 9);
      for (const pattern of [...found, ...free.patterns]) expect(fits(pattern, problem)).toBe(true);
      expect(Math.max(0, ...free.patterns.map((pattern) => worthOf(pattern, values)))).toBeCloseTo(
        most > 100 ? most : 0,
        9,
      );
    },
  );

  test.each(Array.from({ length: 12 }, (_, k) => k))(
    "bill %i: the dearest pattern keeps to the demand, fits, and is near the dearest tried",
    (seed) => {
      const { items, values, wanted } = drawn(100 + seed, 3, 4);
      const problem = problemOf(items, [[20, 14]], FREE, 1);
      const pattern = patterns(problem, { keepToDemand: true }).dearest(values, wanted, all, [1])!;
      for (const [k, item] of pattern.items.entries()) expect(pattern.counts[k]!).toBeLessThanOrEqual(wanted[item]!);
      expect(fits(pattern, problem)).toBe(true);
      const most = mostWorth(items, [20, 14], values, wanted, true, true);
      expect(worthOf(pattern, values)).toBeLessThanOrEqual(most + 1e-9);
      expect(worthOf(pattern, values)).toBeGreaterThanOrEqual(0.75 * most);
    },
  );

  test("with more wanted than a sheet holds the dearest pattern is the dearest there is", () => {
    for (let seed = 0; seed < 12; seed++) {
      const { items, values } = drawn(200 + seed, 3, 4);
      const wanted = items.map(() => 99);
      const problem = problemOf(items, [[20, 14]]);
      const most = mostWorth(items, [20, 14], values, wanted, false);
      expect(worthOf(patterns(problem).dearest(values, wanted, all, [1]), values)).toBeCloseTo(most, 9);
    }
  });

  test("of two sheets the one that gives most for its cost is taken, and of a closed one none", () => {
    const items = [{ w: 10, h: 7, quantity: 99 }];
    const problem = problemOf(items, [
      [20, 14],
      [30, 14],
    ]);
    const at = (costs: number[], open = all as (sheet: number) => boolean) =>
      patterns(problem).dearest([70], [99], open, costs)?.sheet;
    expect(at([280, 430])).toBe(0);
    expect(at([290, 420])).toBe(1);
    expect(at([290, 420], (sheet) => sheet === 0)).toBe(0);
    expect(patterns(problem).dearest([70], [99], () => false, [1, 1])).toBeNull();
    expect(patterns(problem).saving([70], [99], (sheet) => sheet === 0, [280, 1])).toMatchObject({
      ratio: 1,
      patterns: [],
    });
    expect(patterns(problem).saving([70], [99], () => false, [280, 1])).toEqual({ ratio: 0, patterns: [] });
  });

  test("a sheet that the demand does not fill is judged by what is laid on it, not by what it could hold", () => {
    const problem = problemOf(
      [{ w: 10, h: 7, quantity: 2 }],
      [
        [20, 14],
        [10, 14],
      ],
      FREE,
      0,
      [1],
    );
    // Four pieces for 200 are only two for 200; two for 110 are two.
    expect(patterns(problem).dearest([70], [2], all, [200, 110])!.sheet).toBe(1);
  });

  test("what is favored by its extent counts so much more, and a piece stands in its strip by itself", () => {
    const items = [
      { w: 10, h: 7, quantity: 9 },
      { w: 10, h: 14, quantity: 9 },
    ];
    const problem = problemOf(items, [[20, 14]], FREE, 0, [1]);
    const found = (favor?: (extent: number) => number) =>
      patterns(problem).dearest([70, 139], [9, 9], all, [1], favor)!;
    expect([...found().items]).toEqual([0]);
    expect([...found((extent) => (extent === 14 ? 1.5 : 1)).items]).toEqual([1]);
    for (const strip of found().root.parts) {
      if (!("parts" in strip)) throw new Error("no strip");
      expect(strip.parts.map((part) => "item" in part)).toEqual([true, true]);
    }
  });

  test("nothing is laid of what is not wanted, worth nothing, or larger than the sheet", () => {
    const items = [
      { w: 10, h: 7, quantity: 9 },
      { w: 21, h: 3, quantity: 9 },
      { w: 3, h: 15, quantity: 9 },
    ];
    const problem = problemOf(items, [[20, 14]]);
    const found = (values: number[], wanted: number[]) => patterns(problem).dearest(values, wanted, all, [1]);
    expect(found([70, 99, 99], [9, 9, 9])!.items).toEqual(Int32Array.from([0]));
    expect(found([0, 99, 99], [9, 9, 9])).toBeNull();
    expect(found([70, 99, 99], [0, 9, 9])).toBeNull();
  });

  test("pieces are stacked across a strip where that is asked, within the demand", () => {
    // Three of 20 x 3 beside a piece of 20 x 9 and 40 long: in one strip of width 9 only if they are stacked.
    const items = [
      { w: 40, h: 9, quantity: 1 },
      { w: 20, h: 3, quantity: 3 },
    ];
    const problem = problemOf(items, [[60, 9]], FREE, 0, [1]);
    const counts = (mostStacked: number, wanted: number[]) => {
      const pattern = patterns(problem, { mostStacked, keepToDemand: true }).dearest([360, 60], wanted, all, [1])!;
      expect(fits(pattern, problem)).toBe(true);
      return [0, 1].map((item) => pattern.counts[pattern.items.indexOf(item)] ?? 0);
    };
    expect(counts(1, [1, 3])).toEqual([1, 1]);
    expect(counts(3, [1, 3])).toEqual([1, 3]);
    expect(counts(2, [1, 3])).toEqual([1, 2]);
    expect(counts(3, [1, 2])).toEqual([1, 2]);
  });

  test("what a cut costs that sizes a piece is weighed against what the piece is worth", () => {
    const rule = { ...FREE, leastWaste: 1 };
    const items = [
      { w: 10, h: 9, quantity: 1 },
      { w: 10, h: 7, quantity: 1 },
      { w: 10, h: 9, quantity: 1 },
    ];
    const found = (sizing: number) => [
      ...patterns(problemOf(items, [[22, 11]], rule, 0, [1]), { sizing }).dearest([90, 70, 60], [1, 1, 1], all, [1])!
        .items,
    ];
    // Beside the first one fits the one of 70 that must be sized, or the one of 60 as wide as the strip.
    expect(found(0)).toEqual([0, 1]);
    expect(found(5)).toEqual([0, 1]);
    expect(found(20)).toEqual([0, 2]);
  });
});

describe("strips on a shear with limits", () => {
  const rules: readonly (readonly [string, Partial<GaugeRule>])[] = [
    ["waste too thin to shear", { leastWaste: 2 }],
    ["a hold-down", { leastHold: 3 }],
    ["a hold-down and thin waste", { leastHold: 2, leastWaste: 1 }],
    ["a least drop", { leastDrop: 4 }],
    ["a gauge that does not reach far", { reach: 8, backReach: 8, frontReach: 0, leastHold: 1 }],
    ["a front stop", { reach: 11, backReach: 6, frontReach: 11, leastHold: 2, leastWaste: 1, leastDrop: 2 }],
    ["a short blade", { longestCut: 16 }],
  ];
  test.each(rules)("with %s every pattern can be parted", (_, rule) => {
    let found = 0;
    for (let seed = 0; seed < 12; seed++) {
      const { items, values, wanted } = drawn(300 + seed, 4, 5);
      const problem = problemOf(items, [[20, 14]], { ...FREE, ...rule }, seed % 2);
      const strips = new StripPatterns(
        problem,
        new Budget(Infinity),
        1,
        (layout) => layoutCanBeSheared(problem, layout),
        { keepToDemand: seed % 2 === 0, mostStacked: 1 + (seed % 4) },
      );
      const { patterns: saved, ratio } = strips.saving(values, wanted, all, [1]);
      for (const pattern of saved) expect(fits(pattern, problem)).toBe(true);
      const dearest = strips.dearest(values, wanted, all, [1]);
      if (dearest) {
        found++;
        expect(fits(dearest, problem)).toBe(true);
        for (const [k, item] of dearest.items.entries()) expect(dearest.counts[k]!).toBeLessThanOrEqual(wanted[item]!);
      }
      // Neither turned nor stacked: what a shear without limits makes of it is at least as much.
      if (seed % 4 === 0) expect(ratio).toBeLessThanOrEqual(mostWorth(items, [20, 14], values, wanted, false) + 1e-9);
    }
    expect(found).toBeGreaterThan(6);
  });

  /** Strips worth what the table of strips says of each width, tried over the whole height: all fall, or one stays in front. */
  function byTrying(problem: Problem, values: readonly number[], wanted: readonly number[]): number {
    const { rule } = problem;
    const isFront = (extent: number) => extent > rule.reach || extent < rule.leastDrop;
    return Math.max(
      ...viewGroups(problem, 1).flatMap(({ options, views }) => {
        const grid = new StripGrid(rule, 1, 0);
        const table = new StripTable(
          options,
          views,
          values,
          wanted,
          grid,
          new Knapsack(),
          new Budget(Infinity),
          () => 1,
        );
        return views.map(({ height }, v) => {
          const strips = table.heights
            .map((tall, level) => ({ tall, worth: table.worth(level, v) }))
            .filter(({ tall, worth }) => tall <= height && tall <= rule.longestCut && worth > 0);
          const fill = (left: number): number => {
            if (left < 0) return -Infinity;
            const best = new Array<number>(left + 1).fill(0);
            for (let x = 1; x <= left; x++)
              for (const { tall, worth } of strips)
                if (!isFront(tall) && tall <= x) best[x] = Math.max(best[x]!, best[x - tall]! + worth);
            return best[left]!;
          };
          return Math.max(
            fill(height - Math.max(rule.leastHold, rule.leastWaste)),
            ...strips
              .filter(({ tall }) => isFront(tall))
              .map(({ tall, worth }) => worth + fill(height - rule.leastWaste - tall)),
          );
        });
      }),
    );
  }
  const withBlade = [...rules, ["a blade that cuts across no wide strip", { longestCut: 7 }] as const] as typeof rules;
  test.each(withBlade)("with %s a sheet saves what every set of strips tried saves", (_, rule) => {
    let several = 0;
    for (let seed = 0; seed < 16; seed++) {
      const { items, values, wanted } = drawn(400 + seed, 4, 5);
      const problem = problemOf(items, [[20, 14]], { ...FREE, ...rule }, seed % 2);
      const { ratio, patterns: found } = patterns(problem).saving(values, wanted, all, [10]);
      const most = byTrying(problem, values, wanted);
      expect(ratio * 10).toBeCloseTo(Math.max(0, most), 9);
      if (found.length > 0)
        expect(Math.max(...found.map((pattern) => worthOf(pattern, values)))).toBeCloseTo(ratio * 10, 9);
      if (found.some(({ root }) => root.parts.length > 1)) several++;
      // Of what is wanted without end the dearest pattern is the same.
      const many = items.map(() => 99);
      const dearest = worthOf(patterns(problem).dearest(values, many, all, [1]), values);
      const mostOfMany = byTrying(problem, values, many);
      expect(dearest).toBeCloseTo(Math.max(0, mostOfMany), 9);
    }
    expect(several).toBeGreaterThan(2);
  });

  test("a pattern that the last word refuses is not answered, and the next one is tried", () => {
    const items = [{ w: 10, h: 7, quantity: 9 }];
    const problem = problemOf(items, [
      [20, 14],
      [10, 14],
    ]);
    const asked: number[] = [];
    const strips = new StripPatterns(problem, new Budget(Infinity), 1, (layout) => {
      asked.push(layout.sheet);
      return layout.sheet === 1;
    });
    expect(strips.dearest([70], [99], all, [1, 1])!.sheet).toBe(1);
    expect(asked[0]).toBe(0);
    expect(strips.saving([70], [99], all, [1, 1]).patterns.map(({ sheet }) => sheet)).toEqual([1, 1].slice(0, 2));
  });
});

test("out of its budget a table of strips stays as it is, and what it answers still fits", () => {
  const { items, values, wanted } = drawn(7, 4, 5);
  const problem = problemOf(items, [[20, 14]]);
  const within = (units: number) => {
    const pattern = new StripPatterns(problem, new Budget(units), 1, null).dearest(values, wanted, all, [1]);
    if (pattern) expect(fits(pattern, problem)).toBe(true);
    return worthOf(pattern, values);
  };
  const best = within(Infinity);
  expect(within(0)).toBe(0);
  for (const units of [5, 20, 60]) expect(within(units)).toBeLessThanOrEqual(best + 1e-9);
  expect(best).toBeGreaterThan(0);
});
