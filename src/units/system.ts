/** The two unit systems a workbook may speak, and the closed list of units a result may carry. */
import type { Quantity } from "./quantity.ts";

export const UNIT_SYSTEMS = ["in", "mm"] as const;
export type UnitSystem = (typeof UNIT_SYSTEMS)[number];

export const RESULT_UNITS = [
  "in",
  "mm",
  "US ton",
  "kN",
  "lb",
  "kg",
  "ksi",
  "MPa",
  "deg",
  "in/min",
  "mm/min",
  "h",
  "min",
  "money",
  "count",
  "text",
  "date",
] as const;
export type ResultUnit = (typeof RESULT_UNITS)[number];

/** Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s2 (NIST SP 811, read in many texts). */
export const MM_PER_INCH = 25.4;
export const KG_PER_POUND = 0.45359237;
const STANDARD_GRAVITY = 9.80665;
const NEWTONS_PER_POUND_FORCE = KG_PER_POUND * STANDARD_GRAVITY;
export const POUNDS_PER_US_TON = 2000;
export const NEWTONS_PER_US_TON = NEWTONS_PER_POUND_FORCE * POUNDS_PER_US_TON;
export const MPA_PER_KSI = (NEWTONS_PER_POUND_FORCE * 1000) / (MM_PER_INCH * MM_PER_INCH);
export const GRAMS_PER_POUND = KG_PER_POUND * 1000;
const MM_PER_FOOT = MM_PER_INCH * 12;

interface Scale {
  readonly name: string;
  /** Internal units in one of these: 25.4 mm in one inch. */
  readonly size: number;
}

/** How each kind of quantity is written in each system. The internal unit is the one whose size is 1. */
export const SCALES = {
  length: { in: { name: "in", size: MM_PER_INCH }, mm: { name: "mm", size: 1 } },
  force: { in: { name: "US ton", size: NEWTONS_PER_US_TON }, mm: { name: "kN", size: 1000 } },
  lineLoad: {
    in: { name: "US ton/ft", size: NEWTONS_PER_US_TON / MM_PER_FOOT },
    mm: { name: "kN/m", size: 1 },
  },
  mass: { in: { name: "lb", size: KG_PER_POUND }, mm: { name: "kg", size: 1 } },
  stress: { in: { name: "ksi", size: MPA_PER_KSI }, mm: { name: "MPa", size: 1 } },
  density: {
    in: { name: "lb/in^3", size: KG_PER_POUND / MM_PER_INCH ** 3 },
    mm: { name: "kg/mm^3", size: 1 },
  },
  feed: { in: { name: "in/min", size: MM_PER_INCH }, mm: { name: "mm/min", size: 1 } },
  massFlow: { in: { name: "lb/min", size: GRAMS_PER_POUND }, mm: { name: "g/min", size: 1 } },
  angle: { in: { name: "deg", size: 1 }, mm: { name: "deg", size: 1 } },
} as const satisfies Record<string, Record<UnitSystem, Scale>>;

export type QuantityKind = keyof typeof SCALES;

/** A figure given in a unit system -> the internal unit. */
export const toInternal = <U extends string>(value: number, kind: QuantityKind, system: UnitSystem): Quantity<U> =>
  (value * SCALES[kind][system].size) as Quantity<U>;

/** A figure in the internal unit -> the unit system's own unit. */
export const fromInternal = (value: number, kind: QuantityKind, system: UnitSystem): number =>
  value / SCALES[kind][system].size;

export const unitName = (kind: QuantityKind, system: UnitSystem): string => SCALES[kind][system].name;
