/** What stands already when the week is planned: work that has begun has its rest alone to do, a pin holds where it can be kept. */

import { type Instant, instant } from "../../calc/schedule/calendar.ts";
import { workBetween } from "../../calc/schedule/finish.ts";
import { vendorClock, type WorkClock } from "../../calc/schedule/floor/work-clock.ts";
import { itemAt } from "../../units/certain.ts";
import { lineName } from "../line-name.ts";
import type { Shop } from "../nouns/shop.ts";
import type { MarkFault, WeekFault } from "./faults.ts";
import type { OpenJob, OpenStep } from "./open-step.ts";
import { calendarFor } from "./ruling-shop.ts";
import type { WeekOptions } from "./week.ts";

interface Given {
  readonly jobs: readonly OpenJob[];
  readonly shop: Pick<Shop, "calendar">;
  readonly clockOf: (station: string) => WorkClock | undefined;
  readonly options: WeekOptions;
}

/** The name by which a mark of the step is told. */
export const markOf = (
  jobs: readonly OpenJob[],
  { job, line, station }: OpenStep,
  column: MarkFault["column"],
): MarkFault => {
  const { name, above = 0 } = itemAt(jobs, job);
  return { job: name, line: lineName(line), row: line.row + above, column, mark: station.name };
};

/** Lots that are over are left out; each mark that cannot be taken as it is written is named once. */
export function standing<S extends OpenStep>(
  steps: readonly S[],
  given: Given,
  fault: (found: WeekFault) => void,
): S[] {
  const { jobs } = given;
  const isFirst = (step: S) => step.lot === 1;
  const worked = new Map<string, number>();
  const kept: (S | undefined)[] = steps.map((step) => {
    const named = (kind: "begun untimed" | "begun later" | "overdue") =>
      fault({ kind, ...markOf(jobs, step, "Started") });
    if (step.pin !== undefined) return pinned(step, step.pin, given, isFirst(step) ? fault : () => {});
    if (!step.isStarted) return step;
    if (step.begun === undefined) {
      if (isFirst(step)) named("begun untimed");
      return step;
    }
    const { now } = given.options;
    if (step.begun > now && isFirst(step)) named("begun later");
    const begun = instant(Math.min(step.begun, now));
    const isLast = step.lot === step.lots;
    if (!step.work) {
      const back = vendorClock(calendarFor(given.shop, undefined, given.options)).finish(begun, step.run);
      if (back > now) return { ...step, begun };
      named("overdue");
      return { ...step, run: 0, begun: undefined };
    }
    const key = `${step.job} ${step.line.row} ${step.machine}`;
    const calendar = calendarFor(given.shop, step.station.name, given.options);
    const spent = worked.get(key) ?? workBetween(begun, now, calendar);
    const all = step.run + (isFirst(step) ? step.lineSetUp + step.change : 0);
    worked.set(key, Math.max(0, spent - all));
    if (spent < all) return { ...step, begun, run: all - spent };
    if (!isLast) return undefined;
    named("overdue");
    return { ...step, run: 0 };
  });
  return without(kept);
}

/** A pin that nothing could keep is named and dropped; one outside the shifts is named and kept at the next one. */
function pinned<S extends OpenStep>(
  step: S,
  pin: Instant,
  { jobs, clockOf, options }: Given,
  fault: (found: WeekFault) => void,
): S {
  const named = markOf(jobs, step, "Pinned");
  const { start } = itemAt(jobs, step.job);
  const clock = step.work && clockOf(step.station.name);
  const opens = clock ? instant(clock.opens(Math.max(pin, options.now))) : pin;
  if (pin < options.now) fault({ kind: "pin passed", ...named, at: pin });
  else if (start !== undefined && pin < start) fault({ kind: "pin early", ...named, at: start });
  else {
    if (opens !== pin) fault({ kind: "pin closed", ...named, at: opens });
    return { ...step, pin: opens };
  }
  return { ...step, pin: undefined };
}

/** Steps that are still there, with the places of those they wait for; what is gone is done. */
export function without<S extends OpenStep>(steps: readonly (S | undefined)[]): S[] {
  const place = new Map<number, number>();
  steps.forEach((step, i) => {
    if (step) place.set(i, place.size);
  });
  return steps.flatMap((step) => {
    if (!step) return [];
    const after = step.after.flatMap((part) => place.get(part) ?? []);
    return [after.length === step.after.length && place.size === steps.length ? step : { ...step, after }];
  });
}
