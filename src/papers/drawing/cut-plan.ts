/**
 * One pattern of a cut plan: the sheet to scale, blanks with their names and sizes, offcuts hatched, trims and scrap gray,
 * every row of the list a numbered line with what is set. Drawn from the cuts alone, so what is seen is what is cut. Datum
 * edges at the left and at the bottom.
 */
import type { CutListRow, PieceOut, PlannedPattern } from "../../bill/pictures.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { cutLabel, fewestPlaces, keyOver, type Label, pieceLabel, rounded } from "./cut-labels.ts";
import { type CutLine, type Ends, followCuts, type LaidPieces, type Region } from "./cut-regions.ts";
import { edgeLabels, isThrough } from "./edge-labels.ts";
import { scaleSays } from "./ink.ts";
import { type Box, drawing, element, LETTERS, line, type Point, path, text } from "./svg.ts";

export interface SheetDrawn {
  /** What the sheet is called in Stock, and along which of its sides in the drawing it was rolled. */
  readonly name: string;
  readonly grain: "w" | "h";
  /** What the edges at the datum corner are: as rolled, trimmed or sheared before. */
  readonly edges: string;
  /** A blank's letter in the table beside the drawing, and the tag of an offcut by its piece. */
  readonly keys: ReadonlyMap<string, string>;
  readonly tags: ReadonlyMap<string, string>;
  /** How large it is printed: as wide as its page where nothing is said. */
  readonly room?: Room;
}

/** What the paper gives a drawing, mm, and how many letters of 8 pt and more (10 on a wide page) go along it. */
export const ROOMS = {
  whole: { width: 191.9, height: 106, letters: 58 },
  /** Of a sheet with few cuts, so that two share a page; what its edges are stands above it. */
  half: { width: 191.9 / 2, height: 106, letters: 29 },
  /** A page of its own, the long side across, for a sheet with many cuts: their list stands on the next. */
  wide: { width: 255.4, height: 132, letters: 68 },
} as const;
export type Room = keyof typeof ROOMS;
/** Those that go to the numbers at the right. */
const EDGE_LETTERS = 7;
/** Room below the sheet for datum and grain, in letters. */
export const MARGIN = 2;

export function drawPattern(
  pattern: PlannedPattern,
  rows: readonly CutListRow[],
  sheet: SheetDrawn,
  system: UnitSystem,
): { readonly svg: string; readonly scale: string } {
  const { w, h, yields } = pattern;
  const { pieces, lines } = followCuts(pattern, rows);
  const isWider = lines.some((cut) => isThrough(cut) && cut.row.axis === "h");
  const room = ROOMS[sheet.room ?? "whole"];
  const letter = Math.max(w, h) / (room.letters - (isWider ? EDGE_LETTERS : 0));
  const edges = edgeLabels(lines, { w, h, letter, system });
  const flip = (region: Region): Region => ({ ...region, y: h - region.y - region.h });
  const keyOf = ({ out }: LaidPieces) => sheet.keys.get(out.blank ?? "") ?? "";
  const labels: Label[] = [];
  const bare: LaidPieces[] = [];
  const named = new Set<string | undefined>();
  for (const laid of pieces) {
    const words = { key: keyOf(laid), tag: sheet.tags.get(laid.out.id) ?? "" };
    const found = pieceLabel(laid, flip(laid.region), words, letter, system);
    if (found.length > 0) named.add(laid.out.blank);
    else bare.push(laid);
    labels.push(...found);
  }
  // Small pieces: first those of which none is named yet.
  for (const laid of bare.toSorted((a, b) => Number(named.has(a.out.blank)) - Number(named.has(b.out.blank)))) {
    const whole = { left: 0, top: 0, right: w, bottom: h };
    const over = keyOver(flip(laid.region), keyOf(laid), letter, { sheet: whole, taken: labels.map(({ box }) => box) });
    if (over) labels.push(over);
  }
  const names = labels.map(({ box }) => box);
  const numbers: Box[] = edges.labels.map(({ box }) => box);
  const write = (value: number) => show(value, "length", system, 5);
  const box = around({ left: 0, top: 0, right: w, bottom: h + MARGIN * letter }, edges.labels);
  const [width, height] = [box.right - box.left + letter, box.bottom - box.top + letter];
  const scale = scaleSays(Math.min(room.width / width, room.height / height));
  const svg = drawing(
    {
      title: `${patternTitle(pattern, sheet.name)}, ${write(w)} x ${write(h)}`,
      description: `Each sheet gives ${yields.map(({ blank, count }) => `${count} x ${blank}`).join(", ")} in ${rows.length} rows of the cut list, numbered as there.`,
      box,
      margin: letter / 2,
      letter,
    },
    ...pieces.flatMap(({ out, each }) => each.map((region) => pieceShape(out, flip(region), letter))),
    ...lines.flatMap(({ row, ends }) =>
      ends.map(([[x1, y1], [x2, y2]]) => line([x1, h - y1], [x2, h - y2], { "data-cut": row.seq })),
    ),
    element("rect", { x: 0, y: 0, width: w, height: h, fill: "none", "stroke-width": letter / 5 }),
    ...edges.leaders,
    ...labels.map(({ markup }) => markup),
    ...edges.labels.map(({ markup }) => markup),
    ...inOneLine(lines.filter((cut) => !isThrough(cut)))
      .sort(fewestPlaces)
      .map((cut) => {
        const onPaper = cut.ends.map(
          ([[x1, y1], [x2, y2]]): Ends => [
            [x1, h - y1],
            [x2, h - y2],
          ],
        );
        return cutLabel(
          cut,
          onPaper.reverse(),
          { letter, system, sheet: { left: 0, top: 0, right: w, bottom: h } },
          names,
          numbers,
        );
      }),
    datumCorner(h, sheet.room === "half" ? "datum corner" : `datum corner: ${sheet.edges}`, letter),
    grainArrow(w, h, sheet.grain, letter),
  );
  return { svg, scale };
}
const around = (sheet: Box, labels: readonly Label[]): Box => ({
  left: Math.min(sheet.left, ...labels.map(({ box }) => box.left)),
  top: Math.min(sheet.top, ...labels.map(({ box }) => box.top)),
  right: Math.max(sheet.right, ...labels.map(({ box }) => box.right)),
  bottom: Math.max(sheet.bottom, ...labels.map(({ box }) => box.bottom)),
});

