import type { CellError } from "../../units/cell.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { NA } from "../evaluate/value.ts";
import { define } from "./define.ts";

/** Exact by definition: the international inch and avoirdupois pound of 1959, the US gallon, the standard atmosphere. */
const INCH = 0.0254;
const FOOT = 12 * INCH;
const YARD = 3 * FOOT;
const MILE = 1760 * YARD;
const NAUTICAL_MILE = 1852;
const SURVEY_FOOT = 1200 / 3937;
const POUND = 453.59237;
const GALLON = 231 * INCH ** 3 * 1000;
const IMPERIAL_GALLON = 4.54609;
const GRAVITY = 9.80665;
const LIGHT_YEAR = 9_460_730_472_580_800;
const PARSEC = 149_597_870_700 * (648_000 / Math.PI);
const CALORIE = 4.1868;
const BTU = 1055.05585262;
const DAY = 86_400;

/** Units by quantity in one base each (g, m, s, Pa, N, J, W, T, l, m2, bit, m/s); CONVERT's names (Microsoft, memory). */
const QUANTITIES: readonly Readonly<Record<string, number>>[] = [
  {
    g: 1,
    lbm: POUND,
    ozm: POUND / 16,
    grain: POUND / 7000,
    sg: (POUND * GRAVITY) / FOOT,
    u: 1.66053886e-24,
    cwt: 100 * POUND,
    shweight: 100 * POUND,
    uk_cwt: 112 * POUND,
    lcwt: 112 * POUND,
    hweight: 112 * POUND,
    stone: 14 * POUND,
    ton: 2000 * POUND,
    uk_ton: 2240 * POUND,
    LTON: 2240 * POUND,
    brton: 2240 * POUND,
  },
  {
    m: 1,
    mi: MILE,
    Nmi: NAUTICAL_MILE,
    in: INCH,
    ft: FOOT,
    yd: YARD,
    ang: 1e-10,
    ell: 45 * INCH,
    ly: LIGHT_YEAR,
    parsec: PARSEC,
    pc: PARSEC,
    Picapt: INCH / 72,
    Pica: INCH / 72,
    pica: INCH / 6,
    survey_mi: 5280 * SURVEY_FOOT,
  },
  { yr: 365.25 * DAY, day: DAY, d: DAY, hr: 3600, mn: 60, min: 60, sec: 1, s: 1 },
  {
    Pa: 1,
    p: 1,
    atm: 101_325,
    at: 101_325,
    mmHg: 133.322,
    psi: (POUND * GRAVITY) / 1000 / INCH ** 2,
    Torr: 101_325 / 760,
  },
  { N: 1, dyn: 1e-5, dy: 1e-5, lbf: (POUND * GRAVITY) / 1000, pond: GRAVITY / 1000 },
  {
    J: 1,
    e: 1e-7,
    c: 4.184,
    cal: CALORIE,
    eV: 1.602176487e-19,
    ev: 1.602176487e-19,
    HPh: 2_684_519.537696173,
    hh: 2_684_519.537696173,
    Wh: 3600,
    wh: 3600,
    flb: (POUND * GRAVITY * FOOT) / 1000,
    BTU,
    btu: BTU,
  },
  { W: 1, w: 1, HP: (550 * POUND * GRAVITY * FOOT) / 1000, h: (550 * POUND * GRAVITY * FOOT) / 1000, PS: 75 * GRAVITY },
  { T: 1, ga: 1e-4 },
  {
    l: 1,
    L: 1,
    lt: 1,
    tsp: GALLON / 768,
    tspm: 0.005,
    tbs: GALLON / 256,
    oz: GALLON / 128,
    cup: GALLON / 16,
    pt: GALLON / 8,
    us_pt: GALLON / 8,
    uk_pt: IMPERIAL_GALLON / 8,
    qt: GALLON / 4,
    uk_qt: IMPERIAL_GALLON / 4,
    gal: GALLON,
    uk_gal: IMPERIAL_GALLON,
    ang3: 1e-27,
    "ang^3": 1e-27,
    barrel: 42 * GALLON,
    bushel: 2150.42 * INCH ** 3 * 1000,
    ft3: FOOT ** 3 * 1000,
    "ft^3": FOOT ** 3 * 1000,
    in3: INCH ** 3 * 1000,
    "in^3": INCH ** 3 * 1000,
    m3: 1000,
    "m^3": 1000,
    mi3: MILE ** 3 * 1000,
    "mi^3": MILE ** 3 * 1000,
    yd3: YARD ** 3 * 1000,
    "yd^3": YARD ** 3 * 1000,
  },
  {
    m2: 1,
    "m^2": 1,
    ha: 10_000,
    ar: 100,
    ft2: FOOT ** 2,
    "ft^2": FOOT ** 2,
    in2: INCH ** 2,
    "in^2": INCH ** 2,
    mi2: MILE ** 2,
    "mi^2": MILE ** 2,
    Nmi2: NAUTICAL_MILE ** 2,
    "Nmi^2": NAUTICAL_MILE ** 2,
    yd2: YARD ** 2,
    "yd^2": YARD ** 2,
    uk_acre: 43_560 * FOOT ** 2,
    us_acre: 43_560 * SURVEY_FOOT ** 2,
    Morgen: 2500,
  },
  { bit: 1, byte: 8 },
  {
    "m/s": 1,
    "m/sec": 1,
    "m/h": 1 / 3600,
    "m/hr": 1 / 3600,
    mph: MILE / 3600,
    kn: NAUTICAL_MILE / 3600,
    admkn: (6080 * FOOT) / 3600,
  },
];

