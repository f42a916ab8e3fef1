/**
 * What people write above the columns of a part list (common practice of the trade), and what such a heading means. Only
 * these are taken; every other one is named and left for the person to map.
 */
import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";
import { firstOf, missing } from "../../units/certain.ts";
import { unitSize } from "../../units/unit-words.ts";

export type BillKey = keyof typeof BILL_COLUMNS;
/** "legs", "turns": one flange, one angle of several in columns beside each other. */
export type PartKey = BillKey | OneOf;
type OneOf = "legs" | "turns";
/** What such columns make together. */
export const WHOLE = { legs: "flanges", turns: "bendAngles" } as const;
export const wholeOf = (key: PartKey): BillKey => (isOneOf(key) ? WHOLE[key] : key);
export const isOneOf = (key: PartKey | undefined): key is OneOf => key === "legs" || key === "turns";
export const BILL_KEYS = Object.keys(BILL_COLUMNS) as BillKey[];

/** In the order in which they are preferred where a list has two of them. */
const OWN_WORDS: Partial<Record<BillKey, readonly string[]>> = {
  part: [
    "Part",
    "Part number",
    "Part no",
    "Part #",
    "Part name",
    "Part ID",
    "P/N",
    "Mark",
    "Piece mark",
    "Mark no",
    "Blank",
    "Drawing number",
    "Drawing no",
    "Dwg no",
    "Dwg",
    "Item",
    "Item no",
    "Item number",
    "Item #",
    "Line",
    "Line no",
    "Pos",
    "Position",
    "No",
    "#",
  ],
  description: ["Desc", "Title"],
  instruction: ["Work instruction", "Shop note"],
  revision: ["Rev no", "Revision no", "Issue", "Drawing rev", "Dwg rev"],
  material: ["Matl", "Mat'l", "Mat", "Material grade", "Grade", "Alloy", "Material spec", "Matl spec"],
  thickness: [
    "Thk",
    "Thick",
    "Th",
    "T",
    "Matl thk",
    "Material thickness",
    "Sheet thickness",
    "Nominal thickness",
    "Ga/Thk",
    "Thk/Ga",
  ],
  quantity: [
    "Total qty",
    "Qty total",
    "Total quantity",
    "Qty req'd",
    "Qty required",
    "No req'd",
    "No required",
    "Number required",
    "No of pieces",
    "No of pcs",
    "Qnty",
    "Pcs",
    "Nos",
    "Pieces",
    "No off",
    "Required",
    "Req'd",
    "Order qty",
    "Order quantity",
    "Count",
  ],
  width: ["Bend len", "Part width", "W", "Wd", "Blank W", "Blank width"],
  flanges: ["Legs", "Outside flanges", "Flange lengths", "L", "Len", "Blank L", "Blank length"],
  bendAngles: ["Bend angle", "Angle"],
  radius: ["Inside radius", "Radius", "IR", "Bend radius"],
  holes: ["No of holes", "Hole count"],
  holeDiameter: ["Hole dia", "Hole size"],
  finish: ["Coating", "Surface"],
  area: ["Zone", "Location"],
  due: ["Due date", "Need by", "Needed by"],
  spares: ["Extras"],
};
/** One alone may be a list of them. */
export const LEG_WORDS = ["leg", "flange", "flg"];
/** "Leg A", "Leg 1", "Flange 2", "Leg3", "FlA": numbered in the order they stand. */
const LEG = /^(?:leg|flange|flg|fl)([a-h1-9])$/;
/** "Angle 1", "Bend angle B". */
const TURN = /^(?:bend)?ang(?:le)?([a-h1-9])$/;
/** Legs and angles are in the order of their letters or numbers, wherever their columns stand. */
export function legOf(title: string): string {
  const word = foldTitle(title.replace(/[([,].*$/, "").replace(/\s+(?:mm|cm|m|in|inch|inches)\.?$/i, ""));
  return (LEG.exec(word) ?? TURN.exec(word))?.[1] ?? "";
}
/** Along the bend, beside columns of the flanges; by itself a flat plate's second side. */
export const BEND_LENGTH = ["length", "l", "len"];
/** Headings of a flat plate's second side: one flange, never a list of them. */
export const PLATE_LENGTH = [...BEND_LENGTH, "blankl", "blanklength"];
/** One that lists use for something else as often: it is taken only where no other column has the name. */
const GAUGE_WORDS = ["gauge", "ga", "gage", "materialgauge", "matlgauge", "sheetgauge", "metalgauge"];

/** The angle between the flanges: 180 less the one the sheet is turned through. */
const INCLUDED = /^(?:included(?:bend)?angles?|inclangles?)$/;

/** A heading as it is compared: letters, digits and "#". */
export const foldTitle = (text: string): string =>
  text
    .slice(0, LONGEST)
    .toLowerCase()
    .replace(/[^a-z0-9#]+/g, "");
const LONGEST = 120;

const RANKS = new Map<string, { readonly key: PartKey; readonly rank: number }>();
// A part's own name comes before the number of its line, whichever of them the bill's table is called by.
const ownFirst = (key: BillKey, words: readonly string[]): string[] => {
  const own = OWN_WORDS[key] ?? [];
  // "Length" beside "Legs" is how long the bend is.
  return key === "flanges" ? [firstOf(words), ...own, ...words.slice(1)] : [...words, ...own];
};
for (const key of BILL_KEYS)
  (key === "part" ? (OWN_WORDS[key] ?? missing()) : ownFirst(key, BILL_COLUMNS[key].headers)).forEach((word, rank) => {
    const folded = foldTitle(word);
    if (!RANKS.has(folded)) RANKS.set(folded, { key, rank });
  });

export interface Meaning {
  readonly key: PartKey;
  /** The smaller, the more certain. */
  readonly rank: number;
  /** As written: "mm", "in"; "ga" where its plain numbers are gauges, "included" of angles; undefined where it names none. */
  readonly unit: string | undefined;
}

const BRACKETS = /^([^([]*)[([]([^)\]]*)[)\]]\s*[.:*]*$/;
/** Said in brackets and changing nothing. */
const HARMLESS = [
  "ea",
  "each",
  "pc",
  "pcs",
  "nos",
  "off",
  "total",
  "nom",
  "nominal",
  "outside",
  "od",
  "os",
  "reqd",
  "typ",
  "pieces",
];
const LAST_WORD = /^(.+?)[\s,]+([a-z"°.]+)$/i;

/** undefined where it is no heading of a part list. */
export function meaningOf(title: string): Meaning | undefined {
  const text = title.replace(/\s+/g, " ").trim().slice(0, LONGEST);
  const bracketed = BRACKETS.exec(text);
  if (bracketed) {
    const [, before = "", inside = ""] = bracketed;
    const found = plainMeaning(before);
    const unit = unitWord(inside.trim());
    if (!found) return undefined;
    if (unit !== undefined) return withUnit(found, unit);
    return HARMLESS.includes(foldTitle(inside)) ? found : undefined;
  }
  const found = plainMeaning(text);
  if (found) return found;
  const [, before = "", last = ""] = LAST_WORD.exec(text) ?? [];
  const unit = unitWord(last);
  const short = unit === undefined ? undefined : plainMeaning(before);
  return short && withUnit(short, unit ?? missing());
}

/** What a person says a column is: "Leg" is one flange. */
export const statedMeaning = (ours: string): Meaning | undefined =>
  meaningOf(ours) ?? (LEG_WORDS.includes(foldTitle(ours)) ? ONE_LEG : undefined);
export const ONE_LEG: Meaning = { key: "legs", rank: 0, unit: undefined };

const rankAfter = (key: BillKey): number => (OWN_WORDS[key] ?? []).length + 2;

function plainMeaning(text: string): Meaning | undefined {
  const word = foldTitle(text);
  if (GAUGE_WORDS.includes(word)) return { key: "thickness", rank: rankAfter("thickness"), unit: "ga" };
  if (INCLUDED.test(word)) return { key: "bendAngles", rank: rankAfter("bendAngles"), unit: "included" };
  if (LEG.test(word)) return ONE_LEG;
  if (TURN.test(word)) return { key: "turns", rank: 0, unit: undefined };
  const found = RANKS.get(word);
  return found && { ...found, unit: undefined };
}

/** A unit makes sense on a figure alone: "Part (mm)" is no column. */
export function withUnit(meaning: Meaning, unit: string): Meaning | undefined {
  const { kind } = BILL_COLUMNS[wholeOf(meaning.key)];
  if (kind === "angles")
    return unit === "deg" || unit === "included"
      ? { ...meaning, unit: unit === "deg" ? meaning.unit : unit }
      : undefined;
  if (unit === "ga") return kind === "thickness" ? { ...meaning, unit } : undefined;
  const isLength = kind === "length" || kind === "lengths" || kind === "thickness";
  return isLength && unitSize(unit, "length") !== undefined ? { ...meaning, unit } : undefined;
}

/** The unit that a word of a heading names. */
export function unitWord(text: string): string | undefined {
  const word = text.trim().toLowerCase().replace(/\.$/, "");
  if (word === '"' || word === "ins") return "in";
  if (word === "'") return "ft";
  if (word === "millimeters" || word === "millimetres" || word === "mms") return "mm";
  if (word === "°" || word === "degrees" || word === "degree" || word === "deg") return "deg";
  if (GAUGE_WORDS.includes(word)) return "ga";
  if (word === "included" || word === "incl") return "included";
  return unitSize(word, "length") === undefined ? undefined : word;
}

/** The unit that any heading names, in brackets or as its last word: "Lg. (mm)", "Side 1, in", "Dev [outside, mm]". */
export function unitOfTitle(title: string): string | undefined {
  const text = title.slice(0, LONGEST);
  const bracketed = /[([]([^)\]]*)/.exec(text)?.[1];
  const words = (bracketed ?? text).split(/[\s,;/_]+/).filter((word) => word !== "");
  return unitWord(words.at(-1) ?? "") ?? (bracketed === undefined ? undefined : unitWord(words[0] ?? ""));
}

/** What the map calls a column. */
export const titleOf = (key: PartKey): string => BILL_COLUMNS[wholeOf(key)].headers[0];
