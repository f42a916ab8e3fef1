/** The week of a shop, as it is asked for and as it is answered. */
import type { Instant } from "../../calc/schedule/calendar.ts";
import type { Shop } from "../nouns/shop.ts";
import type { WeekFault } from "./faults.ts";
import type { OpenStep } from "./open-step.ts";
import type { Step } from "./steps.ts";

/** Where a step stands in the week. */
interface StepPlace {
  /** Its set-up begins; the run begins when it is `ready`. */
  readonly begins: Instant;
  readonly ready: Instant;
  readonly finish: Instant;
  readonly setUp: number;
  /** The latest its run may begin for every delivery behind it to leave when it is due; undefined: none has a date. */
  readonly latest: Instant | undefined;
  /** Working seconds until then; below 0: missing. */
  readonly slack: number | undefined;
  /** A late job waits for it, or it has no time to spare. */
  readonly isCritical: boolean;
}

export type Placed<S extends OpenStep> = S & StepPlace;
export type PlannedStep = Placed<Step>;

/** Lines of a job that leave together. */
export interface WeekDelivery {
  readonly job: number;
  readonly due: Instant | undefined;
  readonly finish: Instant;
  /** Seconds past the due time, on the clock on the wall. */
  readonly late: number;
  readonly steps: readonly number[];
}

export interface WeekJobDates {
  readonly name: string;
  readonly due: Instant | undefined;
  readonly finish: Instant | undefined;
  readonly late: number;
  /** The latest that its first open step may begin, with its set-up; undefined where it has no date. */
  readonly latestStart: Instant | undefined;
  /** Too late for that already. */
  readonly isStartPast: boolean;
  /** Steps that decide when it is done, of this job and of others. */
  readonly chain: readonly number[];
  readonly isRush: boolean;
}

export interface Week<S extends OpenStep = Step> {
  readonly now: Instant;
  readonly jobs: readonly WeekJobDates[];
  readonly steps: readonly Placed<S>[];
  readonly deliveries: readonly WeekDelivery[];
  /** Steps of each machine in order; vendors apart. */
  readonly machines: readonly { readonly name: string; readonly steps: readonly number[] }[];
  readonly days: readonly StationDay[];
  /** Hours late by weight, and of set-up, with what no plan betters. */
  readonly worth: { readonly late: number; readonly setUp: number };
  readonly bound: { readonly late: number; readonly setUp: number };
  readonly isProved: boolean;
  readonly faults: readonly WeekFault[];
  /** For another plan of the same jobs to begin with. */
  readonly orders: WeekOrders;
}

/** Machine after machine, the keys of its steps. */
export type WeekOrders = ReadonlyMap<string, readonly string[]>;

export interface WeekOptions {
  readonly now: Instant;
  /** Whose calendar and stations rule; else the first job's that has shifts. */
  readonly shop?: Shop | undefined;
  /** Work of the search; 0: the first answer alone. */
  readonly units?: number;
  readonly tried?: readonly WeekOrders[];
  /** The first of them stays as far as that costs neither late hours nor set-up. */
  readonly isKept?: boolean;
  /** When the runs of that plan begin, by the keys of the steps: no run is sooner where that would better neither. */
  readonly stood?: ReadonlyMap<string, Instant>;
  /** Keys of steps that stay first, in this order: the near plan, frozen. */
  readonly frozen?: readonly string[];
  /** How much a late hour of each job counts beside the others, by its name; usual: 3 of a rush, else 1. */
  readonly weights?: ReadonlyMap<string, number>;
  /** Due times that are asked for in place of a job's own. */
  readonly dues?: ReadonlyMap<string, (due: Instant | undefined) => Instant | undefined>;
  /** Jobs that are held back until then. */
  readonly starts?: ReadonlyMap<string, Instant>;
  /** Work that goes to a vendor who could do it, by `sentKey`. */
  readonly sent?: ReadonlySet<string>;
  /** Longer working days by station, in seconds; "" for all of them. */
  readonly overtime?: ReadonlyMap<string, number>;
  /** More at once, by station. */
  readonly further?: ReadonlyMap<string, number>;
}

/** What a machine has to do on a day, against what it could. */
export interface StationDay {
  readonly machine: string;
  readonly station: string;
  /** Its midnight. */
  readonly day: Instant;
  /** Working seconds that it has, all machines of the name together. */
  readonly available: number;
  /** Set-up and run. */
  readonly load: number;
  /** Seconds of people. */
  readonly people: number;
}
