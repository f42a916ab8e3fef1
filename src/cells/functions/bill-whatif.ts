import { undatedSays } from "../../bill/says.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { entryOf } from "../../units/certain.ts";
import { quotedRows } from "../bill/rows.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { asSerial } from "../parameters/instant.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billWhatif = defineBillFunction({
  name: "BILL.WHATIF",
  question: "If it must leave by then, which lines go into overtime, go outside, or break it?",
  example: { formula: `=INDEX(SHOP.BILL.WHATIF(${EXAMPLE_SHOP}),2,2)`, answer: "in time" },
  source: "loads in due order behind the queues, in the shifts of the calendar; vendor days as working days (derived)",
  answer: (plan) => {
    const undated = undatedSays(plan.shop);
    if (undated) return spill("BILL.WHATIF", [{ Part: "none", Verdict: undated, Message: undated }], plan.shop.system);
    const { lines } = plan.dates;
    const rows = quotedRows(plan, (line): SpillRow<"BILL.WHATIF"> => {
      plan.workOf(line);
      const found = entryOf(lines, line.plan);
      const { verdict, place, due, time, finish, lateBy, lateAtBest, note, secondShiftSaves, outsideSaves } = found;
      return {
        Part: line.part,
        Verdict: verdict,
        Station: place,
        Due: asSerial(due),
        Hours: time / SECONDS_PER_HOUR,
        Finish: asSerial(finish),
        "Late by": lateAtBest / SECONDS_PER_HOUR,
        Note: note,
        "Late as it is": lateBy / SECONDS_PER_HOUR,
        "Second shift saves": secondShiftSaves === undefined ? undefined : secondShiftSaves / SECONDS_PER_HOUR,
        "Sent out saves": outsideSaves === undefined ? undefined : outsideSaves / SECONDS_PER_HOUR,
      };
    });
    return spill("BILL.WHATIF", rows, plan.shop.system);
  },
});
