import type { BillPlan } from "../../bill/plan.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { type AnyRecord, type Call, defineFunction } from "../record/record.ts";
import { headers, type SpillName } from "../record/spill-columns.ts";
import { billArguments, planOf } from "./shop-arguments.ts";

interface BillFunction extends Pick<AnyRecord, "question" | "example" | "source"> {
  readonly name: SpillName;
  readonly answer: (plan: BillPlan, call: Call) => CellMatrix;
}

/** The record of a function that shows one side of the plan of a bill. */
export const defineBillFunction = ({ answer, ...record }: BillFunction): AnyRecord =>
  defineFunction({
    ...record,
    parameters: billArguments(),
    long: true,
    result: { kind: "table", columns: headers(record.name) },
    calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call), call),
  });
