/** The properties a material can have, by the names that MATERIAL.VALUE and the header of a data range use. */
import type { Fact } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import type { QuantityKind } from "../../units/system.ts";

export type PropertyKey = {
  [K in keyof Material]-?: NonNullable<Material[K]> extends Fact ? K : never;
}[keyof Material];

export interface Property {
  readonly key: PropertyKey;
  readonly name: string;
  /** undefined: a plain ratio. */
  readonly quantity: QuantityKind | undefined;
  readonly kind: string;
}

const property = (key: PropertyKey, name: string, quantity: QuantityKind | undefined, kind: string): Property => ({
  key,
  name,
  quantity,
  kind,
});

export const PROPERTIES: readonly Property[] = [
  property("yieldMinimum", "yield minimum", "stress", "minimum"),
  property("yieldTypical", "yield typical", "stress", "typical"),
  property("tensileMinimum", "tensile minimum", "stress", "minimum"),
  property("tensileTypical", "tensile typical", "stress", "typical"),
  property("tensileHigh", "tensile high", "stress", "high"),
  property("shearStrength", "shear strength", "stress", "typical"),
  property("ratingCovers", "shear strength a rating covers", "stress", "high"),
  property("nominalThickness", "nominal thickness", "length", "rule"),
  property("density", "density", "density", "typical"),
  property("modulus", "modulus", "stress", "typical"),
  property("poisson", "Poisson ratio", undefined, "typical"),
  property("hardeningStrength", "hardening strength", "stress", "typical"),
  property("hardeningExponent", "hardening exponent", undefined, "typical"),
  property("anisotropy", "anisotropy", undefined, "typical"),
  property("knifeGap", "knife gap", undefined, "rule"),
  property("machinability", "machinability", undefined, "typical"),
  property("timedFeed", "timed feed", "feed", "given"),
  property("timedThickness", "timed thickness", "length", "given"),
  property("timedQuality", "timed quality", undefined, "given"),
  property("airRadiusLow", "air radius low", undefined, "rule"),
  property("airRadiusHigh", "air radius high", undefined, "rule"),
  property("usualRadius", "usual radius", undefined, "rule"),
];
