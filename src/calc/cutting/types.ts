/** What goes into and comes out of a cut plan. Lengths are millimeters; a limit that does not exist is Infinity or 0. */
import type { Millimeters, Money } from "../../units/quantity.ts";
import type { PartsNode } from "./cut-tree.ts";
import type { Direction } from "./problem.ts";

/** How the grain must run in a finished blank: along its first size, along its second, or any way. */
export type BlankGrain = "along" | "across" | "free";

export interface Blank {
  readonly id: string;
  readonly w: Millimeters;
  readonly h: Millimeters;
  readonly quantity: number;
  readonly grain: BlankGrain;
  /** What leaving a piece out counts against leaving out others when the stock runs short; its area if not given. */
  readonly value?: number;
  /** When it is wanted, in any unit that rises with time: of equal plans the sheets with the earliest parts come first. */
  readonly due?: number;
}

/** A layout by the names of its blanks; direction as in problem.ts. */
export type PinnedNode = { readonly blank: string; readonly turned: boolean } | PinnedParts;
export interface PinnedParts {
  readonly direction: Direction;
  readonly parts: readonly PinnedNode[];
}

export interface Stock {
  readonly id: string;
  readonly w: Millimeters;
  readonly h: Millimeters;
  /** Infinity where more can always be had. */
  readonly quantity: number;
  /** Price of one sheet, null where none is known. */
  readonly price: Money | null;
  /** Side along which the sheet's grain runs. */
  readonly grain: "w" | "h";
  /** Taken off one long and one short edge before anything is measured from them. */
  readonly trim: Millimeters;
  readonly remnant: boolean;
  /** Its edges are sheared already: nothing is trimmed, whatever `trim` says. */
  readonly edgesSheared?: boolean;
  /** What a left-over of it that is kept counts, from 0 to 1 of the same area; that of the limits where not given. */
  readonly remnantWorth?: number;
  /** The layout to which all its sheets are cut, whatever else is planned. */
  readonly pinned?: PinnedParts;
}

export interface Limits {
  /** Longest cut of the blade. */
  readonly longestCut: Millimeters;
  /** Farthest and nearest stop of the back gauge. */
  readonly reach: Millimeters;
  readonly nearestGauge: Millimeters;
  /** Narrowest part that may fall behind the blade; edge trims cut to a mark are not held to it. */
  readonly leastDrop: Millimeters;
  /** Narrowest part the hold-downs grip in front of the blade. */
  readonly leastHold: Millimeters;
  /** Levels of cuts, the sizing of a single piece not counted; 2 or more. */
  readonly stages: number;
  /** Shortest side of a left-over worth putting back on the rack; 0 keeps none. */
  readonly leastRemnant: Millimeters;
  /** What such a left-over counts, from 0 to 1 of the same area of a new sheet. At 0 it only decides between equals. */
  readonly remnantWorth: number;
  /** Thickness of the sheet; nothing thinner than it is sheared off an edge. 0 where not given. */
  readonly thickness?: Millimeters;
  /** Narrowest strip of waste that is sheared off; never under the thickness, which it is where not given. */
  readonly leastTrim?: Millimeters;
  /** Farthest front stop, to which the part in front is laid. 0, none, where not given. */
  readonly frontReach?: Millimeters;
  /** Whether a part too long for every stop may be cut to a scribed line. No where not given. */
  readonly cutToMark?: boolean;
  /** A part that falls twists when it is narrower than so many thicknesses and longer than so many widths. No limit where not given. */
  readonly twistWidth?: number;
  readonly twistLength?: number;
  /** Heaviest piece that is lifted onto the table, in kilograms; no limit where not given. Needs the weight of the sheet. */
  readonly heaviestLift?: number;
  /** Half-cut stacks that may stand on the floor at once, and those of pieces longer than `longStack`. Default 4, 2, 4 ft. */
  readonly stacks?: number;
  readonly longStacks?: number;
  readonly longStack?: Millimeters;
}

/** The floor's own seconds; see DEFAULT_PACE in floor-time.ts. */
export interface FloorPace {
  readonly setting: number;
  /** To lift a piece onto the table, per kilogram. */
  readonly liftPerKilogram: number;
  readonly turn: number;
  readonly stroke: number;
  /** To scribe a line. */
  readonly mark: number;
  /** Above this a lift is a heavy one: two people or a hoist. Kilograms. */
  readonly heavy: number;
}

