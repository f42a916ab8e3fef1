import { RECORDS } from "../../cells/catalogue.ts";
import { catalogueEntry } from "../../cells/record/catalogue-rows.ts";
import type { Command } from "./command.ts";
import { worksheetFunctions } from "./functions.ts";
import { thresholds } from "./thresholds.ts";
import { readArguments, UsageError } from "./usage.ts";

/** `shop functions [--json]`: the catalogue, one function a line; --worksheet lists the ordinary functions instead, --thresholds where findings turn. */
export const functions: Command = async (args, context) => {
  const options = {
    json: { type: "boolean" },
    worksheet: { type: "boolean" },
    thresholds: { type: "boolean" },
  } as const;
  const { values, positionals } = readArguments(args, options);
  if (positionals.length > 0) throw new UsageError(`functions takes no argument; got ${positionals[0]}`);
  if (values.thresholds) return thresholds(args, context);
  if (values.worksheet) return worksheetFunctions(args, context);
  for (const record of RECORDS) {
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
      context.out(`SHOP.${name}(${list})\n  ${question}\n  ${example}\n`);
    }
  }
  return 0;
};
