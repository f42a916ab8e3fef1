/**
 * The dearest pattern of strips for given piece values: strips side by side over the sheet, pieces side by side in each
 * strip, a piece narrower than its strip sized by one more cut. One sweep over the pieces by rising strip width prices
 * the strips of every width for all sheets that take the pieces the same way round; a second knapsack lays the strips
 * (Gilmore & Gomory, Operations Research 13:94, 1965; memory, unverified). What the shear cannot part is never offered:
 * see gauge-rule.ts.
 */
import type { Budget } from "./budget.ts";
import type { CutNode, PartsNode, PieceNode } from "./cut-tree.ts";
import { isUnlimited, mustStayInFront } from "./gauge-rule.ts";
import type { GuillotineLayout } from "./guillotine-layout.ts";
import { Knapsack } from "./knapsack.ts";
import { layoutOf } from "./layout-tree.ts";
import { type CutPattern, patternOf } from "./pattern.ts";
import { ALONG_X, ALONG_Y, type Direction, type Problem } from "./problem.ts";

interface Option {
  readonly item: number;
  readonly along: number;
  readonly across: number;
  /** Pieces stacked across the strip. */
  readonly stack: number;
}

/** One way to lay strips on one sheet kind. */
interface View {
  readonly sheet: number;
  /** Direction in which the strips follow each other. */
  readonly direction: Direction;
  readonly length: number;
  readonly height: number;
}

interface ViewGroup {
  readonly options: Option[];
  readonly views: View[];
}

interface Strip {
  readonly height: number;
  readonly parts: readonly { readonly option: Option; readonly copies: number }[];
}

/** The best strips of every height, per view. */
interface StripTable {
  readonly usable: Option[];
  readonly heights: number[];
  readonly marks: number[];
  readonly plain: number[][];
  readonly front: Front[][];
}

interface Draft {
  readonly promised: number;
  readonly picked: { level: number; count: number; front: number; density: number }[];
}

const NONE = Number.NEGATIVE_INFINITY;
const MANY = 1e9;
const MOST_REFILLS = 8;
/** Patterns worked out after the first one that can be cut: fitted on generated shop bills. */
const MOST_TRIES = 1;

export class StripPatterns {
  private readonly groups: ViewGroup[] = [];
  private readonly strips = new Knapsack();
  private readonly stacks = new Knapsack();
  private readonly limited: boolean;

  /** `cell` is the grid of the length tables in grid units: 1 is exact, larger is quicker and rounds against us. */
  constructor(
    private readonly problem: Problem,
    private readonly budget: Budget,
    private readonly cell: number,
    /** Last word on a finished pattern where the shear has limits. */
    private readonly allowed: ((layout: GuillotineLayout) => boolean) | null,
    mostStacked = 1,
  ) {
    this.limited = !isUnlimited(problem.rule);
    const byKey = new Map<string, ViewGroup>();
    problem.sheets.forEach((sheet, s) => {
      for (const direction of sheet.roots) {
        const length = direction === ALONG_Y ? sheet.w : sheet.h;
        const height = direction === ALONG_Y ? sheet.h : sheet.w;
        const options: Option[] = [];
        let key = "";
        problem.items.forEach((item, i) => {
          for (const turned of [false, true]) {
            const allowed = (turned ? problem.turned : problem.plain)[s]![i] === 1;
            const x = turned ? item.h : item.w;
            const y = turned ? item.w : item.h;
            const along = direction === ALONG_Y ? x : y;
            const across = direction === ALONG_Y ? y : x;
            const once = allowed && !(turned && item.w === item.h);
            // Same key, same options: only which lies along matters, not the name of the turn.
            if (once) key += `${i}:${along};`;
            if (!once) continue;
            for (let stack = 1; stack <= Math.min(mostStacked, item.quantity); stack++) {
              if (stack > 1 && !this.canStack(across)) break;
              options.push({ item: i, along, across: across * stack, stack });
            }
          }
        });
        const sorted = [...key.split(";")].sort().join(";");
        let group = byKey.get(sorted);
        if (!group) {
          group = { options: options.sort((a, b) => a.across - b.across || a.along - b.along), views: [] };
          byKey.set(sorted, group);
          this.groups.push(group);
        }
        group.views.push({ sheet: s, direction, length, height });
      }
    });
  }

