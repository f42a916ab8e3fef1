import { numberText } from "../../sheet/evaluate/number-text.ts";
import { evaluateFormula } from "../../sheet/recalculate/calculate-one.ts";
import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { answerJson, errorJson } from "./answer-json.ts";
import type { Command, CommandContext } from "./command.ts";
import { readArguments, UsageError } from "./usage.ts";

/** `shop calc [--json] [FORMULA]`: one formula from the command line or one a line from standard input. */
export const calc: Command = async (args, context) => {
  const { values, positionals } = readArguments(guardFormula(args), { json: { type: "boolean" } });
  if (positionals.length > 1) throw new UsageError("calc takes one formula; quote it as one argument");
  const lines = positionals.length === 1 ? positionals : linesOf(await context.input());
  const answer = values.json ? answerInJson : answerInText;
  let exit = 0;
  for (const line of lines) exit = Math.max(exit, answer(line, context));
  return exit;
};

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
    const { value, unit } = evaluateFormula(line.trim(), context.functions);
    context.out(`${answerJson(value, unit)}\n`);
  }
  return 0;
}

function answerInText(line: string, context: CommandContext): number {
  if (line.trim() === "") {
    context.out("\n");
    return 0;
  }
  const { value, unit } = evaluateFormula(line.trim(), context.functions);
  const rows: CellMatrix = Array.isArray(value) ? value : [[value]];
  const suffix = unit === null || Array.isArray(value) || typeof value !== "number" ? "" : ` ${unit}`;
  context.out(`${rows.map((row) => row.map(shown).join("\t")).join("\n")}${suffix}\n`);
  const error = rows.flat().find((cell) => cell instanceof CellError);
  if (error === undefined) return 0;
  context.note(`${errorJson(error as CellError).error.message}\n`);
  return 1;
}

function shown(value: CellValue): string {
  if (value === null) return "";
  if (value instanceof CellError) return value.code;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? numberText(value) : value;
}
