/** The flat blank: bend lines with their direction, dimensions, grain and the edge that goes to the gauge. */
import { type BentPart, bendLines, checkPart, flatLength } from "../../bill/pictures.ts";
import type { Millimetres } from "../../units/quantity.ts";
import { show, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { dimension } from "./dimension.ts";
import { at, drawing, element, LETTERS, line, type Point, path, polygon, text } from "./svg.ts";

export interface FlatOptions {
  readonly name?: string;
  /** "across": rolling direction square to the bend lines, so along the blank's length. */
  readonly grain?: "across" | "along" | undefined;
  readonly gaugedEnd?: "first" | "last" | undefined;
  /** The strip that is bent in the second direction: its bend lines lie along the blank's length. */
  readonly cross?: BentPart | undefined;
}

export function drawFlat(
  part: BentPart,
  side: Millimetres,
  system: UnitSystem,
  { name = "part", grain, gaugedEnd = "first", cross }: FlatOptions = {},
): string {
  if (part.bends.length > 0) checkPart(part);
  const length = flatLength(part);
  const lines = bendLines(part);
  const width = cross ? flatLength(cross) : side;
  // Both directions of bends are wanted whole; a blank with one is drawn broken where it is long.
  const shown = cross ? width : Math.min(width, length * LONGEST_SHOWN);
  const letter = Math.max(length, shown) / 22;
  const write = (value: number) => show(value, "length", system, 5);
  const levels = inLevels(positions(lines, length), ([from, to]) => write(to - from), letter * 0.8);
  const gaugeX = gaugedEnd === "first" ? 0 : length;
  const direction = (angle: number) => (angle > 0 ? "up" : "down");
  const inWords = (strip: BentPart) =>
    bendLines(strip)
      .map((at, i) => {
        const { angle } = strip.bends[i]!;
        return `${write(at)} (${direction(angle)} ${showNumber(Math.abs(angle))} degrees)`;
      })
      .join(", ");
  const edge = gaugedEnd === "first" ? 1 : 2;
  const second = cross ? ` In the second direction at ${inWords(cross)} from the upper edge.` : "";
  const bends =
    lines.length === 0
      ? "No bends."
      : `Bend lines at ${inWords(part)} from edge 1.${second} Edge ${edge} goes to the gauge first.`;
  return drawing(
    {
      title: `${name}: flat blank`,
      description: `Flat ${write(length)} by ${write(width)}. ${bends} ${grainSays(grain, lines.length === 0)}`,
      box: { left: 0, top: -letter * 1.3 * (levels.length - 1), right: length, bottom: shown },
      margin: letter * 4,
      letter,
    },
    element("rect", { x: 0, y: 0, width: length, height: shown, fill: "none" }),
    ...(cross ? bendLines(cross) : []).flatMap((y, i) => [
      bendLine([0, y], [length, y], cross!.bends[i]!.angle, letter),
      crossLabel(y, length, i, cross!.bends[i]!.angle, letter),
    ]),
    ...lines.flatMap((x, i) => [
      bendLine([x, 0], [x, shown], part.bends[i]!.angle, letter),
      label(x, shown, i, part.bends[i]!.angle, letter),
    ]),
    ...(lines.length === 0 ? [] : levels).flatMap((level, height) =>
      level.map(([from, to]) =>
        dimension([from, 0], [to, 0], letter * (1.2 + height * 1.3), write(to - from), letter * 0.8),
      ),
    ),
    dimension([0, shown], [length, shown], -letter * 1.6, write(length), letter),
    dimension([length, 0], [length, shown], letter * 1.6, write(width), letter),
    shown < width ? breakMark(length, shown * 0.75, letter) : "",
    lines.length === 0 ? "" : gaugeMark(gaugeX, shown, `gauge, edge ${edge}`, letter),
    grain ? grainArrow(length, shown, grain, letter) : "",
  );
}

function grainSays(grain: FlatOptions["grain"], isPlate: boolean): string {
  if (grain === undefined) return "Grain not known.";
  return isPlate ? `Grain along its ${grain === "across" ? "length" : "width"}.` : `Bend lines ${grain} the grain.`;
}

/** A blank longer than this many times its flat length is drawn broken, as drawings of long parts are. */
const LONGEST_SHOWN = 1.2;

/** Two slanted strokes over both edges, with the metal between them left out. */
const breakMark = (length: number, y: number, letter: number): string => {
  const rise = letter * 0.8;
  const zigzag = (at0: number): Point[] => [
    [-letter * 0.4, at0 + rise / 2],
    [length * 0.45, at0],
    [length * 0.5, at0 - rise],
    [length * 0.55, at0 + rise],
    [length + letter * 0.4, at0 - rise / 2],
  ];
  const [above, below] = [zigzag(y - rise), zigzag(y + rise)];
  return [
    polygon([...above, ...below.toReversed()], { class: "paper", fill: "Canvas", stroke: "none" }),
    ...[above, below].map((points) => path(`M ${points.map(([x, y]) => `${at(x)} ${at(y)}`).join(" L ")}`)),
  ].join("");
};

/** Dimensions in as few rows as their figures need to stand beside one another. */
function inLevels(spans: readonly Span[], words: (span: Span) => string, letter: number): Span[][] {
  const levels: { spans: Span[]; end: number }[] = [];
  for (const span of spans) {
    const half = Math.max(words(span).length * letter * 0.6, span[1] - span[0]) / 2;
    const middle = (span[0] + span[1]) / 2;
    const free = levels.find(({ end }) => end <= middle - half + 1e-9);
    if (free) {
      free.spans.push(span);
      free.end = middle + half;
    } else levels.push({ spans: [span], end: middle + half });
  }
  return levels.map(({ spans }) => spans);
}
type Span = readonly [from: number, to: number];

/** Between neighbouring bend lines and edges: what a person marks out with a rule. */
const positions = (lines: readonly number[], length: number): (readonly [number, number])[] => {
  const stops = [0, ...lines, length];
  return stops.slice(1).map((to, i) => [stops[i]!, to] as const);
};

/** Up: long dashes; down: dots. Told apart without colour. */
const bendLine = (from: Point, to: Point, angle: number, letter: number): string =>
  line(from, to, {
    "stroke-dasharray": angle > 0 ? `${at(letter)} ${at(letter / 3)}` : `${at(letter / 12)} ${at(letter / 4)}`,
  });

const label = (x: number, width: number, i: number, angle: number, letter: number): string =>
  text([x + letter * 0.8, width / 2], `${i + 1} ${angle > 0 ? "up" : "down"} ${showNumber(Math.abs(angle))}°`, {
    ...LETTERS,
    transform: `rotate(-90 ${at(x + letter * 0.8)} ${at(width / 2)})`,
    "dominant-baseline": "middle",
  });

/** Letters, so that nobody takes the second direction's bends for the first one's. */
const crossLabel = (y: number, length: number, i: number, angle: number, letter: number): string =>
  text(
    [length * 0.25, y - letter * 0.3],
    `${String.fromCharCode("A".charCodeAt(0) + i)} ${angle > 0 ? "up" : "down"} ${showNumber(Math.abs(angle))}°`,
    LETTERS,
  );

/** Three short strokes against the edge that touches the gauge. */
const gaugeMark = (x: number, width: number, words: string, letter: number): string => {
  const out = x === 0 ? -1 : 1;
  const strokes = [0.25, 0.5, 0.75].map((share): string =>
    line([x + out * letter * 0.8, width * share], [x, width * share], { "stroke-width": letter / 6 }),
  );
  return [
    ...strokes,
    text([x + out * letter * 2.2, width / 2], words, {
      ...LETTERS,
      "font-size": letter * 0.8,
      transform: `rotate(-90 ${at(x + out * letter * 2.2)} ${at(width / 2)})`,
    }),
  ].join("");
};

const grainArrow = (length: number, width: number, grain: "across" | "along", letter: number): string => {
  const centre: Point = [length * 0.12 + letter, width - letter * 1.2];
  const half = letter * 1.5;
  const ends: [Point, Point] =
    grain === "across"
      ? [
          [centre[0] - half, centre[1]],
          [centre[0] + half, centre[1]],
        ]
      : [
          [centre[0], centre[1] - half],
          [centre[0], centre[1] + half],
        ];
  const head = ([x, y]: Point, [fx, fy]: Point): string => {
    const angle = Math.atan2(y - fy, x - fx);
    const barb = (turn: number): string =>
      `${at(x - letter * 0.5 * Math.cos(angle + turn))} ${at(y - letter * 0.5 * Math.sin(angle + turn))}`;
    return path(`M ${barb(0.4)} L ${at(x)} ${at(y)} L ${barb(-0.4)}`);
  };
  return [
    line(ends[0], ends[1]),
    head(ends[1], ends[0]),
    head(ends[0], ends[1]),
    text([centre[0], centre[1] - letter * (grain === "across" ? 0.4 : 1.8)], "grain", {
      ...LETTERS,
      "font-size": letter * 0.8,
    }),
  ].join("");
};

/** The outline alone, 1:1 in millimetres, for a waterjet program: no letters, no bend lines. */
export function outlineTrueSize(length: Millimetres, width: Millimetres, name = "blank"): string {
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
