/** One strip a sheet and die: what to bend and what to measure, so that the shop's own deduction replaces the calculated one. */

import { lineName } from "../bill/line-name.ts";
import type { QuotedLine } from "../bill/plan.ts";
import { firstOf } from "../units/certain.ts";
import { showReading, showThickness } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { BLANK, BOX, heading, table } from "./page.ts";

export function testStrips(lines: readonly QuotedLine[], system: UnitSystem): string {
  const seen = new Map<string, { rows: string[]; parts: string[] }>();
  for (const quoted of lines) {
    const { line, tools, strips } = quoted.plan;
    if (!tools || strips.length === 0) continue;
    const { die, punch } = tools;
    const made = strips.flatMap(({ part }) => part.bends);
    const square = made.find(({ angle }) => Math.abs(angle) === 90) ?? firstOf(made);
    const key = [line.material.name, line.thickness, die.name, punch?.name ?? "", Math.abs(square.angle)].join("\n");
    const known = seen.get(key);
    if (known) known.parts.push(lineName(quoted));
    else
      seen.set(key, {
        parts: [lineName(quoted)],
        rows: [
          `${line.material.name}, ${showThickness(line.thickness, system)}`,
          `${die.name}, ${punch?.name ?? "no punch named"}`,
          `${Math.abs(square.angle)}°`,
          showReading(square.insideRadius, system),
          showReading(square.deduction, system),
        ],
      });
  }
  return [
    heading("Test strips"),
    "<p>Cut a strip square and about a hand wide from the same sheet, measure its length, bend it in the middle, measure both outside flanges and the angle. Deduction = flange A + flange B − length. Radius and deduction below are calculated; what is measured replaces them.</p>",
    table(
      [
        { title: "Sheet" },
        { title: "Die, punch" },
        { title: "Angle" },
        { title: "Radius", number: true },
        { title: "Deduction", number: true },
        { title: "Length" },
        { title: "Flange A" },
        { title: "Flange B" },
        { title: "For" },
        { title: "" },
      ],
      [...seen.values()].map(({ rows, parts }) => [
        ...rows,
        { markup: BLANK },
        { markup: BLANK },
        { markup: BLANK },
        parts.join(", "),
        { markup: BOX },
      ]),
      "strips",
    ),
    '<p class="foot">STRIP functions in the workbook turn what is measured into the shop\'s own figures.</p>',
  ].join("\n");
}
