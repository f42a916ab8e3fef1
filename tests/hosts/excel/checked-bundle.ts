/** Calls every function of a built bundle in the browser; what is wrong comes back as sentences, one per function. */
import type { Page } from "playwright-core";
import { RECORDS } from "../../../src/cells/catalogue.ts";
import type { AnyRecord } from "../../../src/cells/record/record.ts";
import { publicName } from "../../../src/cells/record/record.ts";
import { fromExcel } from "../../../src/hosts/excel/excel-value.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { itemAt } from "../../../src/units/certain.ts";
import { callInPage, type PageError } from "./call-in-page.ts";
import type { Answerer, KnownAnswer } from "./known-answers.ts";

export const parameterCount = (name: string): number =>
  Object.keys(RECORDS.find((record) => record.name === name)!.parameters).length;

/** An answer of the page as the engine writes it: a block of one cell is that cell. */
function plain(answer: unknown): CellValue | CellMatrix {
  const unwrapped = (value: unknown): unknown =>
    Array.isArray(value) ? value.map(unwrapped) : ((value as PageError | null)?.error ?? value);
  const value = fromExcel(unwrapped(answer));
  return Array.isArray(value) && value.length === 1 && value[0]!.length === 1 ? value[0]![0]! : value;
}

export function isSame(answer: CellValue | CellMatrix, { expected, tolerance }: KnownAnswer): boolean {
  if (typeof answer !== "number" || typeof expected !== "number")
    return isCellError(answer) ? isCellError(expected) && answer.code === expected.code : answer === expected;
  return Math.abs(answer - expected) <= Math.max(tolerance, 1e-9 * Math.abs(expected));
}

/** What the page answers otherwise than it is known; all are asked at once, as Excel asks. */
export async function wrongAnswers(page: Page, known: readonly KnownAnswer[]): Promise<string[]> {
  const call: Answerer = async (name, given) => plain(await callInPage(page, name, given, parameterCount(name)));
  const answers = await Promise.all(known.map((row) => row.answeredBy(call)));
  return known.flatMap((row, i) => {
    const answer = itemAt(answers, i);
    return isSame(answer, row) ? [] : [`${row.what}: ${JSON.stringify(answer)} is not ${JSON.stringify(row.expected)}`];
  });
}

/** TRUE is neither a number, a length nor a word of any list, so every function must refuse it by name. */
export async function wrongRefusals(page: Page, records: readonly AnyRecord[]): Promise<string[]> {
  const wrong: string[] = [];
  for (const { name, parameters } of records) {
    const count = Object.keys(parameters).length;
    const answer = await callInPage(page, name, Array(count).fill(true), count);
    const { code, message = "" } = (answer as PageError).error ?? {};
    const [first = ""] = message.split(" must be ");
    const named = Object.keys(parameters).map(publicName).includes(first.split(" ")[0]!);
    if (code !== "#VALUE!" || !named || !/ must be .+; got /.test(message))
      wrong.push(`${name}: ${JSON.stringify(answer)}`);
  }
  return wrong;
}
