/** What differs from one job's workbook to the other; sheets, tables and formulas are the same in all of them. */
import type { CellValue } from "../../units/cell.ts";
import type { UnitSystem } from "../../units/system.ts";

/** One table of the shop, on the sheet Shop; finished jobs on a sheet of their own. */
export interface ShopSheetTable {
  /** As formulas call it: "Brakes". */
  readonly name: string;
  readonly title: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

export interface PartColumn {
  readonly header: string;
  readonly width: number;
  readonly number?: true;
  /** A text cell down to the bottom: 3/16 typed into a plain cell becomes a day in March. */
  readonly keepsText?: true;
}

export type JobKey =
  | "job"
  | "customer"
  | "number"
  | "day"
  | "valid"
  | "start"
  | "due"
  | "areas"
  | "pace"
  | "profit"
  | "currency";

export interface JobContents {
  readonly system: UnitSystem;
  /** Under the title of the first sheets. */
  readonly subject: string;
  /** What the workbook is, on its first sheet. */
  readonly about: string;
  readonly shop: readonly ShopSheetTable[];
  readonly shopNote: string;
  /** Who quotes. */
  readonly shopName: string;
  /** At the foot of the quote's pages. */
  readonly quoteFoot: string;
  readonly jobNote: string;
  readonly job: Readonly<Partial<Record<JobKey, CellValue>>>;
  readonly partColumns: readonly PartColumn[];
  readonly parts: readonly (readonly CellValue[])[];
  /** Times of areas that leave before the job does, by area. */
  readonly areaDues?: readonly (readonly [area: string, due: CellValue])[] | undefined;
  /** Said behind the note of the sheet Finished. */
  readonly finishedNote?: string;
  /** Lines whose answers are shown step by step: a flat, a force, a shear. One that is not there leaves its block out. */
  readonly shown: { readonly flat?: string; readonly force?: string; readonly shear?: string };
}

/** Whether the sheet Shop has the table. */
export const hasTable = ({ shop }: Pick<JobContents, "shop">, name: string): boolean =>
  shop.some((table) => table.name === name);
