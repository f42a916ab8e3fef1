import { dayAndTime } from "../../bill/day.ts";
import { faultSays, type WeekFault } from "../../bill/week/faults.ts";
import type { OpenStep } from "../../bill/week/open-step.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { itemAt } from "../../units/certain.ts";
import { defineWeekFunction } from "../bill/week.ts";
import { EXAMPLE_CALENDAR } from "../example/example-bill.ts";
import { EXAMPLE_STEPS } from "../example/example-week.ts";
import { asSerial } from "../parameters/instant.ts";
import type { SpillRow } from "../record/spill-columns.ts";

export const weekDates = defineWeekFunction({
  name: "WEEK.DATES",
  question: "When is each of the open jobs done, how late, and what decides it?",
  example: {
    formula: `=INDEX(SHOP.WEEK.DATES(${EXAMPLE_STEPS},${EXAMPLE_CALENDAR},46083.2916666667),2,3)`,
    answer: 46083.50347222222,
  },
  rows: ({ jobs, steps, faults }) =>
    jobs.map(
      ({ name, due, finish, late, latestStart, chain }): SpillRow<"WEEK.DATES"> => ({
        Job: name,
        Due: due === undefined ? undefined : asSerial(due),
        Finish: finish === undefined ? undefined : asSerial(finish),
        Late: late / SECONDS_PER_HOUR,
        "Start by in plan": latestStart === undefined ? undefined : asSerial(latestStart),
        "Decided at": chain.map((i) => chainStep(itemAt(steps, i), name, jobs)).join("; "),
        Message: faults
          .filter((fault) => fault.job === name)
          .map((fault: WeekFault) => faultSays(fault, dayAndTime))
          .join("; "),
      }),
    ),
});

/** "Brake A1", of another job "Weld B3 (Pier)". */
function chainStep({ machine, line, job }: OpenStep, own: string, jobs: readonly { readonly name: string }[]): string {
  const { name } = itemAt(jobs, job);
  return `${machine} ${line.part}${name === own ? "" : ` (${name})`}`;
}
