import { describe, expect, test } from "vitest";
import { cutList, drawPlan, planCuts } from "../../../src/calc/cutting/index.ts";
import { shopBill } from "../../../src/tools/bench/cutting/shop-bills.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, limits, sheet } from "./bills.ts";

const { blanks, stock, limits: shear } = shopBill(5);
const PLAN = planCuts(blanks, stock, shear, { units: 5_000_000 });
const LIST = cutList(PLAN);

describe("the cut list can be followed at the machine", () => {
  test("edge trims come first, and no piece is cut to length before it is a strip, or sized before it is cut to length", () => {
    const stages = LIST.map(({ stage }) => stage);
    expect(stages.lastIndexOf("trim")).toBeLessThan(stages.indexOf("strip"));
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

  test("cuts of one setting have one gauge and stand together", () => {
    const gauged = LIST.filter(({ setting }) => setting > 0);
    for (let k = 1; k < gauged.length; k++) {
      const [before, now] = [gauged[k - 1]!, gauged[k]!];
      expect(now.setting - before.setting).toBe(now.gauge === before.gauge ? 0 : 1);
    }
    expect(PLAN.settings).toBe(gauged.at(-1)!.setting);
    expect(PLAN.settings).toBeLessThan(PLAN.settingsSheetBySheet);
    expect(PLAN.settingsSheetBySheet).toBeLessThan(PLAN.settingsStripByStrip);
  });
});

describe("the drawing", () => {
  const named = planCuts(
    [blank(`<b & "c">`, 300, 200, 3)],
    [sheet("s<1>", 1000, 500, { trim: mm(5) })],
    limits({ leastRemnant: 100 }),
    { units: 1_000_000 },
  );
  const svg = drawPlan(named);

  test("escapes what people typed", () => {
    expect(svg).toContain("&lt;b &amp; &quot;c&quot;&gt;");
    expect(svg).toContain("s&lt;1&gt;");
    expect(svg).not.toContain("<b &");
  });

  test("shows every pattern, every blank on it, every cut's number, and uses black and white only", () => {
    const drawn = drawPlan(PLAN);
    expect(drawn.match(/>Pattern /g)).toHaveLength(PLAN.patterns.length);
    for (const { seq } of PLAN.cuts) expect(drawn).toContain(`>${seq}</text>`);
    expect(new Set(drawn.match(/#[0-9a-f]{3,6}\b/gi))).toEqual(new Set(["#000", "#fff"]));
    expect(drawn).not.toMatch(/NaN|Infinity|undefined/);
  });

  test("is one sheet to scale: the blank's box has the blank's proportions", () => {
    const box =
      /<rect x="[\d.]+" y="[\d.]+" width="([\d.]+)" height="([\d.]+)" fill="#fff" stroke="#000" stroke-width="0.5"/.exec(
        svg,
      );
    const ratio = Number(box?.[1]) / Number(box?.[2]);
    expect(Math.min(Math.abs(ratio - 1.5), Math.abs(ratio - 2 / 3))).toBeLessThan(0.01);
  });
});
