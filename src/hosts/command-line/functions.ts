import { worksheetFunctionNames } from "../../sheet/functions/registry.ts";
import type { Command } from "./command.ts";
import { readArguments, UsageError } from "./usage.ts";

/** `shop functions --worksheet [--json]`: the ordinary functions with their evidence. */
export const worksheetFunctions: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, { json: { type: "boolean" }, worksheet: { type: "boolean" } });
  if (positionals.length > 0) throw new UsageError(`functions takes no argument; got ${positionals[0]}`);
  const { evidenceByFunction } = await import("../../sheet/functions/evidence.ts");
  for (const name of worksheetFunctionNames()) {
    const evidence = evidenceByFunction.get(name) ?? [];
    if (values.json) context.out(`${JSON.stringify({ name, evidence })}\n`);
    else {
      const shown = evidence.map((row) => `${row.formula} = ${JSON.stringify(row.value)} [${row.origin}]`);
      context.out(`${[name, ...shown].join("\n  ")}\n`);
    }
  }
  return 0;
};
