/**
 * Calls whose answer is known: every published row of tests/reference, and the example of every record. What stands
 * around the calls of a formula (ROUND, INDEX ...) is worked by the headless engine, before and after.
 */
import { readdirSync } from "node:fs";
import { resolve } from "node:path";
import type { Argument } from "../../../src/cells/call/call.ts";
import { findRecord, RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../../src/sheet/recalculate/calculate-one.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";
import { underRule } from "../../cells/example/tables.ts";
import type { Published, PublishedCell, PublishedFormula } from "../../reference/published.ts";

type Answered = CellValue | CellMatrix;
/** Answers one call of one function, wherever it runs. */
export type Answerer = (name: string, given: readonly Argument[]) => Promise<Answered>;

export interface KnownAnswer {
  readonly what: string;
  readonly expected: CellValue;
  /** How far the answer may be from a published figure, in its unit. */
  readonly tolerance: number;
  answeredBy(call: Answerer): Promise<Answered>;
}

const asItIs = (_: string, given: readonly Argument[]): readonly Argument[] => given;
/** Published rows go by the edition whose method is the shop's rule, where they name none. */
const byRule = (name: string, given: readonly Argument[]): readonly Argument[] =>
  underRule(name, given as readonly (CellMatrix | CellValue)[]);

async function evaluatedBy(call: Answerer, formula: string, asked = asItIs): Promise<Answered> {
  const wanted: { name: string; given: readonly Argument[] }[] = [];
  evaluateFormula(formula, {
    ...shopFunctions,
    call: (name, brought) => {
      const given = asked(name, brought);
      wanted.push({ name, given });
      return shopFunctions.call(name, given);
    },
  });
  const answers: Answered[] = [];
  for (const { name, given } of wanted) answers.push(await call(findRecord(name)!.name, given));
  return evaluateFormula(formula, { ...shopFunctions, call: () => ({ value: answers.shift()!, unit: null }) }).value;
}

export const EXAMPLES: readonly KnownAnswer[] = RECORDS.map(({ example: { formula, answer } }) => ({
  what: formula,
  expected: answer,
  tolerance: 0,
  answeredBy: (call) => evaluatedBy(call, formula),
}));

/** The cell a row speaks of, where its function spills a block; headers may carry a unit in brackets. */
function cellOf(answer: Answered, { column, row }: PublishedCell): Answered {
  const [header = [], ...rows] = Array.isArray(answer) ? answer : [[answer]];
  const index = header.findIndex((cell) => cell === column || String(cell).startsWith(`${column} (`));
  return rows[row]?.[index] ?? null;
}

const knownRow = (row: Published | PublishedFormula | PublishedCell): KnownAnswer => ({
  what: "call" in row ? `${row.id}: ${row.call[0]}` : `${row.id}: ${row.formula}`,
  expected: row.expected,
  tolerance: row.tolerance,
  answeredBy: async (call) => {
    if (!("call" in row)) return evaluatedBy(call, row.formula, byRule);
    const answer = await call(row.call[0], byRule(row.call[0], row.call.slice(1)));
    return "column" in row ? cellOf(answer, row) : answer;
  },
});

const isPublished = (row: unknown): row is Published | PublishedFormula =>
  typeof row === "object" &&
  row !== null &&
  "source" in row &&
  "expected" in row &&
  ("call" in row || "formula" in row);

/** Whatever rows the files of tests/reference hold: a new file there is checked here without being listed. */
export async function publishedAnswers(): Promise<readonly KnownAnswer[]> {
  const folder = resolve("tests/reference");
  const files = readdirSync(folder).filter((file) => file.endsWith(".ts") && !file.endsWith(".test.ts"));
  const modules: object[] = await Promise.all(files.map((file) => import(`${folder}/${file}`)));
  return modules
    .flatMap((module) => Object.values(module))
    .filter(Array.isArray)
    .flat()
    .filter(isPublished)
    .map(knownRow);
}
