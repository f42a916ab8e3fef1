/** The open steps as a problem of scheduling, and the orders of an earlier plan in it. */
import type { Instant } from "../../calc/schedule/calendar.ts";
import type { Delivery, FloorPlan, FloorProblem, Operation, Tried } from "../../calc/schedule/floor/problem.ts";
import { vendorClock, type WorkClock } from "../../calc/schedule/floor/work-clock.ts";
import { entryOf, firstOf, itemAt } from "../../units/certain.ts";
import { lineName } from "../line-name.ts";
import type { Shop } from "../nouns/shop.ts";
import { type Crew, crewOf } from "./crew.ts";
import type { WeekFault } from "./faults.ts";
import { type OpenJob, type OpenStep, stepKey } from "./open-step.ts";
import { calendarFor } from "./ruling-shop.ts";
import { markOf } from "./standing.ts";
import type { WeekOptions, WeekOrders } from "./week.ts";

// Chosen: a rush counts three times; what is pinned moves for nothing that a job could lose.
const RUSH_WEIGHT = 3;
const PIN_WEIGHT = 1000;

const placeOf = ({ work, machine }: OpenStep): string => (work ? machine : `outside: ${machine}`);
const placesOf = (steps: readonly OpenStep[]): string[] => [...new Set(steps.map(placeOf))].sort();

export interface WeekFloor {
  readonly problem: FloorProblem;
  /** Names of the problem's stations. */
  readonly places: readonly string[];
  /** Of each step; undefined at a vendor's. */
  readonly clocks: readonly (WorkClock | undefined)[];
  /** The problem's deliveries as the jobs have them; pins come after them. */
  readonly own: readonly {
    readonly job: number;
    readonly due: Instant | undefined;
    /** Steps after which nothing comes. */
    readonly last: readonly number[];
    readonly steps: readonly number[];
  }[];
}

interface Given {
  readonly given: readonly OpenJob[];
  readonly steps: readonly OpenStep[];
  readonly shop: Pick<Shop, "stations" | "calendar">;
  readonly clockOf: (station: string) => WorkClock | undefined;
  readonly options: WeekOptions;
}

export function floorOf({ given, steps, shop, clockOf, options }: Given, fault: (fault: WeekFault) => void): WeekFloor {
  const places = placesOf(steps);
  const held = new Map((options.frozen ?? []).map((key, i) => [key, i]));
  const numbers = new Map<string, number>();
  const numbered = (word: string): number => numbers.get(word) ?? numbers.set(word, numbers.size).size - 1;
  const { now } = options;
  const release = (job: number): number =>
    Math.max(now, itemAt(given, job).start ?? now, options.starts?.get(itemAt(given, job).name) ?? now);
  const firsts = new Map([...steps].reverse().map((step) => [placeOf(step), step]));
  const stations = places.map((place) => {
    const { station, work } = entryOf(firsts, place);
    const more = options.further?.get(station.name) ?? 0;
    const ruling = shop.stations.find(({ name }) => name.toLowerCase() === station.name.toLowerCase());
    const clock = work && clockOf(station.name);
    return clock
      ? { machines: ((ruling ?? station).atOnce ?? 1) + more, clock }
      : { machines: Infinity, clock: vendorClock(calendarFor(shop, undefined, options)) };
  });
  const crew = crewOf(shop, options);
  const staff = steps.map(({ station: { name }, work }) => work && crew?.at(name, work.people));
  const clocks = steps.map(({ station, work }, i) => work && (staff[i]?.clock ?? clockOf(station.name)));
  lackOfPeople(given, steps, staff, fault);
  const lots = new Map<string, number>();
  const frozenAt: (number | undefined)[] = [];
  const operations = steps.map((step, i): Operation => {
    const place = places.indexOf(placeOf(step));
    // Lots are alike: on one machine the first goes first, which harms nothing and is how the floor counts them.
    const own = `${step.job} ${step.line.row} ${place}`;
    const previous = itemAt(stations, place).machines === 1 ? lots.get(own) : undefined;
    lots.set(own, i);
    const kept = step.isStarted ? i - steps.length : held.get(stepKey(given, step));
    // The earlier plan may have had its lots in another order: one that would wait for a later lot is not held.
    const isHeld = kept !== undefined && (previous === undefined || (frozenAt[previous] ?? Infinity) < kept);
    frozenAt.push(step.work && !step.pin && isHeld ? kept : undefined);
    const isSet = step.isStarted;
    return {
      station: place,
      run: step.run,
      own: isSet ? 0 : step.lineSetUp,
      lot: numbered(`lot ${step.job} ${step.line.row}`),
      change: isSet ? 0 : step.change,
      key: numbered(`set ${step.machine} ${step.setFor}`),
      after: previous === undefined || step.after.includes(previous) ? step.after : [...step.after, previous],
      release: isSet ? ((step.work ? undefined : step.begun) ?? now) : Math.max(release(step.job), step.pin ?? now),
      frozen: frozenAt[i],
      people: staff[i]?.people ?? 0,
      clock: clocks[i],
    };
  });
  stations.forEach(({ machines }, place) => {
    const begun = steps.filter((step, i) => itemAt(operations, i).station === place && step.isStarted);
    const lines = begun.filter(
      ({ job, line }, i) => i === begun.findIndex((each) => each.job === job && each.line === line),
    );
    for (const step of lines.slice(machines)) {
      const first = firstOf(lines);
      const beside = `${lineName(first.line)} of ${itemAt(given, first.job).name}`;
      fault({ kind: "begun together", ...markOf(given, step, "Started"), beside, places: machines });
    }
  });
  if (crew) begunBeyondPeople({ given, steps, now }, { crew, staff }, fault);
  const { deliveries, own } = deliveriesOf(given, steps, options, fault);
  const pins = steps.flatMap(({ pin }, i): Delivery[] =>
    // Its lots come one behind the other; the pin is on the first.
    pin === undefined || itemAt(steps, i).lot > 1
      ? []
      : [
          {
            due: (clocks[i] ?? itemAt(stations, itemAt(operations, i).station).clock).finish(pin, itemAt(steps, i).run),
            weight: PIN_WEIGHT,
            operations: [i],
          },
        ],
  );
  const all = [...deliveries, ...pins];
  const problem: FloorProblem = { start: now, stations, operations, deliveries: all, crew: crew?.spans };
  return { problem, places, clocks, own };
}

