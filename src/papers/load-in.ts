/** What goes on the truck, by the area where it is wanted. */

import type { LineWork } from "../job/line-report.ts";
import { show, showNumber } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { BOX, heading, table, text } from "./page.ts";

export function loadIn(works: readonly LineWork[], describe: (work: LineWork) => string, system: UnitSystem): string {
  const weight = (value: number) => show(value, "mass", system, 4);
  const areas = new Map<string, LineWork[]>();
  for (const work of works) areas.set(work.line.area, [...(areas.get(work.line.area) ?? []), work]);
  const sections = [...areas]
    .sort(([a], [b]) => a.localeCompare(b, "en"))
    .map(([area, some]) => {
      const all = some.reduce((sum, { line, check }) => sum + line.quantity * check.blank.weight, 0);
      const rows = some.map((work) => [
        work.line.part,
        describe(work),
        showNumber(work.line.quantity, 7),
        weight(work.check.blank.weight),
        weight(work.line.quantity * work.check.blank.weight),
        { markup: BOX },
        { markup: BOX },
      ]);
      return `<h2>${text(area === "" ? "No area stated" : area)}: ${text(weight(all))}</h2>${table(
        [
          { title: "Part" },
          { title: "Description" },
          { title: "Pieces", number: true },
          { title: "Each", number: true },
          { title: "Together", number: true },
          { title: "Loaded" },
          { title: "Arrived" },
        ],
        rows,
      )}`;
    });
  const whole = works.reduce((sum, { line, check }) => sum + line.quantity * check.blank.weight, 0);
  return `${heading("Load-in list")}<p>All together ${text(weight(whole))}, weights of the blanks. Lift with two or with a hoist where one piece or one pile is heavy.</p>${sections.join("")}`;
}
