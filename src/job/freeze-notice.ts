/** What a frozen copy says about itself. */
interface FreezeFacts {
  readonly version: string;
  readonly edition: string;
  /** ISO date and time. */
  readonly date: string;
  readonly from: string;
  /** Cells that kept the value the file held, because they could not be calculated. */
  readonly kept: number;
}

const COLLEAGUE = [
  "It was made for reading without the add-in: what is typed into it changes no answer. Ask for the workbook itself to go on.",
];

export const freezeNotice = (
  { version, edition, date, from, kept }: FreezeFacts,
  forWhom?: "customer" | "colleague",
): string[] => [
  "Values only: nothing in this workbook is calculated any more.",
  `Made by Bracket Bill ${version}, materials of edition ${edition}, on ${date}`,
  // What the shop calls its file is not the customer's business.
  ...(forWhom === "customer" ? [] : [`From ${from}`]),
  kept === 0
    ? "Every formula was calculated for this copy."
    : `${kept} cells were not calculated for this copy: they hold the value the file had, or depend on one.`,
  ...(forWhom === "colleague" ? COLLEAGUE : []),
  "The machine's plate, local codes and licensed practice decide.",
];
