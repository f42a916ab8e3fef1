/** One sheet of the waterjet to scale: its blanks with names and sizes as they are laid out, from the corner at the lower left. */

import type { Blank } from "../../bill/lines/blank.ts";
import type { JetSheet } from "../../bill/pictures.ts";
import { entryOf } from "../../units/certain.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { pieceLabel } from "./cut-labels.ts";
import { datumCorner, grainArrow, MARGIN, ROOMS } from "./cut-plan.ts";
import { scaleSays } from "./ink.ts";
import { drawing, element } from "./svg.ts";

interface JetDrawn {
  readonly title: string;
  /** Along which of its sides in the drawing the sheet was rolled; undefined where no blank minds. */
  readonly grain: "w" | "h" | undefined;
  /** A blank's letter in the table below the drawing. */
  readonly keys: ReadonlyMap<string, string>;
  /** Its sizes are written as in the table, whichever way it lies. */
  readonly lineOf: ReadonlyMap<string, { readonly blank: Pick<Blank, "length" | "width"> }>;
}

/** Half as wide as its page: two sheets share one. */
export function drawJetSheet(
  { w, h, placed }: JetSheet,
  { title, grain, keys, lineOf }: JetDrawn,
  system: UnitSystem,
): { readonly svg: string; readonly scale: string } {
  const letter = Math.max(w, h) / ROOMS.half.letters;
  const around = letter + 2 * letter * MARGIN;
  const scale = scaleSays(Math.min(ROOMS.half.width / (w + around), ROOMS.half.height / (h + around)));
  const write = (value: number) => show(value, "length", system, 5);
  const laid = placed.map((one) => ({ ...one, y: h - one.y - one.h }));
  const svg = drawing(
    {
      title: `${title}, ${write(w)} x ${write(h)}`,
      description: `${placed.length} blanks on one sheet, each with its name and size.`,
      box: { left: 0, top: 0, right: w, bottom: h },
      margin: letter * MARGIN,
      letter,
    },
    element("rect", { x: 0, y: 0, width: w, height: h, fill: "none", "stroke-width": letter / 5 }),
    ...laid.map(({ x, y, w: width, h: height }) =>
      element("rect", { x, y, width, height, fill: "none", "stroke-width": letter / 12 }),
    ),
    ...laid.flatMap((region) => {
      const { blank } = region;
      const { length, width } = entryOf(lineOf, blank).blank;
      const out = { id: "", kind: "blank" as const, blank, w: length, h: width };
      const words = { key: entryOf(keys, blank), tag: "" };
      return pieceLabel({ out, count: 1 }, region, words, letter, system).map(({ markup }) => markup);
    }),
    datumCorner(h, "from this corner", letter),
    grain === undefined ? "" : grainArrow(w, h, grain, letter),
  );
  return { svg, scale };
}
