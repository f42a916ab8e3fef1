/** `shop --help`, `shop help COMMAND`, `shop COMMAND --help`: what each command takes and how it ends. */

interface Help {
  readonly usage: readonly string[];
  readonly says: string;
  readonly options?: readonly (readonly [name: string, meaning: string])[];
  readonly exit: string;
}

/** How a part list is to be read. */
const LIST: Help["options"] = [
  [
    "--columns",
    '"Matl=Material; Thk=Thickness (mm); Rev=": what a heading or column letter is read as; nothing after = leaves it out',
  ],
  ["--every", '"Material=A36; Quantity=1": for every line, where the list has no such column'],
  ["--materials", '"HRS=A1011 CS; SS=304": what the list calls a material'],
  ["--dates", "month-first or day-first: which of them 6/5/2026 is"],
  ["--decimal", "point or comma: which one marks decimals where a figure could be read in two ways"],
  ["--units", "in or mm: what plain numbers are in where the heading names no unit"],
  ["--heading", "the row of the heading, 0 where there is none"],
];
const PLAN_EXIT = "0; 1 where a line is stop; 2 where a file is refused";
const JSON_OPTION = ["--json", "the same for other programs"] as const;

export const HELP: Readonly<Record<string, Help>> = {
  view: {
    usage: ["view", "view WORKBOOK.xlsx"],
    says: "A workbook, or the sample, as a page in your browser.",
    exit: "0",
  },
  start: {
    usage: ["start OUT.xlsx [--parts PARTS.csv] [--shop WORKBOOK.xlsx]"],
    says: "A job's workbook of your own: your parts, your shop, every formula. Says how each column of the list is read.",
    options: [
      ["--parts", "a part list: CSV or a workbook"],
      ["--shop", "a workbook whose machines, tools, sheets and rates are taken"],
      ...LIST,
    ],
    exit: "0; 1 where lines are not understood (they stand there as stops); 2 where a file is refused",
  },
  check: {
    usage: ["check PARTS.csv --shop WORKBOOK.xlsx", "check WORKBOOK.xlsx"],
    says: "One line per part: flat, tons, status, reason, as CSV.",
    options: [JSON_OPTION, ...LIST],
    exit: PLAN_EXIT,
  },
  bill: {
    usage: ["bill WORKBOOK.xlsx", "bill PARTS.csv --shop WORKBOOK.xlsx"],
    says: "What a job comes to, then one line per problem.",
    options: [["--all", "every sentence and the clear lines"], JSON_OPTION, ...LIST],
    exit: PLAN_EXIT,
  },
  compare: {
    usage: ["compare OLD.xlsx NEW.xlsx"],
    says: "What a revision changes: lines, blanks, sheets, minutes, price and dates.",
    options: [JSON_OPTION],
    exit: "0 where nothing has changed; 1 where something has; 2 where a file is refused",
  },
  week: {
    usage: ["week JOB.xlsx ...", "week FOLDER", "week OPEN.xlsx ... --take BILL.xlsx"],
    says: "The open jobs together: when each is done, what is late, what would save it, and load by station and day.",
    options: [
      ["--shop", "a workbook whose machines, stations, rates and shifts apply to all jobs"],
      ["--now", "from when, as in 2026-05-18T07:00; else from this moment on"],
      ["--take", "a bill that is not on the floor yet: its earliest date that harms no other job"],
      ["--last", "WEEK.json of --json: the earlier plan to start from"],
      ["--frozen", "hours from now in which that plan stays as it is"],
      ["--latest", "how long each job may wait: it is held back and planned again, as long as nobody is later"],
      ["--print", "FOLDER: a day sheet for every station, the load and the jobs against their dates"],
      ["--no-pdf", "pages alone"],
      JSON_OPTION,
    ],
    exit: "0; 1 where a job is late or a line is not planned; 2 where a file or the folder is refused",
  },
  calc: {
    usage: ["calc \"=SHOP.SHEET.THICKNESS('10 ga','A1011 CS')\"", "calc   (one formula a line of standard input)"],
    says: "Answers a formula. The whole formula stands in double quotes, text in it in single ones.",
    options: [["--full", "all digits; else three decimals"], JSON_OPTION],
    exit: "0; 1 where the answer is an error (0 with --json)",
  },
  functions: {
    usage: ["functions", "functions BILL.BREAKS"],
    says: "Every function with its arguments and an example, or one with what each argument is.",
    options: [["--worksheet", "the ordinary functions with their evidence"], JSON_OPTION],
    exit: "0",
  },
  print: {
    usage: ["print WORKBOOK.xlsx FOLDER"],
    says: "Set-up sheets, first pieces, cut list, load-in, quote and flats at true size, as pages and one PDF.",
    options: [["--no-pdf", "pages alone"], JSON_OPTION],
    exit: "0; 1 where a figure is stale; 2 where a file or the folder is refused",
  },
  freeze: {
    usage: ["freeze IN.xlsx OUT.xlsx [--for customer|colleague]"],
    says: "A copy of values only; for the customer the quote alone, without the shop's rates and costs.",
    options: [["--for", "customer: the quote alone; colleague: says on its first sheet that nothing in it calculates"]],
    exit: "0; 1 where some formulas could not be calculated; 2 where a file is refused",
  },
  recalc: {
    usage: ["recalc IN OUT", "recalc IN --verify", "recalc IN --in-place"],
    says: "Recalculates workbooks without Excel; files or whole folders.",
    options: [
      ["--report", "FILE: what was done, as JSON"],
      ["--now", "the time that TODAY and NOW answer"],
      ["--jobs", "how many at once"],
      JSON_OPTION,
    ],
    exit: "0 where all are fresh; 1 where some are stale or differ; 2 where a file is refused",
  },
  report: {
    usage: ["report FILE"],
    says: "A text about a fault, for whoever fixes it: versions, sizes and the refusal, nothing out of the file.",
    exit: "0; 2 where it cannot be written",
  },
  upgrade: {
    usage: ["upgrade IN.xlsx OUT.xlsx"],
    says: "A job's workbook of an earlier release with the tables and formulas of this one; every change is named.",
    exit: "0; 2 where a file is refused",
  },
};
const WIDTH = 14;
const CALL = "node shop";

/** Of one command, or of all. */
export function helpText(command?: string): string {
  const help = command === undefined ? undefined : HELP[command];
  if (!help)
    return [
      `${CALL} COMMAND ...`,
      "",
      ...Object.entries(HELP).map(([name, { says }]) => `${name.padEnd(WIDTH)}${says}`),
      "",
      `${CALL} COMMAND --help   says what it takes.`,
      "Every command takes --seconds S (of processor time) and --memory MB, after which it ends.",
      "Exit 64: a command, an option or an argument that is not known; 70: a fault of our own.",
      "",
    ].join("\n");
  return [
    help.says,
    "",
    ...help.usage.map((each) => `${CALL} ${each}`),
    ...(help.options ? ["", ...help.options.map(([name, meaning]) => `${name.padEnd(WIDTH)}${meaning}`)] : []),
    "",
    `Exit ${help.exit}; 64 where an option or argument is not known.`,
    "",
  ].join("\n");
}

/** Which help is asked for; undefined where none is. */
export function helpAsked([name, ...rest]: readonly string[]): { readonly command?: string } | undefined {
  if (name === undefined || name === "--help" || name === "-h") return {};
  if (name === "help") return rest[0] === undefined ? {} : { command: rest[0] };
  return rest.includes("--help") || rest.includes("-h") ? { command: name } : undefined;
}
