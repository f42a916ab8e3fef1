/**
 * What a workbook relies on: each function's name, its arguments in their order, what a blank means, the unit. Kept in
 * tests/recorded/names.json; a released row changes only by `npm run record`, a contract row never.
 */

import { type AnyParameter, type AnyRecord, publicName } from "../../cells/record/record.ts";
import { resultUnits } from "../../cells/record/result-units.ts";

export interface RecordedName {
  readonly name: string;
  /** In order; an optional one with a question mark and what a blank means: "units?=in". */
  readonly parameters: readonly string[];
  readonly unit: string | null;
  readonly contract: boolean;
}

export const NAMES_FILE = "tests/recorded/names.json";

export const namesOf = (records: readonly AnyRecord[]): RecordedName[] =>
  records
    .map((record) => ({
      name: record.name,
      parameters: Object.entries(record.parameters).map(([key, parameter]) => publicName(key) + whenBlank(parameter)),
      unit: resultUnits(record),
      contract: record.contract === true,
    }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));

const whenBlank = ({ optional, default: value }: AnyParameter): string =>
  !optional ? "" : value === null ? "?" : `?=${String(value)}`;

/** The new record; throws where it would change or drop a contract row. */
export function renewedNames(recorded: readonly RecordedName[], current: readonly RecordedName[]): RecordedName[] {
  for (const old of recorded.filter(({ contract }) => contract)) {
    const now = current.find(({ name }) => name === old.name);
    if (JSON.stringify(now) !== JSON.stringify(old))
      throw new Error(`${old.name} is a contract: it must stay ${JSON.stringify(old)}; got ${JSON.stringify(now)}`);
  }
  return [...current];
}

/** One function a line, so that a review sees which row changed. */
export const namesText = (names: readonly RecordedName[]): string =>
  `[\n${names.map((row) => `  ${JSON.stringify(row)}`).join(",\n")}\n]\n`;
