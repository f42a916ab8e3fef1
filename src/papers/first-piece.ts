/** What is measured on the first piece of every part, with room to write; one page a part. */

import type { LineWork } from "../job/line-report.ts";
import { show, showNumber, showReading } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { BLANK, BOX, facts, heading, table } from "./page.ts";

export function firstPiece({ line, check, bends }: LineWork, system: UnitSystem): string {
  const length = (value: number) => show(value, "length", system, 4);
  const tolerance = line.tolerance === undefined ? "as drawn" : `± ${show(line.tolerance, "length", system, 2)}`;
  const measured: (readonly [string, string, string])[] = [
    ["Sheet thickness", length(line.thickness), ""],
    ["Blank length", showReading(check.blank.length, system), ""],
    ["Blank width", showReading(check.blank.width, system), ""],
    ...line.main.flanges.map((flange, i) => [`Flange ${i + 1}, outside`, length(flange), tolerance] as const),
    ...line.main.angles.map((angle, i) => [`Bend ${i + 1}`, `${showNumber(Math.abs(angle))}°`, "as drawn"] as const),
    ...(bends[0]
      ? [
          [
            "Inside radius",
            showReading(bends[0].part.bends[0]!.insideRadius, system),
            line.radius === undefined ? "" : `drawing ${length(line.radius)}`,
          ] as const,
        ]
      : []),
  ];
  return [
    heading(`First piece: ${line.part}`),
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
