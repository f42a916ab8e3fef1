/**
 * A picture in millimetres of paper. The part is scaled, its letters never: they keep the size they are read at. What is
 * drawn takes its place, so that no text lies on another or on a line.
 */
import { type Box, element, escapeMarkup, LETTERS, line, type Point, polygon, text } from "./svg.ts";

const MM_PER_POINT = 25.4 / 72;
/** Heights of letters, mm: a note, a figure, what is read at arm's length. */
export const NOTE = 8 * MM_PER_POINT;
export const FIGURE = 10 * MM_PER_POINT;
export const LARGE = 13 * MM_PER_POINT;

/** Strokes, mm: the sheet's outline, everything else. */
export const THICK = 0.6;
export const THIN = 0.2;

const LETTER_WIDTH = 0.66; // of its height, the widest of usual sans-serif digits (measured on DejaVu Sans: 0.64)
const STEP = 0.9; // mm between the spots that a line takes
const LINE_TAKES = 0.25; // mm to either side

/** A round place that is taken. */
type Spot = readonly [x: number, y: number, radius: number];

export interface Written {
  readonly size?: number;
  /** Degrees the text is turned; it runs from its middle. */
  readonly turn?: number;
  readonly bold?: boolean;
}

export class Ink {
  readonly #parts: string[] = [];
  readonly #spots: Spot[] = [];

  line(from: Point, to: Point, width = THIN, dashes?: string): void {
    this.#parts.push(line(from, to, { "stroke-width": width, "stroke-dasharray": dashes }));
    this.#take(alongLine(from, to, LINE_TAKES + width / 2));
  }

  /** `fill`: how dark, 0 to 1. */
  polygon(corners: readonly Point[], width = THIN, fill = 0): void {
    const filled = fill > 0 ? { fill: "currentColor", "fill-opacity": fill } : {};
    this.#parts.push(polygon(corners, { "stroke-width": width, ...filled }));
    corners.forEach((corner, i) => {
      this.#take(alongLine(corner, corners[(i + 1) % corners.length]!, LINE_TAKES + width / 2));
    });
  }

  /** Markup that takes the place of these points. */
  add(markup: string, taken: readonly Point[], width = THIN): void {
    this.#parts.push(markup);
    taken.slice(1).forEach((to, i) => {
      this.#take(alongLine(taken[i]!, to, LINE_TAKES + width / 2));
    });
  }

  /** Whether a text fits here without touching what is drawn already. */
  isFree(middle: Point, words: string, written: Written = {}): boolean {
    return this.#areFree(lettersAt(middle, words, written));
  }
  isLineFree(from: Point, to: Point): boolean {
    return this.#areFree(alongLine(from, to, LINE_TAKES));
  }

  text(middle: Point, words: string, written: Written = {}): void {
    const { size = FIGURE, turn = 0, bold = false } = written;
    this.#parts.push(
      text(middle, words, {
        ...LETTERS,
        "font-size": size,
        "font-weight": bold ? 700 : undefined,
        "dominant-baseline": "central",
        transform: turn === 0 ? undefined : `rotate(${Number(turn.toFixed(3))} ${middle.map(round).join(" ")})`,
      }),
    );
    this.#take(lettersAt(middle, words, written));
  }

  /** The first of these places that is free, or else the last one. */
  textNear(places: readonly Point[], words: string, written: Written = {}): Point {
    const place = places.find((one) => this.isFree(one, words, written)) ?? places.at(-1)!;
    this.text(place, words, written);
    return place;
  }

  get box(): Box {
    const of = (pick: (spot: Spot) => number) => this.#spots.map(pick);
    return {
      left: Math.min(...of(([x, , r]) => x - r)),
      top: Math.min(...of(([, y, r]) => y - r)),
      right: Math.max(...of(([x, , r]) => x + r)),
      bottom: Math.max(...of(([, y, r]) => y + r)),
    };
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
        viewBox: [left, top, width, height].map(round).join(" "),
        width: `${round(width)}mm`,
        height: `${round(height)}mm`,
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
    );
  }

  #take(spots: readonly Spot[]): void {
    this.#spots.push(...spots);
  }
  #areFree(spots: readonly Spot[]): boolean {
    return spots.every(([x, y, r]) => this.#spots.every(([u, v, s]) => (x - u) ** 2 + (y - v) ** 2 >= (r + s) ** 2));
  }
}

const round = (value: number): string => String(Number(value.toFixed(3)));

function alongLine(from: Point, to: Point, radius: number): Spot[] {
  const count = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / STEP));
  return Array.from({ length: count + 1 }, (_, i): Spot => {
    const share = i / count;
    return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share, radius];
  });
}

export const widthOf = (words: string, size: number): number => [...words].length * size * LETTER_WIDTH;

function lettersAt([x, y]: Point, words: string, { size = FIGURE, turn = 0 }: Written): Spot[] {
  const radius = size * 0.62; // the circle about a letter and its share of the gap above and below
  const half = Math.max(0, widthOf(words, size) / 2 - radius);
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const count = Math.max(1, Math.ceil((2 * half) / radius));
  return Array.from({ length: count + 1 }, (_, i): Spot => {
    const along = -half + (2 * half * i) / count;
    return [x + c * along, y + s * along, radius];
  });
}

export interface Frame {
  readonly width: number;
  readonly height: number;
}

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
