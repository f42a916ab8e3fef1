/** The operations that a line asks for, each with its station. */
import type { BillLine } from "./line.ts";
import { type Station, stationNamed } from "./station.ts";

/** What a station does, by words in its name: "Deburr", "Hand deburr". Tumbling deburrs too (common practice). */
const WORDS = {
  cut: /^(?:shear|waterjet)$/i,
  deburr: /deburr|tumbl/i,
  notch: /notch/i,
  bend: /^brake$/i,
  drill: /drill|tap|hole/i,
  weld: /weld/i,
  pack: /pack/i,
} as const;
export type Work = keyof typeof WORDS;

export const workOf = (station: string): Work | undefined =>
  (Object.keys(WORDS) as Work[]).find((work) => WORDS[work].test(station));

/** Whether a line has this work done. */
export const asksFor = ({ operations }: Pick<BillLine, "operations">, work: Work): boolean =>
  operations.some(({ station }) => WORDS[work].test(station));

/** Throws the Refusal of a station that is not in the table. */
export const operationsOf = (
  { operations, row }: Pick<BillLine, "operations" | "row">,
  stations: readonly Station[],
  parameter = `line ${row - 1} column "Operations"`,
) => operations.map(({ station, amount }) => ({ station: stationNamed(station, stations, parameter), amount }));
