import type { CellValue } from "../../units/cell.ts";
import type { Template } from "../evaluate/frame.ts";
import type { RangeRef } from "../evaluate/value.ts";
import type { Area } from "../formula/address.ts";

/** Where a formula cell stands in a recalculation. */
export const NEW = 0;
export const ACTIVE = 1;
export const DONE = 2;

export type FormulaKind = "normal" | "array" | "dynamic" | "data-table";

/** A cell with a formula: what the file says, what it compiled to, and how far its calculation is. */
export class FormulaCell {
  template: Template | undefined = undefined;
  literals: readonly (number | string)[] = [];
  state = NEW;
  /** Evaluate straight away, precedents on demand: see the recalculation. */
  lazy = false;
  /** Why the stored value was kept, if it was. */
  kept: { readonly reason: string; readonly detail: string } | undefined = undefined;
  circular = false;
  /** Cells the result covers now; undefined for a single cell. */
  covers: Area | undefined = undefined;
  /** Ranges read that no precedent names, recorded while evaluating. */
  read: RangeRef[] | undefined = undefined;

  constructor(
    readonly sheet: number,
    readonly row: number,
    readonly column: number,
    /** Formula text without "="; for a cell that shares another's formula, the other's text. */
    readonly text: string,
    readonly kind: FormulaKind,
    /** The ref attribute of an array or data-table formula. */
    readonly ref: Area | undefined,
    /** The cell whose text this is, when the formula is shared. */
    readonly master: FormulaCell | undefined,
    /** Value in the file; undefined when there is none. */
    readonly stored: CellValue | undefined,
    /** For a data table: its row and column input cells. */
    readonly inputs: DataTableInputs | undefined,
  ) {}

  /** Of a cell that is calculated: those were compiled before. */
  get compiled(): Template {
    if (!this.template) throw new Error("a formula that was not compiled");
    return this.template;
  }
}

export interface DataTableInputs {
  readonly first: string;
  readonly second: string | undefined;
  /** The input cell's row or column was deleted. */
  readonly firstDeleted: boolean;
  readonly secondDeleted: boolean;
  /** One-variable table: the input is a row's cell. */
  readonly byRow: boolean;
}
