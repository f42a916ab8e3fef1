import { EXAMPLE_BENDERS, EXAMPLE_RATES } from "../bill/example-shop.ts";
import { billSetups as setups } from "../bill/setups.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { benders } from "../tables/bill-tables.ts";
import { anyOutlines, anyPressSettings, drawnPress } from "../tables/press-tables.ts";
import { rates } from "../tables/rates.ts";

export const billSetups = defineFunction({
  name: "BILL.SETUPS",
  question: "In which order is the brake set up, with which die, punch, depth and stops?",
  parameters: {
    ...benders(),
    rates: rates(),
    outlines: anyOutlines(),
    press: anyPressSettings(),
    units: units(),
    data: data(),
  },
  long: true,
  result: { kind: "table", columns: headers("BILL.SETUPS") },
  example: {
    formula: `=INDEX(SHOP.BILL.SETUPS(${EXAMPLE_BENDERS},${EXAMPLE_RATES}),2,4)`,
    answer: "D2",
  },
  source:
    "order and stops as BEND.ORDER on the outlines given, else on plain tools after the tables (derived), else from the ends inward (common practice); fewest sets proved by branching (derived); depth by air-bend mechanics or geometry (derived), a first setting only",
  calculate: ({ bill, brake, dies, punches, rates, outlines, press }, { system, work }) =>
    setups({ bill, brakes: brake, dies, punches, rates, drawn: drawnPress(outlines, press), system }, work),
});
