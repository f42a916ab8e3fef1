import { undatedSays } from "../../bill/says.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { asSerial } from "../parameters/instant.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billStations = defineBillFunction({
  name: "BILL.STATIONS",
  question: "How many hours does every station have, and how many does this bill need there?",
  example: { formula: `=INDEX(SHOP.BILL.STATIONS(${EXAMPLE_SHOP}),2,1)`, answer: "Shear" },
  source: "loads in due order behind the queues, in the shifts of the calendar (derived)",
  answer: (plan) => {
    const undated = undatedSays(plan.shop);
    if (undated) return spill("BILL.STATIONS", [{ Station: "none", Note: undated }], plan.shop.system);
    const sentTo = plan.quoted.flatMap((line) => {
      const done = refusalOr(() => plan.workOf(line));
      return done instanceof Refusal ? [] : done.outside.map(({ station }) => station.name);
    });
    const noteOf = (station: string, load: number, short: number): string => {
      const sent = sentTo.filter((name) => name === station).length;
      if (sent > 0) return `${sent} ${sent === 1 ? "line goes" : "lines go"} there: days, no hours`;
      return load === 0 ? "no work of this bill" : short > 0 ? "not even with overtime" : "";
    };
    return spill(
      "BILL.STATIONS",
      plan.dates.stations.map(
        ({ station, queue, load, available, overtime, short, finish }): SpillRow<"BILL.STATIONS"> => ({
          Station: station,
          Queue: queue / SECONDS_PER_HOUR,
          Load: load / SECONDS_PER_HOUR,
          Available: available / SECONDS_PER_HOUR,
          Overtime: overtime / SECONDS_PER_HOUR,
          Short: short / SECONDS_PER_HOUR,
          Finish: asSerial(finish),
          Note: noteOf(station, load, short),
        }),
      ),
      plan.shop.system,
    );
  },
});
