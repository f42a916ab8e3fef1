/** Setback, allowance, deduction, flat length. */
import {
  FAA,
  GROOVER_4,
  GROOVER_5,
  HANDBOOK,
  type Published,
  type PublishedFormula,
  TABELLENBUCH,
} from "./published.ts";

const blank = null;

export const bendGeometry: readonly Published[] = [
  {
    id: "Groover example 19.2, allowance",
    call: ["BEND.ALLOWANCE", 3.2, 4.75, 60, "Groover", "mm"],
    expected: 6.08,
    tolerance: 0.006,
    source: `${GROOVER_5}, example 19.2(a)`,
    basis: "read",
  },
  {
    id: "Groover example 19.2, flat",
    call: ["FLAT.LENGTH", "38; 25", 60, 3.2, 4.75, "Groover", "tangent", "mm"],
    expected: 69.08,
    tolerance: 0.006,
    source: `${GROOVER_5}, example 19.2(a): the figure's legs run to the tangent points`,
    basis: "read",
  },
  {
    id: "Groover problem 20.9, allowance",
    call: ["BEND.ALLOWANCE", 5, 8.5, 140, 0.333, "mm"],
    expected: 24.84,
    tolerance: 0.02,
    source: `${GROOVER_4}, problem 20.9`,
    basis: "read",
  },
  {
    id: "Groover problem 20.9, flat",
    call: ["FLAT.LENGTH", "58; 46.5", 140, 5, 8.5, 0.333, "tangent", "mm"],
    expected: 129.34,
    tolerance: 0.02,
    source: `${GROOVER_4}, problem 20.9`,
    basis: "read",
  },
  {
    id: "Groover problem 20.12, allowance",
    call: ["BEND.ALLOWANCE", 4, 6, 150, 0.333, "mm"],
    expected: 19.195,
    tolerance: 0.01,
    source: `${GROOVER_4}, problem 20.12(a)`,
    basis: "read",
  },
  {
    id: "Groover's rule at exactly two thicknesses belongs to 0.50",
    call: ["BEND.ALLOWANCE", 1, 2, 90, "Groover", "mm"],
    expected: 3.927,
    tolerance: 0.0002,
    source: `${GROOVER_5}, section 19.2.2, rule text`,
    basis: "derived",
  },
  {
    id: "U-channel, setback",
    call: ["BEND.SETBACK", 0.04, 0.16, 90],
    expected: 0.2,
    tolerance: 1e-9,
    source: `${FAA}, U-channel example, step 2`,
    basis: "read",
  },
  {
    id: "aviation allowance",
    call: ["BEND.ALLOWANCE", 0.04, 0.16, 90, "FAA"],
    expected: 0.2791,
    tolerance: 0.0002,
    source: "FAA-H-8083-31 / AC 65-15A, BA = (0.01743 R + 0.0078 T) N; 0.01743 memory",
    basis: "derived",
  },
  {
    // The handbook's own 3.74 (memory) rests on a chart value rounded to 0.27; its formula gives this.
    id: "U-channel, developed width by formula",
    call: ["FLAT.LENGTH", "1; 2; 1", 90, 0.04, 0.16, "FAA"],
    expected: 3.758,
    tolerance: 0.001,
    source: `${FAA}, U-channel example, steps 3 to 5`,
    basis: "derived",
  },
  {
    id: "setback at 120 degrees",
    call: ["BEND.SETBACK", 0.125, 0.25, 120],
    expected: 0.64952,
    tolerance: 0.0001,
    source: "geometry; FAA AC 43.13-1B, Table 4-7, 1.732 (read)",
    basis: "derived",
  },
  // K-chart: the setback of a unit R + T, four figures as printed, the last not always rounded.
  ...(
    [
      [30, 0.2679],
      [45, 0.4142],
      [60, 0.5773],
      [90, 1],
      [120, 1.732],
      [135, 2.414],
      [150, 3.732],
    ] as const
  ).map(
    ([bendAngle, expected]): Published => ({
      id: `K-chart, ${bendAngle} degrees, as read`,
      call: ["BEND.SETBACK", 0.5, 0.5, bendAngle],
      expected,
      tolerance: expected > 1 ? 6e-4 : 6e-5,
      source: "FAA AC 43.13-1B, Table 4-7",
      basis: "read",
    }),
  ),
  ...(
    [
      [75, 0.76733],
      [105, 1.3032],
      [165, 7.5957],
      [175, 22.904],
    ] as const
  ).map(
    ([bendAngle, expected]): Published => ({
      id: `K-chart, ${bendAngle} degrees`,
      call: ["BEND.SETBACK", 0.5, 0.5, bendAngle],
      expected,
      tolerance: expected * 3e-5,
      source: `${FAA}, setback (K) chart`,
      basis: "memory",
    }),
  ),
  ...(
    [
      ["soft", 0.2651],
      ["medium", 0.2763],
      ["hard", 0.2851],
    ] as const
  ).map(
    ([temper, expected]): Published => ({
      id: `Machinery's Handbook, ${temper}`,
      call: ["BEND.ALLOWANCE", 0.125, 0.125, 90, `Handbook ${temper}`],
      expected,
      tolerance: 0.0003,
      source: `${HANDBOOK}: 0.55, 0.64 or 0.71 T + (pi/2) R`,
      basis: "derived",
    }),
  ),
  {
    id: "DIN 6935, compensation value",
    call: ["BEND.DEDUCTION", 5, 6, 120, 0.35, "DIN", "mm"],
    expected: 5.77,
    tolerance: 0.006,
    source: `${TABELLENBUCH}, worked example with k = 0.7 from the chart (K = k/2)`,
    basis: "read",
  },
  {
    id: "DIN 6935, flat",
    call: ["FLAT.LENGTH", "16; 21", 120, 5, 6, 0.35, "DIN", "mm"],
    expected: 31.23,
    tolerance: 0.006,
    source: `${TABELLENBUCH}, worked example`,
    basis: "read",
  },
  {
    id: "DIN 6935, compensation value with k by formula",
    call: ["BEND.DEDUCTION", 5, 6, 120, "DIN 6935", "DIN", "mm"],
    expected: 5.82,
    tolerance: 0.01,
    source: `${TABELLENBUCH}, worked example with k = 0.689`,
    basis: "derived",
  },
  {
    // The book truncates 7.7164. Its 0.43 r + 1.48 s is the exact form at K = 0.33; it counts two bends for two legs.
    id: "DIN 6935, square bend by the short form",
    call: ["BEND.DEDUCTION", 3.18, 7, 90, 0.33, "DIN", "mm"],
    expected: 7.71,
    tolerance: 0.01,
    source: `${TABELLENBUCH}, v = 0.43 r + 1.48 s`,
    basis: "read",
  },
  {
    id: "DIN 6935, nearly flat bends count as flat",
    call: ["BEND.DEDUCTION", 2, 3, 10, "DIN 6935", "DIN", "mm"],
    expected: 0,
    tolerance: 1e-9,
    source: `${TABELLENBUCH}, v = 0 above 165 degrees`,
    basis: "read",
  },
  ...(
    [
      [1, 1, 1.9],
      [2, 2.5, 4],
      [3, 4, 6],
    ] as const
  ).map(
    ([thickness, radius, expected]): Published => ({
      id: `DIN 6935 table of v, s ${thickness} r ${radius}`,
      call: ["BEND.DEDUCTION", thickness, radius, 90, "DIN 6935", "DIN", "mm"],
      expected,
      tolerance: 0.051,
      source: "DIN 6935 Beiblatt 2 as tabulated in Tabellenbuch Metall, rounded to 0.1 mm",
      basis: "memory",
    }),
  ),
  {
    id: "deduction of a square bend, allowance",
    call: ["BEND.ALLOWANCE", 0.125, 0.125, 90, 0.33],
    expected: 0.26115,
    tolerance: 5e-5,
    source: "geometry",
    basis: "derived",
  },
  {
    id: "deduction of a square bend",
    call: ["BEND.DEDUCTION", 0.125, 0.125, 90, 0.33],
    expected: 0.23885,
    tolerance: 5e-5,
    source: "geometry, 2 SB - BA",
    basis: "derived",
  },
  {
    id: "a sharp bend at the middle of the sheet: two thicknesses less a quarter circle of half a thickness",
    call: ["BEND.DEDUCTION", 2, 0, 90, 0.5, blank, "mm"],
    expected: 4 - Math.PI / 2,
    tolerance: 1e-12,
    source: "geometry",
    basis: "derived",
  },
  {
    id: "inside legs differ from outside legs by two thicknesses at 90 degrees",
    call: ["BEND.DEDUCTION", 0.125, 0.125, 90, 0.33, "inside"],
    expected: 0.23885 - 0.25,
    tolerance: 5e-5,
    source: "geometry",
    basis: "derived",
  },
  {
    id: "a closed ring of four square bends with inside radius R is a square less its corners plus a circle",
    call: ["FLAT.LENGTH", "10; 20; 20; 20; 10", 90, 1, 3, 0.5, "outside", "mm"],
    // Four sides of 20, each short of its corners by R + t twice, and one full circle at the middle of the sheet.
    expected: 4 * (20 - 2 * 4) + 2 * Math.PI * 3.5,
    tolerance: 1e-9,
    source: "geometry: a square tube, its seam in the middle of one side",
    basis: "derived",
  },
];

