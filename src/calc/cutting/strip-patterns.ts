/**
 * The dearest pattern of strips for given piece values: strips side by side over the sheet, as strip-table.ts prices them,
 * laid by a second knapsack (Gilmore & Gomory, Operations Research 13:94, 1965; memory, unverified).
 */
import { missing } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import type { CutNode, PartsNode, PieceNode } from "./cut-tree.ts";
import { mustStayInFront } from "./gauge-rule.ts";
import type { GuillotineLayout } from "./guillotine-layout.ts";
import { Knapsack } from "./knapsack.ts";
import { layoutOf } from "./layout-tree.ts";
import { type CutPattern, patternOf } from "./pattern.ts";
import { ALONG_X, ALONG_Y, type Direction, type Problem } from "./problem.ts";
import { StripGrid } from "./strip-grid.ts";
import { bestFront, type Strip, StripTable } from "./strip-table.ts";
import { type StripOption, type StripView, type ViewGroup, viewGroups } from "./strip-views.ts";

interface Draft {
  readonly promised: number;
  /** The strips that give most for their width first. */
  readonly strips: Strip[];
}

const MANY = 1e9;
const MOST_REFILLS = 8;
/** Patterns worked out after the first one that can be cut: fitted on generated shop bills. */
const MOST_TRIES = 1;
/** Numerical: a pattern that saves less of its cost does not count. */
const LEAST_SAVING = 1e-9;

export interface StripRules {
  /** Pieces of one item stacked across a strip. */
  readonly mostStacked?: number;
  /** Whether a strip is laid no oftener than the demand for its pieces lasts; else patterns are cut back afterwards. */
  readonly keepToDemand?: boolean;
  /** What the cut counts that sizes a piece narrower than its strip, in the value of pieces. */
  readonly sizing?: number;
}

export class StripPatterns {
  private readonly groups: ViewGroup[];
  private readonly grid: StripGrid;
  private readonly along = new Knapsack();
  private readonly across = new Knapsack();
  private readonly keepToDemand: boolean;
  private favor: (extent: number) => number = () => 1;

  constructor(
    private readonly problem: Problem,
    private readonly budget: Budget,
    /** Grid of the tables in grid units. */
    cell: number,
    /** Last word on a finished pattern where the shear has limits. */
    private readonly allowed: ((layout: GuillotineLayout) => boolean) | null,
    { mostStacked = 1, keepToDemand = false, sizing = 0 }: StripRules = {},
  ) {
    this.groups = viewGroups(problem, mostStacked);
    this.grid = new StripGrid(problem.rule, cell, sizing);
    this.keepToDemand = keepToDemand;
  }

  /**
   * The pattern worth most per cost of its sheet, over all views; null where nothing fits. `favor` multiplies what a part
   * of that extent counts.
   */
  dearest(
    values: ArrayLike<number>,
    remaining: ArrayLike<number>,
    open: (sheet: number) => boolean,
    costs: ArrayLike<number>,
    favor: (extent: number) => number = () => 1,
  ): CutPattern | null {
    this.favor = favor;
    const drafts: { options: readonly StripOption[]; view: StripView; strips: Strip[]; ratio: number }[] = [];
    for (const { options, views: all } of this.groups) {
      const views = all.filter(({ sheet }) => open(sheet));
      if (views.length === 0) continue;
      const table = this.table(options, views, values, remaining);
      views.forEach((view, v) => {
        const draft = this.layStrips(table, v, view.height, false);
        if (!draft) return;
        drafts.push({ options, view, strips: draft.strips, ratio: draft.promised / (costs[view.sheet] ?? missing()) });
      });
    }
    // What a view promises it need not hold once its strips share the demand; the rest cannot be better.
    drafts.sort((a, b) => b.ratio - a.ratio);
    let best: CutPattern | null = null;
    let bestRatio = 0;
    let tries = 0;
    for (const { options, view, strips, ratio } of drafts) {
      if (ratio <= bestRatio || (best && ++tries > MOST_TRIES)) break;
      const pattern = patternOf(view.sheet, this.reconcile(options, view, strips, values, remaining));
      let worth = 0;
      for (let k = 0; k < pattern.items.length; k++)
        worth += (values[pattern.items[k] ?? missing()] ?? missing()) * (pattern.counts[k] ?? missing());
      const reached = worth / (costs[view.sheet] ?? missing());
      if (reached <= bestRatio || !(this.allowed?.(layoutOf(this.problem, pattern)) ?? true)) continue;
      best = pattern;
      bestRatio = reached;
    }
    return best;
  }

  /**
   * Of every view the pattern of strips worth more than its sheet, and the most any pattern is worth, in shares of its cost.
   * A strip keeps to the demand but the strips of a pattern together need not: they stand in a linear program, which does.
   */
  saving(
    values: ArrayLike<number>,
    remaining: ArrayLike<number>,
    open: (sheet: number) => boolean,
    costs: ArrayLike<number>,
  ): { readonly patterns: readonly CutPattern[]; readonly ratio: number } {
    this.favor = () => 1;
    const patterns: CutPattern[] = [];
    let ratio = 0;
    for (const { options, views: all } of this.groups) {
      const views = all.filter(({ sheet }) => open(sheet));
      if (views.length === 0) continue;
      const table = this.table(options, views, values, remaining);
      views.forEach((view, v) => {
        const draft = this.layStrips(table, v, view.height, false);
        if (!draft) return;
        const share = draft.promised / (costs[view.sheet] ?? missing());
        ratio = Math.max(ratio, share);
        if (share <= 1 + LEAST_SAVING) return;
        const parts = draft.strips.map((strip) => stripNode(this.problem, strip, view.direction));
        const pattern = patternOf(view.sheet, { direction: view.direction, parts });
        if (this.allowed?.(layoutOf(this.problem, pattern)) ?? true) patterns.push(pattern);
      });
    }
    return { patterns, ratio };
  }

