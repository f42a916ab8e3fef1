import { type Measures, measure } from "../../calc/time/station-time.ts";
import { mm } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import type { Blank } from "../lines/blank.ts";
import type { BillLine } from "../nouns/line.ts";
import type { Station } from "../nouns/station.ts";

/** What one piece of a line has for a station to count. */
export const measuresOf = (line: BillLine, { length, width, weight }: Blank): Measures => ({
  holes: line.holes,
  notches: line.notches,
  area: 2 * length * width,
  edge: mm(2 * (length + width)),
  weight,
});

/** How many units of its basis one piece has at a station; a count must be written with the operation. */
export function unitsOf(line: BillLine, station: Station, piece: Measures, amount: number | undefined): number {
  const units = measure(station.basis, piece, amount);
  if (units === undefined)
    throw noAnswer(
      `line ${line.row - 1} column "Operations"`,
      `a count after "${station.name}"`,
      "none",
      `write "${station.name} 2"`,
    );
  return units;
}
