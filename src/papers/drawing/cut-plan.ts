/**
 * One pattern of a cut plan: the sheet to scale, blanks with their names, remnants hatched, trims and scrap grey, every cut
 * a numbered line. Drawn from the cuts alone, so what is seen is what is cut. Datum edges at the left and at the bottom.
 */
import type { Cut, PieceOut, PlannedPattern } from "../../bill/pictures.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { type Box, drawing, element, LETTERS, line, type Point, path, text } from "./svg.ts";

/** A part of the sheet; y upwards from the datum edge. */
interface Region {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

type Ends = readonly [Point, Point];

interface CutLine {
  readonly seq: number;
  /** Of each stroke. */
  readonly ends: readonly Ends[];
}

/** @param sheet what the sheet is called in Stock. */
export function drawPattern(pattern: PlannedPattern, cuts: readonly Cut[], sheet: string, system: UnitSystem): string {
  const { w, h, yields } = pattern;
  const letter = Math.max(w, h) / 75;
  const { pieces, lines } = followCuts(pattern, cuts);
  const flip = ({ x, y, w: width, h: height }: Region): Region => ({ x, y: h - y - height, w: width, h: height });
  const labels = pieces.flatMap(({ out, region }) => labelOf(nameOf(out), flip(region), letter));
  const names = labels.map(({ box }) => box);
  const numbers: Box[] = [];
  const write = (value: number) => show(value, "length", system, 5);
  return drawing(
    {
      title: `${patternTitle(pattern, sheet)}, ${write(w)} x ${write(h)}`,
      description: `Each sheet gives ${yields.map(({ blank, count }) => `${count} x ${blank}`).join(", ")} in ${lines.length} cuts, numbered as in the cut list.`,
      box: { left: 0, top: 0, right: w, bottom: h },
      margin: letter,
      letter,
    },
    ...pieces.map(({ out, region }) => pieceShape(out, flip(region), letter)),
    ...lines.flatMap(({ ends }) => ends.map(([[x1, y1], [x2, y2]]) => line([x1, h - y1], [x2, h - y2]))),
    element("rect", { x: 0, y: 0, width: w, height: h, fill: "none", "stroke-width": letter / 5 }),
    ...labels.map(({ markup }) => markup),
    ...[...lines].sort(fewestPlaces).map(({ seq, ends }) => {
      const onPaper = ends.map(
        ([[x1, y1], [x2, y2]]): Ends => [
          [x1, h - y1],
          [x2, h - y2],
        ],
      );
      return cutNumber(String(seq), onPaper.reverse(), letter, names, numbers);
    }),
  );
}

/** "Pattern 3: cut 2 sheets of Plate 3/16". */
export const patternTitle = ({ id, repeats }: PlannedPattern, sheet: string): string =>
  `Pattern ${id}: cut ${repeats} ${repeats === 1 ? "sheet" : "sheets"} of ${sheet}`;

const nameOf = ({ kind, blank, id }: PieceOut): string =>
  kind === "blank" ? (blank ?? "") : kind === "remnant" ? `remnant ${id}` : "";

/** Cuts the sheet on paper: what drops lies at the datum side, what stays on the table beyond it. */
function followCuts(pattern: PlannedPattern, cuts: readonly Cut[]) {
  const whole: Region = { x: 0, y: 0, w: pattern.w, h: pattern.h };
  const regions = new Map<string, Region>([[pattern.id, whole]]);
  const outs = new Map<string, PieceOut>();
  const lines: CutLine[] = [];
  for (const cut of cuts) {
    const region = regions.get(cut.piece);
    if (!region) continue;
    regions.delete(cut.piece);
    let rest = region;
    const ends = cut.falls.map((fall): Ends => {
      const [off, left] = split(rest, cut.axis, fall[cut.axis]);
      regions.set(fall.id, off);
      outs.set(fall.id, fall);
      rest = left;
      const end: Point = cut.axis === "w" ? [left.x, left.y + left.h] : [left.x + left.w, left.y];
      return [[left.x, left.y], end];
    });
    regions.set(cut.stays.id, rest);
    outs.set(cut.stays.id, cut.stays);
    lines.push({ seq: cut.seq, ends });
  }
  // A blank that is the whole sheet needs no cut.
  const uncut: PieceOut = {
    id: pattern.id,
    kind: "blank",
    w: pattern.w,
    h: pattern.h,
    blank: pattern.yields[0]?.blank ?? "",
  };
  const pieces = [...regions].map(([id, region]) => ({ out: outs.get(id) ?? uncut, region }));
  return { pieces, lines };
}

function split({ x, y, w, h }: Region, axis: "w" | "h", extent: number): [Region, Region] {
  return axis === "w"
    ? [
        { x, y, w: extent, h },
        { x: x + extent, y, w: w - extent, h },
      ]
    : [
        { x, y, w, h: extent },
        { x, y: y + extent, w, h: h - extent },
      ];
}

function pieceShape({ kind }: PieceOut, { x, y, w, h }: Region, letter: number): string {
  const scrap = kind !== "blank" && kind !== "remnant";
  const box = element("rect", {
    x,
    y,
    width: w,
    height: h,
    fill: scrap ? "currentColor" : "none",
    "fill-opacity": scrap ? 0.15 : undefined,
    "stroke-width": letter / 24,
  });
  return kind === "remnant" ? box + hatch({ x, y, w, h }, letter * 1.5) : box;
}

/** Slanted lines as one path: a pattern fill is printed as thousands of small pictures. */
function hatch({ x, y, w, h }: Region, gap: number): string {
  const strokes: string[] = [];
  for (let d = gap; d < w + h; d += gap) {
    const from: Point = d <= h ? [x, y + d] : [x + d - h, y + h];
    const to: Point = d <= w ? [x + d, y] : [x + w, y + d - w];
    strokes.push(`M${from.map(round).join(" ")}L${to.map(round).join(" ")}`);
  }
  return path(strokes.join(""), { "stroke-width": gap / 40 });
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** A letter is about this wide for its height. */
const LETTER_WIDTH = 0.6;
/** Smaller letters than this share of the drawing's are not drawn. */
const LEAST_LETTER = 0.45;

/** The name in the middle of a piece, turned upright where that gives more room, left out where it cannot be read. */
function labelOf(words: string, { x, y, w, h }: Region, letter: number): { markup: string; box: Box }[] {
  if (words === "") return [];
  const upright = h > w && w < words.length * letter * LETTER_WIDTH;
  const [along, across] = upright ? [h, w] : [w, h];
  const size = Math.min(letter, (0.9 * along) / (words.length * LETTER_WIDTH), 0.8 * across);
  if (size < LEAST_LETTER * letter) return [];
  const middle: Point = [x + w / 2, y + h / 2];
  const half: Point = [(words.length * LETTER_WIDTH * size) / 2, size / 2];
  const [dx, dy] = upright ? [half[1], half[0]] : half;
  return [
    {
      box: { left: middle[0] - dx, right: middle[0] + dx, top: middle[1] - dy, bottom: middle[1] + dy },
      markup: text(middle, words, {
        ...LETTERS,
        "font-size": size,
        "dominant-baseline": "central",
        transform: upright ? `rotate(-90 ${round(middle[0])} ${round(middle[1])})` : undefined,
      }),
    },
  ];
}

/** Places along a cut where its number may stand, the middle first. */
const PLACES = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.03, 0.97];

/** A number hidden by another cannot be read; a name still can with a number on it. */
const OVER_A_NUMBER = 100;

/** What has the least room along its strokes is numbered first. */
const fewestPlaces = (a: CutLine, b: CutLine): number => roomOf(a) - roomOf(b) || a.seq - b.seq;
const roomOf = ({ ends }: CutLine): number =>
  ends.reduce((sum, [[x1, y1], [x2, y2]]) => sum + Math.abs(x2 - x1) + Math.abs(y2 - y1), 0);

/** A cut's number in a small box on one of its strokes, the last if all are free: where it covers least of what stands there. */
function cutNumber(
  words: string,
  ends: readonly Ends[],
  letter: number,
  names: readonly Box[],
  numbers: Box[],
): string {
  const size = letter * 0.7;
  const half: Point = [(words.length * LETTER_WIDTH * size) / 2 + size * 0.2, size * 0.6];
  const boxes = ends.flatMap(([from, to]) =>
    PLACES.map((share): Box => {
      const [x, y] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
      return { left: x - half[0], right: x + half[0], top: y - half[1], bottom: y + half[1] };
    }),
  );
  const overlaps = (box: Box, others: readonly Box[]) => others.reduce((sum, other) => sum + overlap(box, other), 0);
  const covered = boxes.map((box) => overlaps(box, names) + OVER_A_NUMBER * overlaps(box, numbers));
  const { left, right, top, bottom } = boxes[covered.indexOf(Math.min(...covered))]!;
  numbers.push({ left, right, top, bottom });
  return (
    element("rect", {
      x: left,
      y: top,
      width: right - left,
      height: bottom - top,
      rx: size / 5,
      class: "paper",
      fill: "Canvas",
      "stroke-width": letter / 24,
    }) +
    text([(left + right) / 2, (top + bottom) / 2], words, {
      ...LETTERS,
      "font-size": size,
      "dominant-baseline": "central",
    })
  );
}

function overlap(a: Box, b: Box): number {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return across > 0 && down > 0 ? across * down : 0;
}