  private canStack(across: number): boolean {
    const { rule } = this.problem;
    return !mustStayInFront(across, rule) && across >= rule.leastHold;
  }

  private cellsOf(size: number): number {
    return Math.ceil(size / this.cell);
  }

  private room(size: number): number {
    return Math.floor(size / this.cell);
  }

  /** Waste that can be parted when no part is bound to stay in front, and when one is; 0 where anything goes. */
  private leastWaste(front: boolean): number {
    const { rule } = this.problem;
    return front ? rule.leastDrop : rule.leastHold;
  }

  /** Least width by which a strip must exceed the piece if it is not equal. */
  private sizing(across: number): number {
    const { rule } = this.problem;
    if (mustStayInFront(across, rule)) return rule.leastDrop;
    return across >= rule.leastHold ? Math.min(rule.leastHold, rule.leastDrop) : rule.leastHold;
  }

  /** The pattern worth most per cost of its sheet, over all views; null where nothing fits. */
  dearest(
    values: ArrayLike<number>,
    remaining: ArrayLike<number>,
    open: (sheet: number) => boolean,
    costs: ArrayLike<number>,
  ): CutPattern | null {
    const drafts: { group: ViewGroup; view: View; strips: Strip[]; ratio: number }[] = [];
    for (const group of this.groups) {
      const views = group.views.filter((view) => open(view.sheet));
      if (views.length === 0) continue;
      const table = this.sweep(group.options, views, values, remaining);
      views.forEach((view, v) => {
        const draft = this.layStrips(table, view, remaining, v, view.height, false);
        if (!draft) return;
        const ratio = draft.promised / costs[view.sheet]!;
        drafts.push({ group, view, strips: this.readStrips(table, view, draft), ratio });
      });
    }
    // What a view promises it need not hold once its strips share the demand; the rest cannot be better.
    drafts.sort((a, b) => b.ratio - a.ratio);
    let best: CutPattern | null = null;
    let bestRatio = 0;
    let tries = 0;
    for (const { group, view, strips, ratio } of drafts) {
      if (ratio <= bestRatio || (best && ++tries > MOST_TRIES)) break;
      const pattern = patternOf(view.sheet, this.reconcile(group.options, view, strips, values, remaining));
      let worth = 0;
      for (let k = 0; k < pattern.items.length; k++) worth += values[pattern.items[k]!]! * pattern.counts[k]!;
      const reached = worth / costs[view.sheet]!;
      if (reached <= bestRatio || !(this.allowed?.(layoutOf(this.problem, pattern)) ?? true)) continue;
      best = pattern;
      bestRatio = reached;
    }
    return best;
  }