/** Lines that have begun with more people than are there when the week begins. */
function begunBeyondPeople(
  { given, steps, now }: { given: readonly OpenJob[]; steps: readonly OpenStep[]; now: Instant },
  { crew, staff }: { crew: Crew; staff: readonly (ReturnType<Crew["at"]> | undefined)[] },
  fault: (fault: WeekFault) => void,
): void {
  const begun = steps.flatMap((step, i) => {
    const there = step.isStarted ? staff[i] : undefined;
    const isFirst = i === steps.findIndex(({ job, line }) => job === step.job && line === step.line);
    return there && isFirst ? [{ step, people: there.people, at: there.clock.opens(now) }] : [];
  });
  const at = Math.min(...begun.map((each) => each.at));
  let most = Infinity;
  const spans = crew.spans();
  for (let span = spans.next(); begun.length > 1 && !span.done && span.value.from <= at; span = spans.next())
    most = span.value.people;
  let taken = 0;
  for (const { step, people } of begun) {
    taken += people;
    if (taken <= most) continue;
    const { step: first } = firstOf(begun);
    const beside = `${lineName(first.line)} of ${nameOf(given, first.job)}`;
    fault({ kind: "begun short", ...markOf(given, step, "Started"), beside, places: most });
  }
}

/** Lines that want more people at a station than ever work there together. */
function lackOfPeople(
  given: readonly OpenJob[],
  steps: readonly OpenStep[],
  staff: readonly ({ readonly people: number } | undefined)[],
  fault: (fault: WeekFault) => void,
): void {
  const found = new Map<string, Extract<WeekFault, { kind: "people" }> & { lines: string[] }>();
  steps.forEach(({ job, line, station, work, lot }, i) => {
    const there = staff[i]?.people ?? Infinity;
    if (!work || lot > 1 || work.people <= there) return;
    const key = `${job} ${station.name} ${work.people}`;
    const lack = found.get(key) ?? {
      kind: "people",
      job: nameOf(given, job),
      lines: [],
      station: station.name,
      needed: work.people,
      there,
    };
    found.set(key, lack);
    lack.lines.push(lineName(line));
  });
  for (const lack of found.values()) fault(lack);
}

