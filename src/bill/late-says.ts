/** Late lines in words: late is what is not done in time with the shifts as they are. */
import type { Verdict } from "../calc/schedule/what-if.ts";
import { SECONDS_PER_HOUR } from "../calc/time/seconds.ts";
import type { DatesPlan, LineDates } from "./dates/plan-dates.ts";

/** What the overtime, the second shift and the vendors of the What-if would do for the late lines. */
export const savedSays = ({ late, saved }: Pick<DatesPlan, "late" | "saved">): string =>
  late === 0
    ? ""
    : `overtime, a second shift or sending out would save ${saved === 0 ? "none" : `${saved === late ? "all" : saved} of them; the price does not include it`}`;

export const lateSays = ({ lateBy }: Pick<LineDates, "lateBy">): string =>
  `Late by ${(lateBy / SECONDS_PER_HOUR).toLocaleString("en-US", { minimumFractionDigits: 1, maximumFractionDigits: 1 })} working hours.`;

export const savedBySays = (verdict: Verdict["verdict"]): string =>
  verdict === "breaks it"
    ? "nothing offered saves it"
    : verdict === "outside"
      ? "sending out saves it"
      : `${verdict} saves it`;
