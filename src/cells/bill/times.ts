/** BILL.TIMES: what every line takes at every station. */

import { SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from "../../calc/time/seconds.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import type { BillLine, RouteName } from "../tables/bill.ts";
import { routeFor } from "./routes.ts";
import { isAnswered, outcomes, rowsOf } from "./rows.ts";
import type { Shop } from "./shop.ts";
import { Planner, type StationWork } from "./work.ts";

export function billTimes(shop: Shop, wanted: (line: BillLine) => RouteName | undefined, work?: Working): CellMatrix {
  const planner = new Planner(shop, work);
  const found = outcomes(shop.bill, (line) => {
    const planned = planner.plan(line);
    return planner.all(planned, routeFor(line, planned.possible, wanted(line)));
  });
  const total = found
    .filter(isAnswered)
    .flatMap(({ answer }) => answer)
    .reduce((sum, w) => sum + w.setUp + w.run, 0);
  step(work, "T", "all lines at all stations", total / SECONDS_PER_HOUR, "h", "sum");
  return spill(
    "BILL.TIMES",
    rowsOf(found, (line, works) => works.map((w) => row(line.part, w))),
    shop.system,
  );
}

const row = (part: string, { station, setUp, each, pieces, run, people, note }: StationWork): SpillRow => ({
  Part: part,
  Station: station.name,
  "Set-up": setUp / SECONDS_PER_MINUTE,
  Each: each / SECONDS_PER_MINUTE,
  Quantity: pieces,
  Total: (setUp + run) / SECONDS_PER_MINUTE,
  People: people,
  Note: note,
});