/** Only metric units take prefixes. */
const METRIC = new Set(
  `g u m ang ly parsec pc sec s Pa p atm at mmHg N dyn dy pond J e c cal eV ev Wh wh W w T ga l L lt m2 m^2
  m3 m^3 ar bit byte m/s m/sec m/h m/hr K kel`.split(/\s+/),
);
const PREFIXES = new Map(
  "Y=24 Z=21 E=18 P=15 T=12 G=9 M=6 k=3 h=2 da=1 e=1 d=-1 c=-2 m=-3 u=-6 n=-9 p=-12 f=-15 a=-18 z=-21 y=-24"
    .split(" ")
    .map((each) => each.split("=") as [string, string]),
);
const BINARY = new Map(Object.entries({ ki: 10, Mi: 20, Gi: 30, Ti: 40, Pi: 50, Ei: 60, Zi: 70, Yi: 80 }));

interface Unit {
  readonly quantity: number;
  readonly factor: number;
}

const UNITS = new Map(
  QUANTITIES.flatMap((units, quantity) =>
    Object.entries(units).map(([name, factor]): [string, Unit] => [name, { quantity, factor }]),
  ),
);

function unitOf(name: string): Unit | undefined {
  const plain = UNITS.get(name);
  if (plain) return plain;
  for (const length of [2, 1]) {
    const [prefix, base] = [name.slice(0, length), name.slice(length)];
    const unit = METRIC.has(base) ? UNITS.get(base) : undefined;
    if (!unit) continue;
    const binary = base === "bit" || base === "byte" ? BINARY.get(prefix) : undefined;
    if (binary !== undefined) return { ...unit, factor: unit.factor * 2 ** binary };
    const power = /(?:m\^?2|m\^?3)$/.test(base) ? Number(base.slice(-1)) : 1;
    const decimal = PREFIXES.get(prefix);
    if (decimal !== undefined) return { ...unit, factor: unit.factor * 10 ** (Number(decimal) * power) };
  }
  return undefined;
}

/** Temperatures have zeros of their own: scale and offset to kelvin. */
const TEMPERATURES: Readonly<Record<string, readonly [scale: number, offset: number]>> = {
  C: [1, 273.15],
  cel: [1, 273.15],
  F: [5 / 9, 459.67 * (5 / 9)],
  fah: [5 / 9, 459.67 * (5 / 9)],
  K: [1, 0],
  kel: [1, 0],
  Rank: [5 / 9, 0],
  Reau: [1.25, 273.15],
};

function converted(x: number, from: string, to: string): number | CellError {
  const [a, b] = [TEMPERATURES[from], TEMPERATURES[to]];
  if (a && b) return from === to ? x : (x * a[0] + a[1] - b[1]) / b[0];
  const [u, v] = [unitOf(from), unitOf(to)];
  return !u || !v || u.quantity !== v.quantity ? NA : (x * u.factor) / v.factor;
}

export const convert: readonly WorksheetFunction[] = [define("CONVERT", "number text text", converted)];
