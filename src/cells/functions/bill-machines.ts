import { EXAMPLE_CUTTERS } from "../bill/example-shop.ts";
import { billMachines as machines } from "../bill/machines.ts";
import { data } from "../parameters/material.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { cutters } from "../tables/bill-tables.ts";
import { noRates } from "../tables/rates.ts";

export const billMachines = defineFunction({
  name: "BILL.MACHINES",
  question: "What are the smallest machines that would do this bill, and how much of it can each of ours do?",
  parameters: { ...cutters(), units: units(), data: data() },
  long: true,
  result: { kind: "table", columns: headers("BILL.MACHINES") },
  example: {
    formula: `=INDEX(SHOP.BILL.MACHINES(${EXAMPLE_CUTTERS}),4,2)`,
    answer: 4,
  },
  source: "BEND.TONNAGE, SHEAR.MAXTHICKNESS turned round, lengths of bends and blanks (derived); the plates decide",
  calculate: ({ bill, brake, dies, punches, shear, waterjet }, { system, materials, work }) =>
    machines(
      {
        bill,
        brakes: brake,
        dies,
        punches,
        shears: shear,
        waterjets: waterjet,
        rates: noRates,
        materials,
        system,
      },
      work,
    ),
});
