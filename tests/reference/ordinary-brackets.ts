/**
 * Twelve ordinary brackets with 2 x 3 in legs, as a brake operator expects them. Common practice, no source: over a 2 in
 * die steel comes out at about 5/16 in inside radius (0.27-0.36), aluminum 1/8 in at about 1/4 in; the flat within 1/32
 * of legs less the chart deduction; tons by the US shop rule 575 t^2/V at 60 ksi within a band; least flange 0.7 V and a
 * little over. Deductions: 2 (R + t) - (pi/2)(R + 0.42 t) at the radius named in the row, by hand.
 */
export interface OrdinaryBracket {
  readonly material: string;
  readonly thickness: string;
  readonly opening: number;
  readonly nose: number;
  /** Inside radius, from and to. */
  readonly radius: readonly [number, number];
  /** Flat of 2 x 3 in legs; undefined where the fold around the nose leaves no chart value. */
  readonly flat?: number;
  /** US tons for 12 in of bend, from and to. */
  readonly tons: readonly [number, number];
  readonly leastFlange: readonly [number, number];
  readonly status: "clear" | "check" | "stop";
}

export const ORDINARY_BRACKETS: readonly OrdinaryBracket[] = [
  // R 0.3125: BD = 1.125 - 0.6558 = 0.469
  {
    material: "A36",
    thickness: "1/4",
    opening: 2,
    nose: 1 / 16,
    radius: [0.27, 0.36],
    flat: 4.531,
    tons: [15, 21],
    leastFlange: [1.4, 1.75],
    status: "clear",
  },
  // R 0.234: BD = 0.844 - 0.492 = 0.352
  {
    material: "A36",
    thickness: "3/16",
    opening: 1.5,
    nose: 1 / 16,
    radius: [0.2, 0.27],
    flat: 4.648,
    tons: [11, 16],
    leastFlange: [1.05, 1.4],
    status: "clear",
  },
  // R 0.176: BD = 0.621 - 0.365 = 0.256
  {
    material: "A1011 CS",
    thickness: "10 ga",
    opening: 1.125,
    nose: 1 / 16,
    radius: [0.15, 0.24],
    flat: 4.744,
    tons: [6.5, 10],
    leastFlange: [0.79, 1.1],
    status: "clear",
  },
  {
    material: "A36",
    thickness: "10 ga",
    opening: 1.125,
    nose: 1 / 16,
    radius: [0.15, 0.22],
    flat: 4.744,
    tons: [8, 12],
    leastFlange: [0.79, 1.1],
    status: "clear",
  },
  {
    material: "A1011 CS",
    thickness: "3/16",
    opening: 1.5,
    nose: 1 / 16,
    radius: [0.2, 0.3],
    flat: 4.648,
    tons: [9, 15],
    leastFlange: [1.05, 1.4],
    status: "clear",
  },
  // R 0.21 V = 0.126 over 5/8 in: BD = 0.408 - 0.249 = 0.159
  {
    material: "304",
    thickness: "14 ga",
    opening: 0.625,
    nose: 1 / 16,
    radius: [0.11, 0.17],
    flat: 4.841,
    tons: [6, 11],
    leastFlange: [0.44, 0.7],
    status: "clear",
  },
  {
    material: "304",
    thickness: "14 ga",
    opening: 2,
    nose: 1 / 16,
    radius: [0.33, 0.5],
    tons: [1.5, 3],
    leastFlange: [1.4, 1.6],
    status: "check",
  },
  // R 0.25: BD = 0.75 - 0.475 = 0.275
  {
    material: "5052-H32",
    thickness: "1/8",
    opening: 2,
    nose: 1 / 16,
    radius: [0.22, 0.28],
    flat: 4.725,
    tons: [1.8, 3.2],
    leastFlange: [1.4, 1.6],
    status: "clear",
  },
  // R 0.14: BD = 0.53 - 0.302 = 0.228
  {
    material: "5052-H32",
    thickness: "1/8",
    opening: 1.125,
    nose: 1 / 16,
    radius: [0.11, 0.17],
    flat: 4.772,
    tons: [3.3, 5.5],
    leastFlange: [0.79, 1],
    status: "clear",
  },
  // R 0.25: BD = 1.0 - 0.558 = 0.442
  {
    material: "5052-H32",
    thickness: "1/4",
    opening: 2,
    nose: 1 / 16,
    radius: [0.22, 0.29],
    flat: 4.558,
    tons: [8, 12],
    leastFlange: [1.4, 1.75],
    status: "clear",
  },
  {
    material: "6061-T6",
    thickness: "1/8",
    opening: 2,
    nose: 1 / 16,
    radius: [0.22, 0.33],
    tons: [2.5, 4.5],
    leastFlange: [1.4, 1.6],
    status: "stop",
  },
  {
    material: "6061-T6",
    thickness: "1/8",
    opening: 1.125,
    nose: 1 / 32,
    radius: [0.12, 0.2],
    tons: [4.5, 7.5],
    leastFlange: [0.79, 1],
    status: "stop",
  },
];