/** The same cut in pieces side by side is one line to the eye, and numbered once. */
function inOneLine(lines: readonly CutLine[]): CutLine[] {
  const found = new Map<string, CutLine>();
  for (const cut of lines) {
    const along = cut.ends.map(([[x1, y1], [x2]]) => (x1 === x2 ? `x${rounded(x1)}` : `y${rounded(y1)}`));
    const key = [cut.row.seq, ...along].join();
    const before = found.get(key);
    found.set(key, before ? { ...before, ends: [...before.ends, ...cut.ends] } : cut);
  }
  return [...found.values()];
}

/** "Pattern 3: cut 2 sheets of Plate 3/16". */
export const patternTitle = ({ id, repeats }: PlannedPattern, sheet: string): string =>
  `Pattern ${id}: cut ${repeats} ${repeats === 1 ? "sheet" : "sheets"} of ${sheet}`;

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
    strokes.push(`M${from.map(rounded).join(" ")}L${to.map(rounded).join(" ")}`);
  }
  return path(strokes.join(""), { "stroke-width": gap / 40 });
}

/** The corner from which everything is measured, marked outside the sheet. */
export const datumCorner = (h: number, words: string, letter: number): string =>
  path(`M${rounded(-letter / 4)} ${rounded(h - 2 * letter)}V${rounded(h + letter / 4)}H${rounded(2 * letter)}`, {
    "stroke-width": letter / 2,
  }) + text([0, h + 1.3 * letter], words, { ...LETTERS, "font-size": letter, "text-anchor": "start" });

export function grainArrow(w: number, h: number, grain: "w" | "h", letter: number): string {
  const y = h + 1.1 * letter;
  const words = `grain ${grain === "w" ? "this way" : "up and down"}`;
  const [x1, x2] = [w - 6 * letter, w - (grain === "w" ? 0 : letter / 2)];
  const [top, bottom] = [h + 0.3 * letter, h + 1.9 * letter];
  const arrow =
    grain === "w"
      ? `M${x1} ${y}H${x2}M${x1 + letter / 2} ${y - letter / 3}L${x1} ${y}L${x1 + letter / 2} ${y + letter / 3}M${x2 - letter / 2} ${y - letter / 3}L${x2} ${y}L${x2 - letter / 2} ${y + letter / 3}`
      : `M${x2} ${top}V${bottom}M${x2 - letter / 3} ${top + letter / 2}L${x2} ${top}L${x2 + letter / 3} ${top + letter / 2}M${x2 - letter / 3} ${bottom - letter / 2}L${x2} ${bottom}L${x2 + letter / 3} ${bottom - letter / 2}`;
  return (
    path(arrow, { "stroke-width": letter / 8 }) +
    text([(grain === "w" ? x1 : x2) - letter / 2, h + 1.3 * letter], words, {
      ...LETTERS,
      "font-size": letter,
      "text-anchor": "end",
    })
  );
}
