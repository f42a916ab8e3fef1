/** Reads one random file as the command line would, and judges what comes of it. */
import { strToU8, zipSync } from "fflate";
import { shopFunctions } from "../../cells/catalogue.ts";
import { currentMaterials } from "../../cells/parameters/read-data.ts";
import { rowsOfFile } from "../../job/part-list/list-file.ts";
import { partRows, readPartList } from "../../job/part-list/part-list.ts";
import { bookOf } from "../../job/workbook-book.ts";
import { FileRefusal } from "../../sheet/package/file-refusal.ts";
import { recalculateBytes } from "../../sheet/recalculate/recalculate-bytes.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import { Refusal } from "../../units/refusal.ts";
import { GRAMMAR } from "./grammar.ts";
import { JOB_PARTS } from "./job-file.ts";
import { randomFile } from "./random-file.ts";
import type { Trial } from "./try-call.ts";
import { checkProblem, freezeProblem, planProblem, startProblem } from "./try-job.ts";

const SHOP = zipSync(Object.fromEntries(Object.entries(JOB_PARTS).map(([name, text]) => [name, strToU8(text)])));

export function tryFile(seed: number, index: number): Trial {
  const { kind, bytes } = randomFile(seed, index);
  try {
    return kind === "csv" ? tryParts(bytes) : tryWorkbook(bytes);
  } catch (problem) {
    const where = problem instanceof Error ? problem.stack?.split("\n").slice(0, 2).join(" ") : String(problem);
    return { outcome: "thrown", problem: `${kind} threw ${where}` };
  }
}

function tryWorkbook(bytes: Uint8Array): Trial {
  const { result, output } = recalculated(bytes);
  const { refused, status } = result.report;
  if (refused)
    return {
      outcome: `refused: ${refused.reason}`,
      problem: refused.reason === "internal" ? `a fault of our own: ${refused.message}` : outside(refused.message),
    };
  if (!output) return { outcome: status, problem: "neither refused nor written" };
  const again = recalculated(output).result.report;
  if (again.refused)
    return { outcome: status, problem: `its output is refused: ${again.refused.reason} ${again.refused.message}` };
  const book = bookOf(readWorkbook(output));
  return {
    outcome: `recalculated: ${status}`,
    problem:
      unlessRefused(() => freezeProblem(output)) ??
      unlessRefused(() => planProblem(book)) ??
      unlessRefused(() => startProblem(undefined, book)),
  };
}

/** A refusal is an answer where it keeps to the grammar. */
function unlessRefused(find: () => string | undefined): string | undefined {
  try {
    return find();
  } catch (problem) {
    if (!(problem instanceof Refusal) && !(problem instanceof FileRefusal)) throw problem;
    return outside(problem.message);
  }
}

const NOW = 46_083; // any day: a fixed clock makes the trial repeatable
const recalculated = (bytes: Uint8Array) =>
  recalculateBytes(bytes, { functions: shopFunctions, now: NOW, verify: false, in: "in.xlsx", out: "out.xlsx" });

function tryParts(bytes: Uint8Array): Trial {
  try {
    const context = { system: "in", materials: currentMaterials(), material: undefined } as const;
    partRows(readPartList(rowsOfFile(bytes).rows, {}, context), context);
    return { outcome: "csv read", problem: checkProblem(bytes, SHOP) ?? startProblem(bytes, undefined) };
  } catch (problem) {
    if (problem instanceof Refusal || problem instanceof FileRefusal)
      return { outcome: "csv refused", problem: outside(problem.message) };
    throw problem;
  }
}

const outside = (message: string): string | undefined =>
  GRAMMAR.test(message) ? undefined : `a sentence outside the grammar: ${message}`;
