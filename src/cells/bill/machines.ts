/** BILL.MACHINES: the smallest machines that would do the bill, and how much of it each machine of the shop can do. */
import { neededMachines } from "../../bill/needs/needed-machines.ts";
import type { BillPlan } from "../../bill/plan.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { fromInternal, unitName } from "../../units/system.ts";
import type { Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";

type Row = SpillRow<"BILL.MACHINES">;

export function billMachines(plan: BillPlan, work?: Working): CellMatrix {
  const { system } = plan.shop;
  const read = plan.lines.flatMap(({ plan: found }) => (found ? [found] : []));
  const { sizes, shares } = neededMachines(read, plan.shop, work);
  const missing = plan.lines.length - read.length;
  const rows: Row[] = [
    ...sizes.map(
      ({ question, quantity, of, most }): Row => ({
        Question: question,
        Value: most && fromInternal(most.value, quantity, system),
        Unit: unitName(quantity, system),
        Part: most?.part,
        Lines: of,
      }),
    ),
    ...shares.map(
      ({ question, of, able, stuck }): Row => ({
        Question: question,
        Value: able,
        Unit: "lines",
        Part: stuck,
        Lines: of,
        Share: of === 0 ? undefined : able / of,
      }),
    ),
    ...(missing === 0
      ? []
      : [{ Question: "Lines that could not be read", Value: missing, Unit: "lines", Lines: plan.lines.length }]),
  ];
  return spill("BILL.MACHINES", rows, system);
}
