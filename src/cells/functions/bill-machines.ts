import { neededMachines } from "../../bill/needs/needed-machines.ts";
import { fromInternal, unitName } from "../../units/system.ts";
import { EXAMPLE_CUTTERS } from "../example/example-bill.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billMachines = defineBillFunction({
  name: "BILL.MACHINES",
  question: "What are the smallest machines that would do this bill, and how much of it can each of ours do?",
  example: { formula: `=INDEX(SHOP.BILL.MACHINES(${EXAMPLE_CUTTERS}),4,2)`, answer: 4 },
  source: "BEND.TONNAGE, SHEAR.MAXTHICKNESS turned round, lengths of bends and blanks (derived); the plates decide",
  answer: (plan, { work }) => {
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
  },
});

type Row = SpillRow<"BILL.MACHINES">;
