/**
 * The strips worth most, of every width, for given piece values: pieces side by side, one narrower than its strip sized by
 * one more cut. One sweep over the pieces by rising width prices the strips of every width for all sheets that take the
 * pieces the same way round (Gilmore & Gomory, Operations Research 13:94, 1965; memory, unverified). What the shear
 * cannot part is never offered: see gauge-rule.ts.
 */
import { missing } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import { type GaugeRule, isUnlimited, mustStayInFront } from "./gauge-rule.ts";
import type { Knapsack } from "./knapsack.ts";
import type { StripGrid } from "./strip-grid.ts";
import type { StripOption, StripView } from "./strip-views.ts";

export interface Strip {
  readonly height: number;
  readonly parts: readonly { readonly option: StripOption; readonly copies: number }[];
}

/** The part in front worth most together with what fits beside it; option -1 where there is none. */
export interface Front {
  readonly value: number;
  readonly option: number;
}

/** However dear time is, a piece that must be sized is worth something: chosen. */
const MOST_SIZING = 0.5;

export class StripTable {
  /** Widths of strips, rising. */
  readonly heights: number[] = [];
  private readonly usable: StripOption[];
  private readonly marks: number[] = [];
  private readonly plain: number[][] = [];
  private readonly fronts: Front[][] = [];

  /** Fills `knapsack`, which must not be filled anew while the table is read. */
  constructor(
    options: readonly StripOption[],
    private readonly views: readonly StripView[],
    private readonly values: ArrayLike<number>,
    private readonly remaining: ArrayLike<number>,
    private readonly grid: StripGrid,
    private readonly knapsack: Knapsack,
    private readonly budget: Budget,
    private readonly favor: (extent: number) => number,
  ) {
    const longest = Math.max(...views.map(({ length }) => length));
    const tallest = Math.max(...views.map(({ height }) => height));
    this.usable = options.filter(
      ({ item, along, across, stack }) =>
        (values[item] ?? missing()) > 1e-9 &&
        (remaining[item] ?? missing()) >= stack &&
        along <= longest &&
        across <= tallest,
    );
    knapsack.reset(grid.room(longest));
    const { rule } = grid;
    const apart = !isUnlimited(rule) && this.usable.some(({ across }) => leastSizing(across, rule) > 0);
    if (apart) this.sweepSized();
    else this.sweep();
  }

  /** What the best strip of a level is worth in view `v`. */
  worth(level: number, v: number): number {
    return Math.max(this.plain[level]?.[v] ?? missing(), this.fronts[level]?.[v]?.value ?? missing());
  }

  strip(level: number, v: number): Strip {
    const parts: { option: StripOption; copies: number }[] = [];
    this.read(level, v, (option, copies) => {
      parts.push({ option, copies });
    });
    return { height: this.heights[level] ?? missing(), parts };
  }

  /** How often the strip of a level can be laid before the demand for one of its pieces ends; once at least. */
  mostCopies(level: number, v: number): number {
    let most = Infinity;
    this.read(level, v, ({ item, stack }, copies) => {
      most = Math.min(most, Math.floor((this.remaining[item] ?? missing()) / (copies * stack)));
    });
    return Math.max(1, most);
  }

  private read(level: number, v: number, take: (option: StripOption, copies: number) => void): void {
    const { length } = this.views[v] ?? missing();
    const front = this.fronts[level]?.[v] ?? missing();
    const fronted = front.value > (this.plain[level]?.[v] ?? missing());
    if (fronted) take(this.usable[front.option] ?? missing(), 1);
    const room = fronted
      ? this.grid.roomBeside(length, this.usable[front.option]?.along ?? missing())
      : this.grid.roomAlong(length, false);
    this.knapsack.read(this.marks[level] ?? missing(), room, (o, copies) => take(this.usable[o] ?? missing(), copies));
  }

  /** No piece narrower than its strip is too close to it in width to be sized. */
  private sweep(): void {
    const fronts: number[] = [];
    for (let o = 0; o < this.usable.length; ) {
      const height = this.usable[o]?.across ?? missing();
      for (; o < this.usable.length && (this.usable[o]?.across ?? missing()) === height; o++) this.add(o, fronts);
      this.record(height, fronts);
    }
  }

  /** A piece is in the strips of exactly its width, and again from the width on from which it can be sized. */
  private sweepSized(): void {
    const { usable, knapsack } = this;
    const { sizing, rule } = this.grid;
    const entry = usable.map(({ across }) => across + leastSizing(across, rule));
    const byEntry = usable.map((_, o) => o).sort((a, b) => (entry[a] ?? missing()) - (entry[b] ?? missing()) || a - b);
    const fronts: number[] = [];
    let entered = 0;
    for (let o = 0; o < usable.length; ) {
      const height = usable[o]?.across ?? missing();
      while (entered < byEntry.length && (entry[byEntry[entered] ?? missing()] ?? missing()) <= height)
        this.add(byEntry[entered++] ?? missing(), fronts, sizing);
      const exact: number[] = [];
      for (; o < usable.length && (usable[o]?.across ?? missing()) === height; o++)
        if ((entry[o] ?? missing()) > height) exact.push(o);
      if (exact.length === 0) {
        this.record(height, fronts);
        continue;
      }
      knapsack.hold();
      const exactFronts = [...fronts];
      for (const option of exact) this.add(option, exactFronts);
      this.record(height, exactFronts);
      knapsack.goOn();
    }
  }

  private add(o: number, fronts: number[], sizing = 0): void {
    // Out of budget the table stays as it is: still right, only poorer.
    if (this.budget.over()) return;
    const { item, along, stack } = this.usable[o] ?? missing();
    if (mustStayInFront(along, this.grid.rule)) {
      fronts.push(o);
      return;
    }
    const { knapsack } = this;
    const before = knapsack.work;
    const copies = Math.floor((this.remaining[item] ?? missing()) / stack);
    const value = this.values[item] ?? missing();
    const worth = value - Math.min(sizing, MOST_SIZING * value);
    knapsack.add(o, this.grid.cellsOf(along), worth * stack * this.favor(along), copies);
    this.budget.spend(knapsack.work - before);
  }

  private record(height: number, fronts: readonly number[]): void {
    const { usable, values, knapsack, grid } = this;
    this.heights.push(height);
    this.marks.push(knapsack.mark());
    this.plain.push(this.views.map(({ length }) => knapsack.best(grid.roomAlong(length, false))));
    this.fronts.push(
      this.views.map(({ length }) =>
        bestFront(
          fronts,
          (o) => {
            const { item, stack } = usable[o] ?? missing();
            return (values[item] ?? missing()) * stack;
          },
          (o) => knapsack.best(grid.roomBeside(length, usable[o]?.along ?? missing())),
        ),
      ),
    );
  }
}

/** Least width by which a strip must exceed the piece if it is not equal. */
function leastSizing(across: number, rule: GaugeRule): number {
  const trimmedOff = across >= rule.leastHold && across <= rule.frontReach;
  if (trimmedOff) return rule.leastWaste;
  return mustStayInFront(across, rule) ? Infinity : Math.max(rule.leastHold, rule.leastWaste);
}

export function bestFront(
  options: readonly number[],
  own: (o: number) => number,
  beside: (o: number) => number,
): Front {
  let best: Front = { value: Number.NEGATIVE_INFINITY, option: -1 };
  for (const option of options) {
    const value = own(option) + beside(option);
    if (value > best.value) best = { value, option };
  }
  return best;
}
