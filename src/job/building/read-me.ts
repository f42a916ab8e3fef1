import { SCHEMA, SCHEMA_LABEL } from "../schema.ts";
import type { SheetCell, SheetModel } from "../xlsx/model.ts";
import { value } from "./cells.ts";
import { shop } from "./formulas.ts";
import { stateCell } from "./state.ts";

const READ_ME = "Read me";
/** Where the other sheets find whether the functions run. */
const STATE_CELL = "B6";
export const STATE = `'${READ_ME}'!${STATE_CELL}`;
const NEVER_FILLED = "A4:B4";

const STATUS: Lines = [
  ["clear", "No problem found against the tables given. That is not permission to run: the machine's plate decides."],
  ["check", "Look before cutting: the sentence gives the figure and the limit, Fix says what improves it."],
  ["stop", "As it stands this scraps sheet or hurts a machine. It is not cut, not priced and not loaded."],
];

const CAUTIONS: readonly string[] = [
  "The rating plate and the manual of your own machine decide, never this workbook. The machines and tools in it are invented.",
  "Guards, light curtains and two-hand controls stay in place and are tested as the machine's maker and local codes require. Local codes and licensed practice come before every figure here.",
  "Keep hands away from the point of operation: not between punch and die, not under the hold-downs or the blades, not behind the shear where the strip drops. A flange that slips into the die can be thrown; a long sheet whips up as it bends.",
  "What a bracket may carry is not checked anywhere in this workbook. Ask a licensed engineer.",
  "Radius, springback and tons of an air bend vary with the sheet. Bend a test strip of the same sheet before a run.",
];

export type Lines = readonly (readonly [name: string, words: string])[];

/** The first sheet of a sample: what it is, whether the functions run, what stands where, and the cautions. */
export function readMeSheet({
  title,
  subject,
  about,
  contents,
}: {
  readonly title: string;
  readonly subject: string;
  readonly about: string;
  readonly contents: Lines;
}): SheetModel {
  const cells: SheetCell[] = [
    value(1, 1, "title", title),
    value(2, 1, "heading", subject),
    value(3, 1, "note", about),
    value(5, 1, "label", "Version"),
    { row: 5, column: 2, style: "wrapped", formula: shop("VERSION"), spills: ["wrapped"] },
    value(6, 1, "label", "State"),
    stateCell(6, 2, "B5", NEVER_FILLED),
    value(7, 1, "label", SCHEMA_LABEL),
    value(7, 2, "text", SCHEMA),
  ];
  let row = 9;
  const section = (heading: string, lines: Lines) => {
    cells.push(value(row++, 1, "heading", heading));
    for (const [name, words] of lines) cells.push(value(row, 1, "label", name), value(row++, 2, "wrapped", words));
    row++;
  };
  section("What is where", contents);
  section("What the three words mean", STATUS);
  section(
    "Before a machine is started",
    CAUTIONS.map((words, i) => [String(i + 1), words]),
  );
  return { name: READ_ME, widths: [14, 96], cells, merges: ["A3:B3"], print: { landscape: false } };
}
