/** Constants of the bending formulas and of the trade's rules about dies, flanges and force. */
import { fact } from "./fact.ts";

const GROOVER_BEND = "Groover, Fundamentals of Modern Manufacturing 5e, eq. 19.6";
const HANDBOOK = "Machinery's Handbook, sheet-metal bend allowance, as restated in two public sources";
const FAA = "FAA-H-8083-31 / AC 65-15A bend allowance formula";
const DIN = "Tabellenbuch Metall after DIN 6935";
const GROOVER_FORCE = "Groover, Fundamentals of Modern Manufacturing 5e, eq. 19.8";
const LANGE = "Lange, Umformtechnik Bd. 3, after Oehler";
const SHOP = "common practice of US shops";

/** Share of the thickness from the inside to the neutral axis, on the circle tangent to both flanges. */
export const K_DEFAULT = fact(
  0.42,
  "",
  "fitted",
  "finite elements of air bends give 0.415-0.427; between Machinery's Handbook 0.407 and FAA 0.447",
);
export const K_GROOVER_TIGHT = fact(0.33, "", "read", GROOVER_BEND);
export const K_GROOVER_WIDE = fact(0.5, "", "read", GROOVER_BEND);
export const K_GROOVER_LIMIT = fact(2, "", "read", GROOVER_BEND);
/** No neutral axis lies outside the middle of the sheet. */
export const K_LARGEST = fact(0.5, "", "derived", "in bending the neutral axis moves inward from the middle");

/** Thickness added to (pi/2) R at 90 degrees. */
export const HANDBOOK_SOFT = fact(0.55, "", "read", HANDBOOK);
export const HANDBOOK_MEDIUM = fact(0.64, "", "read", HANDBOOK);
export const HANDBOOK_HARD = fact(0.71, "", "read", HANDBOOK);

export const FAA_RADIUS = fact(
  0.01743,
  "1/deg",
  "memory",
  `${FAA}, constant on R; a Navy training course prints 0.0173, geometry gives 0.01745`,
);
export const FAA_THICKNESS = fact(0.0078, "1/deg", "read", FAA);

/** DIN k is twice our K: k = 0.65 + 0.5 lg(r/s) up to r/s = 5, 1 above. */
export const DIN_BASE = fact(0.65, "", "read", DIN);
export const DIN_SLOPE = fact(0.5, "", "read", DIN);
export const DIN_LIMIT = fact(5, "", "read", DIN);
export const DIN_LARGEST = fact(1, "", "read", DIN);
/** Bend angles: up to here DIN counts the bend as flat (included angle above 165). */
export const DIN_FLAT_ANGLE = fact(15, "deg", "read", DIN);
/** From here on DIN measures legs to the outer tangent (included angle up to 90). */
export const DIN_TANGENT_ANGLE = fact(90, "deg", "read", DIN);

export const FORCE_GROOVER = fact(1.33, "", "read", GROOVER_FORCE);
export const FORCE_LANGE = fact(4, "", "read", LANGE);
export const LANGE_THICKNESS_MM = { from: 0.5, to: 10, source: `${LANGE} (read in restatement)` } as const;
export const LANGE_OPENING = { from: 5, to: 20, source: `${LANGE} (read in restatement)` } as const;
/** US ton per foot for t and V in inches, at the tensile strength below. */
export const FORCE_US_SHOP = fact(575, "US ton/ft/in", "memory", "US shop tonnage rule, common practice");
export const FORCE_US_SHOP_TENSILE = fact(60, "ksi", "memory", "US shop tonnage rule, common practice");

/** Bottoming needs a multiple of the air-bend force. */
export const BOTTOMING_LOW = fact(3, "", "common practice", SHOP);
export const BOTTOMING_HIGH = fact(5, "", "common practice", SHOP);

/** A brake's full rating is meant over this share of the distance between its housings. */
export const LOADED_SHARE = fact(
  0.6,
  "",
  "common practice",
  "brake rating over 60 % of the distance between housings; the plate or manual rules",
);

/** Degrees by which the loaded sheet must stay short of the faces of die and punch. */
export const FACE_CLEARANCE = fact(1, "deg", "common practice", "1-2 degrees short of the die's faces");

/** Opening of the die in thicknesses. */
export const OPENING_USUAL = fact(8, "", "common practice", SHOP);
export const OPENING_LEAST = fact(6, "", "common practice", "6t at the thin end");

/** The flange loses its rest where the shoulder arc ends; half a thickness more is the shortest that still works. */
export const FLANGE_MARGIN = fact(0.5, "", "common practice", "half a thickness beyond the shoulder");
export const FLANGE_STEP_IN = fact(
  1 / 16,
  "in",
  "common practice",
  "least flange rounded up to 1/16 in and called safe",
);

/** Hole edge to the inside face of the other flange, beyond the radius: 2t + R. */
export const HOLE_THICKNESSES = fact(2, "", "common practice", "hole edge at least 2t + R beyond the inside face");

/** Thickness over nominal that plate may run to. */
export const PLATE_OVER = fact(1.12, "", "memory", "1/4 in plate may run to about 0.28 in");
export const SHEET_OVER = fact(1.05, "", "memory", "usual upper thickness tolerance of sheet");
export const PLATE_FROM_IN = fact(0.1875, "in", "memory", "plate begins at 3/16 in or just above");

/** "Down to about" a usual radius: so much of it is still usual. */
export const ABOUT_USUAL = fact(0.9, "", "common practice", "a usual radius is known to a tenth at best");

/** What the mechanics of an air bend takes where the call does not say. */
export const FRICTION = fact(0.1, "", "memory", "dry steel on a polished die shoulder, textbooks 0.1-0.15");
export const DIE_ANGLE = fact(
  85,
  "deg",
  "fitted",
  "die of the finite-element cases; it moves the contact point only a little",
);
export const SHOULDER_OF_OPENING = fact(1 / 12, "", "fitted", "die of the finite-element cases, 2 mm on 24 mm");
export const NOSE_OF_THICKNESS = fact(0.5, "", "fitted", "punch of the finite-element cases, 1.5 mm on 3 mm");
