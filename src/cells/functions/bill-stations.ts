import { billStations as answer } from "../bill/stations.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineFunction } from "../record/record.ts";
import { headers } from "../record/spill-columns.ts";
import { billArguments, planOf } from "../tables/shop-arguments.ts";

export const billStations = defineFunction({
  name: "BILL.STATIONS",
  question: "How many hours has every station, and how many does this bill need there?",
  parameters: billArguments(),
  long: true,
  result: { kind: "table", columns: headers("BILL.STATIONS") },
  example: {
    formula: `=INDEX(SHOP.BILL.STATIONS(${EXAMPLE_SHOP}),2,1)`,
    answer: "Shear",
  },
  source: "loads in due order behind the queues, in the shifts of the calendar (derived)",
  calculate: ({ units: _, data: __, ...tables }, call) => answer(planOf(tables, call)),
});
