/**
 * BILL.WHATIF: if it must leave by then, which lines are in time, which need overtime, which must go outside, and which
 * break it. Lines are taken in the order of the bill, each behind those before it at every station.
 */
import { type Instant, instant, withOvertime } from "../../calc/schedule/calendar.ts";
import { finish, workBetween } from "../../calc/schedule/finish.ts";
import { SECONDS_PER_HOUR, type Seconds, seconds } from "../../calc/time/seconds.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { step, type Working } from "../../units/working.ts";
import { asSerial } from "../parameters/instant.ts";
import { type SpillRow, spill } from "../spill-columns.ts";
import type { BillLine, BillRow, RouteName } from "../tables/bill.ts";
import { type CalendarRow, calendarOf } from "../tables/calendar.ts";
import { routeFor } from "./routes.ts";
import { isAnswered, outcomes, rowsOf } from "./rows.ts";
import type { Shop } from "./shop.ts";
import { afterWorkingDays, StationClock } from "./station-time.ts";
import { type OutsideWork, Planner, type StationWork } from "./work.ts";

export interface WhatIf {
  readonly calendar: readonly CalendarRow[];
  readonly start: Instant;
  readonly due: Instant;
  readonly wanted: (line: BillLine) => RouteName | undefined;
  readonly byStation: boolean;
}

export const VERDICTS = ["in time", "overtime", "outside", "breaks it"] as const;
interface Verdict {
  readonly verdict: (typeof VERDICTS)[number];
  /** The station that decides, with this line's time there. */
  readonly last: { readonly name: string; readonly time: number };
  readonly finish: Instant;
  readonly note: string;
}

export function billWhatIf(bill: readonly BillRow[], shop: Shop, question: WhatIf, work?: Working): CellMatrix {
  const planner = new Planner(shop);
  const run = new Run(shop, question);
  const found = outcomes(bill, (line) => {
    const planned = planner.plan(line);
    const route = routeFor(line, planned.possible, question.wanted(line));
    return run.take(planner.all(planned, route), planner.outside(planned));
  });
  const late = found.filter((outcome) => isAnswered(outcome) && outcome.answer.verdict === "breaks it").length;
  step(work, "late", "lines that break the due time", late, "count", "queues and loads in the shifts (derived)");
  if (question.byStation) return spill("BILL.WHATIF stations", run.stations(), shop.system);
  const rows = rowsOf(found, (line, { verdict, last, finish: done, note }) => ({
    Part: line.part,
    Verdict: verdict,
    Station: last.name,
    Hours: last.time / SECONDS_PER_HOUR,
    Finish: asSerial(done),
    "Late by": workBetween(question.due, done, run.general) / SECONDS_PER_HOUR,
    Note: note,
  }));
  return spill("BILL.WHATIF", rows, shop.system);
}

class Run {
  readonly general;
  readonly #clocks = new Map<string, StationClock>();
  readonly #loads = new Map<string, number>();
  readonly #overtime: number;

  constructor(
    shop: Shop,
    private readonly question: WhatIf,
  ) {
    this.general = calendarOf(question.calendar);
    this.#overtime = (shop.rates.find("overtimePerDay") ?? 0) * SECONDS_PER_HOUR;
    for (const station of shop.stations)
      this.#clocks.set(station.name, new StationClock(station, question.calendar, question.start));
  }

  take(works: readonly StationWork[], outside: readonly OutsideWork[]): Verdict {
    const { due, start } = this.question;
    const vendorDays = Math.max(0, ...outside.map(({ station }) => station.vendorDays ?? 0));
    const away = vendorDays > 0 ? `then ${vendorDays} vendor days` : "";
    const after = (done: Instant) => afterWorkingDays(done, vendorDays, this.general);
    const regular = this.#last(works, false);
    const answer = (verdict: Verdict["verdict"], last: Last, kept: readonly StationWork[], note = ""): Verdict => {
      for (const { station, setUp, run } of kept)
        this.#loads.set(station.name, (this.#loads.get(station.name) ?? 0) + setUp + run);
      return { verdict, last, finish: after(last.done), note: [note, away].filter((text) => text !== "").join("; ") };
    };
    if (after(regular.done) <= due) return answer("in time", regular, works);
    const longer = this.#last(works, true);
    if (after(longer.done) <= due) return answer("overtime", longer, works);
    for (const sent of works) {
      const { vendorDays: days, name } = sent.station;
      if (days === undefined) continue;
      const rest = works.filter((other) => other !== sent);
      const back: Last = { name, time: sent.setUp + sent.run, done: afterWorkingDays(start, days, this.general) };
      for (const overtime of [false, true]) {
        const left = rest.length > 0 ? this.#last(rest, overtime) : back;
        const last = left.done > back.done ? left : back;
        if (after(last.done) <= due)
          return answer(
            "outside",
            last,
            rest,
            `${name} outside, ${days} vendor days${overtime ? ", the rest in overtime" : ""}`,
          );
      }
    }
    return answer("breaks it", regular, works);
  }

  /** Where a line comes out last, behind what is there already. */
  #last(works: readonly StationWork[], overtime: boolean): Last {
    const ends = works.map(({ station, setUp, run }): Last => {
      const clock = this.#clocks.get(station.name)!;
      const load = seconds(station.queue + (this.#loads.get(station.name) ?? 0) + setUp + run);
      const calendar = overtime ? withOvertime(clock.calendar, this.#overtime) : clock.calendar;
      return { name: station.name, time: setUp + run, done: finish(this.question.start, load, calendar) };
    });
    return ends.reduce((a, b) => (b.done > a.done ? b : a));
  }

  stations(): SpillRow[] {
    const { start, due } = this.question;
    return [...this.#clocks.values()].map(({ station, calendar }) => {
      const load = this.#loads.get(station.name) ?? 0;
      const available = workBetween(start, due, calendar);
      const overtime = workBetween(start, due, withOvertime(calendar, this.#overtime)) - available;
      const short = Math.max(0, station.queue + load - available - overtime);
      const done = finish(start, seconds(station.queue + load) as Seconds, calendar);
      return {
        Station: station.name,
        Queue: station.queue / SECONDS_PER_HOUR,
        Load: load / SECONDS_PER_HOUR,
        Available: available / SECONDS_PER_HOUR,
        Overtime: overtime / SECONDS_PER_HOUR,
        Short: short / SECONDS_PER_HOUR,
        Finish: asSerial(instant(done)),
        Note: load === 0 ? "no work of this bill" : short > 0 ? "not even with overtime" : "",
      };
    });
  }
}

interface Last {
  readonly name: string;
  readonly time: number;
  readonly done: Instant;
}
