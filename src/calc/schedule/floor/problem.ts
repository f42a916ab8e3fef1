/**
 * The floor of a shop as a scheduling problem: operations on stations of one or more like machines. Times are whole
 * seconds; an instant is what the stations' clocks make of it. No nouns of the trade here: a job shop of the textbooks
 * is the same problem with clocks that never stop, no set-ups and one delivery of everything.
 */

/** Working time of a station: when is so much work done, and when must it begin to be done by then. */
export interface Clock {
  finish(start: number, work: number): number;
  latest(finish: number, work: number): number;
  /** The times at which work that stands from one moment to the other is done. */
  spans(from: number, to: number): readonly (readonly [from: number, to: number])[];
}

/** Who is there at all stations together, from a moment until the next span begins; Infinity where nobody counts. */
export interface CrewSpan {
  readonly from: number;
  readonly people: number;
}

export interface FloorStation {
  /** Machines that are alike; Infinity where any number of operations runs at once, as at a vendor. */
  readonly machines: number;
  readonly clock: Clock;
}

/** Operations come in an order in which each stands behind those it waits for. */
export interface Operation {
  readonly station: number;
  readonly run: number;
  /** Set-up of its own, which operations of the same lot one after another share. */
  readonly own: number;
  readonly lot: number;
  /** Set-up that operations of one key (tools, sheet) one after another share; the same for every operation of the key. */
  readonly change: number;
  readonly key: number;
  /** Who stands at it while it is set up and while it runs; counted where the problem has a crew. */
  readonly people: number;
  /** Where enough people for it are there at other times than the station works; undefined: the station's. */
  readonly clock?: Clock | undefined;
  /** Indexes of the operations that must be done before. */
  readonly after: readonly number[];
  readonly release: number;
  /** It has begun, or the near plan is frozen: such operations go first on their station, in this order, never moved. */
  readonly frozen: number | undefined;
}

/** What leaves together: done when the last of its operations is. */
export interface Delivery {
  readonly due: number;
  readonly weight: number;
  readonly operations: readonly number[];
}

export interface FloorProblem {
  /** From when every machine is free. A set-up may begin before the parts are there. */
  readonly start: number;
  readonly stations: readonly FloorStation[];
  readonly operations: readonly Operation[];
  readonly deliveries: readonly Delivery[];
  /** Spans without end, the first from the start or before; undefined: there are people enough for every machine. */
  readonly crew?: (() => Iterator<CrewSpan>) | undefined;
}

/** In order of their weight: lateness decides, then set-up, then how early everything is. */
export interface Worth {
  /** Weighted seconds past the due times. */
  readonly late: number;
  /** Seconds of set-up. */
  readonly setUp: number;
  /** Weighted sum of the deliveries' finishes. */
  readonly finishes: number;
}

/** Below 0: the first is better. */
export const compareWorth = (a: Worth, b: Worth): number =>
  a.late - b.late || a.setUp - b.setUp || a.finishes - b.finishes;

/** Machines are counted through all stations; -1 for operations that occupy none. */
export interface FloorPlan {
  /** Operations of each machine, in order. */
  readonly machines: readonly (readonly number[])[];
  /** When the run may begin: parts there, machine free and set up. */
  readonly ready: readonly number[];
  readonly finish: readonly number[];
  readonly setUp: readonly number[];
  /** When the set-up begins, or the run where none is; undefined: as late as its run allows. */
  readonly begins?: readonly number[];
  /** With a crew: runs (i) and set-ups (~i) in the order in which they take their people. */
  readonly list?: readonly number[];
  readonly worth: Worth;
}

/** Orders of another plan. */
export type Tried = Pick<FloorPlan, "machines" | "list">;
