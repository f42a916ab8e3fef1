import { realpathSync } from "node:fs";
import { basename } from "node:path";
import { CURRENT_EDITION } from "../../data/materials/editions.ts";
import { customerCopy } from "../../job/copies/customer-copy.ts";
import { freezeNotice } from "../../job/freeze-notice.ts";
import { TYPED } from "../../job/job-sheets/read-me.ts";
import { DEAD, FROZEN, RUNNING, ZEROS } from "../../job/state-words.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { writeWorkbookModel } from "../../job/xlsx/write.ts";
import { serialNow } from "../../sheet/formula/serial-now.ts";
import { frozenBytes } from "../../sheet/freeze/frozen-bytes.ts";
import { recalculateBytes } from "../../sheet/recalculate/recalculate-bytes.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import { Refusal } from "../../units/refusal.ts";
import { callerPath, isFile } from "./caller.ts";
import type { Command } from "./command.ts";
import { bytesOf } from "./read-file.ts";
import { replaceFile } from "./replace-file.ts";
import { readArguments, UsageError } from "./usage.ts";

const STALE = 1;
const REFUSED = 2;

/**
 * `shop freeze IN.xlsx OUT.xlsx [--for customer|colleague]`: a copy that holds values only; for the customer the quote
 * alone, for a colleague without the add-in with a first sheet that says so. Exit 1 where some could
 * not be calculated, 2 refused.
 */
export const freeze: Command = async (args, context) => {
  const { positionals, values } = readArguments(args, { for: { type: "string" } });
  const whom = values.for;
  if (whom !== undefined && whom !== "customer" && whom !== "colleague")
    throw new UsageError(`--for must be customer or colleague; got ${whom}`);
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
  const facts = {
    version: context.version,
    edition: CURRENT_EDITION.name,
    date: new Date().toISOString(),
    from: basename(from),
    kept: left,
  };
  try {
    if (whom === "customer") {
      const copy = customerCopy(bookOf(readWorkbook(output)), freezeNotice(facts, whom));
      replaceFile(
        target,
        writeWorkbookModel(copy, () => undefined),
      );
      context.note(`${to} holds the quote alone, without the shop's rates and costs\n`);
      return left > 0 ? STALE : 0;
    }
    const options = {
      first: whom === "colleague",
      instead: new Map([[RUNNING, FROZEN], [DEAD, FROZEN], [ZEROS, FROZEN], ...TYPED]),
    };
    const frozen = frozenBytes(output, freezeNotice(facts, whom), options);
    replaceFile(target, frozen.bytes);
    context.note(`${frozen.cells} formulas became values; ${left} of them were not calculated\n`);
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    context.note(`${from}: ${problem.message}\n`);
    return REFUSED;
  }
  return left > 0 ? STALE : 0;
};
