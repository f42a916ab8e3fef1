/** How a shop's clock runs against the estimate: its allowance, and its own factor from finished jobs. */
import { ownFactors } from "../../calc/time/own-factor.ts";
import type { Ratio } from "../../units/quantity.ts";
import { remember } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import type { Shop } from "../nouns/shop.ts";

export interface Pace {
  /** On every minute of set-up and run. */
  readonly total: Ratio;
  /** The part of it that finished jobs have taught; 1 where they have not. */
  readonly own: Ratio;
}

const factorsKnown = remember(4, (finished: Shop["finished"]) => ownFactors(finished));

/** A shop that states no allowance has included it in its times. */
export function paceOf(station: string, { rates, finished }: Pick<Shop, "rates" | "finished">, work?: Working): Pace {
  const allowance = rates.find("allowance") ?? 1;
  const found = factorsKnown(finished).find((each) => each.station.toLowerCase() === station.toLowerCase());
  const own = found?.factor ?? 1;
  if (allowance !== 1) step(work, "a", "allowance on every minute", allowance, "", "the workbook's figure");
  if (found && own !== 1)
    step(work, `f ${station}`, `own factor, ${found.jobs} finished jobs`, own, "", "recorded minutes");
  return { total: allowance * own, own };
}