  private table(
    options: readonly StripOption[],
    views: readonly StripView[],
    values: ArrayLike<number>,
    remaining: ArrayLike<number>,
  ): StripTable {
    return new StripTable(options, views, values, remaining, this.grid, this.along, this.budget, this.favor);
  }

  /** Keeps the strips that share the demand peaceably and fills the rest of the sheet again, until nothing more fits. */
  private reconcile(
    options: readonly StripOption[],
    view: StripView,
    wanted: Strip[],
    values: ArrayLike<number>,
    remaining: ArrayLike<number>,
  ): PartsNode {
    const rest = Float64Array.from(remaining);
    const parts: CutNode[] = [];
    let height = view.height;
    let offered = wanted;
    let fronted = false;
    for (let round = 0; ; round++) {
      let clash = false;
      for (let k = 0; k < offered.length; k++) {
        // One item both ways round, or stacked and single, may overrun its demand in one strip: the first is cut back.
        const strip = k === 0 ? cutBack(offered[0] ?? missing(), rest) : (offered[k] ?? missing());
        const front = mustStayInFront(strip.height, this.problem.rule);
        if (strip.height > height || (front && fronted) || !takes(strip, rest)) {
          clash = true;
          continue;
        }
        for (const { option, copies } of strip.parts)
          rest[option.item] = (rest[option.item] ?? missing()) - copies * option.stack;
        height -= strip.height;
        if (front) fronted = true;
        parts.push(stripNode(this.problem, strip, view.direction));
      }
      if (!clash || round === MOST_REFILLS) break;
      const draft = this.layStrips(this.table(options, [{ ...view, height }], values, rest), 0, height, fronted);
      if (!draft) break;
      offered = draft.strips;
    }
    return { direction: view.direction, parts };
  }

  /** Lays strips over `height`; with `fronted` the one part that may stay in front is already there. */
  private layStrips(table: StripTable, v: number, height: number, fronted: boolean): Draft | null {
    const { rule } = this.problem;
    const { across, grid } = this;
    const { heights } = table;
    const most = grid.room(height);
    across.reset(most);
    const worth = new Float64Array(heights.length);
    const fronts: number[] = [];
    let dearest = 0;
    for (let k = 0; k < heights.length; k++) {
      const tall = heights[k] ?? missing();
      if (tall > height || tall > rule.longestCut) break;
      const value = table.worth(k, v) * this.favor(tall);
      // A taller strip worth no more than a narrower one is never needed.
      if (value <= dearest + 1e-12) continue;
      worth[k] = value;
      if (mustStayInFront(tall, rule)) {
        if (!fronted) fronts.push(k);
        continue;
      }
      // Only one strip may stay in front: that hides no wider one, which may be laid again and again.
      dearest = value;
      // Nor is one that narrower ones side by side outdo, nor one that the height has no cells for.
      const cells = grid.cellsOf(tall);
      if (cells > most || across.best(cells) >= value) continue;
      across.add(k, cells, value, this.keepToDemand ? table.mostCopies(k, v) : MANY);
    }
    this.budget.spend(across.work);
    const plain = across.best(grid.roomAlong(height, fronted));
    const front = bestFront(
      fronts,
      (k) => worth[k] ?? missing(),
      (k) => across.best(grid.roomBeside(height, heights[k] ?? missing())),
    );
    const promised = Math.max(plain, front.value);
    if (!(promised > 0)) return null;
    const picked: { level: number; count: number; density: number }[] = [];
    const pick = (level: number, count: number) => {
      picked.push({ level, count, density: (worth[level] ?? missing()) / (heights[level] ?? missing()) });
    };
    if (front.value > plain) pick(front.option, 1);
    const room =
      front.value > plain
        ? grid.roomBeside(height, heights[front.option] ?? missing())
        : grid.roomAlong(height, fronted);
    across.read(across.mark(), room, pick);
    picked.sort((a, b) => b.density - a.density || a.level - b.level);
    return {
      promised,
      strips: picked.flatMap(({ level, count }) => new Array<Strip>(count).fill(table.strip(level, v))),
    };
  }
}

function stripNode(problem: Problem, strip: Strip, direction: Direction): PartsNode {
  const parts: CutNode[] = [];
  for (const { option, copies } of strip.parts) {
    const { item, along, stack } = option;
    const { w, h } = problem.items[item] ?? missing();
    const piece: PieceNode = { item, turned: along !== (direction === ALONG_Y ? w : h) };
    const part: CutNode = stack === 1 ? piece : { direction, parts: new Array<PieceNode>(stack).fill(piece) };
    for (let n = 0; n < copies; n++) parts.push(part);
  }
  return { direction: direction === ALONG_X ? ALONG_Y : ALONG_X, parts };
}

function cutBack(strip: Strip, rest: Float64Array): Strip {
  if (takes(strip, rest)) return strip;
  const left = new Map<number, number>();
  const parts: Strip["parts"][number][] = [];
  let height = 0;
  for (const { option, copies } of strip.parts) {
    const available = left.get(option.item) ?? rest[option.item] ?? missing();
    const count = Math.min(copies, Math.floor(available / option.stack));
    if (count < 1) continue;
    left.set(option.item, available - count * option.stack);
    height = Math.max(height, option.across);
    parts.push({ option, copies: count });
  }
  return { height, parts };
}

function takes(strip: Strip, rest: Float64Array): boolean {
  for (const { option } of strip.parts) {
    let wanted = 0;
    for (const part of strip.parts) if (part.option.item === option.item) wanted += part.copies * part.option.stack;
    if (wanted > (rest[option.item] ?? missing())) return false;
  }
  return true;
}
