import { realpathSync } from "node:fs";
import { basename } from "node:path";
import { CURRENT_EDITION } from "../../data/materials/editions.ts";
import { freezeNotice } from "../../job/freeze-notice.ts";
import { serialNow } from "../../sheet/formula/serial-now.ts";
import { frozenBytes } from "../../sheet/freeze/frozen-bytes.ts";
import { recalculateBytes } from "../../sheet/recalculate/recalculate-bytes.ts";
import { callerPath, isFile } from "./caller.ts";
import type { Command } from "./command.ts";
import { bytesOf } from "./read-file.ts";
import { replaceFile } from "./replace-file.ts";
import { readArguments, UsageError } from "./usage.ts";

const STALE = 1;
const REFUSED = 2;

/** `shop freeze IN.xlsx OUT.xlsx`: a copy that holds values only. Exit 1 where some could not be calculated, 2 refused. */
export const freeze: Command = async (args, context) => {
  const { positionals } = readArguments(args, {});
  const [from, to] = positionals;
  if (from === undefined || to === undefined || positionals.length > 2)
    throw new UsageError("freeze takes IN.xlsx and OUT.xlsx");
  const [source, target] = [callerPath(from), callerPath(to)];
  const bytes = bytesOf(from);
  if (isFile(target) && realpathSync(target) === realpathSync(source))
    throw new UsageError(`${to} is the input, which keeps its formulas`);
  const options = { functions: context.functions, now: serialNow(new Date()), verify: false, in: from, out: to };
  const { result, output } = recalculateBytes(bytes, options);
  const { refused, kept, stale } = result.report;
  if (!output) {
    context.note(`${from}: ${refused?.message ?? "not read"}\n`);
    return REFUSED;
  }
  const left = kept.length + stale.length;
  const notice = freezeNotice({
    version: context.version,
    edition: CURRENT_EDITION.name,
    date: new Date().toISOString(),
    from: basename(from),
    kept: left,
  });
  const frozen = frozenBytes(output, notice);
  replaceFile(target, frozen.bytes);
  context.note(`${frozen.cells} formulas became values; ${left} of them were not calculated\n`);
  return left > 0 ? STALE : 0;
};
