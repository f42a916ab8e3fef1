/** The shop as a bill meets it: what stands in its tables. A table that was not given is an empty one, and is named. */
import type { Press } from "../../calc/bend/order/press.ts";
import type { ProfitBasis } from "../../calc/cost/price-for-margin.ts";
import type { Instant } from "../../calc/schedule/calendar.ts";
import type { FinishedWork } from "../../calc/time/own-factor.ts";
import type { Material, StripCorrection } from "../../data/materials/material.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { CalendarRow } from "./calendar.ts";
import type { Brake, Die, Punch, Shear, Waterjet } from "./machines.ts";
import { NO_RATES, type Rates } from "./rates.ts";
import type { Station } from "./station.ts";
import type { StockSheet } from "./stock.ts";

/** The tables of a shop and a job, in the one order in which they are written. */
export const TABLES = [
  "brakes",
  "dies",
  "punches",
  "shears",
  "waterjets",
  "stations",
  "rates",
  "stock",
  "calendar",
  "job",
  "outlines",
  "press",
  "corrections",
  "finished",
] as const;
export type TableName = (typeof TABLES)[number];

/** The job beside its parts: who asks, when work can begin and when it must leave. */
export interface Job {
  readonly name: string;
  readonly customer: string;
  readonly quote: string;
  /** What money is counted in: "USD"; undefined where the table does not say, and then no sign is assumed. */
  readonly currency: string | undefined;
  /** The day the quote bears, and how long it holds; undefined where the table does not say. */
  readonly quoteDay: Instant | undefined;
  readonly goodUntil: Instant | undefined;
  readonly start: Instant | undefined;
  readonly due: Instant | undefined;
  /** Areas that must leave by a time of their own. */
  readonly areaDues: readonly { readonly area: string; readonly due: Instant }[];
  /** Areas of the site in the order in which they are needed. */
  readonly areas: readonly string[];
  readonly isRush: boolean;
  readonly profit: ProfitBasis;
}

export interface Shop {
  readonly brakes: readonly Brake[];
  readonly dies: readonly Die[];
  readonly punches: readonly Punch[];
  /** Outlines and travels of one set of tools, where they are drawn. */
  readonly drawn: Press | undefined;
  readonly shears: readonly Shear[];
  readonly waterjets: readonly Waterjet[];
  readonly stations: readonly Station[];
  readonly rates: Rates;
  readonly stock: readonly StockSheet[];
  readonly calendar: readonly CalendarRow[];
  readonly job: Job;
  /** What the shop's own test strips found, row by row. */
  readonly corrections: readonly StripCorrection[];
  /** Finished jobs, by which the shop's times are corrected. */
  readonly finished: readonly FinishedWork[];
  /** The steel a rating is stated in where the table does not say. */
  readonly ratedIn: Material;
  /** What plain numbers mean, such as a die named by its opening. */
  readonly system: UnitSystem;
  /** Which tables were given. */
  readonly given: readonly TableName[];
}

export const NO_JOB: Job = {
  name: "",
  customer: "",
  quote: "",
  currency: undefined,
  quoteDay: undefined,
  goodUntil: undefined,
  start: undefined,
  due: undefined,
  areaDues: [],
  areas: [],
  isRush: false,
  profit: "margin",
};

/** A shop of which nothing is known yet. */
export const emptyShop = (ratedIn: Material, system: UnitSystem): Shop => ({
  brakes: [],
  dies: [],
  punches: [],
  drawn: undefined,
  shears: [],
  waterjets: [],
  stations: [],
  rates: NO_RATES,
  stock: [],
  calendar: [],
  job: NO_JOB,
  corrections: [],
  finished: [],
  ratedIn,
  system,
  given: [],
});

export const hasTable = ({ given }: Pick<Shop, "given">, name: TableName): boolean => given.includes(name);
