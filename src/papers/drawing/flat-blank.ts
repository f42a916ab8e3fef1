/** The flat blank: bend lines with their direction, dimensions, grain and the edge that goes to the gauge first. */

import { type BentPart, bendLines, checkPart, flatOfPart } from "../../bill/pictures.ts";
import { itemAt, lastOf, missing } from "../../units/certain.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { show, showMark, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { type Chain, chainBelow, type Dimension, dimension, spread } from "./dimension.ts";
import { type Drawn, FIGURE, type Frame, fitted, Ink, NOTE, scaleSays, THICK, THIN, widthOf } from "./ink.ts";
import { ring } from "./ring.ts";
import { at, drawing, element, type Point, path, polygon } from "./svg.ts";

interface FlatOptions {
  readonly name?: string;
  /** "across": rolling direction square to the bend lines, so along the blank's length; "any": it is cut as it comes. */
  readonly grain?: "across" | "along" | "any" | undefined;
  readonly gaugedEnd?: "first" | "last" | undefined;
  /** The strip that is bent in the second direction: its bend lines lie along the blank's length. */
  readonly cross?: BentPart | undefined;
  /** What is marked: the ends of the bend lines, or of a side of the drawing. */
  readonly fault?: "bend lines" | "across" | "up" | undefined;
  /** Of the picture on paper. */
  readonly frame?: Frame;
}

const FRAME: Frame = { width: 120, height: 56 };
const LARGEST = 1.2; // a small clip is not drawn larger than this
const MOST_HIGH = 24; // mm on paper of a blank with one direction of bends; a longer one is drawn broken
const LEAST_HIGH = 14;

/** Lengths in mm; the blank's length runs across the page, as it lies before the back gauge. */
export function drawFlat(
  part: BentPart,
  side: Millimeters,
  system: UnitSystem,
  { name = "part", grain, gaugedEnd = "first", cross, fault, frame = FRAME }: FlatOptions = {},
): Drawn {
  if (part.bends.length > 0) checkPart(part);
  const length = flatOfPart(part);
  const width = cross ? flatOfPart(cross) : side;
  const lines = bendLines(part);
  // A blank with one direction of bends is as high as it is drawn: only its length can give way.
  const room = cross ? frame : { ...frame, height: Number.POSITIVE_INFINITY };
  const { ink, scale } = fitted(room, Math.min(LARGEST, frame.width / length), (scale) => {
    const ink = new Ink();
    const long = length * scale;
    const high = heightOf(width, scale, cross);
    ink.polygon(
      [
        [0, 0],
        [long, 0],
        [long, high],
        [0, high],
      ],
      THICK,
      0.05,
    );
    for (const [i, y] of (cross ? bendLines(cross) : []).entries()) {
      const { angle } = itemAt((cross ?? missing()).bends, i);
      bendLine(ink, [-OVER, y * scale], [long + OVER, y * scale], angle);
    }
    for (const [i, x] of lines.entries()) {
      const { angle } = itemAt(part.bends, i);
      bendLine(ink, [x * scale, -OVER], [x * scale, high + OVER], angle);
    }
    for (const point of faultEnds(fault, { lines: lines.map((x) => x * scale), long, high })) ring(ink, point);
    labels(
      ink,
      lines.map((x) => x * scale),
      part.bends.map(({ angle }, i) => `${i + 1}: ${bendWords(angle)}`),
    );
    if (lines.length > 0) gaugeMark(ink, gaugedEnd === "first" ? 0 : long, high, gaugedEnd === "first" ? 1 : 2);
    const below = lines.length > 0 ? chainBelow(ink, high, gapsOf([0, ...lines, length], scale, system)) : 0;
    const whole: Dimension = {
      from: [long, high],
      to: [0, high],
      words: showMark(mm(length), system),
      bold: true,
    };
    dimension(ink, whole, below + NEXT_ROW);
    if (cross) {
      const ends = bendLines(cross).map((y) => y * scale);
      column(
        ink,
        [long + OVER, ends],
        cross.bends.map(({ angle }, i) => `${letterOf(i)}: ${bendWords(angle)}`),
      );
      crossGaps(ink, cross, scale, system);
    }
    dimension(
      ink,
      { from: [long, 0], to: [long, high], words: showMark(mm(width), system), bold: true },
      cross ? ink.box.right - long + 3 : 0,
    );
    if (!cross && high < width * scale - SAME_MM) breakMark(ink, long, high * 0.6);
    if (grain && grain !== "any") grainArrow(ink, [long + 11, high + 4], grain);
    return ink;
  });
  const isWhole = Math.abs(heightOf(width, scale, cross) - width * scale) < SAME_MM;
  return {
    svg: ink.svg(`${name}: flat blank`, description({ part, cross, width, grain, gaugedEnd }, system, scale)),
    words: grain === "any" ? [AS_IT_COMES] : [],
    height: ink.height,
    scale: isWhole ? scaleSays(scale) : `length ${scaleSays(scale)}, width not to scale`,
  };
}
const SAME_MM = 1e-6;
const AS_IT_COMES = "grain as it comes";

