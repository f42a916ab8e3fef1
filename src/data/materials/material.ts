/** What the project knows about one material. Every figure is a Fact: value, unit as published, mark, source. */
import type { Millimeters } from "../../units/quantity.ts";
import type { Fact } from "../fact.ts";
import type { AluminumTemper } from "../minimum-radii.ts";

/** Which gauge series a bare gauge number means for this material. */
export type GaugeSeries = "steel" | "galvanized" | "stainless" | "aluminum";

/** Which published least radius applies; the tables stand in minimum-radius.ts. */
export type RadiusRule =
  | { readonly table: "aluminum"; readonly row: AluminumTemper; readonly mark: "read" | "memory" }
  | { readonly table: "ASTM A6"; readonly multiple: number; readonly mark: "read" | "memory" }
  | { readonly table: "DIN 6935" }
  | { readonly table: "given"; readonly multiple: number; readonly source: string };

/** Whose table says how much thicker than ordered a sheet may be; the figures stand in thickness-tolerances.ts. */
type ThicknessTolerance = "ASTM A6" | "sheet";

/**
 * How the sheet lies on the punch: at a point, or wrapped around its nose. An offset of one says nothing of the other.
 */
export type Regime = "point" | "wrapped";

/** What a shop's own test strips found of a material: its die and thicknesses, blank in a row typed by hand that holds for any. */
export interface StripCorrection {
  readonly material: string;
  readonly regime: Regime;
  readonly opening?: Millimeters | undefined;
  readonly thicknessFrom?: Millimeters | undefined;
  readonly thicknessTo?: Millimeters | undefined;
  /** To be added to the predicted neutral axis K. */
  readonly offset: number;
  /** K also changes with r / t: per decade, about this r / t. */
  readonly slope?: { readonly perDecade: number; readonly about: number } | undefined;
  /** Measured over predicted force, and measured over predicted springback. */
  readonly strength?: number | undefined;
  readonly springback?: number | undefined;
}

export interface Material {
  readonly name: string;
  /** Other ways to write the name; compared without case, blanks and punctuation. */
  readonly aliases: readonly string[];
  readonly gaugeSeries?: GaugeSeries;
  readonly yieldMinimum?: Fact;
  /** Goes with tensileTypical: hardening is found from two figures of one kind. */
  readonly yieldTypical?: Fact;
  readonly tensileMinimum?: Fact;
  readonly tensileTypical?: Fact;
  readonly tensileHigh?: Fact;
  /** What the high figure is: a limit of the specification, or only what a shop plans with. */
  readonly tensileHighIs?: "specification maximum" | "planning value";
  readonly shearStrength?: Fact;
  /** Shear strength of the strongest sheet that a guillotine's rating in this material covers. */
  readonly ratingCovers?: Fact;
  /** How much thicker than ordered it may come; a share of the thickness where nothing is said. */
  readonly thicknessOver?: ThicknessTolerance;
  /** Cut but never bent on a brake. */
  readonly cutOnly?: true;
  /** The thickness it is sold in, where it is sold in one. */
  readonly nominalThickness?: Fact;
  readonly density?: Fact;
  readonly modulus?: Fact;
  readonly poisson?: Fact;
  /** Swift/Hollomon hardening sigma = K eps^n: K as a stress, n a ratio. */
  readonly hardeningStrength?: Fact;
  readonly hardeningExponent?: Fact;
  /** Normal anisotropy; 1 when unknown. */
  readonly anisotropy?: Fact;
  /** Knife gap per side as a share of the thickness. */
  readonly knifeGap?: Fact;
  /** Machinability number of the abrasive-waterjet formula. */
  readonly machinability?: Fact;
  /** A waterjet cut the shop has timed in it: the feed, and the thickness and quality it was cut at. */
  readonly timedFeed?: Fact;
  readonly timedThickness?: Fact;
  readonly timedQuality?: Fact;
  /** Air-bent inside radius as a share of the die opening, low and high. */
  readonly airRadiusLow?: Fact;
  readonly airRadiusHigh?: Fact;
  readonly radiusRule?: RadiusRule;
  /** Tempers that harden little fold around the punch nose: the tightest radius is the nose or less. */
  readonly foldsRoundNose?: boolean;
  /** Tighter than the published radius is usual on a brake down to this multiple of the thickness. */
  readonly usualRadius?: Fact;
  /** How an air bend in it is reckoned where the call does not say; "rule" where nothing stands here. */
  readonly airMethod?: "best";
  /** The shop's own test strips of it, where a bill or a call brings them: no edition has any. */
  readonly strips?: readonly StripCorrection[];
}

export interface Edition {
  readonly name: string;
  readonly date: string;
  readonly materials: readonly Material[];
  /** Of all its materials, and of those that a workbook adds. */
  readonly airMethod?: "best";
  /** Stainless gauges as tables print them (half a ten-thousandth cut off), not rounded up. */
  readonly stainlessGauges?: "as printed";
}
