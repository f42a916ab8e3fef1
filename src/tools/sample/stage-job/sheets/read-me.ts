import { value } from "../../building/cells.ts";
import { shop } from "../../building/formulas.ts";
import type { SheetCell, SheetModel } from "../../xlsx/model.ts";
import { JOB } from "../job.ts";

export const READ_ME = "Read me";
/** Where the other sheets find whether the functions run. */
export const STATE_CELL = "B6";

const CONTENTS: readonly (readonly [string, string])[] = [
  [
    "Shop",
    "Machines, tools, stations, rates, shifts and sheets as tables. Type your own figures over them, from the plates of your machines; add rows below.",
  ],
  [
    "Parts",
    "The bill: one bracket a row. Plain numbers are inches; text brings its own unit: 3/16, 3 mm, 4,5 mm, 10 ga. Lists are typed 2; 3.5; 2.",
  ],
  [
    "Answers",
    "Flat length, weight, radius, tons, status and what the checks say, one line a bracket, calculated from Parts and Shop; totals on top.",
  ],
  [
    "Calculation",
    "How three of the answers come about, step by step with the source of every figure. Choose other lines in its shaded cells.",
  ],
  ["Job", "Customer, date of the quote, when work can begin and when it must leave."],
  ["Checks", "Bends, cut, drawing radius and tolerance of every line, and which lines are stopped."],
  ["Quoted", "The lines that no check stops; all sheets from here on take these."],
  ["Blanks", "Size, number and weight of every flat blank."],
  [
    "Cut plan",
    "Which sheets are pulled and what is cut from each; Cut list has every cut in order, Buying the sheets to order.",
  ],
  ["Route", "Which machine cuts which line, and what that saves; Times has the minutes at every station."],
  ["Set-ups", "The order at the brake with fewest changes of tools; Machines says which machines would do the bill."],
  ["Price", "What every line costs, and its price; for the shop."],
  ["What-if", "What happens to every line if it must leave by the time on the sheet Job."],
  ["Load-in", "Packing order, piles and labels."],
  ["Quote", "The customer's page: line, quantity, unit price, total."],
  ["Functions", "Every function with its question, arguments, an example and its source."],
];

const STATUS: readonly (readonly [string, string])[] = [
  ["clear", "No problem found against the tables given. It is no permission: the machine's plate decides."],
  ["check", "Look before cutting: the sentence gives the figure, the limit and the nearest remedy."],
  ["stop", "As it stands this scraps sheet or hurts a machine. The sentence says what would mend it."],
];

const CAUTIONS: readonly string[] = [
  "The rating plate and the manual of your own machine decide, never this workbook. The tables of the sheet Shop are invented.",
  "Guards, light curtains and two-hand controls stay in place and are tested as the machine's maker and local codes ask. Local codes and licensed practice go before every figure here.",
  "Keep hands away from the point of operation: not between punch and die, not under the hold-downs or the knives, not behind the shear where the strip falls. A flange that slips into the die can be thrown; a long sheet whips up as it bends.",
  "What a bracket may carry is not checked anywhere in this workbook. Ask a licensed engineer.",
  "Radius, springback and tons of an air bend scatter with the sheet. Bend a test strip of the same sheet before a run.",
];

const DEAD =
  "The functions are NOT running here: every figure you see is an old one or an error. Install the add-in, or do not use this workbook for work.";

export function readMe(): SheetModel {
  const cells: SheetCell[] = [
    value(1, 1, "title", "Bracket bill"),
    value(2, 1, "heading", JOB),
    value(
      3,
      1,
      "note",
      "An invented job in an invented shop: no machine, firm or event of these names is meant. It shows what the functions answer.",
    ),
    value(5, 1, "label", "Version"),
    { row: 5, column: 2, style: "wrapped", formula: shop("VERSION"), spills: ["wrapped"] },
    value(6, 1, "label", "State"),
    { row: 6, column: 2, style: "strong", formula: `IF(ISERROR(B5),"${DEAD}","The functions are running.")` },
  ];
  let row = 8;
  const section = (title: string, lines: readonly (readonly [string, string])[]) => {
    cells.push(value(row++, 1, "heading", title));
    for (const [name, words] of lines) cells.push(value(row, 1, "label", name), value(row++, 2, "wrapped", words));
    row++;
  };
  section("What stands where", CONTENTS);
  section("What the three words mean", STATUS);
  section(
    "Before a machine is started",
    CAUTIONS.map((words, i) => [String(i + 1), words]),
  );
  return { name: READ_ME, widths: [14, 96], cells, merges: ["A3:B3"], print: { landscape: false } };
}
