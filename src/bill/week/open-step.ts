/** What is still to be done, whether it comes from the plan of a bill or from a table of a worksheet. */

import type { Instant } from "../../calc/schedule/calendar.ts";
import { itemAt } from "../../units/certain.ts";
import type { Station } from "../nouns/station.ts";

export interface OpenJob {
  readonly name: string;
  readonly isRush: boolean;
  /** When work can begin; undefined: at once. */
  readonly start: Instant | undefined;
  /** Rows of its sheet above the header of its lines. */
  readonly above?: number | undefined;
}

/** Pieces of one line at one station. */
export interface OpenStep {
  readonly job: number;
  readonly line: { readonly row: number; readonly part: string };
  readonly station: Pick<Station, "name" | "atOnce">;
  /** The machine by name, a bench by its station's. */
  readonly machine: string;
  /** undefined: a vendor does it. */
  readonly work: { readonly people: number } | undefined;
  /** Lots that go on to the next station as they are done: 1 of 2. */
  readonly lot: number;
  readonly lots: number;
  readonly pieces: number;
  /** Seconds; whole working days at a vendor's. */
  readonly run: number;
  readonly lineSetUp: number;
  readonly change: number;
  /** What it is set up for: tools, or a sheet. */
  readonly setFor: string;
  readonly due: Instant | undefined;
  readonly isStarted: boolean;
  /** When it began; undefined: it has not, or nobody wrote when. */
  readonly begun: Instant | undefined;
  readonly pin: Instant | undefined;
  /** Indexes of the steps before it. */
  readonly after: readonly number[];
}

/** A name for a step that the next plan of the same jobs has too. */
export const stepKey = (jobs: readonly Pick<OpenJob, "name">[], { job, line, machine, lot }: OpenStep): string =>
  [itemAt(jobs, job).name, line.row, line.part, machine, lot].join(" | ");
