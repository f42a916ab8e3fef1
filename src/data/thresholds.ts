/**
 * Where a finding turns from a note into a check and from a check into a stop. All are common practice of US shops, chosen
 * to hurt no machine and to scrap no sheet; no published source stands behind them unless one is named. A row of the
 * shop's rates table that bears the name changes one, within what it may be. Where two disagree the more severe counts.
 */
import { type Fact, fact } from "./fact.ts";

export interface Threshold extends Fact {
  /** As it is called in the rates table. */
  readonly row: string;
  /** What a shop may make of it, in its unit. */
  readonly from: number;
  readonly to: number;
}

const SHOP = "common practice of US shops";
const threshold = (
  row: string,
  [value, from, to]: readonly [usual: number, from: number, to: number],
  unit: Fact["unit"],
  mark: Fact["mark"],
  source = SHOP,
): Threshold => ({ ...fact(value, unit, mark, source), row, from, to });

/** Of a brake's, die's or punch's rating, by the expected force: from here on one look more. */
export const EXPECTED_CHECK = threshold("Force check", [0.8, 0.3, 1], "", "common practice");
/** Of a tool's rating, by the worst force: nothing relieves a tip, so that a hard sheet alone must not break it. */
export const TOOL_WORST_STOP = threshold("Tool worst force stop", [1.25, 1, 1.5], "", "common practice");
/** A bend shorter than this loads the beam as one of this length does: ram and bed spread the force. */
export const BEAM_LEAST_IN = threshold("Beam shares over", [12, 1, 24], "in", "common practice");
/** Of the brake's rating, by the expected force, where the ends of a bend stand outside the housings. */
export const ENDS_CHECK = threshold("Bend ends check", [0.5, 0.1, 0.8], "", "common practice");
export const ENDS_STOP = threshold("Bend ends stop", [0.8, 0.1, 1], "", "common practice");

/** An opening this little under 6 thicknesses still counts as 6: 1.5 in over 1/4 in. */
export const OPENING_COUNTS_AS_LEAST = threshold("Opening least", [5.8, 5, 8], "", "common practice");

/** Below so many thicknesses a die marks the sheet and the force leaves every formula. */
export const OPENING_STOP = threshold("Opening stop", [5, 4, 6], "", "common practice");
/** Over so many the bend scatters: a note, and a check where the shop has bent no strip. */
export const OPENING_WIDE = threshold("Opening note over", [12, 8, 20], "", "common practice");
export const OPENING_WIDE_CHECK = threshold("Opening check over", [20, 12, 40], "", "common practice");

/** Bottoming is within reach: this far past the tool's face, this thick, with these multiples of the air-bend force. */
export const BOTTOM_WITHIN = threshold("Bottoming within", [3, 0, 5], "deg", "common practice");
export const BOTTOM_THICKEST_IN = threshold("Bottoming thickest", [0.125, 0, 0.25], "in", "common practice");
export const BOTTOM_THICKEST_STAINLESS_IN = threshold(
  "Bottoming thickest stainless",
  [0.0781, 0, 0.125],
  "in",
  "common practice",
);
/** The loaded angle is known to so much of the springback, and never better than to half a degree. */
export const SPRINGBACK_BAND = threshold(
  "Springback band",
  [0.25, 0.05, 1],
  "",
  "common practice",
  "coils of one grade differ by about a quarter",
);
export const SPRINGBACK_LEAST_BAND = threshold("Springback least band", [0.5, 0, 5], "deg", "common practice");

/** A drawing's radius without a tolerance is met within 1/32 in or half a thickness. */
export const RADIUS_NEAR_IN = threshold("Drawing radius near", [1 / 32, 0, 0.25], "in", "common practice");
export const RADIUS_NEAR_THICKNESSES = threshold(
  "Drawing radius near by thickness",
  [0.5, 0, 2],
  "",
  "common practice",
);
/** Plate from here on is bent along the grain only at this radius or more. */
export const PLATE_ALONG_FROM_IN = threshold("Plate grain from", [0.25, 0.125, 1], "in", "common practice");
export const PLATE_ALONG_RADIUS = threshold("Plate radius along grain", [1.5, 0.5, 5], "", "common practice");
/** Corners of a bend line's ends tear from here on unless they are deburred. */
export const DEBURR_FROM_IN = threshold("Deburr bend ends from", [0.1875, 0.0625, 1], "in", "common practice");

