/** The first piece of a line: what it should measure, with room to write, on the sheet it is bent by. */
import type { LinePlan } from "../bill/lines/plan-line.ts";
import { bentStrips, type Strip } from "../bill/nouns/line.ts";
import { show, showNumber, showReading } from "../units/show.ts";
import { type UnitSystem, unitName } from "../units/system.ts";
import { bendName } from "./back-gauge.ts";
import { BLANK, BOX, text } from "./page.ts";

type Measured = readonly [what: string, wanted: string];

export function firstPiece({ line, blank, bend }: LinePlan, system: UnitSystem): string {
  const length = (value: number) => showReading(value, system);
  const bare = (words: string) => words.replace(/ \S+$/, "");
  const allowed = line.tolerance === undefined ? "" : ` ± ${bare(show(line.tolerance, "length", system, 2))}`;
  // Letters, as in the drawing of the flat, so that nobody takes the second direction for the first.
  const strip = ({ flanges, angles }: Strip, name: (i: number) => string): Measured[] => [
    ...flanges.map((flange, i): Measured => [`flange ${name(i)}`, `${bare(length(flange))}${allowed}`]),
    ...angles.map((angle, i): Measured => [`bend ${name(i)}`, `${showNumber(Math.abs(angle))}°`]),
  ];
  const measured: Measured[] = [
    ["sheet", bare(length(line.thickness))],
    ["length", bare(showReading(blank.length, system))],
    ["width", bare(showReading(blank.width, system))],
    ...bentStrips(line).flatMap((one, direction) => strip(one, (i) => bendName(i + 1, direction))),
    ...(bend ? [["radius", bare(showReading(bend.radius, system))] as const] : []),
  ];
  const cells = measured.map(
    ([what, wanted]) => `<div><span>${text(what)}<br><b>${text(wanted)}</b></span>${BLANK}</div>`,
  );
  const looks =
    bend === undefined
      ? `square ${BOX} &nbsp; burr off ${BOX}`
      : `no cracks ${BOX} &nbsp; burr side inside ${BOX} &nbsp; holes round ${BOX} &nbsp; corrected by ${BLANK}`;
  return `<section class="first-piece"><h2>First piece: make one, measure, correct <small>(${unitName("length", system)})</small></h2><div class="measures">${cells.join("")}</div><p>${looks} &nbsp; good to run ${BOX} by ${BLANK}</p></section>`;
}
