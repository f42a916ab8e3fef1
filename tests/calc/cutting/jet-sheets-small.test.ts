/** Sheets of the waterjet: every count against a placing of its own, and against the best there is on small cases. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planJetSheets } from "../../../src/calc/cutting/index.ts";
import type { BlankGrain } from "../../../src/calc/cutting/types.ts";
import { liesOnSheet } from "../../../src/calc/jet/lies-on-sheet.ts";
import { mm } from "../../../src/units/quantity.ts";
import { sheet as stockOf } from "./bills.ts";

interface JetBlank {
  readonly length: number;
  readonly width: number;
  readonly count: number;
  readonly grain: BlankGrain;
}
interface JetSheet {
  readonly repeats: number;
  readonly counts: readonly number[];
}
const QUICK = { units: 2_000_000 };

const blank = (length: number, width: number, count: number, grain: BlankGrain = "free"): JetBlank => ({
  length,
  width,
  grain,
  count,
});
const sheet = (length: number, width: number) => ({ length, width });

/** How many of each blank lie on each sheet, in the order they were given. */
function jetSheets(
  blanks: readonly JetBlank[],
  { length, width }: { length: number; width: number },
  web: number,
  most: number,
): JetSheet[] {
  const asked = blanks.map(({ length: w, width: h, count: quantity, grain }, i) => ({
    id: String(i),
    w: mm(w),
    h: mm(h),
    quantity,
    grain,
  }));
  const stock = { ...stockOf("s", length, width), quantity: most };
  const limits = { web: mm(web), margin: mm(web) };
  return planJetSheets(asked, [stock], limits, QUICK).sheets.map(({ repeats, placed }) => ({
    repeats,
    counts: blanks.map((_, i) => placed.filter((each) => each.blank === String(i)).length),
  }));
}

/** Whole millimeters with the web added to each piece: a grid in which a placing is tried piece by piece. */
interface Piece {
  readonly ways: readonly (readonly [number, number])[];
}
const piecesOf = (blanks: readonly JetBlank[], counts: readonly number[], web: number): Piece[] =>
  blanks.flatMap(({ length, width, grain }, i) => {
    const [as, turned] = [[length + web, width + web] as const, [width + web, length + web] as const];
    const ways = grain === "along" ? [as] : grain === "across" ? [turned] : [as, turned];
    return Array.from({ length: counts[i]! }, () => ({ ways }));
  });

/** Do these pieces lie side by side on one sheet? Every place of a grid is tried: for small sheets only. */
function fits(pieces: readonly Piece[], length: number, width: number): boolean {
  const taken = Array.from({ length }, () => new Array<boolean>(width).fill(false));
  const free = (x: number, y: number, l: number, w: number) => {
    if (x + l > length || y + w > width) return false;
    for (let i = x; i < x + l; i++) for (let j = y; j < y + w; j++) if (taken[i]![j]) return false;
    return true;
  };
  const mark = (x: number, y: number, l: number, w: number, as: boolean) => {
    for (let i = x; i < x + l; i++) for (let j = y; j < y + w; j++) taken[i]![j] = as;
  };
  const place = (at: number): boolean => {
    if (at === pieces.length) return true;
    for (const [l, w] of pieces[at]!.ways)
      for (let x = 0; x + l <= length; x++)
        for (let y = 0; y + w <= width; y++) {
          if (!free(x, y, l, w)) continue;
          mark(x, y, l, w, true);
          if (place(at + 1)) return true;
          mark(x, y, l, w, false);
        }
    return false;
  };
  return place(0);
}

/** Fewest groups into which pieces can be shared out so that each group is allowed: every sharing is tried. */
function fewest(pieces: readonly Piece[], allowed: (group: readonly Piece[]) => boolean): number {
  let best = Infinity;
  const share = (at: number, groups: readonly Piece[][]): void => {
    if (groups.length >= best) return;
    if (at === pieces.length) {
      if (groups.every(allowed)) best = groups.length;
      return;
    }
    const piece = pieces[at]!;
    groups.forEach((group, i) => {
      share(at + 1, groups.with(i, [...group, piece]));
    });
    share(at + 1, [...groups, [piece]]);
  };
  share(0, []);
  return best;
}

const total = (sheets: readonly JetSheet[], index: number): number =>
  sheets.reduce((sum, { repeats, counts }) => sum + repeats * counts[index]!, 0);
const used = (sheets: readonly JetSheet[]): number => sheets.reduce((sum, { repeats }) => sum + repeats, 0);