/** Blade gap as a share of the thickness. */
export const GAP_NOTE = threshold("Blade gap note", [0.1, 0.05, 0.4], "", "common practice");
export const GAP_CHECK = threshold("Blade gap check", [0.2, 0.05, 0.4], "", "common practice");
export const GAP_STOP = threshold(
  "Blade gap stop",
  [0.4, 0.1, 0.5],
  "",
  "common practice",
  "the sheet folds in between the blades",
);
export const GAP_TIGHT = threshold("Blade gap tight", [0.04, 0, 0.1], "", "common practice");
export const GAP_TIGHT_FROM_IN = threshold("Blade gap tight from", [0.1875, 0.0625, 1], "in", "common practice");

/** A strip as a multiple of its thickness. */
export const STRIP_NOTE = threshold("Narrow strip note", [12, 4, 40], "", "common practice");
export const STRIP_CHECK = threshold("Narrow strip check", [8, 4, 40], "", "common practice");
export const STRIP_STOP = threshold("Narrow strip stop", [4, 2, 20], "", "common practice");
export const STRIP_PLATE_FROM_IN = threshold("Narrow strip plate from", [0.1875, 0.0625, 1], "in", "common practice");

/** A bend this long takes two people, whatever it weighs. */
export const TWO_PEOPLE_FROM_IN = threshold("Two people from", [72, 24, 144], "in", "common practice");
/** Two people together lift two thirds of what they lift one by one. */
export const TWO_PEOPLE_SHARE = threshold(
  "Two people share",
  [2 / 3, 0.4, 1],
  "",
  "read",
  "HSE manual handling guidance, read in a quotation",
);

/** In front of the brake the sheet swings up with the bend: so far, and where it is thin or heavy it must be followed. */
export const SWING_FROM_IN = threshold("Swing from", [24, 6, 120], "in", "common practice");
export const SWING_THIN_IN = threshold(
  "Swing thin to",
  [0.0785, 0.02, 0.15],
  "in",
  "common practice",
  "14 gauge of any series",
);
export const SWING_HEAVY_LB = threshold("Swing heavy from", [50, 5, 200], "lb", "common practice");

/** Fingers stay this far from the die: a blank with one short side is held by the other, one with two by a tool. */
export const HANDS_NOTE_IN = threshold("Small blank note", [4, 1, 12], "in", "common practice");
export const HANDS_CHECK_IN = threshold("Small blank check", [2, 1, 12], "in", "common practice");

/** A gap between sheet and tools drawn from their tables that is too little to rely on. */
export const ORDER_CLEARANCE_IN = threshold("Order clearance", [1 / 16, 0, 1], "in", "common practice");

/** The sharpest V that shops bend over: what must be folded further is closed in another tool. */
export const SHARPEST_DIE = threshold("Sharpest die", [30, 20, 90], "deg", "common practice");
/** So many thicknesses of sheet stay straight between nose and shoulder, or the nose nearly fills the die. */
export const NOSE_FREE_SHEET = threshold("Nose free sheet", [1, 0, 4], "", "common practice");
/** What passes the housings needs this much play between them. */
export const HOUSINGS_LESS_IN = threshold("Housings less", [1, 0, 12], "in", "common practice");
/** A throat that nobody stated. */
export const THROAT_IN = threshold("Throat where not stated", [8, 0, 40], "in", "common practice");
/** Tools between two flanges that stand at the ends of a bend: this much shorter at least, and at most. */
export const BOX_CLEAR_IN = threshold("Box tools clear", [1 / 16, 0, 1], "in", "common practice");
export const BOX_SHORT_IN = threshold("Box tools short", [1 / 2, 0, 3], "in", "common practice");
/** Of half the brake's rating, by what the nearer side takes of a bend off its middle. */
export const OFF_CENTER_CHECK = threshold("Off center check", [0.8, 0.3, 1], "", "common practice");

/** Metal between two blanks on the waterjet's table, and along a sheet's edge, where the shop states none. */
export const JET_WEB_IN = fact(0.25, "in", "common practice", SHOP);

/** A plate prints its thickness to three or four figures: 10 gauge is 0.1345 in there and 0.134505 in by its weight. */
export const RATING_PRINTED = fact(0.001, "", "common practice", "figures of a capacity plate are rounded");
