/** What the lines of the open jobs still have to do, in the order in which it is done. */
import { itemAt } from "../../units/certain.ts";
import { nearest } from "../../units/nearest.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { dueOf } from "../dates/due.ts";
import { lineName } from "../line-name.ts";
import { type Marks, NO_MARKS } from "../nouns/marks.ts";
import type { Shop } from "../nouns/shop.ts";
import type { Station } from "../nouns/station.ts";
import type { BillPlan, LineAnswer, LineWork, QuotedLine } from "../plan.ts";
import { noQuoteSays } from "../says.ts";
import type { StationWork } from "../time/station-work.ts";
import type { MarkFault, WeekFault } from "./faults.ts";
import type { OpenStep } from "./open-step.ts";
import { orderOfWork } from "./order-of-work.ts";

/** A bill that is on the floor, or shall come. */
export interface WeekJob {
  readonly name: string;
  readonly plan: BillPlan;
  /** By the row of the bill. */
  readonly marks: ReadonlyMap<number, Marks>;
  /** Rows of its sheet above the header of the bill. */
  readonly above?: number | undefined;
  /** Its workbook is of an earlier release: a current one's tables go before its own. */
  readonly isOfBefore?: boolean;
}

/** A step of a line that was planned. */
export interface Step extends OpenStep {
  readonly line: QuotedLine;
  readonly station: Station;
  readonly work: StationWork | undefined;
}

const MOST_LOTS = 4; // chosen: of more nobody keeps count on the floor

interface Asked {
  readonly sent: ReadonlySet<string>;
  /** A copy of another job has no steps of its own. */
  readonly isCopy: (job: WeekJob) => boolean;
  readonly fault: (fault: WeekFault) => void;
}

/** The same lines in the same jobs have the same steps, in the order of the jobs and of their lines. */
export function stepsOf(jobs: readonly WeekJob[], { sent, isCopy, fault }: Asked): Step[] {
  const steps: Step[] = [];
  jobs.forEach((job, at) => {
    if (isCopy(job)) return;
    const lines = refusalOr(() => job.plan.lines);
    if (lines instanceof Refusal) {
      fault({ kind: "unplanned", job: job.name, says: lines.message });
      return;
    }
    const unquoted = new Map<string, LineAnswer[]>();
    for (const line of lines) {
      if (line.isQuoted) continue;
      const why = noQuoteSays(line.findings, job.plan.shop.system);
      unquoted.set(why, [...(unquoted.get(why) ?? []), line]);
    }
    for (const [says, own] of unquoted) fault({ kind: "not quoted", job: job.name, lines: own.map(lineName), says });
    for (const line of lines) {
      if (!line.isQuoted) continue;
      const quoted = line as QuotedLine;
      const works = refusalOr(() => job.plan.workOf(quoted));
      if (works instanceof Refusal)
        fault({ kind: "untimed", job: job.name, line: lineName(line), says: works.message });
      else addLine({ job, at, line: quoted, works, sent }, steps, fault);
    }
  });
  return steps;
}

interface Line {
  readonly job: WeekJob;
  readonly at: number;
  readonly line: QuotedLine;
  readonly works: LineWork;
  readonly sent: ReadonlySet<string>;
}

/** Names the work of a line at a station. */
export const sentKey = (job: string, row: number, station: string): string => `${job} | ${row} | ${station}`;

