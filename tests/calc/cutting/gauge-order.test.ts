import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Part } from "../../../src/calc/cutting/cut-tasks.ts";
import { gaugeOrder } from "../../../src/calc/cutting/gauge-order.ts";

const done = (): Part => ({ kind: "blank", blank: "B", size: [1, 1], task: null, cuts: 0 });

/** A piece parted by cuts at the given gauges; what falls at each is given beside it, the rest stays in front. */
function cut(groups: readonly (readonly [gauge: number, ...falls: Part[]])[], front: Part = done()): Part {
  const parts = groups.map(([gauge, ...falls]) => ({ gauge, falls: falls.length > 0 ? falls : [done()] }));
  const cuts = parts.reduce((sum, { falls }) => sum + falls.reduce((n, part) => n + part.cuts, 1), front.cuts);
  return {
    kind: "part",
    blank: null,
    size: [100, 100],
    cuts,
    task: { stage: "strip", level: 1, pattern: 0, axis: 0, size: [100, 100], groups: parts, front },
  };
}

/** Fewest settings by trying every gauge at every point; only for small jobs. */
function fewest(sheets: readonly Part[]): number {
  type Work = { part: Part; left: readonly number[] };
  const open = (part: Part): Work[] => (part.task ? [{ part, left: part.task.groups.map((_, g) => g) }] : []);
  const key = (work: readonly Work[]) =>
    work
      .map(({ left, part }) => `${ids.get(part)}:${left}`)
      .sort()
      .join("|");
  const ids = new Map<Part, number>();
  const name = (part: Part): void => {
    ids.set(part, ids.size);
    for (const { falls } of part.task?.groups ?? []) for (const fall of falls) name(fall);
    if (part.task) name(part.task.front);
  };
  sheets.forEach(name);
  /** Everything that one setting can cut. */
  const cutAt = (work: readonly Work[], gauge: number): Work[] => {
    let now = [...work];
    for (let found = true; found; ) {
      found = false;
      now = now.flatMap(({ part, left }) => {
        const groups = part.task!.groups;
        const at = left.filter((g) => groups[g]!.gauge === gauge);
        if (at.length === 0) return [{ part, left }];
        found = true;
        const rest = left.filter((g) => groups[g]!.gauge !== gauge);
        const off = at.flatMap((g) => groups[g]!.falls.flatMap(open));
        return [...off, ...(rest.length > 0 ? [{ part, left: rest }] : open(part.task!.front))];
      });
    }
    return now;
  };
  let level = new Map([[key(sheets.flatMap(open)), sheets.flatMap(open)]]);
  for (let settings = 0; ; settings++) {
    if ([...level.values()].some((work) => work.length === 0)) return settings;
    const next = new Map<string, Work[]>();
    for (const work of level.values()) {
      const gauges = new Set(work.flatMap(({ part, left }) => left.map((g) => part.task!.groups[g]!.gauge!)));
      for (const gauge of gauges) {
        const after = cutAt(work, gauge);
        next.set(key(after), after);
      }
    }
    level = next;
  }
}

const gauge = fc.integer({ min: 1, max: 5 });
const piece = (depth: number): fc.Arbitrary<Part> =>
  depth === 0
    ? fc.constant(done())
    : fc
        .uniqueArray(fc.tuple(gauge, fc.array(piece(depth - 1), { minLength: 1, maxLength: 2 })), {
          maxLength: 2,
          selector: ([value]) => value,
        })
        .chain((groups) =>
          piece(depth - 1).map((front) =>
            groups.length === 0
              ? done()
              : cut(
                  groups.map(([value, falls]) => [value, ...falls]),
                  front,
                ),
          ),
        );

describe("the order of gauge settings", () => {
  test("a crosscut at a strip's width waits for it: one setting", () => {
    const sheet = cut([[6, cut([[4]])], [4]]);
    expect(gaugeOrder([sheet])).toEqual([6, 4]);
  });

  test("two strips, each cut to the other's width, need one gauge twice", () => {
    const order = gaugeOrder([cut([[6, cut([[4]])]]), cut([[4, cut([[6]])]])]);
    expect(order).toHaveLength(3);
  });

  test("is no shorter than can be, and where no gauge must be set twice no longer either", () => {
    fc.assert(
      fc.property(fc.array(piece(3), { minLength: 1, maxLength: 3 }), (sheets) => {
        const order = gaugeOrder(sheets);
        const least = fewest(sheets);
        expect(order.length).toBeGreaterThanOrEqual(least);
        if (least === new Set(order).size) expect(order).toHaveLength(least);
        expect(order.length).toBeLessThanOrEqual(least + 2);
      }),
      { numRuns: 100, seed: 6 },
    );
  });
});
