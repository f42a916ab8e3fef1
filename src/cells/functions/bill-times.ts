import type { StationWork } from "../../bill/time/station-work.ts";
import { timeOf } from "../../bill/time/station-work.ts";
import { SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from "../../calc/time/seconds.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { step } from "../../units/working.ts";
import { quotedRows } from "../bill/rows.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billTimes = defineBillFunction({
  name: "BILL.TIMES",
  question: "How long does every line take at every station?",
  example: { formula: `=ROUND(INDEX(SHOP.BILL.TIMES(${EXAMPLE_SHOP}),2,6)*60,0)`, answer: 657 },
  source:
    "speeds, strokes, gauge moves and handling of the workbook; distance over speed (derived); tools once a set, shared by brake minutes (common practice)",
  answer: (plan, { work }) => {
    const total = plan.quoted.reduce((sum, line) => {
      const done = refusalOr(() => plan.workOf(line));
      return sum + (done instanceof Refusal ? 0 : done.works.reduce((each, station) => each + timeOf(station), 0));
    }, 0);
    step(work, "T", "all lines at all stations", total / SECONDS_PER_HOUR, "h", "sum");
    return spill(
      "BILL.TIMES",
      quotedRows<"BILL.TIMES">(plan, (line) => plan.workOf(line).works.map((each) => row(line.part, each))),
      plan.shop.system,
    );
  },
});

const row = (
  part: string,
  { station, setUp, each, pieces, run, people, own, note }: StationWork,
): SpillRow<"BILL.TIMES"> => ({
  Part: part,
  Station: station.name,
  "Set-up": setUp / SECONDS_PER_MINUTE,
  Each: each / SECONDS_PER_MINUTE,
  Quantity: pieces,
  Total: (setUp + run) / SECONDS_PER_MINUTE,
  People: people,
  Note: note,
  "Own factor": own,
});
