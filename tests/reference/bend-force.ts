/**
 * Force and radius of an air bend. Not here, because no cell function answers it: a wiping die's force (Groover problem
 * 20.14, factor 0.33; the shop bends in V dies), the springback ratio and the springback factor kR (both are
 * definitions on measured angles), relief holes (a drawing's matter).
 */
import { GROOVER_4, GROOVER_5, type Published, type PublishedFormula } from "./published.ts";

const blank = null;
const ALUMINUM_TABLE =
  "Aluminum Association-type table of minimum 90-degree cold-bend radii, reprinted in a public design notebook";
const DIN_1975 = "DIN 6935 (1975-10) as reprinted";
/** A sheet of exactly 380 MPa, which no material of the table is. */
const steel380 = [
  ["Name", "Tensile typical (MPa)", "Source"],
  ["A1011 CS", 380, "the example's own figure"],
];

export const bendForce: readonly Published[] = [
  {
    id: "Groover example 19.2, force",
    call: ["BEND.TONNAGE", blank, 3.2, 44.5, 25, "Groover", 450, "mm"],
    expected: 10.909,
    tolerance: 0.002,
    source: `${GROOVER_5}, example 19.2(b)`,
    basis: "read",
  },
  {
    id: "Groover problem 20.15",
    call: ["BEND.TONNAGE", blank, 0.15625, 1.5, 1.25, "Groover", 70],
    expected: 2728 / 2000,
    tolerance: 2 / 2000,
    source: `${GROOVER_4}, problem 20.15, 2,728 lbf`,
    basis: "read",
  },
  {
    id: "Groover problem 20.17",
    call: ["BEND.TONNAGE", blank, 3, 20, 15, "Groover", 340, "mm"],
    expected: 5.426,
    tolerance: 0.001,
    source: `${GROOVER_4}, problem 20.17`,
    basis: "read",
  },
  {
    id: "Lange's form",
    call: ["BEND.TONNAGE", blank, 1, 100, 10, "Lange", 310, "mm"],
    expected: 4.34,
    tolerance: 0.001,
    source: "Lange, Umformtechnik Bd. 3, after Oehler: (1 + 4 s/w) Rm b s^2 / w",
    basis: "derived",
  },
  {
    id: "US shop rule, one foot of 1/4 in over 2 in",
    call: ["BEND.TONNAGE", blank, 0.25, 12, 2, "US shop", 60],
    expected: 17.97,
    tolerance: 0.01,
    source: "US trade rule 575 t^2/V tons a foot at 60 ksi, widely printed",
    basis: "memory",
  },
  {
    id: "ten feet of 1/4 in A36, minimum tensile",
    call: ["BEND.TONNAGE", "A36", 0.25, 120, 2, "Groover", "minimum"],
    expected: 144.6,
    tolerance: 0.1,
    source: `${GROOVER_5}, eq. 19.8 with 58 ksi`,
    basis: "derived",
  },
  {
    id: "ten feet of 1/4 in A36, specification maximum",
    call: ["BEND.TONNAGE", "A36", 0.25, 120, 2, "Groover", "high"],
    expected: 199.5,
    tolerance: 0.1,
    source: `${GROOVER_5}, eq. 19.8 with 80 ksi`,
    basis: "derived",
  },
  ...(
    [
      ["6061-T6", 2.5],
      ["5052-H32", 1.5],
      ["1100-H14", 1],
      ["5052-H34", 2],
    ] as const
  ).map(
    ([alloy, thicknesses]): Published => ({
      id: `least radius of ${alloy} in 1/8 in`,
      call: ["BEND.MINRADIUS", alloy, 0.125],
      expected: thicknesses * 0.125,
      tolerance: 1e-9,
      source: ALUMINUM_TABLE,
      basis: "read",
    }),
  ),
  {
    id: "least radius of A36 plate along rolling",
    call: ["BEND.MINRADIUS", "A36", 0.25, "along"],
    expected: 0.5625,
    tolerance: 1e-6,
    source: "ASTM A6/A6M Appendix X4, Table X4.2: 1.5 t, times 1.5 along rolling",
    basis: "derived",
  },
  {
    id: "least radius of A36 plate across rolling",
    call: ["BEND.MINRADIUS", "A36", 0.25],
    expected: 0.375,
    tolerance: 1e-6,
    source: "ASTM A6/A6M Appendix X4, Table X4.2: 1.5 t",
    basis: "derived",
  },
  {
    id: "least radius of sheet of 380 MPa, 3.5 mm",
    call: ["BEND.MINRADIUS", "A1011 CS", 3.5, "across", "mm", steel380],
    expected: 5,
    tolerance: 1e-9,
    source: DIN_1975,
    basis: "read",
  },
  {
    id: "least radius of sheet of 380 MPa, 3.5 mm, along rolling",
    call: ["BEND.MINRADIUS", "A1011 CS", 3.5, "along", "mm", steel380],
    expected: 6,
    tolerance: 1e-9,
    source: `${DIN_1975}: along rolling the next thicker column`,
    basis: "read",
  },
  {
    id: "radius of an air bend in 60-ksi steel over 2 in",
    call: ["AIR.RADIUS", "A36", 0.25, 90, 2],
    expected: 0.3125,
    tolerance: 0.02,
    source: "US trade rule 5/32 of the opening",
    basis: "memory",
  },
];

export const bendForceFormulas: readonly PublishedFormula[] = [
  {
    id: "Lange's factor at 8 thicknesses",
    formula: '=SHOP.BEND.TONNAGE(,3,1000,24,"Lange",1000,"mm")/375',
    expected: 1.5,
    tolerance: 1e-9,
    source: "Lange: 1 + 4 s/w; 375 kN is UTS L t^2 / V of these figures",
    basis: "derived",
  },
  {
    id: "Lange and Groover agree at 12 thicknesses",
    formula: '=SHOP.BEND.TONNAGE(,3,1000,36,"Lange",1000,"mm")/SHOP.BEND.TONNAGE(,3,1000,36,"Groover",1000,"mm")',
    expected: 1.3333 / 1.33,
    tolerance: 0.0001,
    source: `Lange, after Oehler, against ${GROOVER_5} eq. 19.8`,
    basis: "derived",
  },
];