const small = fc.array(
  fc.record({
    length: fc.integer({ min: 1, max: 5 }),
    width: fc.integer({ min: 1, max: 5 }),
    count: fc.integer({ min: 1, max: 3 }),
    grain: fc.constantFrom("free" as const, "along" as const, "across" as const),
  }),
  { minLength: 1, maxLength: 3 },
);

describe("sheets of the waterjet", () => {
  it("every sheet holds its pieces without overlap, the web between them and at the edges", () => {
    fc.assert(
      fc.property(
        small,
        fc.integer({ min: 4, max: 9 }),
        fc.integer({ min: 3, max: 7 }),
        fc.constantFrom(0, 1),
        (given, long, wide, web) => {
          const blanks = given.map(({ length, width, count, grain }) => blank(length, width, count, grain));
          for (const { counts, repeats } of jetSheets(blanks, sheet(long, wide), web, 99)) {
            expect(repeats).toBeGreaterThan(0);
            // A web at one edge and one with every piece: both edges have theirs.
            expect(fits(piecesOf(blanks, counts, web), long - web, wide - web)).toBe(true);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it("cuts every blank that lies on the sheet exactly as often as asked, and no other", () => {
    fc.assert(
      fc.property(small, fc.integer({ min: 4, max: 9 }), fc.integer({ min: 3, max: 7 }), (given, long, wide) => {
        const blanks = given.map(({ length, width, count, grain }) => blank(length, width, count, grain));
        const sheets = jetSheets(blanks, sheet(long, wide), 0, 99);
        blanks.forEach((each, i) => {
          const alone = piecesOf([each], [1], 0);
          expect(total(sheets, i)).toBe(fits(alone, long, wide) ? each.count : 0);
          const size = { length: mm(each.length), width: mm(each.width), grain: each.grain };
          expect(liesOnSheet(size, { length: mm(long), width: mm(wide) }, mm(0))).toBe(fits(alone, long, wide));
        });
      }),
      { numRuns: 300 },
    );
  });

  it("needs at most twice as many sheets as the best sharing out of up to five blanks", () => {
    fc.assert(
      fc.property(small, (given) => {
        const blanks = given.map(({ length, width }) => blank(length, width, 1));
        const pieces = piecesOf(blanks, [1, 1, 1], 0).slice(0, 5);
        const [long, wide] = [6, 5];
        const best = fewest(pieces, (group) => fits(group, long, wide));
        const found = used(jetSheets(blanks, sheet(long, wide), 0, 99));
        expect(found).toBeGreaterThanOrEqual(best);
        expect(found).toBeLessThanOrEqual(2 * best);
      }),
      { numRuns: 200 },
    );
  });

  it("ordinary cases by hand", () => {
    // 990 x 490 is left beside one web: 9 x 9 pieces of 110 x 50 in plain rows, 88 by area.
    const full = jetSheets([blank(100, 40, 200)], sheet(1000, 500), 10, 99);
    expect(used(full)).toBe(3);
    expect(total(full, 0)).toBe(200);
    expect(Math.max(...full.map(({ counts }) => counts[0]!))).toBeGreaterThanOrEqual(81);
    expect(Math.max(...full.map(({ counts }) => counts[0]!))).toBeLessThanOrEqual(88);
    // Rolled across: the long side stands up.
    expect(jetSheets([blank(400, 100, 1, "across")], sheet(1000, 300), 0, 99)).toEqual([]);
    expect(jetSheets([blank(400, 100, 3, "along")], sheet(1000, 300), 0, 99)).toEqual([{ repeats: 1, counts: [3] }]);
  });

  it("a blank as large as the sheet leaves no room for a web", () => {
    expect(jetSheets([blank(1000, 500, 1)], sheet(1000, 500), 10, 99)).toEqual([]);
    expect(jetSheets([blank(1000, 500, 1)], sheet(1000, 500), 0, 99)).toHaveLength(1);
  });

  it("no more sheets than there are", () => {
    const sheets = jetSheets([blank(100, 40, 200)], sheet(1000, 500), 10, 2);
    expect(used(sheets)).toBe(2);
    expect(total(sheets, 0)).toBeGreaterThanOrEqual(162);
    expect(total(sheets, 0)).toBeLessThanOrEqual(176);
    expect(jetSheets([blank(100, 40, 200)], sheet(1000, 500), 10, 0)).toEqual([]);
  });

  it("asked twice for the same blanks in another order it needs as many sheets", () => {
    fc.assert(
      fc.property(small, (given) => {
        const blanks = given.map(({ length, width, count }) => blank(length, width, count));
        const there = used(jetSheets(blanks, sheet(9, 7), 1, 99));
        expect(used(jetSheets([...blanks].reverse(), sheet(9, 7), 1, 99))).toBe(there);
      }),
    );
  });
});
