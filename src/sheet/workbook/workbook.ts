import type { Table } from "../evaluate/table.ts";
import type { Package } from "../package/package.ts";
import type { Sheet } from "./sheet.ts";

export interface DefinedName {
  readonly name: string;
  /** Sheet index for a name of sheet scope, undefined for the whole workbook. */
  readonly scope: number | undefined;
  readonly text: string;
  /** A name that stands for a macro, not a formula. */
  readonly macro: boolean;
}

/** How circles are calculated, where the workbook asks for it. */
export interface Iteration {
  /** Most rounds. */
  readonly count: number;
  /** The change of a number that counts as none. */
  readonly delta: number;
}

/** A workbook as read: nothing evaluated yet. */
export interface Workbook {
  readonly package: Package;
  readonly sheets: readonly Sheet[];
  readonly names: readonly DefinedName[];
  readonly tables: readonly Table[];
  readonly date1904: boolean;
  readonly iteration?: Iteration | undefined;
  /** XML of each worksheet part by part name, for the writer. */
  readonly sheetText: ReadonlyMap<string, string>;
}
