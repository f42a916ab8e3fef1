import { numberText } from "../../sheet/evaluate/number-text.ts";
import { evaluateFormula } from "../../sheet/recalculate/calculate-one.ts";
import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { message } from "../../units/refusal.ts";
import { answerJson, errorJson } from "./answer-json.ts";
import type { Command, CommandContext } from "./command.ts";
import { readArguments, UsageError } from "./usage.ts";

/** `shop calc [--json] [--full] [FORMULA]`: one formula from the command line or one a line from standard input. */
export const calc: Command = async (args, context) => {
  const { values, positionals } = readArguments(guardFormula(args), {
    json: { type: "boolean" },
    full: { type: "boolean" },
  });
  if (positionals.length > 1)
    throw new UsageError(
      `calc takes one formula; got ${positionals.length} pieces: ${positionals.join(" ")}; ${QUOTES}`,
    );
  const lines = positionals.length === 1 ? positionals : linesOf(await context.input());
  const shown = values.full ? numberText : inThree;
  const answer = values.json ? answerInJson : (line: string, to: CommandContext) => answerInText(line, to, shown);
  let exit = 0;
  for (const line of lines) exit = Math.max(exit, answer(line, context));
  return exit;
};

/** One way of writing that every shell leaves alone: double quotes around, single ones within. */
const QUOTES = "write calc \"=SHOP.SHEET.THICKNESS('10 ga','A36')\"";

/** Single quotes hold text where the formula has no double ones: no shell takes these away, and no sheet is here to name. */
const withQuotes = (formula: string): string =>
  formula.includes('"') ? formula : formula.replace(/'([^']*)'(?!!)/g, '"$1"');

const DECIMALS = 3;
const SMALLEST = 0.001;
/** Three decimals, as a rule is read; of what is smaller three figures; a count stays one. */
function inThree(value: number, unit: string | null): string {
  if (Number.isInteger(value) && (unit === null || unit === "count" || unit === "date")) return numberText(value);
  return Math.abs(value) < SMALLEST && value !== 0
    ? numberText(Number(value.toPrecision(DECIMALS)))
    : value.toFixed(DECIMALS);
}

/** A formula may begin with a minus; it is an argument, not an option. */
function guardFormula(args: readonly string[]): string[] {
  const isFormula = (arg: string): boolean => /^-[^-]/.test(arg) && !/^-[a-z]$/i.test(arg);
  const options = args.filter((arg) => !isFormula(arg));
  const formulas = args.filter(isFormula);
  return formulas.length > 0 && !options.includes("--") ? [...options, "--", ...formulas] : [...args];
}

/** The last line feed ends the last line; it does not begin another. */
function linesOf(text: string): string[] {
  if (text === "") return [];
  return text
    .replace(/^\ufeff/, "")
    .replace(/\r?\n$/, "")
    .split(/\r?\n/);
}

function answerInJson(line: string, context: CommandContext): number {
  if (line.trim() === "") context.out('{"value":null}\n');
  else {
    const { value, unit } = evaluateFormula(withQuotes(line.trim()), context.functions);
    context.out(`${answerJson(value, unit)}\n`);
  }
  return 0;
}

function answerInText(
  line: string,
  context: CommandContext,
  number: (value: number, unit: string | null) => string,
): number {
  if (line.trim() === "") {
    context.out("\n");
    return 0;
  }
  const { value, unit } = evaluateFormula(withQuotes(line.trim()), context.functions);
  const [, name] = /^=?\s*(SHOP\.[\w.]+)\(/i.exec(line.trim()) ?? [];
  if (value === "" && name !== undefined) {
    context.note(
      `${message(name, "given its arguments", "blanks, which answer nothing", `shop functions ${name} says what they are`)}\n`,
    );
    return 1;
  }
  const rows: CellMatrix = Array.isArray(value) ? value : [[value]];
  const suffix = unit === null || Array.isArray(value) || typeof value !== "number" ? "" : ` ${unit}`;
  context.out(`${rows.map((row) => row.map((cell) => shown(cell, unit, number)).join("\t")).join("\n")}${suffix}\n`);
  const error = rows.flat().find((cell) => cell instanceof CellError);
  if (error === undefined) return 0;
  const hint =
    /["']/.test(line) || !/[(,]\s*[a-z][^(]*[,)]|\d\s+[a-z]/i.test(line) ? "" : `; text needs quotes: ${QUOTES}`;
  context.note(`${errorJson(error as CellError).error.message}${hint}\n`);
  return 1;
}

function shown(value: CellValue, unit: string | null, number: (value: number, unit: string | null) => string): string {
  if (value === null) return "";
  if (value instanceof CellError) return value.code;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? number(value, unit) : value;
}
