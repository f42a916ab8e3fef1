/** BILL.WHATIF: if it must leave by then, which lines go into overtime, go outside, or break it. */
import type { Instant } from "../../calc/schedule/calendar.ts";
import { finish, workBetween } from "../../calc/schedule/finish.ts";
import { Deadline, type Place } from "../../calc/schedule/what-if.ts";
import { SECONDS_PER_HOUR, seconds } from "../../calc/time/seconds.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { step, type Working } from "../../units/working.ts";
import { asSerial } from "../parameters/instant.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import type { BillLine, RouteName } from "../tables/bill.ts";
import { type CalendarRow, calendarOf } from "../tables/calendar.ts";
import { routeFor } from "./routes.ts";
import { isAnswered, outcomes, rowsOf } from "./rows.ts";
import type { Shop } from "./shop.ts";
import { Planner } from "./work.ts";

export interface WhatIf {
  readonly calendar: readonly CalendarRow[];
  readonly start: Instant;
  readonly due: Instant;
  readonly wanted: (line: BillLine) => RouteName | undefined;
  readonly byStation: boolean;
}

export function billWhatIf(shop: Shop, question: WhatIf, work?: Working): CellMatrix {
  const { start, due, calendar } = question;
  const planner = new Planner(shop);
  const general = calendarOf(calendar);
  const overtime = seconds((shop.rates.find("overtimePerDay") ?? 0) * SECONDS_PER_HOUR);
  const deadline = new Deadline(start, due, general, overtime);
  const places = new Map(
    shop.stations.map(({ name, queue, vendorDays }): [string, Place] => [
      name,
      { name, queue, vendorDays, calendar: calendarOf(calendar, name) },
    ]),
  );
  const found = outcomes(shop.bill, (line) => {
    const planned = planner.plan(line);
    const works = planner.all(planned, routeFor(line, planned.possible, question.wanted(line)));
    const tasks = works.map(({ station, setUp, run }) => ({
      place: places.get(station.name)!,
      time: seconds(setUp + run),
    }));
    const vendorDays = planner.outside(planned).map(({ station }) => station.vendorDays ?? 0);
    return deadline.take(tasks, Math.max(0, ...vendorDays));
  });
  const late = found.filter((outcome) => isAnswered(outcome) && outcome.answer.verdict === "breaks it").length;
  step(work, "late", "lines that break the due time", late, "count", "queues and loads in the shifts (derived)");
  if (question.byStation)
    return spill(
      "BILL.WHATIF stations",
      [...places.values()].map((place) => stationRow(place, deadline)),
      shop.system,
    );
  const rows = rowsOf(found, (line, { verdict, place, time, finish: done, note }) => ({
    Part: line.part,
    Verdict: verdict,
    Station: place,
    Hours: time / SECONDS_PER_HOUR,
    Finish: asSerial(done),
    "Late by": workBetween(due, done, general) / SECONDS_PER_HOUR,
    Note: note,
  }));
  return spill("BILL.WHATIF", rows, shop.system);
}

function stationRow(place: Place, deadline: Deadline): SpillRow {
  const load = deadline.load(place);
  const { available, overtime, short } = deadline.hours(place);
  return {
    Station: place.name,
    Queue: place.queue / SECONDS_PER_HOUR,
    Load: load / SECONDS_PER_HOUR,
    Available: available / SECONDS_PER_HOUR,
    Overtime: overtime / SECONDS_PER_HOUR,
    Short: short / SECONDS_PER_HOUR,
    Finish: asSerial(finish(deadline.start, seconds(place.queue + load), place.calendar)),
    Note: load === 0 ? "no work of this bill" : short > 0 ? "not even with overtime" : "",
  };
}
