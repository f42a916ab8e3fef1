import { missing } from "../../units/certain.ts";

/**
 * The few SVG parts that all drawings are made of. Black lines on nothing: readable in print, on light and on dark
 * (currentColor), and by a screen reader (title and desc).
 */
const ESCAPES: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/** Text from a workbook never becomes markup. */
export const escapeMarkup = (text: string): string => text.replace(/[&<>"']/g, (mark) => ESCAPES[mark] ?? missing());

/** Coordinates with three decimals: a thousandth of a millimeter is below any printer. */
export const at = (value: number): string => String(Number(value.toFixed(3)));

type Attributes = Readonly<Record<string, string | number | undefined>>;

const attributesOf = (attributes: Attributes): string =>
  Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => ` ${name}="${escapeMarkup(typeof value === "number" ? at(value) : String(value))}"`)
    .join("");

export const element = (name: string, attributes: Attributes, ...children: string[]): string =>
  children.length === 0
    ? `<${name}${attributesOf(attributes)}/>`
    : `<${name}${attributesOf(attributes)}>${children.join("")}</${name}>`;

export type Point = readonly [x: number, y: number];

export const line = ([x1, y1]: Point, [x2, y2]: Point, attributes: Attributes = {}): string =>
  element("line", { x1, y1, x2, y2, ...attributes });

export const text = ([x, y]: Point, words: string, attributes: Attributes = {}): string =>
  element("text", { x, y, "text-anchor": "middle", ...attributes }, escapeMarkup(words));

export const path = (d: string, attributes: Attributes = {}): string =>
  element("path", { d, fill: "none", ...attributes });

export const polygon = (points: readonly Point[], attributes: Attributes = {}): string =>
  element("polygon", { points: points.map(([x, y]) => `${at(x)},${at(y)}`).join(" "), fill: "none", ...attributes });

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const boxOf = (points: readonly Point[]): Box => ({
  left: Math.min(...points.map(([x]) => x)),
  top: Math.min(...points.map(([, y]) => y)),
  right: Math.max(...points.map(([x]) => x)),
  bottom: Math.max(...points.map(([, y]) => y)),
});

interface Sheet {
  readonly title: string;
  /** What a person who cannot see the drawing needs to know. */
  readonly description: string;
  readonly box: Box;
  readonly margin: number;
  /** Height of letters in the drawing's own units. */
  readonly letter: number;
  /** True size on paper: width and height in mm. */
  readonly trueSize?: true;
}

export function drawing({ title, description, box, margin, letter, trueSize }: Sheet, ...parts: string[]): string {
  const left = box.left - margin;
  const top = box.top - margin;
  const width = box.right - box.left + 2 * margin;
  const height = box.bottom - box.top + 2 * margin;
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: [left, top, width, height].map(at).join(" "),
      width: trueSize ? `${at(width)}mm` : undefined,
      height: trueSize ? `${at(height)}mm` : undefined,
      role: "img",
      stroke: "currentColor",
      "stroke-width": letter / 12,
      "stroke-linejoin": "round",
      "stroke-linecap": "round",
      "font-family": "system-ui, sans-serif",
      "font-size": letter,
    },
    element("title", {}, escapeMarkup(title)),
    element("desc", {}, escapeMarkup(description)),
    ...parts,
  );
}

/** Letters are filled, not stroked. */
export const LETTERS = { fill: "currentColor", stroke: "none" } as const;