  /** Keeps the strips that share the demand peaceably and fills the rest of the sheet again, until nothing more fits. */
  private reconcile(
    options: Option[],
    view: View,
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
        const strip = k === 0 ? cutBack(offered[0]!, rest) : offered[k]!;
        const front = mustStayInFront(strip.height, this.problem.rule);
        if (strip.height > height || (front && fronted) || !takes(strip, rest)) {
          clash = true;
          continue;
        }
        for (const { option, copies } of strip.parts) rest[option.item] = rest[option.item]! - copies * option.stack;
        height -= strip.height;
        if (front) fronted = true;
        parts.push(this.stripNode(strip, view.direction));
      }
      if (!clash || round === MOST_REFILLS) break;
      const table = this.sweep(options, [{ ...view, height }], values, rest);
      const draft = this.layStrips(table, view, rest, 0, height, fronted);
      if (!draft) break;
      offered = this.readStrips(table, view, draft);
    }
    return { direction: view.direction, parts };
  }

  /** Prices the strips of every height at once. */
  private sweep(options: Option[], views: View[], values: ArrayLike<number>, remaining: ArrayLike<number>): StripTable {
    const { rule } = this.problem;
    const { strips } = this;
    let longest = 0;
    let tallest = 0;
    for (const view of views) {
      longest = Math.max(longest, view.length);
      tallest = Math.max(tallest, view.height);
    }
    const usable = options.filter(
      ({ item, along, across, stack }) =>
        values[item]! > 1e-9 && remaining[item]! >= stack && along <= longest && across <= tallest,
    );
    strips.reset(this.room(longest));
    const table: StripTable = { usable, heights: [], marks: [], plain: [], front: [] };
    let fronts: number[] = [];
    let counted = 0;
    const addOption = (o: number) => {
      // Out of budget the table stays as it is: still right, only poorer.
      this.budget.spend(strips.work - counted);
      counted = strips.work;
      if (this.budget.over()) return;
      const { item, along, stack } = usable[o]!;
      if (mustStayInFront(along, rule)) fronts.push(o);
      else strips.add(o, this.cellsOf(along), values[item]! * stack, Math.floor(remaining[item]! / stack));
    };
    const record = (height: number) => {
      const mark = strips.mark();
      table.heights.push(height);
      table.marks.push(mark);
      table.plain.push(views.map((view) => strips.best(this.roomAlong(view.length, false))));
      table.front.push(
        views.map((view) =>
          bestFront(
            fronts,
            (o) => values[usable[o]!.item]! * usable[o]!.stack,
            (o) => strips.best(this.roomBeside(view.length, usable[o]!.along)),
          ),
        ),
      );
    };
    const lag = this.limited && usable.some(({ across }) => this.sizing(across) > 0);
    if (!lag) {
      for (let o = 0; o < usable.length; ) {
        const height = usable[o]!.across;
        for (; o < usable.length && usable[o]!.across === height; o++) addOption(o);
        record(height);
      }
    } else {
      const entry = usable.map(({ across }) => across + this.sizing(across));
      const byEntry = usable.map((_, o) => o).sort((a, b) => entry[a]! - entry[b]! || a - b);
      let entered = 0;
      for (let o = 0; o < usable.length; ) {
        const height = usable[o]!.across;
        while (entered < byEntry.length && entry[byEntry[entered]!]! <= height) addOption(byEntry[entered++]!);
        const exact: number[] = [];
        for (; o < usable.length && usable[o]!.across === height; o++) if (entry[o]! > height) exact.push(o);
        if (exact.length === 0) {
          record(height);
          continue;
        }
        const kept = strips.hold();
        const keptFronts = fronts;
        fronts = [...fronts];
        exact.forEach(addOption);
        record(height);
        strips.goOnFrom(kept);
        fronts = keptFronts;
      }
    }
    return table;
  }

  /** Cells to fill in `size`, room left for waste the shear can part. */
  private roomAlong(size: number, front: boolean): number {
    return this.room(this.limited ? size - this.leastWaste(front) : size);
  }

  /** Cells left beside a front part of `extent`. */
  private roomBeside(size: number, extent: number): number {
    return this.roomAlong(size, true) - this.cellsOf(extent);
  }

  /** Lays strips over `height`; with `fronted` the one part that may stay in front is already there. */
  private layStrips(table: StripTable, view: View, remaining: ArrayLike<number>, v: number, height: number, fronted: boolean): Draft | null {
    const { rule } = this.problem;
    const { stacks } = this;
    const { heights } = table;
    stacks.reset(this.room(height));
    const worth = new Float64Array(heights.length);
    const fronts: number[] = [];
    let dearest = 0;
    for (let k = 0; k < heights.length; k++) {
      const tall = heights[k]!;
      if (tall > height || tall > rule.longestCut) break;
      const value = Math.max(table.plain[k]![v]!, table.front[k]![v]!.value);
      // A taller strip worth no more than a narrower one is never needed.
      if (value <= dearest + 1e-12) continue;
      dearest = value;
      worth[k] = value;
      // Nor is one that narrower ones side by side outdo.
      if (!mustStayInFront(tall, rule) && stacks.best(this.cellsOf(tall)) >= value) continue;
      if (!mustStayInFront(tall, rule)) stacks.add(k, this.cellsOf(tall), value, this.mostCopies(table, view, v, k, remaining));
      else if (!fronted) fronts.push(k);
    }
    this.budget.spend(stacks.work);
    const mark = stacks.mark();
    const room = this.roomAlong(height, fronted);
    const plain = stacks.best(room);
    const front = bestFront(
      fronts,
      (k) => worth[k]!,
      (k) => stacks.best(this.roomBeside(height, heights[k]!)),
    );
    const promised = Math.max(plain, front.value);
    if (!(promised > 0)) return null;
    const picked: Draft["picked"] = [];
    const pick = (level: number, count: number) => {
      const byFront = table.front[level]![v]!;
      const part = byFront.value > table.plain[level]![v]! ? byFront.option : -1;
      picked.push({ level, count, front: part, density: worth[level]! / heights[level]! });
    };
    if (front.value > plain) {
      pick(front.option, 1);
      stacks.read(mark, this.roomBeside(height, heights[front.option]!), pick);
    } else stacks.read(mark, room, pick);
    picked.sort((a, b) => b.density - a.density || a.level - b.level);
    return { promised, picked };
  }

  private mostCopies(table: StripTable, view: View, v: number, level: number, remaining: ArrayLike<number>): number {
    const front = table.front[level]![v]!.value > table.plain[level]![v]! ? table.front[level]![v]!.option : -1;
    let most = MANY;
    const take = (o: number, copies: number) => {
      const { item, stack } = table.usable[o]!;
      most = Math.min(most, Math.floor(remaining[item]! / (copies * stack)));
    };
    if (front >= 0) take(front, 1);
    const room = front >= 0 ? this.roomBeside(view.length, table.usable[front]!.along) : this.roomAlong(view.length, false);
    this.strips.read(table.marks[level]!, room, take);
    return Math.max(1, most);
  }

  private readStrips(table: StripTable, view: View, draft: Draft): Strip[] {
    return draft.picked.flatMap(({ level, count, front }) => {
      const parts: Strip["parts"][number][] = [];
      const take = (o: number, copies: number) => {
        parts.push({ option: table.usable[o]!, copies });
      };
      if (front >= 0) take(front, 1);
      const room =
        front >= 0 ? this.roomBeside(view.length, table.usable[front]!.along) : this.roomAlong(view.length, false);
      this.strips.read(table.marks[level]!, room, take);
      return new Array<Strip>(count).fill({ height: table.heights[level]!, parts });
    });
  }

  private stripNode(strip: Strip, direction: Direction): PartsNode {
    const parts: CutNode[] = [];
    for (const { option, copies } of strip.parts) {
      const { item, along, stack } = option;
      const { w, h } = this.problem.items[item]!;
      const piece: PieceNode = { item, turned: along !== (direction === ALONG_Y ? w : h) };
      const part: CutNode = stack === 1 ? piece : { direction, parts: new Array<PieceNode>(stack).fill(piece) };
      for (let n = 0; n < copies; n++) parts.push(part);
    }
    return { direction: direction === ALONG_X ? ALONG_Y : ALONG_X, parts };
  }
}

interface Front {
  readonly value: number;
  readonly option: number;
}

/** The front part worth most together with what fits beside it. */
function bestFront(options: readonly number[], own: (o: number) => number, beside: (o: number) => number): Front {
  let best: Front = { value: NONE, option: -1 };
  for (const option of options) {
    const value = own(option) + beside(option);
    if (value > best.value) best = { value, option };
  }
  return best;
}

function cutBack(strip: Strip, rest: Float64Array): Strip {
  if (takes(strip, rest)) return strip;
  const left = new Map<number, number>();
  const parts: Strip["parts"][number][] = [];
  let height = 0;
  for (const { option, copies } of strip.parts) {
    const available = left.get(option.item) ?? rest[option.item]!;
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
    if (wanted > rest[option.item]!) return false;
  }
  return true;
}
