/** How the figures of the editions are written, and the sources that several families share. */
import { type Fact, fact, type Mark } from "../fact.ts";

export const ksi = (value: number, mark: Mark, source: string): Fact => fact(value, "ksi", mark, source);
export const ratio = (value: number, mark: Mark, source: string): Fact => fact(value, "", mark, source);
export const inches = (value: number, mark: Mark, source: string): Fact => fact(value, "in", mark, source);
export const megapascals = (value: number, mark: Mark, source: string): Fact => fact(value, "MPa", mark, source);
export const poundsPerCubicInch = (value: number, mark: Mark, source: string): Fact =>
  fact(value, "lb/in^3", mark, source);
/** The strongest sheet a shop plans with, where no specification ends the range. */
export const plannedHigh = (tensileHigh: Fact) => ({ tensileHigh, tensileHighIs: "planning value" }) as const;

export const GROOVER = "Groover, Fundamentals of Modern Manufacturing 5e, Tables 3.1, 3.2, 4.1";
export const GROOVER_CLEARANCE = "Groover, Fundamentals of Modern Manufacturing 5e, Table 19.1";
export const KALPAKJIAN = "Kalpakjian & Schmid, Manufacturing Engineering and Technology, Table 2.3";
export const KUTZ = "Kutz, Handbook of Materials Selection, Table 5, typical properties of wrought aluminum alloys";
export const MILL = "usual mill values";
export const SHOP_RULE = "shop rule of thumb, air-bent radius as a share of the opening";
export const ZENG_KIM = "Zeng & Kim, 7th American Water Jet Conference 1993";
export const SHEAR_TABLES = "capacity booklet of a guillotine maker, reprint";
export const PRESSURE_TABLE = "shop table of pressure to shear, 50 and 75 ksi, as carried by a public page";
