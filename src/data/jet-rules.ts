/** Constants of the abrasive-waterjet speed formula, SI form (MPa, mm, g/min -> mm/min). */
import { fact } from "./fact.ts";

const ZENG_KIM = "Zeng & Kim, 7th American Water Jet Conference 1993, pp. 175-189";

export const JET_CONSTANT_SI = fact(788, "", "memory", ZENG_KIM);
export const PRESSURE_EXPONENT = fact(1.594, "", "memory", ZENG_KIM);
export const ORIFICE_EXPONENT = fact(1.374, "", "memory", ZENG_KIM);
export const ABRASIVE_EXPONENT = fact(0.343, "", "memory", ZENG_KIM);
export const NOZZLE_EXPONENT = fact(0.618, "", "memory", ZENG_KIM);
export const SPEED_EXPONENT = fact(1.15, "", "memory", ZENG_KIM);
export const QUALITY = { from: 1, to: 5, source: `${ZENG_KIM} (memory)` } as const;
