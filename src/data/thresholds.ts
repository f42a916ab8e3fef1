/**
 * Where a finding turns from a note into a check and from a check into a stop. All are common practice of US shops, chosen
 * to hurt no machine and to scrap no sheet; no published source stands behind them unless one is named.
 */
import { fact } from "./fact.ts";

const SHOP = "common practice of US shops";

/** Of a brake's, die's or punch's rating, by the expected force: from here on one look more. */
export const EXPECTED_CHECK = fact(0.8, "", "common practice", SHOP);
/** Of a tool's rating, by the worst force: nothing relieves a tip, so that a hard sheet alone must not break it. */
export const TOOL_WORST_STOP = fact(1.25, "", "common practice", SHOP);
/** A bend shorter than this loads the beam as one of this length does: ram and bed spread the force. */
export const BEAM_LEAST_IN = fact(12, "in", "common practice", SHOP);
/** Of the brake's rating, by the expected force, where the ends of a bend stand outside the housings. */
export const ENDS_CHECK = fact(0.5, "", "common practice", SHOP);
export const ENDS_STOP = fact(0.8, "", "common practice", SHOP);

/** An opening this little under 6 thicknesses still counts as 6: 1.5 in over 1/4 in. */
export const OPENING_COUNTS_AS_LEAST = fact(5.8, "", "common practice", SHOP);

/** Bottoming is within reach: this far past the tool's face, this thick, with these multiples of the air-bend force. */
export const BOTTOM_WITHIN = fact(3, "deg", "common practice", SHOP);
export const BOTTOM_THICKEST_IN = fact(0.125, "in", "common practice", SHOP);
export const BOTTOM_THICKEST_STAINLESS_IN = fact(0.0781, "in", "common practice", SHOP);
/** The loaded angle is known to so much of the springback, and never better than to half a degree. */
export const SPRINGBACK_BAND = fact(0.25, "", "common practice", "coils of one grade differ by about a quarter");
export const SPRINGBACK_LEAST_BAND = fact(0.5, "deg", "common practice", SHOP);

/** A drawing's radius without a tolerance is met within 1/32 in or half a thickness. */
export const RADIUS_NEAR_IN = fact(1 / 32, "in", "common practice", SHOP);
export const RADIUS_NEAR_THICKNESSES = fact(0.5, "", "common practice", SHOP);
/** Plate from here on is bent along the grain only at this radius or more. */
export const PLATE_ALONG_FROM_IN = fact(0.25, "in", "common practice", SHOP);
export const PLATE_ALONG_RADIUS = fact(1.5, "", "common practice", SHOP);

/** Blade gap as a share of the thickness. */
export const GAP_NOTE = fact(0.1, "", "common practice", SHOP);
export const GAP_CHECK = fact(0.2, "", "common practice", SHOP);
export const GAP_STOP = fact(0.4, "", "common practice", "the sheet folds in between the blades");
export const GAP_TIGHT = fact(0.04, "", "common practice", SHOP);
export const GAP_TIGHT_FROM_IN = fact(0.1875, "in", "common practice", SHOP);

/** A strip as a multiple of its thickness. */
export const STRIP_NOTE = fact(12, "", "common practice", SHOP);
export const STRIP_CHECK = fact(8, "", "common practice", SHOP);
export const STRIP_STOP = fact(4, "", "common practice", SHOP);
export const STRIP_PLATE_FROM_IN = fact(0.1875, "in", "common practice", SHOP);

/** A bend this long takes two people, whatever it weighs. */
export const TWO_PEOPLE_FROM_IN = fact(72, "in", "common practice", SHOP);
/** Two people together lift two thirds of what they lift one by one. */
export const TWO_PEOPLE_SHARE = fact(2 / 3, "", "read", "HSE manual handling guidance, read in a quotation");

/** A gap between sheet and tools drawn from their tables that is too little to rely on. */
export const ORDER_CLEARANCE_IN = fact(1 / 16, "in", "common practice", SHOP);

/** Metal left between two blanks on the waterjet's table, and along a sheet's edge, where the shop states none. */
export const JET_WEB_IN = fact(0.25, "in", "common practice", SHOP);

/** A plate prints its thickness to three or four figures: 10 gauge is 0.1345 in there and 0.134505 in by its weight. */
export const RATING_PRINTED = fact(0.001, "", "common practice", "figures of a capacity plate are rounded");
