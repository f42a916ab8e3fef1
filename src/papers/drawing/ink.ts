/**
 * A picture in millimeters of paper. The part is scaled, its letters never: they keep the size they are read at. What is
 * drawn takes its place, so that no text lies on another or on a line.
 */
import { firstOf, itemAt } from "../../units/certain.ts";
import { showNumber } from "../../units/show.ts";
import { at, type Box, element, escapeMarkup, LETTERS, line, type Point, polygon, text } from "./svg.ts";

const MM_PER_POINT = 25.4 / 72;
/** Heights of letters, mm: a note, a figure, what is read at arm's length. */
export const NOTE = 8 * MM_PER_POINT;
export const FIGURE = 10 * MM_PER_POINT;
export const LARGE = 13 * MM_PER_POINT;

/** Strokes, mm: the sheet's outline, everything else. */
export const THICK = 0.6;
export const THIN = 0.2;

const LETTER_WIDTH = 0.66; // of its height, the widest of usual sans-serif digits (measured on DejaVu Sans: 0.64)
const BOLD = 1.08; // times as wide
const GROUND_HEIGHT = 0.9; // of a letter's, with what stands below the line
const LINE_TAKES = 0.25; // mm to either side

/** A place that is taken: a line and the room it takes on either side; a letter is a line without length. */
type Spot = readonly [x1: number, y1: number, x2: number, y2: number, radius: number];

export interface Written {
  readonly size?: number;
  /** Degrees the text is turned; it runs from its middle. */
  readonly turn?: number;
  readonly bold?: boolean;
}

export class Ink {
  readonly #parts: string[] = [];
  /** Of the lines. */
  readonly #spots: Spot[] = [];
  readonly #texts: { readonly markup: string; readonly ground: string; readonly spots: readonly Spot[] }[] = [];

  line(from: Point, to: Point, width = THIN, dashes?: string): void {
    this.#parts.push(line(from, to, { "stroke-width": width, "stroke-dasharray": dashes }));
    this.#take(alongLine(from, to, LINE_TAKES + width / 2));
  }

  /** `fill`: how dark, 0 to 1. */
  polygon(corners: readonly Point[], width = THIN, fill = 0): void {
    const filled = fill > 0 ? { fill: "currentColor", "fill-opacity": fill } : {};
    this.#parts.push(polygon(corners, { "stroke-width": width, ...filled }));
    corners.forEach((corner, i) => {
      this.#take(alongLine(corner, itemAt(corners, (i + 1) % corners.length), LINE_TAKES + width / 2));
    });
  }

  /** Markup that takes the place of these points. */
  add(markup: string, taken: readonly Point[], width = THIN): void {
    this.#parts.push(markup);
    taken.slice(1).forEach((to, i) => {
      this.#take(alongLine(itemAt(taken, i), to, LINE_TAKES + width / 2));
    });
  }

