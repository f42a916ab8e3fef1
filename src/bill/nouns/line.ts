/** One line of the bill: a part as it is ordered. */
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import type { Instant } from "../../calc/schedule/calendar.ts";
import type { Material } from "../../data/materials/material.ts";
import type { Degrees, Millimeters } from "../../units/quantity.ts";
import type { Refusal } from "../../units/refusal.ts";

/** The machines a blank can be cut on. */
export const CUTTERS = ["shear", "waterjet"] as const;
export type Cutter = (typeof CUTTERS)[number];

/** Parallel bends in one direction: outside flanges, one more than bends; angles negative where the bend goes down. */
export interface Strip {
  readonly flanges: readonly Millimeters[];
  readonly angles: readonly Degrees[];
  /** Length of its bend lines. */
  readonly bendLength: Millimeters;
}

/** "tap 3": a station's name and, where given, how many units of its basis one piece has. */
export interface Operation {
  readonly station: string;
  readonly amount: number | undefined;
}

export interface BillLine {
  /** Of the range it was read from, the header being row 1: what tells two lines of one part apart. */
  readonly row: number;
  readonly part: string;
  readonly description: string;
  /** Of its drawing; undefined where the bill does not say. */
  readonly revision: string | undefined;
  /** What the floor must know and no other column says: "trim flange 1 to 0.75 in after bending". "" where there is none. */
  readonly instruction: string;
  readonly material: Material;
  /** What is bought. */
  readonly nominal: Millimeters;
  /** As measured where the bill says it, else nominal: what is bent and weighed. */
  readonly thickness: Millimeters;
  readonly quantity: number;
  readonly main: Strip;
  /** A part bent in both directions, such as a tray: its other strip. */
  readonly cross: Strip | undefined;
  /** Of a part with parallel bends or none: the other side of its blank. */
  readonly width: Millimeters;
  readonly radius: Millimeters | undefined;
  readonly radiusTolerance: Millimeters | undefined;
  readonly tolerance: Millimeters | undefined;
  readonly grain: Grain | undefined;
  readonly holes: number;
  readonly holeDiameter: Millimeters | undefined;
  readonly holeDistance: Millimeters | undefined;
  /** Of the middle of the bend from the middle of the bed, as on staged tools; undefined: in the middle. */
  readonly offCenter: Millimeters | undefined;
  readonly notches: number;
  readonly notchPath: Millimeters | undefined;
  /** Named tools and machines; blank: the plan chooses. */
  readonly die: string | undefined;
  readonly punch: string | undefined;
  readonly brake: string | undefined;
  readonly shear: string | undefined;
  readonly pin: Cutter | undefined;
  readonly operations: readonly Operation[];
  readonly finish: string;
  readonly spares: number;
  readonly area: string;
  readonly due: Instant | undefined;
  readonly wantsCertificate: boolean;
  /** The shop has never made it. */
  readonly isNew: boolean;
  readonly wantsFirstArticle: boolean;
  /** Who accepted its checks, and when; "" where nobody did. */
  readonly accepted: string;
}

/** A row that cannot be a part, with what it calls itself. */
export interface UnreadLine {
  readonly row: number;
  readonly part: string;
  readonly refusal: Refusal;
}
export type BillRow = BillLine | UnreadLine;
export const isLine = (row: BillRow): row is BillLine => !("refusal" in row);

/** The strips of a part that have bends: none for a flat plate, two for a tray. */
export const bentStrips = ({ main, cross }: Pick<BillLine, "main" | "cross">): Strip[] =>
  [main, ...(cross ? [cross] : [])].filter(({ angles }) => angles.length > 0);

/** What a line says that no bend depends on, blank. */
export const BESIDE_BENDS = {
  row: 0,
  part: "",
  description: "",
  revision: undefined,
  instruction: "",
  quantity: 1,
  holes: 0,
  holeDiameter: undefined,
  notches: 0,
  notchPath: undefined,
  shear: undefined,
  pin: undefined,
  operations: [],
  finish: "",
  spares: 0,
  area: "",
  due: undefined,
  wantsCertificate: false,
  isNew: false,
  wantsFirstArticle: false,
  accepted: "",
} as const satisfies Partial<BillLine>;
