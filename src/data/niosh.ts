/** The revised NIOSH lifting equation: constants and multiplier tables. */
import { fact } from "./fact.ts";

const MANUAL = "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation";

const WORKSHEET = `${MANUAL}, job analysis worksheet with Tables 1-5, reprint`;

export const LOAD_CONSTANT = fact(51, "lb", "read", MANUAL);
export const HORIZONTAL_BASE = fact(10, "in", "read", MANUAL);
export const HORIZONTAL_MAXIMUM = fact(25, "in", "read", WORKSHEET);
export const VERTICAL_BASE = fact(30, "in", "read", MANUAL);
export const VERTICAL_SLOPE = fact(0.0075, "1/in", "read", MANUAL);
export const VERTICAL_MAXIMUM = fact(70, "in", "read", WORKSHEET);
export const TRAVEL_BASE = fact(0.82, "", "read", MANUAL);
export const TRAVEL_SLOPE = fact(1.8, "in", "read", MANUAL);
export const TRAVEL_MINIMUM = fact(10, "in", "read", MANUAL);
export const TRAVEL_MAXIMUM = fact(70, "in", "read", WORKSHEET);
export const ASYMMETRY_SLOPE = fact(0.0032, "1/deg", "read", WORKSHEET);
export const ASYMMETRY_MAXIMUM = fact(135, "deg", "read", WORKSHEET);

export const COUPLINGS = ["good", "fair", "poor"] as const;
export type Coupling = (typeof COUPLINGS)[number];
/** Coupling multiplier below and from 30 in vertical height (memory). */
export const COUPLING: Readonly<Record<Coupling, { readonly low: number; readonly high: number }>> = {
  good: { low: 1, high: 1 },
  fair: { low: 0.95, high: 1 },
  poor: { low: 0.9, high: 0.9 },
};
export const COUPLING_SOURCE = `${MANUAL}, Table 7 (memory, unverified)`;

/**
 * Frequency multiplier (read): lifts a minute, then for work up to 1 h, up to 2 h and up to 8 h a day. A reprint of the
 * manual's job analysis worksheet, Table 5; 11 and 12 lifts as two public programs carry the table.
 */
export const FREQUENCY: readonly (readonly [lifts: number, oneHour: number, twoHours: number, eightHours: number])[] = [
  [0.2, 1, 0.95, 0.85],
  [0.5, 0.97, 0.92, 0.81],
  [1, 0.94, 0.88, 0.75],
  [2, 0.91, 0.84, 0.65],
  [3, 0.88, 0.79, 0.55],
  [4, 0.84, 0.72, 0.45],
  [5, 0.8, 0.6, 0.35],
  [6, 0.75, 0.5, 0.27],
  [7, 0.7, 0.42, 0.22],
  [8, 0.6, 0.35, 0.18],
  [9, 0.52, 0.3, 0],
  [10, 0.45, 0.26, 0],
  [11, 0.41, 0, 0],
  [12, 0.37, 0, 0],
  [15, 0, 0, 0],
];
/**
 * The same with the hands 30 in above the floor or higher, where that differs. 8 h read in the reprint; 1 h and 2 h
 * columns memory, unverified.
 */
export const FREQUENCY_HIGH: typeof FREQUENCY = [
  [9, 0.52, 0.3, 0.15],
  [10, 0.45, 0.26, 0.13],
  [11, 0.41, 0.23, 0],
  [12, 0.37, 0.21, 0],
  [13, 0.34, 0, 0],
  [14, 0.31, 0, 0],
  [15, 0.28, 0, 0],
];
export const FREQUENCY_SOURCE = `${MANUAL}, Table 5 (read in a reprint to 10 lifts a minute; beyond, and from 30 in up for 1-2 h, memory)`;
