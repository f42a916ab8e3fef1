import type { Area } from "../formula/address.ts";

/** The lines of figures along one side of a pivot table. */
export interface PivotAxis {
  /** Places of its fields among all of them, the outermost first. */
  readonly fields: readonly number[];
  /** Of each line the items from the outermost on (none: a grand total), and which data field it shows; undefined: a blank line. */
  readonly lines: readonly ({ readonly items: readonly (string | undefined)[]; readonly data: number } | undefined)[];
}

/** A pivot table as it stands on its sheet. Names and labels are in lower case; undefined: not known how Excel writes it. */
export interface Pivot extends Area {
  /** Row and column of the first figure. */
  readonly dataTop: number;
  readonly dataLeft: number;
  readonly fields: readonly { readonly name: string; readonly isText: boolean }[];
  /** Data fields by their own name and by their source's. */
  readonly data: readonly { readonly name: string; readonly source: string }[];
  readonly rows: PivotAxis;
  readonly columns: PivotAxis;
  /** Why its figures cannot be told from its lines. */
  readonly strange: string | undefined;
}
