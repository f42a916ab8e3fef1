import { EXAMPLE_BENDERS, EXAMPLE_RATES } from "../bill/example-shop.ts";
import { billSetups as setups } from "../bill/setups.ts";
import { benders } from "../parameters/bill-tables.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record.ts";
import { headers } from "../spill-columns.ts";
import { rates } from "../tables/rates.ts";

export const billSetups = defineFunction({
  name: "BILL.SETUPS",
  question: "In which order is the brake set up, with which die, punch, depth and stops?",
  parameters: { ...benders(), rates: rates(), units: units(), data: data() },
  long: true,
  result: { kind: "table", columns: headers("BILL.SETUPS") },
  example: {
    formula: `=INDEX(SHOP.BILL.SETUPS(${EXAMPLE_BENDERS},${EXAMPLE_RATES}),2,4)`,
    answer: "D2",
  },
  source:
    "stops from flat sums (derived); depth V/2 tan(A/2) at the overbent angle (derived), a first setting only; usual order from the ends inward (common practice)",
  calculate: ({ bill, brake, dies, punches, rates }, { system, work }) =>
    setups({ bill, brakes: brake, dies, punches }, rates, system, work),
});
