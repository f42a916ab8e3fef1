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
  value: number,
  unit: Fact["unit"],
  mark: Fact["mark"],
  [from, to]: readonly [number, number],
  source = SHOP,
): Threshold => ({ ...fact(value, unit, mark, source), row, from, to });

/** Of a brake's, die's or punch's rating, by the expected force: from here on one look more. */
export const EXPECTED_CHECK = threshold("Force check", 0.8, "", "common practice", [0.3, 1]);
/** Of a tool's rating, by the worst force: nothing relieves a tip, so that a hard sheet alone must not break it. */
export const TOOL_WORST_STOP = threshold("Tool worst force stop", 1.25, "", "common practice", [1, 1.5]);
/** A bend shorter than this loads the beam as one of this length does: ram and bed spread the force. */
export const BEAM_LEAST_IN = threshold("Beam shares over", 12, "in", "common practice", [1, 24]);
/** Of the brake's rating, by the expected force, where the ends of a bend stand outside the housings. */
export const ENDS_CHECK = threshold("Bend ends check", 0.5, "", "common practice", [0.1, 0.8]);
export const ENDS_STOP = threshold("Bend ends stop", 0.8, "", "common practice", [0.1, 1]);

/** An opening this little under 6 thicknesses still counts as 6: 1.5 in over 1/4 in. */
export const OPENING_COUNTS_AS_LEAST = threshold("Opening least", 5.8, "", "common practice", [5, 8]);

/** Below so many thicknesses a die marks the sheet and the force leaves every formula. */
export const OPENING_STOP = threshold("Opening stop", 5, "", "common practice", [4, 6]);
/** Over so many the bend scatters: a note, and a check where the shop has bent no strip. */
export const OPENING_WIDE = threshold("Opening note over", 12, "", "common practice", [8, 20]);
export const OPENING_WIDE_CHECK = threshold("Opening check over", 20, "", "common practice", [12, 40]);

/** Bottoming is within reach: this far past the tool's face, this thick, with these multiples of the air-bend force. */
export const BOTTOM_WITHIN = threshold("Bottoming within", 3, "deg", "common practice", [0, 5]);
export const BOTTOM_THICKEST_IN = threshold("Bottoming thickest", 0.125, "in", "common practice", [0, 0.25]);
export const BOTTOM_THICKEST_STAINLESS_IN = threshold(
  "Bottoming thickest stainless",
  0.0781,
  "in",
  "common practice",
  [0, 0.125],
);
/** The loaded angle is known to so much of the springback, and never better than to half a degree. */
export const SPRINGBACK_BAND = threshold(
  "Springback band",
  0.25,
  "",
  "common practice",
  [0.05, 1],
  "coils of one grade differ by about a quarter",
);
export const SPRINGBACK_LEAST_BAND = threshold("Springback least band", 0.5, "deg", "common practice", [0, 5]);

/** A drawing's radius without a tolerance is met within 1/32 in or half a thickness. */
export const RADIUS_NEAR_IN = threshold("Drawing radius near", 1 / 32, "in", "common practice", [0, 0.25]);
export const RADIUS_NEAR_THICKNESSES = threshold(
  "Drawing radius near by thickness",
  0.5,
  "",
  "common practice",
  [0, 2],
);
/** Plate from here on is bent along the grain only at this radius or more. */
export const PLATE_ALONG_FROM_IN = threshold("Plate grain from", 0.25, "in", "common practice", [0.125, 1]);
export const PLATE_ALONG_RADIUS = threshold("Plate radius along grain", 1.5, "", "common practice", [0.5, 5]);
/** Corners of a bend line's ends tear from here on unless they are deburred. */
export const DEBURR_FROM_IN = threshold("Deburr bend ends from", 0.1875, "in", "common practice", [0.0625, 1]);

