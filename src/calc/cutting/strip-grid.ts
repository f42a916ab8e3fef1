/** Lengths in cells of the strip tables: pieces are rounded up, room is rounded down, waste the shear can part is left. */
import { type GaugeRule, isUnlimited } from "./gauge-rule.ts";

export class StripGrid {
  private readonly limited: boolean;

  /** `cell` in grid units: 1 is exact, larger is quicker and rounds against us. */
  constructor(
    readonly rule: GaugeRule,
    private readonly cell: number,
    /** What the cut counts that sizes a piece narrower than its strip, in the value of pieces. */
    readonly sizing: number,
  ) {
    this.limited = !isUnlimited(rule);
  }

  cellsOf(size: number): number {
    return Math.ceil(size / this.cell);
  }

  room(size: number): number {
    return Math.floor(size / this.cell);
  }

  /** Cells to fill in `size`; `fronted` when one part is bound to stay in front, so that the waste must fall. */
  roomAlong(size: number, fronted: boolean): number {
    const { leastHold, leastWaste } = this.rule;
    return this.room(this.limited ? size - Math.max(fronted ? 0 : leastHold, leastWaste) : size);
  }

  /** Cells left beside a front part of `extent`. */
  roomBeside(size: number, extent: number): number {
    return this.roomAlong(size, true) - this.cellsOf(extent);
  }
}
