/** Words on the drawing of a cut sheet: what a piece is, and the number and measure of a cut where they cover least. */
import { showPlain } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { CutLine, Ends, LaidPieces, Region } from "./cut-regions.ts";
import { type Box, element, LETTERS, type Point, text } from "./svg.ts";

/** A letter is about this wide for its height, a capital this (measured on DejaVu Sans: digits 0.64, G 0.78). */
const LETTER_WIDTH = 0.64;
const CAPITAL_WIDTH = 0.78;
const WIDE = 1;
const LINE_HEIGHT = 1.2;
/** Of the ink of one line: no sheet has room to give away. */
const INK_HEIGHT = 0.86;
/** Smaller letters cannot be read at the machine: the drawing's are 8 pt or a little more. */
const LEAST_LETTER = 0.94;

const widthOf = (words: string, size: number): number =>
  size *
  [...words].reduce(
    (sum, letter) => sum + (/[MW]/.test(letter) ? WIDE : /[A-Z]/.test(letter) ? CAPITAL_WIDTH : LETTER_WIDTH),
    0,
  );

export interface Label {
  readonly markup: string;
  readonly box: Box;
}

/**
 * "10 x DF-01" and the size below it, in the middle of the pieces; the name alone, or its key, where there is less room; none
 * where not even the key has any: the list of the cuts names what each of them drops.
 */
export function pieceLabel(
  { out, count }: Pick<LaidPieces, "out" | "count">,
  { x, y, w, h }: Region,
  { key, tag }: { readonly key: string; readonly tag: string },
  letter: number,
  system: UnitSystem,
): Label[] {
  if (out.kind !== "blank" && out.kind !== "remnant") return [];
  const name = out.kind === "blank" ? (out.blank ?? "") : `offcut ${tag}`;
  const first = count > 1 ? `${count} x ${name}` : name;
  const second = `${showPlain(out.w, system)} x ${showPlain(out.h, system)}`;
  const tries = [[first, second], [first], [count > 1 ? `${count}${key}` : key], [key]].filter(
    ([words]) => words !== "",
  );
  for (const words of tries)
    for (const upright of h > w ? [true, false] : [false, true]) {
      const [along, across] = upright ? [h, w] : [w, h];
      const longest = Math.max(...words.map((one) => widthOf(one, 1)));
      const size = Math.min(letter, (ROOM * along) / longest, (ROOM * across) / heightOf(words.length));
      if (size >= LEAST_LETTER * letter) return [label(words, x + w / 2, y + h / 2, size, upright)];
    }
  return [];
}

/**
 * The key alone over a piece that has no room for it, at the first place along it where it hides no other words and stays on
 * the sheet; undefined where there is none.
 */
export function keyOver(
  { x, y, w, h }: Region,
  key: string,
  letter: number,
  { sheet, taken }: { readonly sheet: Box; readonly taken: readonly Box[] },
): Label | undefined {
  if (key === "") return undefined;
  return PLACES.flatMap((share) => [
    label([key], x + w * share, y + h / 2, LEAST_LETTER * letter, false),
    label([key], x + w / 2, y + h * share, LEAST_LETTER * letter, false),
  ]).find(({ box }) => isInside(box, sheet) && !taken.some((other) => overlaps(box, other)));
}

/** Of lines below one another, in letters. */
const heightOf = (lines: number): number => (lines - 1) * LINE_HEIGHT + INK_HEIGHT;

const ROOM = 0.94; // of a piece: chosen, so that no letter touches a cut

function label(words: readonly string[], x: number, y: number, size: number, upright: boolean): Label {
  const half: readonly [number, number] = [
    Math.max(...words.map((one) => widthOf(one, size))) / 2,
    (heightOf(words.length) * size) / 2,
  ];
  const [dx, dy] = upright ? [half[1], half[0]] : half;
  const lines = words.map((one, i) =>
    text([x, y + (i - (words.length - 1) / 2) * LINE_HEIGHT * size], one, {
      ...LETTERS,
      "font-size": size,
      "dominant-baseline": "central",
    }),
  );
  const box: Box = { left: x - dx, right: x + dx, top: y - dy, bottom: y + dy };
  // No line runs through the words.
  const ground = element("rect", { x: box.left, y: box.top, width: 2 * dx, height: 2 * dy, ...GROUND });
  const written = upright
    ? element("g", { transform: `rotate(-90 ${rounded(x)} ${rounded(y)})` }, ...lines)
    : lines.join("");
  return { box, markup: ground + written };
}

