/**
 * Knife gap, shearing force, a shear's rating in another material. Not here, because no cell function answers it: sizes
 * of blanking punches and dies (Groover example 19.1 and problem 20.3 beyond their clearance) and the clearance 0.075 of
 * half-hard tempers, which no material of the table is (the force of example 19.1 is here).
 */
import { GROOVER_4, GROOVER_5, type Published, type PublishedFormula } from "./published.ts";

const blank = null;
/** A sheet with nothing but a tensile strength, as the problems give it. */
const sheetOf = (tensile: number, unit: string) => [
  ["Name", `Tensile typical (${unit})`],
  ["the problem's sheet", tensile],
];
const ratings = [
  ["Name", "Tensile minimum (ksi)", "Tensile typical (ksi)", "Tensile high (ksi)"],
  ["rated steel", 45 / 0.7, 45 / 0.7, 45 / 0.7],
  ["other sheet", 60 / 0.7, 60 / 0.7, 60 / 0.7],
  ["softer sheet", 30 / 0.7, 30 / 0.7, 30 / 0.7],
];

export const shear: readonly Published[] = [
  {
    id: "Groover example 19.1, force",
    call: ["SHEAR.FORCE", blank, 3.2, 471.2, blank, 310, "mm"],
    expected: 467.469,
    tolerance: 0.06,
    source: `${GROOVER_5}, example 19.1: the circumference, printed 471.2 mm, cut at once`,
    basis: "read",
  },
  {
    id: "Groover problem 20.1",
    call: ["SHEAR.CLEARANCE", "A1008 CS", 4.75, "mm"],
    expected: 0.285,
    tolerance: 1e-6,
    source: `${GROOVER_4}, problem 20.1: power shears, soft cold-rolled steel`,
    basis: "read",
  },
  {
    id: "Groover problem 20.3, clearance",
    call: ["SHEAR.CLEARANCE", "6061-T6", 3.5, "mm"],
    expected: 0.21,
    tolerance: 1e-6,
    source: `${GROOVER_4}, problem 20.3: 6061ST`,
    basis: "read",
  },
  {
    id: "Groover's clearance of 5052",
    call: ["SHEAR.CLEARANCE", "5052-H32", 100, "mm"],
    expected: 4.5,
    tolerance: 1e-9,
    source: `${GROOVER_5}, Table 19.1: 0.045`,
    basis: "read",
  },
  {
    id: "Groover problem 20.5",
    call: ["SHEAR.FORCE", blank, 2, 75 * Math.PI, blank, 325, "mm"],
    expected: 153.2,
    tolerance: 0.06,
    source: `${GROOVER_4}, problem 20.5`,
    basis: "read",
  },
  {
    id: "Groover problem 20.6(b), force from the tensile strength",
    call: ["SHEAR.FORCE", "the problem's sheet", 3.5, 157.1, blank, blank, "mm", sheetOf(310, "MPa")],
    expected: 119.3,
    tolerance: 0.06,
    source: `${GROOVER_4}, problem 20.6(b)`,
    basis: "read",
  },
  {
    id: "Groover problem 20.7",
    call: ["SHEAR.FORCE", blank, 4, 320, blank, 600, "mm"],
    expected: 768,
    tolerance: 0.001,
    source: `${GROOVER_4}, problem 20.7`,
    basis: "read",
  },
  {
    id: "a square hole from the tensile strength",
    call: ["SHEAR.FORCE", "the problem's sheet", 2, 32, blank, blank, "mm", sheetOf(500, "MPa")],
    expected: 22.4,
    tolerance: 0.001,
    source: "open university reference pages on sheet-metal design, 8 x 8 mm hole",
    basis: "read",
  },
  {
    id: "Kalpakjian's punch force",
    call: ["SHEAR.FORCE", "the problem's sheet", 0.125, Math.PI, blank, blank, "in", sheetOf(140, "ksi")],
    expected: 38485 / 2000,
    tolerance: 20 / 2000,
    source: "Kalpakjian & Schmid, 1 in hole in 1/8 in Ti-6Al-4V, about 38,500 lb, as quoted in a public answer",
    basis: "read",
  },
  {
    id: "shear strength of a steel of 400 MPa",
    call: ["SHEAR.FORCE", "the problem's sheet", 1, 1000, blank, blank, "mm", sheetOf(400, "MPa")],
    expected: 280,
    tolerance: 1e-6,
    source: `${GROOVER_5}, chapter 3: S = 0.7 TS`,
    basis: "derived",
  },
  {
    id: "raked blade",
    call: ["SHEAR.FORCE", blank, 0.25, 120, 2, 50],
    expected: 44744 / 2000,
    tolerance: 5 / 2000,
    source: "triangle of sheet in the cut: S t^2 / (2 tan rake)",
    basis: "derived",
  },
  {
    id: "parallel blades",
    call: ["SHEAR.FORCE", blank, 0.25, 120, blank, 50],
    expected: 750,
    tolerance: 1e-6,
    source: `S t L, ${GROOVER_5}, eq. 19.3`,
    basis: "derived",
  },
  {
    // t1 sqrt(S1/S2) = 0.2165 for a raked blade, t1 S1/S2 = 0.1875 for parallel ones: the rake is unknown.
    id: "a shear's rating in stronger sheet",
    call: ["SHEAR.MAXTHICKNESS", "other sheet", 0.25, "rated steel", blank, ratings],
    expected: 0.1875,
    tolerance: 1e-9,
    source: "equal force, the smaller of the two rules",
    basis: "derived",
  },
  {
    id: "a shear's rating is never exceeded, however soft the sheet",
    call: ["SHEAR.MAXTHICKNESS", "softer sheet", 0.25, "rated steel", blank, ratings],
    expected: 0.25,
    tolerance: 1e-12,
    source: "knives, gap and hold-downs are made for the rated thickness",
    basis: "derived",
  },
];

export const shearFormulas: readonly PublishedFormula[] = [
  {
    id: "force goes with one over the tangent of the rake",
    formula: "=SHOP.SHEAR.FORCE(,0.25,120,2,50)/SHOP.SHEAR.FORCE(,0.25,120,1,50)",
    expected: 0.49985,
    tolerance: 5e-5,
    source: "geometry",
    basis: "derived",
  },
  {
    id: "force goes with the square of the thickness",
    formula: "=SHOP.SHEAR.FORCE(,0.25,120,2,50)/SHOP.SHEAR.FORCE(,0.125,120,2,50)",
    expected: 4,
    tolerance: 1e-9,
    source: "geometry",
    basis: "derived",
  },
];
