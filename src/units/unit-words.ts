/** Units as people write them in a column header, per kind of quantity, and how many internal units one of them is. */
import {
  GRAMS_PER_POUND,
  KG_PER_POUND,
  MM_PER_INCH,
  MPA_PER_KSI,
  NEWTONS_PER_US_TON,
  POUNDS_PER_US_TON,
  type QuantityKind,
} from "./system.ts";

const POUND_FORCE = NEWTONS_PER_US_TON / POUNDS_PER_US_TON;
const FOOT = MM_PER_INCH * 12;

const WORDS: Readonly<Record<QuantityKind, Readonly<Record<string, number>>>> = {
  length: { in: MM_PER_INCH, inch: MM_PER_INCH, inches: MM_PER_INCH, ft: FOOT, feet: FOOT, mm: 1, cm: 10, m: 1000 },
  force: {
    "us ton": NEWTONS_PER_US_TON,
    "us tons": NEWTONS_PER_US_TON,
    ton: NEWTONS_PER_US_TON,
    tons: NEWTONS_PER_US_TON,
    kn: 1000,
    n: 1,
    lbf: POUND_FORCE,
    kip: POUND_FORCE * 1000,
  },
  lineLoad: {
    "us ton/ft": NEWTONS_PER_US_TON / FOOT,
    "ton/ft": NEWTONS_PER_US_TON / FOOT,
    "tons/ft": NEWTONS_PER_US_TON / FOOT,
    "us ton/in": NEWTONS_PER_US_TON / MM_PER_INCH,
    "ton/in": NEWTONS_PER_US_TON / MM_PER_INCH,
    "kn/m": 1,
    "n/mm": 1,
  },
  mass: { lb: KG_PER_POUND, lbs: KG_PER_POUND, kg: 1 },
  stress: { ksi: MPA_PER_KSI, psi: MPA_PER_KSI / 1000, mpa: 1, gpa: 1000, "n/mm2": 1 },
  density: {
    "lb/in^3": KG_PER_POUND / MM_PER_INCH ** 3,
    "lb/in3": KG_PER_POUND / MM_PER_INCH ** 3,
    "kg/mm^3": 1,
    "kg/m^3": 1e-9,
    "kg/m3": 1e-9,
    "g/cm^3": 1e-6,
    "g/cm3": 1e-6,
    "kg/dm3": 1e-6,
  },
  feed: { "in/min": MM_PER_INCH, "mm/min": 1, "m/min": 1000, ipm: MM_PER_INCH },
  massFlow: { "lb/min": GRAMS_PER_POUND, "g/min": 1, "kg/min": 1000 },
  angle: { deg: 1, degrees: 1, "°": 1 },
};

/** Internal units in one of the named unit, or undefined for a word that is not a unit of this kind. */
export function unitSize(word: string, kind: QuantityKind): number | undefined {
  const folded = word.trim().toLowerCase();
  return Object.hasOwn(WORDS[kind], folded) ? WORDS[kind][folded] : undefined;
}

export const unitWords = (kind: QuantityKind): readonly string[] => Object.keys(WORDS[kind]);
