/** The bill as text of at most 120 columns: one line a bracket, and below it in full what stops or wants a look. */
import { type CellValue, isCellError } from "../../units/cell.ts";
import type { BillLine } from "./bill.ts";

export const WIDTH = 120;
const GAP = "  ";

interface Column {
  readonly title: string;
  readonly unit: string;
  readonly width: number;
  readonly right?: true;
  text(line: BillLine): string;
}

const shown = (value: CellValue): string => (isCellError(value) ? value.code : String(value ?? ""));
const figure = (value: CellValue, decimals: number): string =>
  typeof value === "number" ? value.toFixed(decimals) : shown(value);

const COLUMNS: readonly Column[] = [
  { title: "part", unit: "", width: 5, text: ({ part }) => shown(part) },
  { title: "qty", unit: "", width: 3, right: true, text: ({ quantity }) => shown(quantity) },
  { title: "material", unit: "", width: 8, text: ({ material }) => shown(material) },
  { title: "thick", unit: "", width: 6, text: ({ thickness }) => shown(thickness) },
  { title: "flat", unit: "in", width: 6, right: true, text: ({ flat }) => figure(flat, 3) },
  { title: "weight", unit: "lb", width: 6, right: true, text: ({ weight }) => figure(weight, 1) },
  { title: "die", unit: "", width: 8, text: ({ die }) => shown(die) },
  { title: "radius", unit: "in", width: 6, right: true, text: ({ radius }) => figure(radius, 2) },
  { title: "tons", unit: "US", width: 5, right: true, text: ({ tons }) => figure(tons, 1) },
  { title: "status", unit: "", width: 6, text: ({ status }) => shown(status) },
];
const LEFT = COLUMNS.reduce((sum, { width }) => sum + width + GAP.length, 0);
const SENTENCE = WIDTH - LEFT;

const padded = (text: string, { width, right }: Column): string => {
  const kept = text.slice(0, width);
  return right ? kept.padStart(width) : kept.padEnd(width);
};
const row = (cells: readonly string[], last: string): string => [...cells, last].join(GAP).trimEnd();

export function printBill(lines: readonly BillLine[]): string {
  return [
    row(
      COLUMNS.map((column) => padded(column.title, column)),
      "what the checks say",
    ),
    row(
      COLUMNS.map((column) => padded(column.unit, column)),
      "",
    ),
    "-".repeat(WIDTH),
    ...lines.flatMap(printLine),
    "-".repeat(WIDTH),
    ...totals(lines),
  ].join("\n");
}

function printLine(line: BillLine): string[] {
  const figures = COLUMNS.map((column) => padded(column.text(line), column));
  const sentence = shown(line.sentence);
  if (line.status === "clear") return [row(figures, CLEAR.test(sentence) ? "" : cut(sentence, SENTENCE))];
  return [row(figures, ""), ...wrap(sentence, WIDTH - INDENT).map((piece) => " ".repeat(INDENT) + piece)];
}

/** What the legend below says once need not stand in every line. */
const CLEAR = /^No problem found /;
/** Sentences stand under the material, so that the column of parts stays easy to run down. */
const INDENT = 12;
const cut = (text: string, width: number): string => (text.length > width ? `${text.slice(0, width - 3)}...` : text);

const WORDS: Readonly<Record<string, string>> = {
  clear: "no problem found against the tables given; the machine's plate decides",
  check: "look before cutting",
  stop: "as it stands it scraps sheet or hurts a machine",
  unreadable: "a cell of this line is not understood",
};

function totals(lines: readonly BillLine[]): string[] {
  const sum = (key: "quantity" | "weight"): number =>
    lines.reduce((total, line) => total + (typeof line[key] === "number" ? line[key] : 0), 0);
  const counts = Object.keys(WORDS).map((word) => ({
    word,
    count: lines.filter(({ status }) => status === word).length,
  }));
  return [
    "Sentences of clear lines are cut here; the workbook has them whole.",
    `${lines.length} lines, ${sum("quantity")} pieces, ${sum("weight").toFixed(1)} lb`,
    ...counts
      .filter(({ count }) => count > 0)
      .map(({ word, count }) => `${String(count).padStart(3)} ${word.padEnd(6)} ${WORDS[word]}`),
  ];
}

/** Breaks at blanks; a word longer than the line keeps its line. */
export function wrap(text: string, width: number): string[] {
  const found: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line !== "" && line.length + 1 + word.length > width) {
      found.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...found, line];
}
