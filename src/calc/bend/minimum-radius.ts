import type { RadiusRule } from "../../data/materials/material.ts";
import {
  A6_ALONG_FACTOR,
  A6_LIMIT_IN,
  A6_SOURCE,
  ALUMINUM_COLUMNS_IN,
  ALUMINUM_RADII,
  type AluminumTemper,
  DIN_CLASSES_MPA,
  DIN_RADII,
  DIN_SOURCE,
} from "../../data/minimum-radii.ts";
import { itemAt, lastOf } from "../../units/certain.ts";
import { atMost } from "../../units/nearly.ts";
import { type Megapascals, type Millimeters, mm } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showBoth, showNumber } from "../../units/show.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";

/** "across": the bend line square to the rolling direction, the tables' own condition. */
export const GRAINS = ["across", "along"] as const;
export type Grain = (typeof GRAINS)[number];

interface RuledMaterial {
  readonly name: string;
  readonly radiusRule?: RadiusRule;
  /** Typical; undefined where it is not known. */
  readonly tensile: Megapascals | undefined;
}

/**
 * Least inside radius that is published for this material and thickness, cold, square bend. Advice, not a law: see
 * the two grades of BEND.CHECK. Between two thicknesses of a table the thicker rules. #N/A where nothing is published.
 * Sources: Aluminum Association-type table (read in a reprint); ASTM A6 Table X4.2 (read in excerpt);
 * DIN 6935:1975 (read as reprinted). tensile is needed for DIN's classes.
 */
export function minimumRadius(
  { name, radiusRule: rule, tensile }: RuledMaterial,
  thickness: Millimeters,
  grain: Grain,
  work?: Working,
): Millimeters {
  if (!rule)
    throw noAnswer("material", "one with a published least radius", name, "ask the supplier, or bend a test piece");
  switch (rule.table) {
    case "aluminum":
      return aluminumRadius(name, rule.row, thickness, grain, work);
    case "ASTM A6":
      return plateRadius(rule.multiple, thickness, grain, work);
    case "DIN 6935":
      return dinRadius(name, thickness, grain, tensile, work);
    case "given":
      return step(work, "Rmin", "least inside radius", mm(rule.multiple * thickness), "mm", rule.source);
  }
}

function aluminumRadius(
  name: string,
  row: AluminumTemper,
  thickness: Millimeters,
  grain: Grain,
  work?: Working,
): Millimeters {
  if (grain === "along")
    throw noAnswer(
      "grain",
      `"across" for ${name}: nothing is published along the rolling direction`,
      '"along"',
      "turn the blank, or bend a test piece",
    );
  const { multiples, source } = ALUMINUM_RADII[row];
  const column = ALUMINUM_COLUMNS_IN.findIndex((inches) => atMost(thickness, inches * MM_PER_INCH));
  if (column < 0)
    throw noAnswer(
      "thickness",
      `at most ${showBoth(lastOf(ALUMINUM_COLUMNS_IN) * MM_PER_INCH, "length")}, the table's end`,
      showBoth(thickness, "length"),
    );
  const multiple = step(work, "m", "least radius in thicknesses", itemAt(multiples, column), "", source);
  return step(work, "Rmin", "least inside radius", mm(multiple * thickness), "mm", `m t, ${source}`);
}

function plateRadius(multiple: number, thickness: Millimeters, grain: Grain, work?: Working): Millimeters {
  if (!atMost(thickness, A6_LIMIT_IN * MM_PER_INCH))
    throw noAnswer(
      "thickness",
      `at most ${showBoth(A6_LIMIT_IN * MM_PER_INCH, "length")} for ASTM A6 Table X4.2`,
      showBoth(thickness, "length"),
    );
  const across = step(work, "m", "least radius in thicknesses, bend line across rolling", multiple, "", A6_SOURCE);
  const factor = grain === "along" ? A6_ALONG_FACTOR : 1;
  step(work, "f", `bend line ${grain} rolling`, factor, "", A6_SOURCE);
  return step(work, "Rmin", "least inside radius", mm(across * factor * thickness), "mm", `m f t, ${A6_SOURCE}`);
}

function dinRadius(
  name: string,
  thickness: Millimeters,
  grain: Grain,
  tensile: Megapascals | undefined,
  work?: Working,
): Millimeters {
  const strongest = lastOf(DIN_CLASSES_MPA);
  if (tensile === undefined || !atMost(tensile, strongest))
    throw noAnswer(
      "material",
      `a steel with a tensile strength up to ${strongest} MPa for DIN 6935`,
      tensile === undefined ? `${name} without one` : `${showNumber(tensile)} MPa`,
    );
  const strengthClass = DIN_CLASSES_MPA.findIndex((limit) => atMost(tensile, limit));
  step(work, "Rm", "typical tensile strength, chooses the class", tensile, "MPa", "material");
  const row = DIN_RADII.findIndex(([upTo]) => atMost(thickness, upTo));
  const ruling = grain === "along" ? row + 1 : row;
  const radii = row < 0 ? undefined : DIN_RADII[ruling];
  if (!radii)
    throw noAnswer(
      "thickness",
      grain === "along"
        ? `at most ${showBoth(itemAt(DIN_RADII, DIN_RADII.length - 2)[0], "length")} for DIN 6935 along rolling`
        : `at most ${showBoth(lastOf(DIN_RADII)[0], "length")} for DIN 6935`,
      showBoth(thickness, "length"),
    );
  const meaning = grain === "along" ? "least inside radius, next thicker row for along rolling" : "least inside radius";
  return step(work, "Rmin", meaning, mm(itemAt(radii, strengthClass + 1)), "mm", DIN_SOURCE);
}
