import { billStations as answer } from "../bill/stations.ts";
import { EXAMPLE_SHOP } from "../example/example-bill.ts";
import { defineBillFunction } from "../tables/bill-function.ts";

export const billStations = defineBillFunction({
  name: "BILL.STATIONS",
  question: "How many hours has every station, and how many does this bill need there?",
  example: { formula: `=INDEX(SHOP.BILL.STATIONS(${EXAMPLE_SHOP}),2,1)`, answer: "Shear" },
  source: "loads in due order behind the queues, in the shifts of the calendar (derived)",
  answer,
});
