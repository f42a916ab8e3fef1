import { RECORDS } from "../../cells/catalogue.ts";
import { catalogueEntry } from "../../cells/record/catalogue-rows.ts";
import { tableOf } from "../../cells/tables/recognized.ts";
import { nearestIs } from "../../units/nearest.ts";
import { message } from "../../units/refusal.ts";
import type { Command } from "./command.ts";
import { worksheetFunctions } from "./functions.ts";
import { thresholds } from "./thresholds.ts";
import { readArguments, UsageError } from "./usage.ts";

/** `shop functions [NAME] [--json]`: the catalogue, one function a line; --worksheet lists the ordinary functions instead, --thresholds where findings turn. */
export const functions: Command = async (args, context) => {
  const options = {
    json: { type: "boolean" },
    worksheet: { type: "boolean" },
    thresholds: { type: "boolean" },
  } as const;
  const { values, positionals } = readArguments(args, options);
  const [asked] = positionals;
  const wanted = asked?.toUpperCase().replace(/^=?SHOP\.|\(\)$/g, "");
  const records = RECORDS.filter(({ name }) => wanted === undefined || name === wanted);
  const names = RECORDS.map(({ name }) => name);
  if (wanted !== undefined && (records.length === 0 || positionals.length > 1))
    throw new UsageError(
      message("functions", "followed by the name of a function", positionals.join(" "), nearestIs(wanted, names)),
    );
  if (values.thresholds) return thresholds(args, context);
  if (values.worksheet) return worksheetFunctions(args, context);
  for (const record of records) {
    const { name, question, parameters, unit, example, source, contract } = catalogueEntry(record);
    if (values.json) {
      const shown = parameters.map(({ name, type, unit, optional, default: fallback }) => ({
        name,
        type,
        unit,
        optional,
        default: fallback,
      }));
      context.out(`${JSON.stringify({ name, question, parameters: shown, unit, example, source, contract })}\n`);
    } else {
      const list = parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ");
      context.out(`SHOP.${name}(${list})\n  ${question}\n`);
      if (wanted !== undefined)
        for (const { name, type, unit, optional, description } of parameters)
          context.out(
            `  ${name}: ${description} (${[type, unit, optional ? "may be blank" : null].filter(Boolean).join(", ")})\n`,
          );
      context.out(`  ${withNames(example)}\n`);
    }
  }
  return 0;
};

/** Tables by name, where the example brings them cell by cell: a person gives their ranges, header and all. */
const withNames = (example: string): string =>
  example.replace(/VSTACK\((\{[^{}]*\})(?:,\{[^{}]*\})*\)/g, (_, header: string) => {
    const titles = [...header.matchAll(/"([^"]*)"/g)].map(([, title = ""]) => title);
    return tableOf(titles) ?? "bill";
  });