const GROUND = { class: "paper", fill: "Canvas", stroke: "none" } as const;

export const rounded = (value: number): number => Math.round(value * 10) / 10;

/** Places along a cut where its number may stand, the middle first. */
const PLACES = [
  0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0.03, 0.97,
];
/** The cut with the least room along its strokes is numbered first. */
export const fewestPlaces = (a: CutLine, b: CutLine): number => roomOf(a) - roomOf(b) || a.row.seq - b.row.seq;
const roomOf = ({ ends }: CutLine): number => ends.reduce((sum, stroke) => sum + lengthOf(stroke), 0);
const lengthOf = ([[x1, y1], [x2, y2]]: Ends): number => Math.abs(x2 - x1) + Math.abs(y2 - y1);

/**
 * A cut's number, with what is set where there is room, in a small box on one of its strokes; "" where it would hide a name or
 * another number: what cannot be read is better looked up in the list.
 */
export function cutLabel(
  { row, isFirst }: CutLine,
  ends: readonly Ends[],
  { letter, system, sheet }: { readonly letter: number; readonly system: UnitSystem; readonly sheet: Box },
  names: readonly Box[],
  numbers: Box[],
): string {
  const measured = `${row.seq}: ${showPlain(row.measure, system)}`;
  const hasRoom = (words: string, stroke: Ends) =>
    (stroke[0][1] === stroke[1][1] ? widthOf(words, letter) : letter * LINE_HEIGHT) < lengthOf(stroke);
  const choices =
    isFirst && ends.some((stroke) => hasRoom(measured, stroke)) ? [measured, String(row.seq)] : [String(row.seq)];
  for (const words of choices) {
    const box = places(words, ends, letter).find(
      (place) => isInside(place, sheet) && ![...names, ...numbers].some((other) => overlaps(place, other, letter / 10)),
    );
    if (!box) continue;
    numbers.push(box);
    return numberBox(words, [(box.left + box.right) / 2, (box.top + box.bottom) / 2], letter).markup;
  }
  return "";
}

/** The number in its box, around a point. */
export function numberBox(words: string, [x, y]: Point, letter: number): Label {
  const [dx, dy] = halfOf(words, letter);
  const markup =
    element("rect", {
      x: x - dx,
      y: y - dy,
      width: 2 * dx,
      height: 2 * dy,
      rx: letter / 5,
      class: "paper",
      fill: "Canvas",
      "stroke-width": letter / 24,
    }) + text([x, y], words, { ...LETTERS, "font-size": LEAST_LETTER * letter, "dominant-baseline": "central" });
  return { markup, box: { left: x - dx, right: x + dx, top: y - dy, bottom: y + dy } };
}

export const numberWidth = (words: string, letter: number): number => 2 * halfOf(words, letter)[0];

const halfOf = (words: string, letter: number): Point => [
  widthOf(words, LEAST_LETTER * letter) / 2 + letter * 0.15,
  letter * 0.55,
];

function places(words: string, ends: readonly Ends[], letter: number): Box[] {
  const half = halfOf(words, letter);
  return ends.flatMap(([from, to]) =>
    PLACES.map((share): Box => {
      const [x, y] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      return { left: x - half[0], right: x + half[0], top: y - half[1], bottom: y + half[1] };
    }),
  );
}

const isInside = (box: Box, sheet: Box): boolean =>
  box.left >= sheet.left && box.right <= sheet.right && box.top >= sheet.top && box.bottom <= sheet.bottom;

const overlaps = (a: Box, b: Box, gap = 0): boolean =>
  Math.min(a.right, b.right) + gap > Math.max(a.left, b.left) &&
  Math.min(a.bottom, b.bottom) + gap > Math.max(a.top, b.top);
