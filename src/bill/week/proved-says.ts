import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { showNumber } from "../../units/show.ts";
import type { Week } from "./week.ts";

const SECOND = 1;

/** What is proved of the week: all of it, its late hours, or how few they could be at best. */
export function provedSays({ isProved, worth, bound }: Pick<Week, "isProved" | "worth" | "bound">): string {
  if (isProved) return "no plan is better";
  if (worth.late < bound.late + SECOND) return "no plan is less late";
  return `no plan is below ${showNumber(bound.late / SECONDS_PER_HOUR, 3)} h`;
}