/** On paper: a blank with one direction of bends is drawn no higher and no lower than can be read. */
const heightOf = (width: number, scale: number, cross: BentPart | undefined): number =>
  cross ? width * scale : Math.min(Math.max(width * scale, LEAST_HIGH), MOST_HIGH);

function faultEnds(
  fault: FlatOptions["fault"],
  { lines, long, high }: { readonly lines: readonly number[]; readonly long: number; readonly high: number },
): Point[] {
  if (fault === "bend lines")
    return lines.flatMap((x): Point[] => [
      [x, 0],
      [x, high],
    ]);
  if (fault === "across")
    return [
      [0, high / 2],
      [long, high / 2],
    ];
  return fault === "up"
    ? [
        [long / 2, 0],
        [long / 2, high],
      ]
    : [];
}

const OVER = 3; // mm that a bend line goes beyond the blank, so that it is not taken for a cut
const NEXT_ROW = 1;

/** What a person marks out with a rule, from one bend line to the next. */
const gapsOf = (stops: readonly number[], scale: number, system: UnitSystem): Chain => ({
  stops: stops.map((stop) => stop * scale),
  words: stops.slice(1).map((stop, i) => showMark(stop - itemAt(stops, i), system).split(" · ")),
});

/** Of the second direction, from the upper edge down. */
function crossGaps(ink: Ink, cross: BentPart, scale: number, system: UnitSystem): void {
  const stops = [0, ...bendLines(cross), flatOfPart(cross)];
  const x = ink.box.right + 3;
  for (const stop of stops) ink.line([x - 1, stop * scale], [x + 1, stop * scale], THIN);
  ink.line([x, 0], [x, lastOf(stops) * scale], THIN);
  const middles = stops.slice(1).map((stop, i) => ((stop + itemAt(stops, i)) / 2) * scale);
  column(
    ink,
    [x, middles],
    stops.slice(1).map((stop, i) => showMark(stop - itemAt(stops, i), system)),
  );
}

/** Right of everything, one below another, moved apart where they would meet and tied to their places by thin lines. */
function column(ink: Ink, [from, at]: readonly [number, readonly number[]], words: readonly string[]): void {
  const spaced = spread(
    at,
    at.map(() => FIGURE * 1.3),
  );
  const up = Math.min(0, spaced[0] ?? 0);
  const x = Math.max(from, ink.box.right) + 3;
  words.forEach((label, i) => {
    const y = itemAt(spaced, i) - up;
    ink.line([from, itemAt(at, i)], [x - 0.6, y], THIN);
    ink.text([x + widthOf(label, FIGURE) / 2, y], label, { bold: true });
  });
}

interface Described {
  readonly part: BentPart;
  readonly cross: BentPart | undefined;
  readonly width: number;
  readonly grain: FlatOptions["grain"];
  readonly gaugedEnd: "first" | "last";
}

function description({ part, cross, width, grain, gaugedEnd }: Described, system: UnitSystem, scale: number): string {
  const write = (value: number) => show(value, "length", system, 5);
  const inWords = (strip: BentPart) =>
    bendLines(strip)
      .map((line, i) => `${write(line)} (${bendWords(itemAt(strip.bends, i).angle, " degrees")})`)
      .join(", ");
  const second = cross ? ` In the second direction at ${inWords(cross)} from the upper edge.` : "";
  const bends =
    part.bends.length === 0
      ? "No bends."
      : `Bend lines at ${inWords(part)} from edge 1.${second} Edge ${gaugedEnd === "first" ? 1 : 2} goes to the gauge first.`;
  const scaled = `Drawn at ${showNumber(scale, 2)} of its length.`;
  return `Flat ${write(flatOfPart(part))} by ${write(width)}. ${bends} ${grainSays(grain, part.bends.length === 0)} ${scaled}`;
}

function grainSays(grain: FlatOptions["grain"], isPlate: boolean): string {
  if (grain === undefined) return "Grain not known.";
  if (grain === "any") return `${AS_IT_COMES.replace("g", "G")}.`;
  return isPlate ? `Grain along its ${grain === "across" ? "length" : "width"}.` : `Bend lines ${grain} the grain.`;
}

const bendWords = (angle: number, unit = "°"): string =>
  `${angle > 0 ? "up" : "down"} ${showNumber(Math.abs(angle))}${unit}`;