export interface PlanOptions {
  /** Work units after which the search ends: the only stop in a cell, the same on every machine. */
  readonly units?: number;
  /** Asked now and then; true ends the search with the best plan so far. For workers and benchmarks only. */
  readonly stop?: () => boolean;
  /** What is kept low: sheet area, money where a new sheet has a price, or the number of sheets. */
  readonly least?: "metal" | "money" | "sheets";
  /**
   * What a minute at the shear counts in the objective; 0 where not given. Among the plans the search found near the best one
   * that with the least metal and time together is taken; Infinity takes the quickest of them.
   */
  readonly perMinute?: number;
  /** Restricts the first cuts to run along the sheet's w. */
  readonly firstCut?: "any" | "along w";
  readonly seed?: number;
  /** Weight of the sheet per square millimeter in kilograms; 0 where not given: then no lift counts. */
  readonly weightPerArea?: number;
  readonly pace?: FloorPace;
  /** Called with the number of sheets whenever a better plan is found. */
  readonly onBetter?: (sheets: number) => void;
}

export type CutStage = "trim" | "strip" | "cross" | "size";
export type PieceKind = "blank" | "part" | "remnant" | "scrap";

/** What a cut leaves, in the sheet's own axes. */
export interface PieceOut {
  readonly id: string;
  readonly kind: PieceKind;
  readonly w: Millimeters;
  readonly h: Millimeters;
  /** Id of the finished blank. */
  readonly blank?: string;
}

export interface Cut {
  readonly seq: number;
  /** Cuts with the same number are made without moving the gauge; 0 for trims cut to a mark. */
  readonly setting: number;
  readonly stage: CutStage;
  /** Piece on the table: the pattern's sheet ("3") or a part of it ("3.2"). */
  readonly piece: string;
  /** Pieces of that name, one from each sheet of the pattern. */
  readonly copies: number;
  /** Axis of the sheet along which the gauge measures. */
  readonly axis: "w" | "h";
  /** Distance from blade to gauge; null for a trim, a cut to a front stop and one to a mark. */
  readonly gauge: Millimeters | null;
  /** How the cut is measured; an edge trim is cut to a mark. */
  readonly by: "gauge" | "front stop" | "mark";
  /** What is measured: what falls, or what stays in front where that lies against a front stop. */
  readonly measure: Millimeters;
  /** Cuts of one visit are made without putting the piece down; each copy has its visit before the next. */
  readonly visit: number;
  readonly length: Millimeters;
  /** What falls behind the blade, one after another, from each piece. */
  readonly falls: readonly PieceOut[];
  readonly stays: PieceOut;
  /** Strokes of the shear in all: copies times falls. */
  readonly strokes: number;
  /** The piece is given a quarter turn since its last cut. */
  readonly turn: boolean;
}

export interface PlannedPattern {
  readonly id: string;
  readonly stock: string;
  /** The untrimmed sheet. */
  readonly w: Millimeters;
  readonly h: Millimeters;
  readonly repeats: number;
  /** Blanks on one sheet. */
  readonly yields: readonly { readonly blank: string; readonly count: number }[];
  /** Layout; `item` counts the blanks as given. */
  readonly layout: PartsNode;
}

export interface LeftOut {
  readonly blank: string;
  readonly count: number;
  readonly reason: string;
}

export interface Plan {
  readonly patterns: readonly PlannedPattern[];
  readonly cuts: readonly Cut[];
  /** Measures of back gauge and front stop that differ: no order of the cuts has fewer settings. */
  readonly gauges: number;
  /** Time at the shear with the pace given, lifts of heavy pieces and the least of them, stacks standing at most. */
  readonly minutes: number;
  readonly heavyLifts: number;
  readonly leastHeavyLifts: number;
  readonly stacks: number;
  readonly longStacks: number;
  /** Gauge settings of the list. */
  readonly settings: number;
  readonly sheets: readonly { readonly stock: string; readonly count: number }[];
  readonly remnants: readonly {
    readonly piece: string;
    readonly w: Millimeters;
    readonly h: Millimeters;
    readonly count: number;
  }[];
  readonly leftOut: readonly LeftOut[];
  /** Areas in square millimeters. */
  readonly blankArea: number;
  readonly sheetArea: number;
  readonly remnantArea: number;
  /** What the left-overs that are kept are worth, in the same. */
  readonly credit: number;
  /** What the plan counts (area or money), the least any plan can count, and the gap as a share of the bound. */
  readonly value: number;
  readonly bound: number;
  readonly gap: number;
  readonly stopReason: "bound" | "units" | "time";
  readonly warnings: readonly string[];
}
