/**
 * Every kind of problem that BILL.CHECK finds: the words by which its sentence is known, and how a good line is spoiled
 * so that it has that problem. Sizes are chosen against the tables of the invented shop.
 */
import type { Chance, ListLine } from "./line.ts";

export interface Kind {
  readonly name: string;
  /** Where the words stand: among the problems of a line, or among its notes. */
  readonly in: "Sentence" | "Notes";
  readonly words: string;
  readonly spoil: (by: Chance) => Partial<ListLine>;
}

const sentence = (name: string, words: string, spoil: Kind["spoil"]): Kind => ({ name, in: "Sentence", words, spoil });
const note = (name: string, words: string, spoil: Kind["spoil"]): Kind => ({ name, in: "Notes", words, spoil });

const TENGAUGE = { material: "A1011 CS", thickness: "10 ga", die: "V 1" } as const;
const PLATE = { material: "A36", thickness: "1/4", die: "V 2" } as const;
const two = (by: Chance, from = 2): string => `${by.step(from, from + 2, 0.125)}; ${by.step(from, from + 4, 0.125)}`;

export const KINDS: readonly Kind[] = [
  sentence("Flange falls into the die", "falls into die", (by) => ({
    ...TENGAUGE,
    flanges: `${by.step(0.3, 0.45, 0.025).toFixed(3)}; ${by.step(2, 4, 0.125)}`,
    bendAngles: "90",
  })),
  sentence("Flange barely rests on the die", "barely rests", (by) => ({
    ...TENGAUGE,
    flanges: `0.75; ${by.step(2, 6, 0.125)}`,
    bendAngles: "90",
  })),
  sentence("Force beyond the brake", "Needs about", (by) => ({
    ...PLATE,
    die: "V 1-1/2",
    width: by.step(76, 90, 0.5),
    grain: null,
    flanges: two(by, 3),
    bendAngles: "90",
  })),
  sentence("Load on the beam", "The beam of", (by) => ({
    ...PLATE,
    die: "V 1-1/2",
    flanges: two(by, 3),
    bendAngles: "90",
    width: by.step(14, 24, 0.5),
  })),
  sentence("Load on the punch", "Punch Knife is rated", (by) => ({
    material: "304",
    thickness: "1/8",
    die: "V 1",
    punch: "Knife",
    flanges: two(by),
    bendAngles: "90",
  })),
  sentence("Load on the die", "Die V 1 is rated", (by) => ({
    ...PLATE,
    die: "V 1",
    flanges: two(by, 3),
    bendAngles: "90",
  })),
  sentence("Hole inside the bend", "is pulled out of shape", (by) => ({
    ...PLATE,
    flanges: two(by, 3),
    bendAngles: "90",
    holeDistance: by.step(0.125, 0.25, 0.0625),
  })),
  sentence("Hole over the open die", "lies over the open die", (by) => ({
    ...PLATE,
    flanges: two(by, 3),
    bendAngles: "90",
    holeDistance: by.step(0.88, 0.94, 0.02),
  })),
  sentence("Die too narrow", "it marks", (by) => ({
    material: "A36",
    thickness: "3/16",
    die: "V 1",
    flanges: two(by),
    bendAngles: "90",
  })),
  sentence("Die too wide", "scatter more", (by) => ({
    material: "A653 CS",
    thickness: "16 ga",
    die: "V 1-1/2",
    flanges: two(by),
    bendAngles: "90",
  })),
  sentence("Longer than the bed", "the bed of", (by) => ({
    ...TENGAUGE,
    width: by.step(121, 132, 0.25),
    grain: null,
  })),
  note("Outside the housings", "outside the housings", (by) => ({
    material: "A653 CS",
    thickness: "16 ga",
    die: "V 5/8",
    width: by.step(93, 97.5, 0.25),
    grain: null,
  })),
  sentence("Longer than the die", "long; die", (by) => ({
    ...PLATE,
    die: "V 2-1/2",
    flanges: two(by, 3),
    bendAngles: "90",
    width: by.step(81, 90, 0.25),
    grain: null,
  })),
  sentence("Longer than the punch", "long; punch", (by) => ({
    ...TENGAUGE,
    punch: "Gooseneck",
    width: by.step(49, 70, 0.25),
    grain: null,
  })),
  sentence("Below the published radius", "cracks:", (by) => ({
    material: "6061-T6",
    thickness: "1/8",
    die: "V 1",
    flanges: two(by),
    bendAngles: "90",
  })),
  sentence("Far tighter than usual", "bend a test piece", (by) => ({
    ...PLATE,
    die: "V 3/4",
    flanges: two(by, 3),
    bendAngles: "90",
    width: by.step(2, 6, 0.25),
  })),
  sentence("Tighter than usual", "usual is", (by) => ({
    material: "5052-H32",
    thickness: 0.063,
    die: "V 3/8",
    punch: "Knife",
    flanges: two(by),
    bendAngles: "90",
  })),
  sentence("Wrong way of the grain", "cracks with its bend line along", (by) => ({
    material: "6061-T6",
    thickness: "1/8",
    die: "V 1-1/2",
    punch: "Round 1/2",
    grain: "along",
    flanges: two(by),
    bendAngles: "90",
  })),
  sentence("Bottoms before the angle", "it bottoms", (by) => ({
    material: "5052-H32",
    thickness: "1/8",
    die: "V 1 wide",
    flanges: two(by),
    bendAngles: "90",
  })),
  // Sharper than square: the die's 80 degrees come near the 83 degrees less springback under load.
  sentence("May bottom", "may touch the faces", (by) => ({ ...TENGAUGE, flanges: two(by), bendAngles: "97.8" })),
  sentence("Strong sheet over the shear", "ask for the certificate", (by) => ({
    ...PLATE,
    material: "304",
    die: "V 2-1/2",
    flanges: two(by, 3),
    bendAngles: "90",
  })),
  sentence("Larger than every sheet", "is larger than every sheet", (by) => ({
    material: "A1008 CS",
    thickness: "16 ga",
    die: "V 5/8",
    width: by.step(97, 118, 0.25),
    grain: null,
  })),
  note("No hold-down reaches it", "as the last cut", (by) => ({
    ...TENGAUGE,
    width: by.step(0.625, 0.875, 0.125),
  })),
  sentence("Narrow strip", "twists and bows", (by) => ({
    ...PLATE,
    flanges: two(by, 3),
    bendAngles: "90",
    width: by.step(1, 1.375, 0.125),
  })),
  sentence("Thickness not in Stock", "the next thickness up", (by) => ({
    material: "A1008 CS",
    thickness: "22 ga",
    die: "V 3/8",
    flanges: two(by, 1),
    bendAngles: "90",
  })),
  sentence("Radius to be confirmed", "ask the customer", (by) => ({
    ...TENGAUGE,
    radius: by.step(0.05, 0.08, 0.01),
    radiusTolerance: 0.01,
  })),
  sentence("Radius needs another tool", "ask the customer", (by) => ({
    ...TENGAUGE,
    radius: by.step(0.375, 0.5, 0.0625),
    radiusTolerance: 0.02,
  })),
  note("Tolerance at risk", "Measure the first pieces", (by) => ({
    ...TENGAUGE,
    flanges: `${by.step(2, 2.75, 0.125)}; ${by.step(2, 3, 0.125)}`,
    bendAngles: "90",
    tolerance: by.step(0.05, 0.06, 0.005),
  })),
  sentence("Tolerance will not hold", "will not hold", (by) => ({
    ...TENGAUGE,
    tolerance: by.step(0.01, 0.02, 0.005),
  })),
  sentence("Sags in front of the die", "sheet follower", (by) => ({
    material: "304",
    thickness: "16 ga",
    die: "V 5/8",
    flanges: `1; ${by.step(25, 30, 0.5)}`,
    bendAngles: "90",
    width: by.step(6, 12, 0.5),
  })),
  sentence("Too small to hold", "holding tool", (by) => ({
    material: "A1008 CS",
    thickness: "18 ga",
    die: "V 3/8",
    flanges: "0.75; 0.75",
    bendAngles: "90",
    width: by.step(1, 1.75, 0.125),
  })),
  sentence("Burr on a temper that cracks", "tears from a burr", (by) => ({
    material: "6061-T6",
    thickness: "1/8",
    punch: "Round 1/2",
    grain: "across",
    flanges: two(by),
    bendAngles: "90",
  })),
  sentence("Material not known", 'column "Material"', (by) => ({ material: by.one(["A63", "mild", "5025-H32"]) })),
  sentence("Thickness not readable", 'column "Thickness"', (by) => ({ thickness: by.one(["three", "2 ga?", "1/0"]) })),
  sentence("Flanges not readable", 'column "Flanges"', (by) => ({ flanges: `${by.step(2, 4, 0.125)} x 3` })),
  sentence("Angles do not fit the flanges", 'column "Bend angles"', (by) => ({
    flanges: two(by),
    bendAngles: "90; 90; 90",
  })),
  sentence("Pieces not a whole number", 'column "Quantity"', (by) => ({ quantity: by.one([0, 2.5, 0.5, -4]) })),
  sentence("Die not in the table", "die must be", (by) => ({ die: by.one(["V 7/8", "V 3", "V one"]) })),
];
