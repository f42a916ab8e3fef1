/**
 * The air bends that the mechanics was compared with: finite-element solutions made for this project (tests/reference/
 * fe-cases.json A to P4, fe-cases-second.json N1 to N20; derived) and published measured bends whose die is stated
 * (measured-bends.json; read). A test compares this table with those files.
 */
export interface ComparedBend {
  readonly id: string;
  /** Opening, punch nose and die shoulder in thicknesses. */
  readonly opening: number;
  readonly nose: number;
  readonly shoulder: number;
  readonly exponent: number;
  /** Final bend angle and included angle of the die, degrees. */
  readonly finalAngle: number;
  readonly dieAngle: number;
  readonly friction: number;
  /** Strength coefficient over modulus, K/E: what springs back goes with it. */
  readonly strain: number;
}

type Row = readonly [string, number, number, number, number, number, number, number, number];

/** id, V/t, nose/t, n, final angle, friction, die angle, shoulder/t, 1000 K/E (derived). */
const FINITE_ELEMENTS: readonly Row[] = [
  ["A", 8, 0.5, 0.26, 91.05, 0, 85, 0.6667, 2.56],
  ["B", 8, 0.5, 0.45, 90.27, 0, 85, 0.6667, 6.606],
  ["C", 8, 1, 0.05, 89.7, 0, 85, 0.6667, 5.942],
  ["D", 6.667, 0.5, 0.1556, 91.37, 0, 85, 0.6667, 3.393],
  ["E", 12, 0.75, 0.26, 90.62, 0, 85, 1, 2.56],
  ["G", 8, 0.3333, 0.0873, 91.2, 0, 85, 0.6667, 4.397],
  ["H", 13.33, 4, 0.26, 90.24, 0, 85, 1, 2.56],
  ["I", 8, 0.5, 0.1556, 91.01, 0, 85, 0.6667, 3.393],
  ["J", 8, 0.5, 0.1556, 91.08, 0.1, 85, 0.6667, 3.393],
  ["K", 12, 0.5, 0.0873, 90.37, 0, 85, 1, 4.397],
  ["L", 12, 1, 0.45, 90.47, 0, 85, 1, 6.606],
  ["T", 8, 0.252, 0.0873, 91.4, 0.1, 80, 0.4724, 4.397],
  ["W", 33.44, 1.053, 0.12, 89.71, 0.1, 80, 1.975, 2.459],
  ["P1b", 33.44, 1.053, 0.26, 90, 0.1, 85, 1.975, 2.56],
  ["P4", 8, 1, 0.05, 119.3, 0.2, 30, 0.6667, 5.942],
  ["N1", 16, 0.5, 0.05, 89.41, 0.1, 85, 0.9449, 5.942],
  ["N2", 8, 0.5, 0.1556, 89.75, 0.1, 85, 0.6299, 3.393],
  ["N3", 8.368, 0.5263, 0.45, 90.29, 0.1, 85, 0.7895, 6.606],
  ["N4", 8, 0.5, 0.0873, 89.38, 0.1, 85, 0.6299, 4.397],
  ["N5", 8, 2, 0.26, 91.06, 0.1, 85, 1, 2.56],
  ["N6", 8, 2, 0.1556, 89.96, 0, 85, 0.6667, 3.393],
  ["N7", 8, 0.5, 0.05, 89.32, 0, 85, 0.6667, 5.942],
  ["N8", 8, 0.5, 0.1556, 45.83, 0, 85, 0.6667, 3.393],
  ["N9", 8, 0.5, 0.1556, 113.7, 0, 85, 0.6667, 3.393],
  ["N10", 12, 3, 0.05, 89.48, 0, 85, 1, 5.942],
  ["N11", 12, 3, 0.45, 90.41, 0.1, 85, 1, 6.606],
  ["N12", 6, 0.5, 0.1556, 89.87, 0.15, 85, 0.6667, 3.393],
  ["N13", 8, 1, 0.16, 60.21, 0.1, 85, 0.6667, 9.452],
  ["N14", 16, 0.5, 0.1556, 89.69, 0.1, 85, 1, 3.393],
  ["N15", 12, 2, 0.0873, 89.78, 0, 85, 0.6667, 4.397],
  ["N16", 8, 0.5, 0.26, 90.16, 0.2, 85, 0.6667, 2.56],
  ["N18", 8, 1, 0.26, 119.4, 0, 85, 0.6667, 2.56],
  ["N20", 6, 1.5, 0.45, 60.72, 0.1, 85, 0.6667, 6.606],
];

/** Strains stand in the table in thousandths (derived). */
const finiteElement = ([
  id,
  opening,
  nose,
  exponent,
  finalAngle,
  friction,
  dieAngle,
  shoulder,
  strain,
]: Row): ComparedBend => ({
  id: `finite elements ${id}`,
  opening,
  nose,
  shoulder,
  exponent,
  finalAngle,
  dieAngle,
  friction,
  strain: strain / 1000,
});

/** What the measured rows do not say is taken as the solver takes it where a call does not say (see bend-rules.ts). */
const unstated = { dieAngle: 85, friction: 0.1 }; // fitted and memory, as there

export const COMPARED_BENDS: readonly ComparedBend[] = [
  ...FINITE_ELEMENTS.map(finiteElement),
  // Prototek Fabrication, 0.187 in cold-rolled steel over 1.5 in (read); n as fitted for such sheet, K from its tensile strength.
  {
    id: "measured m1, 3/16 steel over 1-1/2",
    opening: 8.021,
    nose: 0.1604,
    shoulder: 0.668,
    exponent: 0.12,
    strain: 0.0024,
    finalAngle: 90,
    ...unstated,
  },
  // The Fabricator, 1100-O 0.125 in over 0.984 in (read); K and n of Kalpakjian & Schmid (read).
  {
    id: "measured m5, 1/8 1100-O over 25 mm",
    opening: 7.872,
    nose: 0.3152,
    shoulder: 0.656,
    exponent: 0.2,
    strain: 0.0026,
    finalAngle: 90,
    ...unstated,
  },
];