const nameOf = (given: readonly OpenJob[], job: number): string => itemAt(given, job).name;

/** Lines of a job that are due together leave together. */
function deliveriesOf(
  given: readonly OpenJob[],
  steps: readonly OpenStep[],
  { now, weights, dues }: WeekOptions,
  fault: (fault: WeekFault) => void,
) {
  const found = new Map<string, { job: number; due: Instant | undefined; last: number[]; steps: number[] }>();
  const isBefore = new Set(steps.flatMap(({ after }) => after));
  steps.forEach((step, i) => {
    const { name } = itemAt(given, step.job);
    const due = dues?.has(name) ? entryOf(dues, name)(step.due) : step.due;
    const key = `${step.job} ${due ?? ""}`;
    const delivery = found.get(key) ?? { job: step.job, due, last: [], steps: [] };
    found.set(key, delivery);
    delivery.steps.push(i);
    if (!isBefore.has(i)) delivery.last.push(i);
  });
  const own = [...found.values()];
  given.forEach(({ name }, job) => {
    const its = own.filter((each) => each.job === job);
    const passed = its.find(({ due }) => due !== undefined && due < now);
    if (its.some(({ due }) => due === undefined)) fault({ kind: "no due", job: name });
    if (passed?.due !== undefined) fault({ kind: "due passed", job: name, due: passed.due });
  });
  const weight = (job: number): number => {
    const { name, isRush } = itemAt(given, job);
    return weights?.get(name) ?? (isRush ? RUSH_WEIGHT : 1);
  };
  const deliveries = own.map(
    ({ job, due, last }): Delivery => ({ due: due ?? Infinity, weight: weight(job), operations: last }),
  );
  return { deliveries, own };
}

/** Under which name the orders say in which order runs and set-ups take their people. */
const PEOPLE = "people";
const SET_UP = "set-up | ";

/** The orders of a plan, by the keys of its steps. */
export const ordersOf = (
  machines: readonly (readonly [name: string, steps: readonly number[]])[],
  list: FloorPlan["list"],
  key: (step: number) => string,
): WeekOrders =>
  new Map([
    ...machines.map(([name, steps]) => [name, steps.map(key)] as const),
    ...(list ? [[PEOPLE, list.map((code) => (code < 0 ? SET_UP + key(~code) : key(code)))] as const] : []),
  ]);

/** The orders of another plan, for the steps that are still there; new ones go last. */
export function triedFrom(
  orders: WeekOrders,
  keys: ReadonlyMap<string, number>,
  problem: FloorProblem,
  places: readonly string[],
): Tried {
  const machines = machinesFrom(orders, keys, problem, places);
  const list = orders.get(PEOPLE)?.flatMap((key) => {
    const isSetUp = key.startsWith(SET_UP);
    const step = keys.get(isSetUp ? key.slice(SET_UP.length) : key);
    return step === undefined ? [] : [isSetUp ? ~step : step];
  });
  return { machines, ...(list === undefined ? {} : { list }) };
}

const LAST = Number.MAX_SAFE_INTEGER;

function machinesFrom(
  orders: WeekOrders,
  keys: ReadonlyMap<string, number>,
  { operations, stations }: FloorProblem,
  places: readonly string[],
): FloorPlan["machines"] {
  const seen = new Set<number>();
  const machines = stations.flatMap(({ machines: count }, station) =>
    count === Infinity
      ? []
      : Array.from({ length: count }, (_, m) =>
          (orders.get(`${places[station]} ${m + 1}`) ?? []).flatMap((key) => {
            const i = keys.get(key);
            if (i === undefined || itemAt(operations, i).station !== station || seen.has(i)) return [];
            seen.add(i);
            return [i];
          }),
        ),
  );
  let first = 0;
  stations.forEach(({ machines: count }, station) => {
    if (count === Infinity) return;
    operations.forEach((operation, i) => {
      if (operation.station === station && !seen.has(i)) itemAt(machines, first).push(i);
    });
    // What is not frozen stays in its order behind what is.
    const place = (i: number): number => Math.min(itemAt(operations, i).frozen ?? LAST, LAST);
    for (const own of machines.slice(first, first + count)) own.sort((a, b) => place(a) - place(b));
    first += count;
  });
  return machines;
}
