/**
 * What every kind of parameter must say to what does not belong there, written down by hand from the conventions of the
 * cell functions: #VALUE! for wrong input, #N/A where the input is right but no answer exists, each naming the
 * parameter. "answered": nothing wrong with this argument. A new kind of parameter needs a row here.
 */
import type { AnyParameter, AnyRecord } from "../../src/cells/record/record.ts";
import type { CellValue } from "../../src/units/cell.ts";

export const ODD = {
  zero: 0,
  empty: null,
  missing: undefined,
  "empty text": "",
  word: "abc",
  date: 46026, // 4 January 2026: what Excel makes of 1/4
  negative: -1,
  huge: 1e300,
  "wrong unit": "3 kg",
  boolean: true,
} as const satisfies Record<string, CellValue | undefined>;
export type Odd = keyof typeof ODD;

export type Expected = "#VALUE!" | "#N/A" | "answered";
type Row = Record<Exclude<Odd, "empty" | "missing" | "empty text">, Expected>;

const row = (
  zero: Expected,
  word: Expected,
  date: Expected,
  negative: Expected,
  huge: Expected,
  wrongUnit: Expected,
  boolean: Expected,
): Row => ({ zero, word, date, negative, huge, "wrong unit": wrongUnit, boolean });

const V = "#VALUE!";
const N = "#N/A";
const OK = "answered";

//                            0   abc  date  -1  1e300 3 kg TRUE
const FIGURE = row(V, V, V, V, V, V, V);
const FROM_ZERO = row(OK, V, V, V, V, V, V);
/** Which way a bend goes changes no length and no force. */
const TURN = row(OK, V, V, OK, V, V, V);
const COUNT = row(OK, V, OK, V, V, V, V);
const RATE = row(V, V, OK, V, V, V, V);
const NAME = row(N, N, N, N, N, N, V);
const WORD = row(V, V, V, V, V, V, V);
const TABLE = row(V, V, V, V, V, V, V);
const ANYTHING = row(OK, OK, OK, OK, OK, OK, OK);

const BY_TYPE: Record<string, Row> = {
  length: FIGURE,
  thickness: FIGURE,
  angle: FROM_ZERO,
  number: FIGURE,
  "whole number": COUNT,
  pressure: FIGURE,
  strength: FIGURE,
  "abrasive rate": RATE,
  gauge: FROM_ZERO,
  material: NAME,
  part: NAME,
  tool: NAME,
  function: WORD,
  "edition or range": NAME,
  "list of lengths": FIGURE,
  "list of bend angles": TURN,
  "list of bend numbers": FIGURE,
  anything: ANYTHING,
  bill: TABLE,
  table: TABLE,
  range: TABLE, // one cell is none
  calendar: TABLE,
  date: RATE,
  hours: COUNT,
  money: COUNT,
  feed: RATE,
  "list of quantities": RATE,
  station: row(OK, OK, OK, OK, OK, OK, V), // one without shifts of its own works the shop's
};

/** Lengths and numbers of which 0 is a sound value, and an angle of which it is not. */
const BY_NAME: Record<string, Row> = {
  radius: FROM_ZERO, // a sharp bend
  drawing_radius: FROM_ZERO,
  tolerance: FROM_ZERO,
  punch_nose: FROM_ZERO,
  shoulder: FROM_ZERO,
  die_shoulder: FROM_ZERO,
  hole_distance: FROM_ZERO,
  vertical: FROM_ZERO, // from the floor
  end_vertical: FROM_ZERO,
  travel: FROM_ZERO,
  lifts_per_minute: FROM_ZERO,
  pierce_time: FROM_ZERO,
  margin: FROM_ZERO,
  thickness_band: FROM_ZERO,
  strength_band: FROM_ZERO,
  hardening_band: FROM_ZERO,
  opening_band: FROM_ZERO,
  bend_angle: TURN,
  die_angle: FIGURE,
  punch_angle: FIGURE,
  // The mechanics begins at half a degree: right input, no answer.
  ...Object.fromEntries(
    ["AIR.BEND", "AIR.DEPTH", "AIR.SPRINGBACK", "AIR.TONNAGE", "STRIP.DEDUCTION"].map((name) => [
      `${name} bend_angle`,
      row(N, V, V, name === "STRIP.DEDUCTION" ? V : OK, V, V, V),
    ]),
  ),
  "STRIP.EVENNESS along": FROM_ZERO, // one end of the bed
  "STRIP.EVENNESS tolerance": FIGURE,
};

export function expectedFor(record: AnyRecord, name: string, parameter: AnyParameter, odd: Odd): Expected {
  if (odd === "empty" || odd === "missing" || odd === "empty text") return parameter.optional ? OK : V;
  const known = BY_NAME[`${record.name} ${name}`] ?? BY_NAME[name] ?? BY_TYPE[parameter.type] ?? byForm(parameter);
  if (!known) throw new Error(`no expectation for ${name}, "${parameter.type}": add a row to expectations.ts`);
  return known[odd];
}

function byForm({ type }: AnyParameter): Row | undefined {
  if (type.endsWith(" table")) return TABLE;
  if (/^number \| "Groover"/.test(type)) return FROM_ZERO; // k
  if (/^number \| "/.test(type)) return FIGURE; // tensile
  if (/^(?:list of )?"/.test(type)) return WORD; // one of some words
  return undefined;
}
