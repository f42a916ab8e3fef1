/** What a line is charged beside metal and time, where the shop has a row for it: paper, engineering, hardware. */
import { type Money, money } from "../../units/quantity.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import { operationsOf } from "../nouns/operations.ts";
import type { Shop } from "../nouns/shop.ts";
import { measuresOf, unitsOf } from "../time/measures.ts";

export function extrasOf({ line, blank }: LinePlan, { rates, stations }: Pick<Shop, "rates" | "stations">): Money {
  const once = [
    line.isNew ? rates.find("engineering") : 0,
    line.wantsFirstArticle ? rates.find("firstArticle") : 0,
    line.wantsCertificate ? rates.find("certificate") : 0,
  ];
  const piece = measuresOf(line, blank);
  // A station of the shop's own with a price each and no vendor puts in what that price buys: nuts, studs, hinges.
  const hardware = operationsOf(line, stations)
    .filter(({ station }) => station.each !== undefined && station.vendorDays === undefined)
    .map(({ station, amount }) => (station.priceEach ?? 0) * unitsOf(line, station, piece, amount) * line.quantity);
  return money([...once, ...hardware].reduce((sum: number, each) => sum + (each ?? 0), 0));
}
