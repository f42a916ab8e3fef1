/** Working time in hours, and whose shifts they are. */
import { SECONDS_PER_HOUR, type Seconds, seconds } from "../../calc/time/seconds.ts";
import { type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";
import { number } from "./number.ts";

const MOST_HOURS = 1_000_000; // more than a century of shifts

/** Read as hours, kept as whole seconds. */
export const workHours = (): CellParameter<Seconds> => {
  const base = number({ description: "Working time in hours", rule: { from: 0, to: MOST_HOURS } });
  return {
    ...base,
    type: "hours",
    read: (given, name, context) => seconds(Math.round(base.read(given, name, context) * SECONDS_PER_HOUR)),
  };
};

export const stationName = (): CellParameter<string | undefined> => ({
  shape: "cell",
  type: "station",
  description: "Station whose own shifts count; blank for the shop's",
  optional: true,
  default: null,
  read: (given: CellValue, name) => {
    if (isBlank(given)) return undefined;
    if (typeof given === "boolean" || isCellError(given)) throw wrong(name, "the name of a station", given);
    return String(given).trim();
  },
});
