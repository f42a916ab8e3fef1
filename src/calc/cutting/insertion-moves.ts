/** What ruin and recreate is asked for: room for pieces left out, and the same pieces on a cheaper set of sheets. */
import { firstOf, itemAt, missing } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import { GuillotineLayout } from "./guillotine-layout.ts";
import type { Harvest } from "./harvest.ts";
import { InsertionSearch } from "./insertion.ts";
import { layoutOf, patternFrom } from "./layout-tree.ts";
import { takeOff, type Use } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";
import { cheaperSwaps, type Swap } from "./sheet-swaps.ts";

// The figures below are fitted on generated shop bills and on published cutting-stock and bin-packing instances.
/** Rounds of one run, sheets taken together (up to twice as many), and how often all are. */
const ROUNDS = 20_000;
const SHEETS_AT_ONCE = 6;
const WHOLE_BILL_SHARE = 0.3;
/** A higher power picks the roomiest swaps more often. */
const SWAP_POWER = 3;
/** How far filling is disturbed when the badly filled sheets are chosen. */
const FILL_NOISE = 0.15;
/** The last few pieces of a plan: at most this share of the bill's area, and the rounds spent on them. */
const LAST_SHARE = 0.004;
const LAST_ROUNDS = 2000;

export class InsertionMoves {
  constructor(
    private readonly problem: Problem,
    private readonly budget: Budget,
    private readonly random: Random,
    private readonly allowed: ((layout: GuillotineLayout) => boolean) | null,
    /** Takes the layouts that the search comes by; null where nobody asks for them. */
    private readonly harvest: Harvest | null,
  ) {}

  private searchOn(layouts: GuillotineLayout[]): InsertionSearch {
    const search = new InsertionSearch(this.problem, this.random, this.budget, this.allowed, this.harvest);
    search.layouts = layouts;
    return search;
  }

  /** The stock runs short: looks for room for what is left out on the sheets there are. */
  insertMissing(uses: readonly Use[]): Use[] {
    const { problem } = this;
    const search = this.searchOn(layoutsOf(problem, uses));
    const rest = Float64Array.from(problem.items, ({ quantity }) => quantity);
    takeOff(uses, rest);
    wait(search, rest);
    search.run(ROUNDS, true);
    return usesOf(search.bestLayouts);
  }

  /** A few pieces found no room on the sheets meant for them; null where there are none, too many, or still no room. */
  insertLast(uses: readonly Use[], remaining: ArrayLike<number>): Use[] | null {
    const { problem } = this;
    let missing = 0;
    let all = 0;
    problem.items.forEach(({ w, h, quantity }, i) => {
      missing += w * h * itemAt(remaining, i);
      all += w * h * quantity;
    });
    if (missing === 0 || missing > LAST_SHARE * all) return null;
    const search = this.searchOn(layoutsOf(problem, uses));
    wait(search, remaining);
    return search.run(LAST_ROUNDS) ? usesOf(search.layouts) : null;
  }

  /** Swaps some sheets, the badly filled ones first, for a cheaper set and looks for room for their pieces. */
  insertCheaper(uses: readonly Use[]): Use[] | null {
    const { random } = this;
    const layouts = layoutsOf(this.problem, uses);
    const ranked = layouts
      .map((layout) => ({ layout, rank: (layout.area / (layout.w * layout.h)) * (1 + FILL_NOISE * random.unit()) }))
      .sort((a, b) => a.rank - b.rank)
      .map(({ layout }) => layout);
    const few = Math.min(layouts.length, SHEETS_AT_ONCE + random.below(SHEETS_AT_ONCE));
    const share = random.unit() < WHOLE_BILL_SHARE ? layouts.length : few;
    return this.cheaperFor(ranked.slice(0, share), ranked.slice(share));
  }

  /** The same for the last `count` sheets of a dive: what was fixed before them was fixed well. */
  insertCheaperLast(uses: readonly Use[], count: number): Use[] | null {
    const layouts = layoutsOf(this.problem, uses);
    const first = Math.max(0, layouts.length - count);
    return this.cheaperFor(layouts.slice(first), layouts.slice(0, first));
  }

  private cheaperFor(chosen: GuillotineLayout[], kept: readonly GuillotineLayout[]): Use[] | null {
    const { problem, random } = this;
    const counts = new Float64Array(problem.sheets.length);
    let pieceArea = 0;
    for (const layout of chosen) {
      counts[layout.sheet] = (counts[layout.sheet] ?? missing()) + 1;
      pieceArea += layout.area;
    }
    const used = counts.slice();
    for (const layout of kept) used[layout.sheet] = (used[layout.sheet] ?? missing()) + 1;
    const swaps = cheaperSwaps(problem, counts, used, pieceArea);
    if (swaps.length === 0) return null;
    // The roomiest swaps are the likeliest; now and then a bolder one.
    const pick = Math.floor(swaps.length * random.unit() ** SWAP_POWER);
    const search = this.searchOn(chosen);
    applySwap(problem, search, itemAt(swaps, pick), random);
    return search.runWhileClose(ROUNDS) ? usesOf([...search.layouts, ...kept]) : null;
  }
}

const layoutsOf = (problem: Problem, uses: readonly Use[]): GuillotineLayout[] =>
  uses.flatMap(({ pattern, repeats }) => Array.from({ length: repeats }, () => layoutOf(problem, pattern)));

function usesOf(layouts: readonly GuillotineLayout[]): Use[] {
  const uses: Use[] = [];
  for (const layout of layouts) {
    const pattern = patternFrom(layout);
    if (pattern) uses.push({ pattern, repeats: 1 });
  }
  return uses;
}

function wait(search: InsertionSearch, counts: ArrayLike<number>): void {
  for (let i = 0; i < counts.length; i++) for (let n = 0; n < itemAt(counts, i); n++) search.waiting.kinds.push(i);
}

function applySwap(problem: Problem, search: InsertionSearch, swap: Swap, random: Random): void {
  for (const kind of swap.away) {
    let emptiest = -1;
    search.layouts.forEach((layout, i) => {
      if (layout.sheet === kind && (emptiest < 0 || layout.area < itemAt(search.layouts, emptiest).area)) emptiest = i;
    });
    firstOf(search.layouts.splice(emptiest, 1)).eachPiece((item) => search.waiting.kinds.push(item >> 1));
  }
  for (const kind of swap.instead) {
    const { w, h, roots } = itemAt(problem.sheets, kind);
    const layout = new GuillotineLayout();
    layout.start(kind, w, h, itemAt(roots, random.below(roots.length)));
    search.layouts.push(layout);
  }
}
