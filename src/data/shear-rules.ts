/** Constants of the shearing formulas and of the trade's rules about guillotine shears. */
import { fact } from "./fact.ts";

export const SHEAR_OF_TENSILE = fact(0.7, "", "read", "Groover, Fundamentals of Modern Manufacturing 5e, ch. 19");
/** A strip narrower than this many thicknesses twists, bows and cambers. */
export const NARROW_THICK = fact(12, "", "common practice", "about 12t in 1/4 in plate");
export const NARROW_THIN = fact(10, "", "common practice", "8-10t in thin sheet");
export const NARROW_THICK_FROM_IN = fact(0.1875, "in", "common practice", "where plate begins");