  /** Whether a text fits here without touching what is drawn already. */
  isFree(middle: Point, words: string, written: Written = {}): boolean {
    return areFree(lettersAt(middle, words, written), this.#taken);
  }
  isLineFree(from: Point, to: Point): boolean {
    return areFree(alongLine(from, to, LINE_TAKES), this.#taken);
  }

  text(middle: Point, words: string, written: Written = {}): void {
    const { size = FIGURE, turn = 0, bold = false } = written;
    const turned = { transform: turn === 0 ? undefined : `rotate(${at(turn)} ${middle.map(at).join(" ")})` };
    const markup = text(middle, words, {
      ...LETTERS,
      "font-size": size,
      "font-weight": bold ? 700 : undefined,
      "dominant-baseline": "central",
      ...turned,
    });
    const [width, height] = [widthOf(words, size) * (bold ? BOLD : 1), size * GROUND_HEIGHT];
    const place = { x: middle[0] - width / 2, y: middle[1] - height / 2, width, height };
    const ground = element("rect", { ...place, class: "paper", fill: "Canvas", stroke: "none", ...turned });
    this.#texts.push({ markup, ground, spots: lettersAt(middle, words, written) });
  }

  /** At the first of these places that is free; where none is, below the picture, tied to the first by a thin line. */
  textNear(places: readonly Point[], words: string, written: Written = {}): void {
    const free = places.find((one) => this.isFree(one, words, written));
    if (free) {
      this.text(free, words, written);
      return;
    }
    const { size = FIGURE } = written;
    const [x, y] = firstOf(places);
    const below: Point = [x, this.box.bottom + size * 1.2];
    this.line([x, y], [x, below[1] - size * 0.8], THIN);
    this.text(below, words, { ...written, turn: 0 });
  }

  get box(): Box {
    const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
    for (const [x1, y1, x2, y2, r] of this.#taken) {
      box.left = Math.min(box.left, x1 - r, x2 - r);
      box.top = Math.min(box.top, y1 - r, y2 - r);
      box.right = Math.max(box.right, x1 + r, x2 + r);
      box.bottom = Math.max(box.bottom, y1 + r, y2 + r);
    }
    return box;
  }
  get width(): number {
    return this.box.right - this.box.left;
  }
  get height(): number {
    return this.box.bottom - this.box.top;
  }

  /** @param description what a person who cannot see the picture needs to know. */
  svg(title: string, description: string): string {
    const { left, top } = this.box;
    const [width, height] = [this.width, this.height];
    return element(
      "svg",
      {
        xmlns: "http://www.w3.org/2000/svg",
        viewBox: [left, top, width, height].map(at).join(" "),
        width: `${at(width)}mm`,
        height: `${at(height)}mm`,
        role: "img",
        stroke: "currentColor",
        "stroke-linejoin": "round",
        "stroke-linecap": "round",
        "font-family": "system-ui, sans-serif",
        "font-size": FIGURE,
      },
      element("title", {}, escapeMarkup(title)),
      element("desc", {}, escapeMarkup(description)),
      ...this.#parts,
      // A line that has to pass a text is broken there.
      ...this.#texts.flatMap(({ markup, ground, spots }) =>
        areFree(spots, this.#spots) ? [markup] : [ground, markup],
      ),
    );
  }

  #take(spots: readonly Spot[]): void {
    this.#spots.push(...spots);
  }
  get #taken(): readonly Spot[] {
    return [...this.#spots, ...this.#texts.flatMap(({ spots }) => spots)];
  }
}

const areFree = (spots: readonly Spot[], taken: readonly Spot[]): boolean =>
  spots.every((spot) => taken.every((other) => areApart(spot, other)));

const alongLine = ([x1, y1]: Point, [x2, y2]: Point, radius: number): Spot[] => [[x1, y1, x2, y2, radius]];

/** Lines that cross are not apart; else the nearest pair of points has an end of one of them. */
function areApart(a: Spot, b: Spot): boolean {
  const reach = a[4] + b[4];
  if (Math.max(a[0], a[2]) + reach < Math.min(b[0], b[2]) || Math.max(b[0], b[2]) + reach < Math.min(a[0], a[2]))
    return true;
  if (Math.max(a[1], a[3]) + reach < Math.min(b[1], b[3]) || Math.max(b[1], b[3]) + reach < Math.min(a[1], a[3]))
    return true;
  const near =
    endTo(a[0], a[1], b) < reach ||
    endTo(a[2], a[3], b) < reach ||
    endTo(b[0], b[1], a) < reach ||
    endTo(b[2], b[3], a) < reach;
  return !near && !cross(a, b);
}

function endTo(x: number, y: number, [x1, y1, x2, y2]: Spot): number {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / square));
  return Math.hypot(x1 + dx * share - x, y1 + dy * share - y);
}

function cross(a: Spot, b: Spot): boolean {
  const side = ([x1, y1, x2, y2]: Spot, x: number, y: number) => Math.sign((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1));
  return side(a, b[0], b[1]) * side(a, b[2], b[3]) < 0 && side(b, a[0], a[1]) * side(b, a[2], a[3]) < 0;
}

export const widthOf = (words: string, size: number): number => [...words].length * size * LETTER_WIDTH;

function lettersAt([x, y]: Point, words: string, { size = FIGURE, turn = 0 }: Written): Spot[] {
  const radius = size * 0.62; // the height of a letter and its share of the gap above and below
  const half = Math.max(0, widthOf(words, size) / 2 - radius);
  const [c, s] = [half * Math.cos((turn * Math.PI) / 180), half * Math.sin((turn * Math.PI) / 180)];
  return [[x - c, y - s, x + c, y + s, radius]];
}

export interface Frame {
  readonly width: number;
  readonly height: number;
  /** Times true size, where it may be drawn larger than usual. */
  readonly largest?: number;
}

/** A picture of a part. */
export interface Drawn {
  readonly svg: string;
  /** What stands below it. */
  readonly words: readonly string[];
  /** On paper, mm. */
  readonly height: number;
  /** As it is printed, or that it is not to scale. */
  readonly scale: string;
}

/** "1:2.4" */
export const scaleSays = (scale: number): string =>
  scale < 1 ? `1:${showNumber(1 / scale, 2)}` : `${showNumber(scale, 2)}:1`;

/** Drawn as large as its frame allows: what is written beside the part decides how much is left for it. */
export function fitted(frame: Frame, largest: number, draw: (scale: number) => Ink): { ink: Ink; scale: number } {
  let scale = largest;
  for (let tries = 0; ; tries++) {
    const ink = draw(scale);
    const over = Math.max(ink.width / frame.width, ink.height / frame.height);
    if (over <= 1 || tries === MOST_TRIES) return { ink, scale };
    scale /= Math.min(2, 1.02 * over);
  }
}
const MOST_TRIES = 16; // letters alone may need more than the frame; halving ends that