export const bendGeometryFormulas: readonly PublishedFormula[] = [
  {
    id: "U-channel, outer flats",
    formula: "=1-SHOP.BEND.SETBACK(0.04,0.16,90)",
    expected: 0.8,
    tolerance: 1e-9,
    source: `${FAA}, U-channel example, step 3`,
    basis: "read",
  },
  {
    id: "U-channel, middle flat",
    formula: "=2-2*SHOP.BEND.SETBACK(0.04,0.16,90)",
    expected: 1.6,
    tolerance: 1e-9,
    source: `${FAA}, U-channel example, step 3`,
    basis: "read",
  },
  {
    id: "DIN 6935, k",
    formula: '=(SHOP.BEND.ALLOWANCE(5,6,90,"DIN 6935","mm")*2/PI()-6)/5*2',
    expected: 0.689,
    tolerance: 0.001,
    source: `${TABELLENBUCH}, k = 0.65 + 0.5 lg(r/s)`,
    basis: "read",
  },
  ...(
    [
      ["soft", 0.35],
      ["medium", 0.41],
      ["hard", 0.45],
    ] as const
  ).map(
    ([temper, expected]): PublishedFormula => ({
      id: `Machinery's Handbook, ${temper}, as a share of the thickness`,
      formula: `=(SHOP.BEND.ALLOWANCE(0.125,0.125,90,"Handbook ${temper}")*2/PI()-0.125)/0.125`,
      expected,
      tolerance: 0.005,
      source: HANDBOOK,
      basis: "read",
    }),
  ),
];
