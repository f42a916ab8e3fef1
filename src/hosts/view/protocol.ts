/** What the page and its engine, which runs in a thread of its own, say to one another. */
import type { FixOffer } from "../../job/fix-cells.ts";
import type { CutSheet } from "../../papers/cut-sheets.ts";
import type { JobFigures } from "../../papers/job-figures.ts";
import type { ListedLine } from "../../papers/line-list.ts";
import type { LineReport } from "../../papers/line-report.ts";
import type { GuideEntry } from "../pane/guide/entry.ts";
import type { ListAsked, ListUnderstood } from "./start-list.ts";

export interface ShownCell {
  readonly text: string;
  /** What it is, whatever it was typed as: 3/16 and 10 ga are numbers. */
  readonly kind: "number" | "text" | "error";
  /** The sentence of a refusal. */
  readonly message?: string | undefined;
}

export interface CellLook {
  readonly bold: boolean;
  readonly shaded: boolean;
}

/** A sheet of the workbook, and the word its tab stands under. */
export interface SheetName {
  readonly name: string;
  readonly group: string;
}

export interface SheetView {
  readonly rows: number;
  readonly columns: number;
  /** Pixels, one a column. */
  readonly widths: readonly number[];
  /** Rows that head a table: they stay in sight above its own rows. */
  readonly headings: readonly number[];
  /** Rows of the sheet; null where the cell is empty. */
  readonly cells: readonly (readonly (ShownCell | null)[])[];
  readonly looks: readonly (readonly (CellLook | undefined)[] | undefined)[];
}

export interface SheetPlace {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

export interface ChangedView extends SheetPlace {
  readonly cell: ShownCell | null;
}

/** What stands behind a cell, for the line above the grid. */
export interface CellDetail {
  readonly address: string;
  /** As typed, or the formula with "=". */
  readonly content: string;
  /** Why it cannot be typed over; undefined where it can. */
  readonly locked: string | undefined;
  readonly message: string | undefined;
}

/** The bill as a list of lines to be worked through. */
export interface Board {
  /** The bill's own sheet, and the place of its header on it. */
  readonly header: SheetPlace;
  readonly lines: readonly ListedLine[];
  /** Tables that are missing or cannot be read, a sentence each. */
  readonly missing: readonly string[];
  /** Cells of the bill that cannot be read, and what may stand there. */
  readonly faults: readonly (SheetPlace & { readonly says: string })[];
  /** Where the next line is typed. */
  readonly next: SheetPlace;
}

export type Request =
  | { readonly ask: "open"; readonly bytes: Uint8Array; readonly edits: readonly (readonly Edit[])[] }
  | { readonly ask: "sheet"; readonly sheet: number }
  | { readonly ask: "edit"; readonly edits: readonly Edit[] }
  /** Types what would mend the line. */
  | { readonly ask: "fix"; readonly row: number }
  /** Puts an empty row there, or takes the row away. */
  | { readonly ask: "row"; readonly place: SheetPlace; readonly change: "insert" | "remove" }
  | { readonly ask: "finish" }
  | { readonly ask: "look"; readonly place: SheetPlace }
  | { readonly ask: "line"; readonly row: number }
  | { readonly ask: "cuts" }
  | { readonly ask: "guide" }
  | ({ readonly ask: "list" } & ListAsked)
  | ({ readonly ask: "start" } & ListAsked)
  | { readonly ask: "save" };

export interface Edit extends SheetPlace {
  readonly typed: string;
}

/** An edit that was made, and what would have to be typed to take it back. */
export interface DoneEdit extends SheetPlace {
  readonly before: string;
  readonly after: string;
}

/** What stands in a cell, and the row of the bill that it is about. */
export interface Looked {
  readonly detail: CellDetail;
  readonly line: number | undefined;
}

export interface Opened {
  readonly sheets: readonly SheetName[];
  /** Undefined where the workbook holds no bill. */
  readonly board: Board | undefined;
  readonly notes: readonly string[];
}

export interface Edited {
  readonly changes: readonly ChangedView[];
  readonly board: Board | undefined;
  /** Undefined where an edit cannot be taken back. */
  readonly done?: readonly DoneEdit[] | undefined;
  /** What a fix has come to. */
  readonly says?: string;
}

export type EngineAnswer =
  | ({ readonly said: "opened" } & Opened)
  | { readonly said: "sheet"; readonly view: SheetView }
  /** Answers that take long still are the old ones, until "finish" is asked. */
  | ({ readonly said: "edited" } & Edited)
  | {
      readonly said: "finished";
      readonly changes: readonly ChangedView[];
      readonly board: Board | undefined;
      readonly job: JobFigures | undefined;
    }
  | ({ readonly said: "looked" } & Looked)
  | { readonly said: "line"; readonly report: LineReport | undefined; readonly fix: FixOffer | undefined }
  | { readonly said: "cuts"; readonly sheets: readonly CutSheet[] }
  | { readonly said: "guide"; readonly guide: readonly GuideEntry[] }
  | ({ readonly said: "list" } & ListUnderstood)
  | { readonly said: "bytes"; readonly bytes: Uint8Array }
  | { readonly said: "refused"; readonly message: string };
