/**
 * The plan as one SVG: every pattern's sheet to one scale, blanks labelled, remnants hatched, trims and scrap dotted, every
 * cut a numbered line. Black on white, so that it survives a copier. Drawn from the cuts alone: what is seen is what is
 * cut, the datum edges at the left and at the bottom.
 */
import type { Cut, PieceOut, Plan, PlannedPattern } from "./types.ts";

interface Region {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Drawing sizes in SVG units. */
const SHEET_LENGTH = 900;
const MARGIN = 24;
const CAPTION = 30;
const TEXT = 11;

export function drawPlan(plan: Pick<Plan, "patterns" | "cuts">): string {
  const longest = Math.max(1, ...plan.patterns.map(({ w, h }) => Math.max(w, h)));
  const scale = SHEET_LENGTH / longest;
  let top = MARGIN;
  const sheets = plan.patterns.map((pattern) => {
    const drawn = drawSheet(pattern, plan.cuts, scale, top);
    top += pattern.h * scale + CAPTION + MARGIN;
    return drawn;
  });
  const width = number(SHEET_LENGTH + 2 * MARGIN);
  const height = number(Math.max(top, 2 * MARGIN));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" font-family="sans-serif" font-size="${TEXT}">`,
    `<title>Cut plan: ${plan.patterns.length} patterns</title>`,
    `<defs><pattern id="rest" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V8" stroke="#000" stroke-width="0.8"/></pattern>`,
    `<pattern id="waste" width="6" height="6" patternUnits="userSpaceOnUse"><circle cx="3" cy="3" r="0.8"/></pattern></defs>`,
    ...sheets,
    "</svg>",
  ].join("\n");
}

function drawSheet(pattern: PlannedPattern, cuts: readonly Cut[], scale: number, top: number): string {
  const regions = new Map<string, Region>([[pattern.id, { x: 0, y: 0, w: pattern.w, h: pattern.h }]]);
  const pieces: { out: PieceOut; region: Region }[] = [];
  const lines: string[] = [];
  const toX = (x: number) => number(MARGIN + x * scale);
  const toY = (y: number) => number(top + CAPTION + (pattern.h - y) * scale);
  for (const cut of cuts) {
    const region = regions.get(cut.piece);
    if (!region) continue;
    regions.delete(cut.piece);
    let rest = region;
    for (const fall of cut.falls) {
      const [off, left] = split(rest, cut.axis, fall[cut.axis]);
      regions.set(fall.id, off);
      pieces.push({ out: fall, region: off });
      rest = left;
      const [x1, y1] = [left.x, left.y];
      const [x2, y2] = cut.axis === "w" ? [x1, y1 + left.h] : [x1 + left.w, y1];
      lines.push(`<path d="M${toX(x1)} ${toY(y1)}L${toX(x2)} ${toY(y2)}" stroke="#000" stroke-width="1"/>`);
    }
    const at = cut.axis === "w" ? [rest.x, rest.y + rest.h / 2] : [rest.x + rest.w / 2, rest.y];
    lines.push(mark(String(cut.seq), toX(at[0]!), toY(at[1]!)));
    regions.set(cut.stays.id, rest);
    pieces.push({ out: cut.stays, region: rest });
  }
  const fills = pieces
    .filter(({ out }) => regions.has(out.id) && out.kind !== "part")
    .map(({ out, region }) => {
      const fill = out.kind === "blank" ? "#fff" : out.kind === "remnant" ? "url(#rest)" : "url(#waste)";
      const box = `<rect x="${toX(region.x)}" y="${toY(region.y + region.h)}" width="${number(region.w * scale)}" height="${number(region.h * scale)}" fill="${fill}" stroke="#000" stroke-width="0.5"/>`;
      const name = out.kind === "blank" ? (out.blank ?? "") : out.kind === "remnant" ? `rest ${out.id}` : "";
      return box + label(name, region, scale, toX(region.x + region.w / 2), toY(region.y + region.h / 2));
    });
  const caption = `Pattern ${pattern.id}: ${pattern.repeats} x ${pattern.stock}, ${sizeText(pattern)}`;
  return [
    `<g><text x="${MARGIN}" y="${number(top + CAPTION - 10)}" font-weight="bold">${escaped(caption)}</text>`,
    ...fills,
    `<rect x="${MARGIN}" y="${number(top + CAPTION)}" width="${number(pattern.w * scale)}" height="${number(pattern.h * scale)}" fill="none" stroke="#000" stroke-width="2"/>`,
    ...(pieces.length === 0
      ? [
          label(
            wholeBlank(pattern),
            { x: 0, y: 0, w: pattern.w, h: pattern.h },
            scale,
            toX(pattern.w / 2),
            toY(pattern.h / 2),
          ),
        ]
      : []),
    ...lines,
    "</g>",
  ].join("\n");
}

const wholeBlank = ({ yields }: PlannedPattern): string => yields[0]?.blank ?? "";

const sizeText = ({ w, h }: PlannedPattern): string => `${number(w)} x ${number(h)} mm`;

/** What falls lies at the datum side, the rest beyond it. */
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

/** A cut's number in a small white box on its line. */
function mark(text: string, x: number, y: number): string {
  const width = 4 + 5.5 * text.length;
  return `<rect x="${number(x - width / 2)}" y="${number(y - 6)}" width="${number(width)}" height="12" rx="2" fill="#fff" stroke="#000" stroke-width="0.6"/><text x="${x}" y="${number(y + 3.2)}" font-size="9" text-anchor="middle">${text}</text>`;
}

/** The name in the middle, turned upright where the piece is narrow, left out where it cannot be read. */
function label(text: string, { w, h }: Region, scale: number, x: number, y: number): string {
  const length = text.length * TEXT * 0.6;
  const along = Math.max(w, h) * scale;
  const across = Math.min(w, h) * scale;
  if (text === "" || across < TEXT) return "";
  const size = Math.min(TEXT, (TEXT * along) / (length + 4));
  if (size < 5) return "";
  const upright = h > w && w * scale < length;
  const turn = upright ? ` transform="rotate(-90 ${x} ${y})"` : "";
  return `<text x="${x}" y="${number(y + size * 0.35)}" font-size="${number(size)}" text-anchor="middle" stroke="#fff" stroke-width="3" paint-order="stroke"${turn}>${escaped(text)}</text>`;
}

const number = (value: number): number => Math.round(value * 100) / 100;

const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};
const escaped = (text: string): string => text.replace(/[&<>"']/g, (letter) => ESCAPES[letter] ?? "");
