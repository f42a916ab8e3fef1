/** BILL.LOADIN: how the finished parts go out. */

import { loadOrder, pilesOf } from "../../calc/schedule/load-order.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { atMost } from "../../units/nearly.ts";
import { kilograms } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { spill } from "../record/spill-columns.ts";
import type { Rates } from "../tables/rates.ts";
import { blankOf } from "./blank.ts";
import { isAnswered, outcomes, rowsOf } from "./rows.ts";
import { onePersonLimit } from "./shop.ts";
import { type BendTools, chooseTools } from "./tools.ts";

export function billLoadIn(tools: BendTools, rates: Rates, system: UnitSystem, work?: Working): CellMatrix {
  const alone = onePersonLimit(rates);
  const hoistAbove = rates.find("hoistAbove");
  const limit = rates.find("pileLimit") ?? hoistAbove ?? alone;
  if (limit === undefined)
    throw noAnswer("rates", 'a table with a row "Pile limit", "Hoist above" or "One-person limit"', "none");
  const found = outcomes(tools.bill, (line) => {
    const { weight } = blankOf(line, chooseTools(line, tools, system), system);
    return { weight, area: line.area, ...pilesOf(line.quantity, weight, kilograms(limit)) };
  });
  const answered = found.filter(isAnswered);
  const loaded = loadOrder(answered.map((outcome) => ({ ...outcome.answer, outcome }))).map(({ outcome }) => outcome);
  const total = answered.reduce((sum, { line, answer }) => sum + line.quantity * answer.weight, 0);
  step(work, "W", "weight of the load", total, "kg", "sum of blanks; holes are not deducted (derived)");
  const handling = (weight: number) => {
    if (hoistAbove !== undefined && !atMost(weight, hoistAbove)) return "hoist";
    return alone === undefined || atMost(weight, alone) ? "one person" : "two people";
  };
  const wrong = found.filter((outcome) => !isAnswered(outcome));
  let order = 0;
  const rows = rowsOf([...loaded, ...wrong], (line, { weight, perPile, piles }) => {
    const pile = kilograms(Math.min(perPile, line.quantity) * weight);
    return {
      Order: ++order,
      Area: line.area,
      Piles: piles,
      Part: line.part,
      Quantity: line.quantity,
      Spares: line.spares,
      "Weight each": weight,
      "Pile weight": pile,
      Handling: `${handling(weight)} a piece, ${handling(pile)} a pile`,
      Label: [
        line.area,
        line.part,
        `${line.quantity} pcs`,
        line.spares > 0 ? `${line.spares} spare` : "",
        show(pile, "mass", system, 2),
      ]
        .filter((text) => text !== "")
        .join(" / "),
    };
  });
  return spill("BILL.LOADIN", rows, system);
}
