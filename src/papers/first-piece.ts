/** What is measured on the first piece of every quoted part, with room to write; one page a part. */
import { lineName } from "../bill/line-name.ts";
import type { Strip } from "../bill/nouns/line.ts";
import type { QuotedLine } from "../bill/plan.ts";
import { releaseOf } from "../bill/release.ts";
import { show, showNumber, showReading } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { BLANK, BOX, facts, heading, table } from "./page.ts";

type Measured = readonly [what: string, wanted: string, allowed: string];

export function firstPiece(answer: QuotedLine, system: UnitSystem): string {
  const { line, blank, bend } = answer.plan;
  const length = (value: number) => show(value, "length", system, 4);
  const tolerance = line.tolerance === undefined ? "as drawn" : `± ${show(line.tolerance, "length", system, 2)}`;
  // Letters, as in the drawing of the flat, so that nobody takes the second direction for the first.
  const strip = ({ flanges, angles }: Strip, name: (i: number) => string): Measured[] =>
    angles.length === 0
      ? []
      : [
          ...flanges.map((flange, i): Measured => [`Flange ${name(i)}, outside`, length(flange), tolerance]),
          ...angles.map((angle, i): Measured => [`Bend ${name(i)}`, `${showNumber(Math.abs(angle))}°`, "as drawn"]),
        ];
  const measured: Measured[] = [
    ["Sheet thickness", length(line.thickness), ""],
    ["Blank length", showReading(blank.length, system), ""],
    ["Blank width", showReading(blank.width, system), ""],
    ...strip(line.main, (i) => `${i + 1}`),
    ...(line.cross ? strip(line.cross, (i) => String.fromCharCode("A".charCodeAt(0) + i)) : []),
  ];
  if (bend)
    measured.push([
      "Inside radius",
      showReading(bend.radius, system),
      line.radius === undefined ? "" : `drawing ${length(line.radius)}`,
    ]);
  return [
    heading(`First piece: ${lineName(answer)}`, releaseOf(answer)),
    facts([
      ["Material", line.material.name],
      ["Pieces", showNumber(line.quantity, 7)],
    ]),
    table(
      [
        { title: "What" },
        { title: "Should be", number: true },
        { title: "Allowed" },
        { title: "Measured" },
        { title: "Good" },
      ],
      measured.map(([what, wanted, allowed]) => [what, wanted, allowed, { markup: BLANK }, { markup: BOX }]),
      "stops",
    ),
    `<p>Bend lines free of cracks ${BOX} &nbsp; burr side inside ${BOX} &nbsp; holes round after bending ${BOX}</p>`,
    `<p>Sheet's heat or certificate ${BLANK} &nbsp; measured by ${BLANK} &nbsp; date ${BLANK}</p>`,
    '<p class="foot">What differs is set right at the gauge or the depth, then a second piece is measured.</p>',
  ].join("\n");
}