/** Blade gap as a share of the thickness. */
export const GAP_NOTE = threshold("Blade gap note", 0.1, "", "common practice", [0.05, 0.4]);
export const GAP_CHECK = threshold("Blade gap check", 0.2, "", "common practice", [0.05, 0.4]);
export const GAP_STOP = threshold(
  "Blade gap stop",
  0.4,
  "",
  "common practice",
  [0.1, 0.5],
  "the sheet folds in between the blades",
);
export const GAP_TIGHT = threshold("Blade gap tight", 0.04, "", "common practice", [0, 0.1]);
export const GAP_TIGHT_FROM_IN = threshold("Blade gap tight from", 0.1875, "in", "common practice", [0.0625, 1]);

/** A strip as a multiple of its thickness. */
export const STRIP_NOTE = threshold("Narrow strip note", 12, "", "common practice", [4, 40]);
export const STRIP_CHECK = threshold("Narrow strip check", 8, "", "common practice", [4, 40]);
export const STRIP_STOP = threshold("Narrow strip stop", 4, "", "common practice", [2, 20]);
export const STRIP_PLATE_FROM_IN = threshold("Narrow strip plate from", 0.1875, "in", "common practice", [0.0625, 1]);

/** A bend this long takes two people, whatever it weighs. */
export const TWO_PEOPLE_FROM_IN = threshold("Two people from", 72, "in", "common practice", [24, 144]);
/** Two people together lift two thirds of what they lift one by one. */
export const TWO_PEOPLE_SHARE = threshold(
  "Two people share",
  2 / 3,
  "",
  "read",
  [0.4, 1],
  "HSE manual handling guidance, read in a quotation",
);

/** In front of the brake the sheet swings up with the bend: so far, and where it is thin or heavy it must be followed. */
export const SWING_FROM_IN = threshold("Swing from", 24, "in", "common practice", [6, 120]);
export const SWING_THIN_IN = threshold(
  "Swing thin to",
  0.0785,
  "in",
  "common practice",
  [0.02, 0.15],
  "14 gauge of any series",
);
export const SWING_HEAVY_LB = threshold("Swing heavy from", 50, "lb", "common practice", [5, 200]);

/** Fingers stay this far from the die: a blank with one short side is held by the other, one with two by a tool. */
export const HANDS_NOTE_IN = threshold("Small blank note", 4, "in", "common practice", [1, 12]);
export const HANDS_CHECK_IN = threshold("Small blank check", 2, "in", "common practice", [1, 12]);

/** A gap between sheet and tools drawn from their tables that is too little to rely on. */
export const ORDER_CLEARANCE_IN = threshold("Order clearance", 1 / 16, "in", "common practice", [0, 1]);

/** The sharpest V that shops bend over: what must be folded further is closed in another tool. */
export const SHARPEST_DIE = threshold("Sharpest die", 30, "deg", "common practice", [20, 90]);
/** So many thicknesses of sheet stay straight between nose and shoulder, or the nose nearly fills the die. */
export const NOSE_FREE_SHEET = threshold("Nose free sheet", 1, "", "common practice", [0, 4]);
/** What passes the housings needs this much play between them. */
export const HOUSINGS_LESS_IN = threshold("Housings less", 1, "in", "common practice", [0, 12]);
/** A throat that nobody stated. */
export const THROAT_IN = threshold("Throat where not stated", 8, "in", "common practice", [0, 40]);
/** Tools between two flanges that stand at the ends of a bend: this much shorter at least, and at most. */
export const BOX_CLEAR_IN = threshold("Box tools clear", 1 / 16, "in", "common practice", [0, 1]);
export const BOX_SHORT_IN = threshold("Box tools short", 1 / 2, "in", "common practice", [0, 3]);
/** Of half the brake's rating, by what the nearer side takes of a bend off its middle. */
export const OFF_CENTER_CHECK = threshold("Off center check", 0.8, "", "common practice", [0.3, 1]);

/** Metal left between two blanks on the waterjet's table, and along a sheet's edge, where the shop states none. */
export const JET_WEB_IN = fact(0.25, "in", "common practice", SHOP);

/** A plate prints its thickness to three or four figures: 10 gauge is 0.1345 in there and 0.134505 in by its weight. */
export const RATING_PRINTED = fact(0.001, "", "common practice", "figures of a capacity plate are rounded");
