/** WEEK.DATES and WEEK.LOAD: the open work of several jobs on one calendar. */
import type { CalendarRow } from "../../bill/nouns/calendar.ts";
import { faultSays, type WeekFault } from "../../bill/week/faults.ts";
import type { OpenJob, OpenStep } from "../../bill/week/open-step.ts";
import { planSteps } from "../../bill/week/plan-steps.ts";
import type { Week } from "../../bill/week/week.ts";
import type { Instant } from "../../calc/schedule/calendar.ts";
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { remember } from "../../units/remember.ts";
import { step, type Working } from "../../units/working.ts";
import { asSerial } from "../parameters/instant.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { openSteps, type WeekRow } from "../tables/week-steps.ts";

interface Given {
  readonly steps: readonly WeekRow[];
  readonly calendar: readonly CalendarRow[];
  readonly now: Instant;
}

/** Both functions ask for the same week. */
const planned = remember(
  2,
  (open: { jobs: readonly OpenJob[]; steps: OpenStep[] }, calendar: readonly CalendarRow[], now: Instant) =>
    planSteps({ ...open, shop: { calendar, stations: [] } }, { now }),
);
function weekOf({ steps, calendar, now }: Given, work?: Working): Week<OpenStep> {
  const open = openSteps(steps);
  const week = work ? planSteps({ ...open, shop: { calendar, stations: [] } }, { now }) : planned(open, calendar, now);
  step(
    work,
    "H",
    "hours late that no plan of these steps is below",
    week.bound.late / SECONDS_PER_HOUR,
    "h",
    "bound (derived)",
  );
  step(work, "S", "set-up, shared by equal words in Set for", week.worth.setUp / SECONDS_PER_HOUR, "h", "sum");
  step(
    work,
    "L",
    "hours late by weight, a rush three times",
    week.worth.late / SECONDS_PER_HOUR,
    "h",
    "search (derived)",
  );
  return week;
}

/** "Brake A1", of another job "Weld B3 (Pier)". */
const chainStep = (
  { machine, line, job }: OpenStep,
  own: string,
  jobs: readonly { readonly name: string }[],
): string => {
  const { name } = itemAt(jobs, job);
  return `${machine} ${line.part}${name === own ? "" : ` (${name})`}`;
};

export function weekDates(given: Given, work?: Working): CellMatrix {
  const { jobs, steps, faults } = weekOf(given, work);
  const rows = jobs.map(
    ({ name, due, finish, late, latestStart, chain }): SpillRow<"WEEK.DATES"> => ({
      Job: name,
      Due: due === undefined ? undefined : asSerial(due),
      Finish: finish === undefined ? undefined : asSerial(finish),
      Late: late / SECONDS_PER_HOUR,
      "Start by in plan": latestStart === undefined ? undefined : asSerial(latestStart),
      "Decided at": chain.map((i) => chainStep(itemAt(steps, i), name, jobs)).join("; "),
      Message: faults
        .filter((fault) => fault.job === name)
        .map((fault: WeekFault) => faultSays(fault, (at) => asSerial(at).toFixed(2)))
        .join("; "),
    }),
  );
  return spill("WEEK.DATES", rows, "in");
}

export function weekLoad(given: Given, work?: Working): CellMatrix {
  const rows = weekOf(given, work).days.map(
    ({ machine, day, available, load, people }): SpillRow<"WEEK.LOAD"> => ({
      Station: machine,
      Day: asSerial(day),
      Available: available / SECONDS_PER_HOUR,
      Load: load / SECONDS_PER_HOUR,
      Slack: (available - load) / SECONDS_PER_HOUR,
      People: people / SECONDS_PER_HOUR,
    }),
  );
  return spill("WEEK.LOAD", rows, "in");
}
