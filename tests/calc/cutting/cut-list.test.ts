import { describe, expect, test } from "vitest";
import { cutList, planCuts } from "../../../src/calc/cutting/index.ts";
import { shopBill } from "../../../src/tools/bench/cutting/shop-bills.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, limits, sheet } from "./bills.ts";

const { blanks, stock, limits: shear } = shopBill(5);
const PLAN = planCuts(blanks, stock, shear, { units: 5_000_000 });
const LIST = cutList(PLAN);

describe("the cut list can be followed at the machine", () => {
  test("a sheet is trimmed before it is stripped; no piece is cut to length before it is a strip, or sized before that", () => {
    const rank = { trim: 0, strip: 1, cross: 2, size: 3 };
    const cameBy = new Map<string, number>();
    for (const { piece, stage, falls, stays } of PLAN.cuts) {
      expect(rank[stage]).toBeGreaterThanOrEqual(cameBy.get(piece) ?? 0);
      for (const { id } of [...falls, stays]) cameBy.set(id, rank[stage]);
    }
  });

  test("the long edge is trimmed before the short edge of each sheet", () => {
    for (const { id, w, h } of PLAN.patterns) {
      const trims = PLAN.cuts.filter(({ stage, piece }) => stage === "trim" && (piece === id || piece === `${id}.2`));
      expect(trims).toHaveLength(2);
      expect(trims[0]!.length).toBeCloseTo(Math.max(w, h), 6);
      expect(trims[1]!.length).toBeLessThan(Math.max(w, h));
    }
  });

  test("every piece that is cut was laid on the table or came off an earlier cut", () => {
    const there = new Set(PLAN.patterns.map(({ id }) => id));
    for (const { piece, falls, stays } of PLAN.cuts) {
      expect(there.has(piece)).toBe(true);
      for (const { id } of [...falls, stays]) there.add(id);
    }
  });

  test("a trim moves no gauge, not even one that follows a setting because the sheet is longer than the blade", () => {
    const { cuts } = planCuts(
      [blank("b", 500, 500, 8)],
      [sheet("s", 2507, 1200, { trim: mm(6) })],
      limits({ longestCut: 2500 }),
      { units: 100_000 },
    );
    const trims = cuts.filter(({ stage }) => stage === "trim");
    expect(Math.max(...trims.map(({ seq }) => seq))).toBeGreaterThan(cuts.find(({ setting }) => setting > 0)!.seq);
    for (const { stage, setting, gauge } of cuts) {
      expect(setting === 0).toBe(stage === "trim");
      expect(gauge === null).toBe(stage === "trim");
    }
  });

  test("cuts of one setting have one gauge and stand together", () => {
    const gauged = PLAN.cuts.filter(({ setting }) => setting > 0);
    for (let k = 1; k < gauged.length; k++) {
      const [before, now] = [gauged[k - 1]!, gauged[k]!];
      expect(now.setting - before.setting).toBe(now.gauge === before.gauge ? 0 : 1);
    }
    expect(PLAN.settings).toBeGreaterThanOrEqual(gauged.at(-1)!.setting);
    const stops = PLAN.cuts.filter(({ by }) => by !== "mark").map(({ by, measure }) => `${by} ${measure}`);
    expect(PLAN.gauges).toBe(new Set(stops).size);
  });
});

describe("rows of the list", () => {
  test("hold every cut of the plan once, in its order, and leave what the cuts leave", () => {
    expect(LIST.flatMap(({ cuts }) => cuts)).toEqual(PLAN.cuts);
    expect(LIST.map(({ seq }) => seq)).toEqual(LIST.map((_, i) => i + 1));
    expect(LIST.length).toBeLessThan(PLAN.cuts.length);
    for (const { cuts, strokes, falls, count } of LIST) {
      expect(strokes).toBe(cuts.reduce((sum, cut) => sum + cut.strokes, 0));
      expect(falls.reduce((sum, fall) => sum + fall.count, 0)).toBe(strokes);
      expect(count).toBe(cuts.reduce((sum, { copies }) => sum + copies, 0));
    }
  });

  test("by hand: five strips of 100 x 1000 cut into 3 of 300 are one row, 15 x b", () => {
    const plan = planCuts([blank("b", 300, 100, 15, "along")], [sheet("s", 1000, 500)], limits(), { units: 100_000 });
    const rows = cutList(plan).map(({ count, measure, strokes, falls, stays }) => ({
      count,
      measure: Math.round(measure),
      strokes,
      falls: falls.map(({ kind, blank: of, count: each }) => `${each} ${of ?? kind}`),
      stays: stays.map(({ kind, count: each }) => `${each} ${kind}`),
    }));
    expect(rows).toEqual([
      { count: 1, measure: 100, strokes: 4, falls: ["4 part"], stays: ["1 part"] },
      { count: 5, measure: 300, strokes: 15, falls: ["15 b"], stays: ["5 scrap"] },
    ]);
  });
});
