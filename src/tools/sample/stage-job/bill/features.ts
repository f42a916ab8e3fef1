/** What the bill says of some parts besides sheet and bends: holes, work after bending, tolerance, spares. Invented too. */

export interface Features {
  readonly holes: number | null;
  readonly holeDiameter: number | null;
  /** Stations after the brake, "Tap 2". */
  readonly operations: string | null;
  /** Inside radius on the drawing, in. */
  readonly radius: number | null;
  readonly radiusTolerance: number | null;
  /** Of the outside sizes, plus and minus, in. */
  readonly tolerance: number | null;
  readonly spares: number | null;
  readonly certificate: "yes" | null;
}

/** Where a part goes on site, by the letters of its name. */
export const AREAS: Readonly<Record<string, string>> = {
  DF: "Deck",
  RT: "Tower",
  LC: "Lamps",
  CS: "Scenery",
  WW: "Wagons",
  DR: "Stairs",
  FH: "Front of house",
};

const RADIUS_TOLERANCE = 0.03;

type Line = readonly [
  holes: number | null,
  holeDiameter: number | null,
  operations: string | null,
  radius?: number | null,
  tolerance?: number | null,
  spares?: number | null,
  certificate?: "yes",
];

const LINES: Readonly<Record<string, Line>> = {
  "DF-01": [4, 0.5625, "Deburr", 0.1875, 0.09, 2],
  "DF-02": [8, 0.5625, "Deburr", 0.1875, 0.09, 1],
  "DF-03": [2, 0.4375, "Deburr; Coating", null, null, 4],
  "DF-04": [null, null, "Coating"],
  "DF-05": [4, 0.5625, "Deburr", 0.1875, 0.09, 3],
  "DF-06": [null, null, "Deburr", null, 0.09],
  "DF-08": [4, 0.6875, "Weld 2", 0.25, 0.1875, 1, "yes"],
  "DF-09": [null, null, null, null, null, null, "yes"],
  "RT-01": [3, 0.5625, "Deburr", 0.1875, 0.125, 2, "yes"],
  "RT-03": [2, 0.4375, "Deburr", null, 0.0625, 4],
  "RT-04": [2, 0.4375, "Deburr", null, 0.09, 2],
  "RT-05": [1, 0.8125, null, 0.25, 0.09, 2, "yes"],
  "RT-07": [null, null, "Weld 2; Deburr"],
  "RT-09": [4, 0.6875, "Coating", 0.25, null, null, "yes"],
  "RT-11": [null, null, null, 0.5, 0.09, 1],
  "LC-01": [2, 0.5, "Tap 1; Pack", null, 0.1875, 4],
  "LC-02": [2, 0.5, "Tap 1; Pack", 0.25, 0.25, 2],
  "LC-03": [1, 0.375, "Pack", null, null, 3],
  "LC-04": [null, null, "Deburr"],
  "LC-08": [2, 0.25, null, null, 0.09, 1],
  "LC-09": [null, null, "Pack", null, 0.015],
  "LC-11": [null, null, "Coating", null, null, 1],
  "CS-01": [1, 0.3125, "Pack", null, null, 6],
  "CS-02": [null, null, "Pack", null, null, 3],
  "CS-04": [2, 0.4375, null, 0.1875, null, 2],
  "CS-05": [2, 0.4375, null, 0.25, null, 2],
  "CS-08": [4, 0.4375, "Weld 2; Coating", null, 0.125],
  "CS-09": [3, 0.375, "Tap 3", 0.25, 0.09, 1],
  "WW-02": [4, 0.6875, null, 0.25, null, null, "yes"],
  "WW-04": [2, 0.6875, "Coating", 0.25, 0.125, 1, "yes"],
  "WW-05": [null, null, null, 0.125, 0.125],
  "WW-09": [null, null, "Weld 1", 0.25, null, 1, "yes"],
  "DR-01": [2, 0.4375, "Coating", null, null, 2],
  "DR-03": [2, 0.4375, null, null, 0.09, 2],
  "DR-05": [null, null, "Deburr; Coating"],
  "DR-06": [2, 0.3125, "Pack", null, 0.09, 2],
  "DR-08": [null, null, "Deburr", null, 0.125],
  "FH-02": [null, null, "Deburr", null, 0.09],
  "FH-03": [4, 0.4375, "Coating", 0.1875, 0.09, 2],
  "FH-04": [2, 0.25, "Coating; Pack", null, null, 2],
  "FH-06": [2, 0.3125, "Pack", 0.125, null, 1],
  "FH-07": [null, null, "Coating"],
  "DR-11": [null, null, "Pack", null, null, 5],
};

export function featuresOf(part: string): Features {
  const [holes, holeDiameter, operations, radius = null, tolerance = null, spares = null, certificate = null] = LINES[
    part
  ] ?? [null, null, null];
  const radiusTolerance = radius === null ? null : RADIUS_TOLERANCE;
  return { holes, holeDiameter, operations, radius, radiusTolerance, tolerance, spares, certificate };
}
