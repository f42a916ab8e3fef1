import { describe, expect, test } from "vitest";
import { type JetPlan, planJetSheets } from "../../../src/calc/cutting/index.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, sheet } from "./bills.ts";

const WEB = mm(6);
const MARGIN = mm(10);
const QUICK = { units: 2_000_000 };

/** Everything wrong with a plan, worked out from where the blanks lie. */
function faultsOf(plan: JetPlan, blanks: readonly ReturnType<typeof blank>[]): string[] {
  const faults: string[] = [];
  const made = new Map<string, number>();
  for (const { w, h, repeats, placed } of plan.sheets) {
    placed.forEach((a, k) => {
      const { w: first, h: second, grain } = blanks.find(({ id }) => id === a.blank)!;
      made.set(a.blank, (made.get(a.blank) ?? 0) + repeats);
      const [across, up] = a.turned ? [second, first] : [first, second];
      if (a.w !== across || a.h !== up) faults.push(`${a.blank} has another size`);
      if (grain !== "free" && (grain === "along") === a.turned) faults.push(`${a.blank} lies across its grain`);
      if (a.x < MARGIN - 1e-6 || a.y < MARGIN - 1e-6) faults.push(`${a.blank} lies in the margin`);
      if (a.x + a.w > w - MARGIN + 1e-6 || a.y + a.h > h - MARGIN + 1e-6) faults.push(`${a.blank} leaves the sheet`);
      for (const b of placed.slice(k + 1)) {
        const apart = Math.max(b.x - a.x - a.w, a.x - b.x - b.w, b.y - a.y - a.h, a.y - b.y - b.h);
        if (apart < WEB - 1e-2) faults.push(`${a.blank} and ${b.blank} are ${apart} apart`);
      }
    });
  }
  for (const { id, quantity } of blanks) {
    const left = plan.leftOut.filter((line) => line.blank === id).reduce((sum, { count }) => sum + count, 0);
    if ((made.get(id) ?? 0) + left !== quantity) faults.push(`${id}: ${made.get(id)} made`);
  }
  return faults;
}

describe("sheets of the waterjet", () => {
  test.each(Array.from({ length: 20 }, (_, k) => k + 1))(
    "random bill %i: web, margin, grain and number hold",
    (seed) => {
      const unit = randomFrom(seed);
      const blanks = Array.from({ length: 8 }, (_, k) => {
        const grain = (["free", "along", "across"] as const)[Math.floor(unit() * 3)]!;
        return blank(
          `b${k}`,
          Math.round(40 + unit() * 400),
          Math.round(30 + unit() * 300),
          1 + Math.floor(unit() * 9),
          grain,
        );
      });
      const plan = planJetSheets(blanks, [sheet("s", 1200, 1000)], { web: WEB, margin: MARGIN }, QUICK);
      expect(faultsOf(plan, blanks)).toEqual([]);
      expect(plan.value).toBeGreaterThanOrEqual(plan.bound * (1 - 1e-9));
    },
  );

  // By hand: 2 x 100 + 6 web + 2 x 10 margin = 226.
  test.each([
    [226, 1],
    [225.9, 2],
  ])("four of 100 x 100 on a sheet of %s take %i", (side, count) => {
    const plan = planJetSheets([blank("b", 100, 100, 4)], [sheet("s", side, 226)], { web: WEB, margin: MARGIN }, QUICK);
    expect(plan.sheets.reduce((sum, { repeats }) => sum + repeats, 0)).toBe(count);
  });

  test("a blank that fills the sheet between the margins fits; one larger is named", () => {
    const blanks = [blank("fits", 80, 60, 1), blank("not", 81, 60, 1)];
    const plan = planJetSheets(blanks, [sheet("s", 100, 80)], { web: WEB, margin: MARGIN }, QUICK);
    expect(faultsOf(plan, blanks)).toEqual([]);
    expect(plan.leftOut.map((line) => line.blank)).toEqual(["not"]);
  });

  test("refuses a web below 0", () => {
    expect(() => planJetSheets([blank("b", 9, 9, 1)], [sheet("s", 99, 99)], { web: mm(-1), margin: MARGIN })).toThrow(
      expect.objectContaining({ message: "web must be 0 or more; got -1" }),
    );
  });
});
