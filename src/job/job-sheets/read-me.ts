import { type Lines, readMeSheet } from "../building/read-me.ts";
import type { SheetModel } from "../xlsx/model.ts";
import type { JobContents } from "./contents.ts";

const SHOP = "Machines, tools, stations, rates, shifts and sheets as tables.";
const TYPE_SHOP = " Type your own figures over them, from the plates of your machines; add rows below.";
const CALCULATION = "How three of the answers are worked out, step by step with the source of every figure.";
const CHOOSE = " Choose other lines in its shaded cells.";
/** What a copy of values says in the place of what asks to be typed over. */
export const TYPED: readonly (readonly [asked: string, told: string])[] = [
  [SHOP + TYPE_SHOP, SHOP],
  [CALCULATION + CHOOSE, CALCULATION],
];

const CONTENTS: Lines = [
  ["Shop", SHOP + TYPE_SHOP],
  [
    "Parts",
    "The bill: one bracket a row. Plain numbers are inches; text brings its own unit: 3/16, 3 mm, 4,5 mm, 10 ga. Lists are typed 2; 3.5; 2.",
  ],
  ["Answers", "Flat, die, radius, tons, weight, status, what is wrong and its fix, one line a bracket; totals on top."],
  ["Calculation", CALCULATION + CHOOSE],
  ["Job", "Customer, date of the quote, when work can begin and when it must leave."],
  ["Checks", "Everything that is found about every line, with the numbers its flat is made with."],
  ["Blanks", "Size, number and weight of every flat blank."],
  [
    "Cut plan",
    "Which sheets are pulled and what is cut from each; Cut list has every cut in order, Buying the sheets to order.",
  ],
  ["Summary", "The job in figures, what the route saves, and which lines are not quoted."],
  [
    "Route",
    "Which machine cuts which line; Times has the minutes at every station, Finished has what finished jobs say about them.",
  ],
  ["Set-ups", "The order at the brake with fewest changes of tools; Machines says which machines would do the bill."],
  ["Price", "What every line costs, and its price; for the shop."],
  ["What-if", "What happens to every line if it must leave by the time on the sheet Job."],
  ["Load-in", "Packing order, stacks and labels."],
  ["Quote", "The customer's page: line, quantity, unit price, total."],
  ["Functions", "Every function with its question, arguments, an example and its source."],
];

export const readMe = ({ subject, about, system }: JobContents): SheetModel =>
  readMeSheet({
    title: "Bracket bill",
    subject,
    about,
    contents: CONTENTS.map(([name, words]) => [
      name,
      system === "in" ? words : words.replace("Plain numbers are inches", "Plain numbers are millimeters"),
    ]),
  });
