/** What the page and its engine, which runs in a thread of its own, say to one another. */
import type { FixOffer } from "../../job/fix-cells.ts";
import type { LineReport } from "../../papers/line-report.ts";
import type { GuideEntry } from "../pane/guide/entry.ts";

export interface ShownCell {
  readonly text: string;
  readonly kind: "number" | "text" | "error";
  /** The sentence of a refusal. */
  readonly message?: string | undefined;
}

export interface CellLook {
  readonly bold: boolean;
  readonly shaded: boolean;
}

export interface SheetView {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  /** Pixels, one a column. */
  readonly widths: readonly number[];
  /** Rows of the sheet; null where the cell is empty. */
  readonly cells: readonly (readonly (ShownCell | null)[])[];
  readonly looks: readonly (readonly (CellLook | undefined)[] | undefined)[];
}

export interface Place {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

export interface ChangedView extends Place {
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

export type Request =
  | { readonly ask: "open"; readonly bytes: Uint8Array; readonly edits: readonly Edit[] }
  | { readonly ask: "edit"; readonly edits: readonly Edit[] }
  /** Types what would mend the line that stands there. */
  | { readonly ask: "fix"; readonly place: Place }
  | { readonly ask: "finish" }
  | { readonly ask: "look"; readonly place: Place }
  | { readonly ask: "save" };

export interface Edit extends Place {
  readonly typed: string;
}

/** An edit that was made, and what would have to be typed to take it back. */
export interface DoneEdit extends Place {
  readonly before: string;
  readonly after: string;
}

/** What stands in a cell, and the line of the bill that it is about. */
export interface Looked {
  readonly detail: CellDetail;
  readonly report: LineReport | undefined;
  readonly fix: FixOffer | undefined;
}

export type Answer =
  | {
      readonly said: "opened";
      readonly sheets: readonly SheetView[];
      readonly first: number;
      readonly guide: readonly GuideEntry[];
      readonly notes: readonly string[];
      readonly waits: boolean;
    }
  /** `waits`: long calls still have their old answer, until "finish" is asked. */
  | {
      readonly said: "edited";
      readonly changes: readonly ChangedView[];
      readonly waits: boolean;
      /** Undefined where an edit cannot be taken back. */
      readonly done?: readonly DoneEdit[] | undefined;
      /** What a fix has come to. */
      readonly says?: string;
    }
  | ({ readonly said: "looked" } & Looked)
  | { readonly said: "saved"; readonly bytes: Uint8Array }
  | { readonly said: "refused"; readonly message: string };
