import { THRESHOLDS } from "../../data/threshold-rows.ts";
import type { Command } from "./command.ts";
import { readArguments, UsageError } from "./usage.ts";

/** `shop functions --thresholds [--json]`: where findings turn, one a line, as a row of the rates table may change it. */
export const thresholds: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, { json: { type: "boolean" }, thresholds: { type: "boolean" } });
  if (positionals.length > 0) throw new UsageError(`functions takes no argument; got ${positionals[0]}`);
  for (const { row, value, unit, from, to, mark, source } of THRESHOLDS) {
    const figure = (shown: number) => `${Number(shown.toPrecision(4))}${unit && ` ${unit}`}`;
    context.out(
      values.json
        ? `${JSON.stringify({ row, value, unit, from, to, mark, source })}\n`
        : `${row}: ${figure(value)} (${figure(from)} to ${figure(to)}; ${mark})\n`,
    );
  }
  return 0;
};
