/** The operations that a line asks for, each with its station. */
import type { BillLine } from "./line.ts";
import { type Station, stationNamed } from "./station.ts";

/** Whether a line has this work done, by the name of the station: "Deburr", "Hand deburr". */
export const asksFor = ({ operations }: Pick<BillLine, "operations">, work: "deburr" | "weld"): boolean =>
  operations.some(({ station }) => station.toLowerCase().includes(work));

/** Throws the Refusal of a station that is not in the table. */
export const operationsOf = (
  { operations, row }: Pick<BillLine, "operations" | "row">,
  stations: readonly Station[],
  parameter = `line ${row - 1} column "Operations"`,
) => operations.map(({ station, amount }) => ({ station: stationNamed(station, stations, parameter), amount }));
