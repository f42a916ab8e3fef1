import { Refusal } from "../../units/refusal.ts";

/** A refusal of a table's row names the row of the sheet, where it is known. @param headerRow of the sheet, from 1. */
export function onSheet<T>(name: string, headerRow: number | undefined, read: () => T): T {
  try {
    return read();
  } catch (problem) {
    if (!(problem instanceof Refusal) || headerRow === undefined || !problem.message.startsWith(`${name} row `))
      throw problem;
    const said = problem.message.replace(/ row (\d+)/, (_, row) => ` sheet row ${headerRow + Number(row) - 1}`);
    throw new Refusal(problem.code, said);
  }
}