function addLine({ job, at, line, works, sent }: Line, steps: Step[], fault: (fault: WeekFault) => void): void {
  const all = inOrder(works, line).map((each) =>
    sent.has(sentKey(job.name, line.row, each.station.name)) ? { ...each, ...NOT_HERE } : each,
  );
  const marks = job.marks.get(line.row) ?? NO_MARKS;
  const names = all.map(({ station }) => station.name);
  const named = (column: MarkFault["column"], mark: string): MarkFault => ({
    job: job.name,
    line: lineName(line),
    row: line.row + (job.above ?? 0),
    column,
    mark,
  });
  const placesOf = <T extends { readonly station: string }>(column: MarkFault["column"], given: readonly T[]) =>
    given.flatMap((mark) => {
      const word = mark.station.toLowerCase();
      const isNamed = (name: string) => name.toLowerCase() === word;
      const own = all.findIndex(({ station, machine }) => isNamed(station.name) || isNamed(machine));
      if (own >= 0) return [{ ...mark, place: own }];
      // Another machine of a station where the line's work is planned.
      const place = names.findIndex((name) => machinesAt(name, job.plan.shop).some(isNamed));
      if (place >= 0) {
        fault({ kind: "other machine", ...named(column, mark.station), planned: itemAt(all, place).machine });
        return [{ ...mark, place }];
      }
      fault({ kind: "unknown mark", ...named(column, mark.station), nearest: nearest(mark.station, names) });
      return [];
    });
  const done = placesOf(
    "Done",
    marks.done.map((station) => ({ station })),
  );
  const started = placesOf("Started", marks.started);
  const pins = placesOf("Pinned", marks.pins);
  const twice = (column: MarkFault["column"], given: typeof done, seen: Set<number>) => {
    for (const { place, station } of given) {
      if (seen.has(place)) fault({ kind: "marked twice", ...named(column, station) });
      seen.add(place);
    }
  };
  const seen = new Set<number>();
  const gone = Math.max(-1, ...done.map(({ place }) => place), ...started.map(({ place }) => place - 1));
  for (const { place, station } of started)
    if (!marks.isDone && place <= gone && done.every((mark) => mark.place !== place))
      fault({ kind: "begun before", ...named("Started", station) });
  twice("Done", done, seen);
  twice("Started", started, seen);
  twice("Pinned", pins, new Set());
  // What comes before something that is done or has begun is done.
  const from = marks.isDone ? all.length : gone + 1;
  const { blanks } = line.plan;
  const most = job.plan.shop.rates.find("transferLot") ?? blanks;
  const lots = Math.max(1, Math.min(MOST_LOTS, Math.ceil(blanks / most)));
  const before: (number | undefined)[] = [];
  all.forEach((each, i) => {
    if (i < from) return;
    // A vendor gets all of a line at once.
    const parts = each.work ? lots : 1;
    const previous = before.filter((step) => step !== undefined);
    const begun = started.find(({ place }) => place === i);
    for (let lot = 0; lot < parts; lot++) {
      const [begin, end] = [Math.round((blanks * lot) / parts), Math.round((blanks * (lot + 1)) / parts)];
      const run = each.work ? shareOf(each.work.run, lot, parts) : (each.station.vendorDays ?? 0);
      const own = parts === lots && previous.length === lots ? [itemAt(previous, lot)] : previous;
      before[lot] = steps.length;
      steps.push({
        ...each,
        job: at,
        line,
        lot: lot + 1,
        lots: parts,
        pieces: end - begin,
        run,
        due: dueOf(line.plan.line, job.plan.shop.job),
        isStarted: begun !== undefined,
        begun: begun?.at,
        pin: begun ? undefined : pins.find(({ place }) => place === i)?.at,
        after: own,
      });
    }
    before.length = parts;
  });
}

const machinesAt = (station: string, { brakes, shears, waterjets }: Shop): string[] =>
  Object.entries({ brake: brakes, shear: shears, waterjet: waterjets }).flatMap(([name, own]) =>
    name === station.toLowerCase() ? own.map((machine) => machine.name) : [],
  );

const shareOf = (run: number, lot: number, lots: number): number =>
  Math.round((run * (lot + 1)) / lots) - Math.round((run * lot) / lots);

const NOT_HERE = { work: undefined, lineSetUp: 0, change: 0, setFor: "" } as const;
type Planned = Pick<Step, "station" | "machine" | "work" | "lineSetUp" | "change" | "setFor">;

function inOrder({ works, outside }: LineWork, line: QuotedLine): Planned[] {
  const { tools, cutting } = line.plan;
  const inside = works.map((work): Planned => {
    const { station } = work;
    const { name } = station;
    const lineSetUp = Math.max(0, work.setUp - work.share);
    if (orderOfWork({ station, work }) === 0) {
      const sheet = `${line.plan.line.material.name} ${line.plan.line.thickness}`;
      const machine = cutting[line.cutter]?.name ?? name;
      return { station, machine, work, lineSetUp, change: work.change, setFor: sheet };
    }
    if (name.toLowerCase() === "brake" && tools) {
      const setFor = [tools.die.name, tools.punch?.name ?? ""].filter((tool) => tool !== "").join(", ");
      return { station, machine: tools.brake.name, work, lineSetUp, change: work.change, setFor };
    }
    return { station, machine: name, work, lineSetUp, change: 0, setFor: "" };
  });
  const away = outside.map(({ station }): Planned => ({ station, machine: station.name, ...NOT_HERE }));
  return [...inside, ...away].sort((a, b) => orderOfWork(a) - orderOfWork(b));
}
