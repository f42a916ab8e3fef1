/** BILL.STATIONS: the hours of every station against what it has until the bill must leave. */
import type { BillPlan } from "../../bill/plan.ts";
import { undatedSays } from "../../bill/says.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { asSerial } from "../parameters/instant.ts";
import { spill } from "../record/spill-columns.ts";

const HOUR = 3600; // seconds, by definition

export function billStations(plan: BillPlan): CellMatrix {
  const undated = undatedSays(plan.shop);
  if (undated) return spill("BILL.STATIONS", [{ Station: "none", Note: undated }], plan.shop.system);
  return spill(
    "BILL.STATIONS",
    plan.dates.stations.map(({ station, queue, load, available, overtime, short, finish }) => ({
      Station: station,
      Queue: queue / HOUR,
      Load: load / HOUR,
      Available: available / HOUR,
      Overtime: overtime / HOUR,
      Short: short / HOUR,
      Finish: asSerial(finish),
      Note: load === 0 ? "no work of this bill" : short > 0 ? "not even with overtime" : "",
    })),
    plan.shop.system,
  );
}
