/**
 * How thick plate and sheet may come under edition 2026.2, as the limits are printed: asked through the worst case of a
 * foot in the table of dies, which is Lange's force at the strong end of strength and thickness, by hand.
 */
import type { Basis, PublishedFormula } from "./published.ts";

const A6 = "ASTM A6/A6M thickness table, plate to 96 in wide, reprints in inches and in mm";
const LIMITS = "service center's upper ordering limits by gauge, reprint";
const LANGE = "(1 + 4 s/w) Rm b s^2 / w of Lange, Umformtechnik Bd. 3, by hand";
/** The strong end: ASTM A36's maximum (read); what a shop plans with in A1011 CS (memory). */
const STRONG = { A36: 80, "A1011 CS": 68 } as const;

type Row = readonly [material: keyof typeof STRONG, thickness: number, most: number, source: string, basis: Basis];
const ROWS: readonly Row[] = [
  ["A36", 0.1875, 0.2175, A6, "derived"],
  ["A36", 0.25, 0.28, A6, "derived"],
  ["A36", 0.5, 0.53, A6, "derived"],
  ["A36", 0.75, 0.78, A6, "derived"],
  ["A36", 1, 1.04, "thicker plate runs over by as large a share", "memory"],
  ["A1011 CS", 0.0359, 0.0399, "thin sheet, usual ordering limits", "memory"],
  ["A1011 CS", 0.0598, 0.0648, `${LIMITS}, 16 ga`, "derived"],
  ["A1011 CS", 0.0747, 0.0797, `${LIMITS}, 14 ga`, "derived"],
  ["A1011 CS", 0.0897, 0.0957, `${LIMITS}, 13 ga as 11 ga`, "memory"],
  ["A1011 CS", 0.1196, 0.1256, `${LIMITS}, 11 ga`, "derived"],
  ["A1011 CS", 0.1345, 0.1405, `${LIMITS}, 10 ga`, "derived"],
  ["A1011 CS", 0.1495, 0.1565, `${LIMITS}, 9 ga as 7 ga`, "memory"],
  ["A1011 CS", 0.1793, 0.1863, `${LIMITS}, 7 ga`, "derived"],
];

const tools = (opening: number): string =>
  [
    'VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)"},{"B",900,120,100})',
    `VSTACK({"Die","Opening (in)","Angle (deg)"},{"D",${opening},60})`,
    'VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P",0.0625,50})',
  ].join(",");

export const thicknessLimits: readonly PublishedFormula[] = ROWS.map(([material, t, most, source, basis]) => {
  const opening = 8 * t;
  const tons = ((1 + (4 * most) / opening) * STRONG[material] * 12 * most ** 2) / opening / 2;
  return {
    id: `2026.2: ${material} of ${t} in may come ${most} in thick`,
    formula: `=INDEX(SHOP.BEND.DIE("${material}",${t},12,${tools(opening)},,,"P","across","in","2026.2"),2,7)`,
    expected: tons,
    tolerance: 1e-6,
    source: `${source}; ${LANGE}`,
    basis,
  };
});

/** What the working of the waterjet's feed lays beside the formula in thin sheet. */
export const thinOnWaterjet: PublishedFormula = {
  id: "about 20 in/min in 1.6 mm mild steel stands beside the formula",
  formula:
    '=LET(w,SHOP.WORKING("JET.FEED","A36",1.6,3,345,0.35,340,1,"mm"),INDEX(FILTER(INDEX(w,,3),INDEX(w,,1)="thin"),1))',
  expected: 508,
  tolerance: 1e-6,
  source: "Process Fundamentals of Industrial Laser Welding and Cutting, p. 117: 0.5 m/min (20 in/min), an excerpt",
  basis: "read",
};