/** Letters, so that nobody takes the second direction's bends for the first one's. */
const letterOf = (i: number): string => String.fromCharCode("A".charCodeAt(0) + i);

/** Up: long dashes; down: dots. Told apart without color. */
const bendLine = (ink: Ink, from: Point, to: Point, angle: number): void =>
  ink.line(from, to, THICK / 2, angle > 0 ? "4 1.4" : "0.4 1.2");

/** Above their bend lines, moved apart where they would meet, each tied to its own; upright where there are many. */
function labels(ink: Ink, lines: readonly number[], words: readonly string[]): void {
  const widths = words.map((label) => widthOf(label, FIGURE) + 2);
  const isUpright = widths.reduce((sum, width) => sum + width, 0) > MOST_LABELS;
  const places = spread(lines, isUpright ? widths.map(() => FIGURE * 1.4) : widths);
  words.forEach((label, i) => {
    const from: Point = [itemAt(lines, i), -OVER];
    const to: Point = [itemAt(places, i), -OVER - LEADER];
    ink.line(from, to, THIN);
    const up = isUpright ? itemAt(widths, i) / 2 : FIGURE * 0.7;
    ink.text([to[0], to[1] - up], label, { bold: true, turn: isUpright ? -90 : 0 });
  });
}
const MOST_LABELS = 110; // mm of labels side by side
const LEADER = 2;

/** Blocks against the edge that touches the gauge first. */
function gaugeMark(ink: Ink, x: number, high: number, edge: number): void {
  const out = x === 0 ? -1 : 1;
  const half = Math.min(2.5, high / 6);
  for (const share of [0.25, 0.75]) {
    const y = high * share;
    ink.polygon(
      [
        [x, y - half],
        [x + out * 4, y - half],
        [x + out * 4, y + half],
        [x, y + half],
      ],
      THIN,
      1,
    );
  }
  ink.text([x + out * 7, high / 2], `edge ${edge}`, { size: NOTE, turn: -90 });
}

/** Right of the figures below the blank where there is room, else below everything. */
function grainArrow(ink: Ink, beside: Point, grain: "across" | "along"): void {
  const isRoom = [0, 5, 10].every((down) => ink.isFree([beside[0], beside[1] + down], "grain", { size: FIGURE }));
  const [x, top] = isRoom ? beside : [ink.box.left + 8, ink.box.bottom + NOTE];
  ink.text([x, top], "grain", { size: NOTE });
  const y = top + NOTE + 1.5;
  const [a, b]: [Point, Point] =
    grain === "across"
      ? [
          [x - 6, y],
          [x + 6, y],
        ]
      : [
          [x, y - 0.5],
          [x, y + 9.5],
        ];
  ink.line(a, b, THICK / 2);
  const head = ([px, py]: Point, [qx, qy]: Point): string => {
    const angle = Math.atan2(py - qy, px - qx);
    const barb = (turn: number) => `${at(px - 2.2 * Math.cos(angle + turn))} ${at(py - 2.2 * Math.sin(angle + turn))}`;
    return path(`M ${barb(0.4)} L ${at(px)} ${at(py)} L ${barb(-0.4)}`, { "stroke-width": THICK / 2 });
  };
  ink.add(head(a, b) + head(b, a), []);
}

/** Two slanted strokes over both edges, with the metal between them left out: the side across is not to scale. */
function breakMark(ink: Ink, long: number, y: number): void {
  const zigzag = (middle: number): Point[] => [
    [-2, middle + 1.2],
    [long * 0.46, middle],
    [long * 0.49, middle - 2],
    [long * 0.52, middle + 2],
    [long + 2, middle - 1.2],
  ];
  const [above, below] = [zigzag(y - 1.2), zigzag(y + 1.2)];
  const stroke = (points: readonly Point[]) =>
    path(`M ${points.map(([px, py]) => `${at(px)} ${at(py)}`).join(" L ")}`, { "stroke-width": THIN * 1.5 });
  ink.add(
    polygon([...above, ...below.toReversed()], { class: "paper", fill: "Canvas", stroke: "none" }) +
      stroke(above) +
      stroke(below),
    [],
  );
}

/** The outline alone, 1:1 in millimeters, for a waterjet program: no letters, no bend lines. */
export function outlineTrueSize(length: Millimeters, width: Millimeters, name = "blank"): string {
  return drawing(
    {
      title: `${name}: outline 1:1`,
      description: `Rectangle ${at(length)} by ${at(width)} mm at true size; holes and notches are not in it.`,
      box: { left: 0, top: 0, right: length, bottom: width },
      margin: 0,
      letter: 1,
      trueSize: true,
    },
    element("rect", { x: 0, y: 0, width: length, height: width, fill: "none" }),
  );
}
