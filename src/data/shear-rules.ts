/** Constants of the shearing formulas and of the trade's rules about guillotine shears. */
import { fact } from "./fact.ts";

export const SHEAR_OF_TENSILE = fact(0.7, "", "read", "Groover, Fundamentals of Modern Manufacturing 5e, ch. 19");
/** The steel in which a guillotine's rating is stated where its table does not say. */
export const RATED_MATERIAL = "A36"; // mild steel, common practice
