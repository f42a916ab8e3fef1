/** What the parts of a pivot table do not say keeps Excel's value; what they say is in the rows of evidence. */
import { expect, test } from "vitest";
import grid from "../../src/sheet/functions/evidence/grid.json" with { type: "json" };
import pivotParts from "../../src/sheet/functions/evidence/pivot-parts.json" with { type: "json" };
import { Package } from "../../src/sheet/package/package.ts";
import { CellError } from "../../src/units/cell.ts";
import { evaluateOn, type Given } from "./evaluate-on-grid.ts";
import { zipOf } from "./make-package.ts";

type Part = keyof typeof pivotParts;

function answer(formula: string, part: Part, from: string | RegExp, to: string): unknown {
  const changed = pivotParts[part].replace(from, to);
  const parts = Package.open(zipOf({ ...pivotParts, [part]: changed }));
  const value = evaluateOn(grid as Readonly<Record<string, Given>>, formula, { package: parts });
  return value instanceof CellError ? `${value.code} ${value.message}` : value;
}

const STEEL = 'GETPIVOTDATA("Minutes",R1,"Material","Steel")';

test.each([
  ["cache.xml", 'name="Station">', 'name="Station"><fieldGroup base="0"/>', "with grouped fields"],
  ["cache.xml", "<cacheSource", '<cacheHierarchies count="0"/><cacheSource', "of a cube"],
  ["cache.xml", "<pivotCacheDefinition", '<pivotCacheDefinition refreshOnLoad="1"', "refreshed on opening"],
  ["side-by-side.xml", 'fld="2"', 'fld="2" showDataAs="percentOfTotal"', "that shows shares or differences"],
  ["side-by-side.xml", '<i t="grand">', '<i t="sum">', "with subtotals of its own"],
  ["side-by-side.xml", "R1:U6", "R1:U7", "whose lines are not all said"],
  ["side-by-side.xml", "</pivotFields>", "", "well formed"],
  // What Excel calls an item that somebody renamed is not in the cache.
  ["side-by-side.xml", '<item x="0"/>', '<item n="Mild steel" x="0"/>', undefined],
  [
    "side-by-side.xml",
    'axisCol" showAll="0"><items count="3"><item x="1"/><item x="0"/>',
    'axisCol" showAll="0"><items count="3"><item x="1"/><item n="Mild" x="0"/>',
    "of an item that is not found",
  ],
] as const)("%s: %s -> %s keeps Excel's value", (part, from, to, why) => {
  const got = answer(STEEL, part, from, to);
  if (why === undefined) expect(got).toBe(87);
  else expect(got).toMatch(new RegExp(`^#BLOCKED! unknown-function: .*${why}`));
});

test.each([
  ['GETPIVOTDATA("Minutes",R1,"Station","Jet","Material","Aluminum")', "of a figure that is blank"],
  ['GETPIVOTDATA("Minutes",R9,"Station","Jet")', "of a field that is summed up in several ways"],
  ['GETPIVOTDATA("Minutes",R1,"Minutes",40)', "of a field on neither side"],
  ['GETPIVOTDATA("Minutes",R1,"Station")', "with a field and no item"],
  ['GETPIVOTDATA("Minutes","R1")', "of something that is not a range"],
])("%s keeps Excel's value", (formula, why) => {
  expect(answer(formula, "cache.xml", "", "")).toMatch(new RegExp(`^#BLOCKED! unknown-function: GETPIVOTDATA ${why}$`));
});
