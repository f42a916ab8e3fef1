/** What a revision of a bill changes: lines that come, go or differ, and what of the job differs with them. */

import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import type { QuantityKind } from "../../units/system.ts";
import { lineName } from "../line-name.ts";
import { type BillLine, isLine } from "../nouns/line.ts";
import { type BillPlan, isQuoted, type LineAnswer } from "../plan.ts";
import { timeOf } from "../time/station-work.ts";

/** A figure or a word with its kind; undefined where there is none. */
export interface Said {
  readonly kind: "text" | "count" | "money" | "date" | "min" | Extract<QuantityKind, "length" | "mass" | "angle">;
  readonly value: number | string | readonly number[] | undefined;
}
export interface Difference {
  /** "Quantity", "Flat length", "Status". */
  readonly what: string;
  readonly before: Said;
  readonly after: Said;
}
interface LineChange {
  readonly part: string;
  readonly change: "added" | "gone" | "changed";
  /** Of a line that comes or goes one side of each is undefined. */
  readonly differences: readonly Difference[];
}
export interface BillChanges {
  readonly lines: readonly LineChange[];
  readonly job: readonly Difference[];
}

/** Lines are matched by part; several lines of one part are matched in order. */
export function planChanges(before: BillPlan, after: BillPlan): BillChanges {
  const [old, now] = [keyed(before), keyed(after)];
  const lines = [...both(old, now)].flatMap(([key, line]): LineChange[] => {
    const [was, is] = [old.get(key), now.get(key)];
    const found = differencesOf(was && lineSaid(before, was), is && lineSaid(after, is));
    const change = !was ? "added" : !is ? "gone" : "changed";
    return change === "changed" && found.length === 0 ? [] : [{ part: lineName(line), change, differences: found }];
  });
  return { lines, job: differencesOf(jobSaid(before), jobSaid(after)) };
}

function keyed(plan: BillPlan): Map<string, LineAnswer> {
  const seen = new Map<string, number>();
  return new Map(
    plan.lines.map((line) => {
      const part = line.part.trim().toLowerCase();
      const count = (seen.get(part) ?? 0) + 1;
      seen.set(part, count);
      return [`${part}\n${count}`, line];
    }),
  );
}

type AllSaid = ReadonlyMap<string, Said>;
const NOTHING: AllSaid = new Map();

/** What is there now, in its order, then what was there only before. */
const both = <T>(before: ReadonlyMap<string, T>, after: ReadonlyMap<string, T>): Map<string, T> =>
  new Map([...after, ...before, ...after]);

function differencesOf(before: AllSaid = NOTHING, after: AllSaid = NOTHING): Difference[] {
  return [...both(before, after)].flatMap(([what, { kind }]) => {
    const none: Said = { kind, value: undefined };
    const pair = { what, before: before.get(what) ?? none, after: after.get(what) ?? none };
    return isSame(kind, pair.before.value, pair.after.value) ? [] : [pair];
  });
}

/** Smaller differences print alike everywhere, in internal units (chosen); counts and angles have no such limit. */
const READS_ALIKE: Readonly<Record<Said["kind"], number>> = {
  text: 0,
  count: 1e-9,
  money: 0.005,
  date: 60,
  min: 0.1,
  length: 0.0254,
  mass: 0.0454,
  angle: 1e-9,
};
const isSame = (kind: Said["kind"], a: Said["value"], b: Said["value"]): boolean =>
  typeof a === "object" && typeof b === "object"
    ? a.length === b.length && a.every((value, i) => isSame(kind, value, b[i]))
    : typeof a === "number" && typeof b === "number"
      ? Math.abs(a - b) < READS_ALIKE[kind]
      : a === b;

const text = (value: string | undefined): Said => ({ kind: "text", value: value === "" ? undefined : value });

function lineSaid(plan: BillPlan, answer: LineAnswer): AllSaid {
  const row = plan.rows.find((each) => each.row === answer.row);
  const line = row && isLine(row) ? row : undefined;
  const { plan: planned, status, cutter } = answer;
  const said: [string, Said][] = [
    ...(line ? orderedSaid(line) : []),
    ["Status", text(status)],
    ["Quoted", text(answer.isQuoted ? "yes" : "no")],
    ["Flat length", { kind: "length", value: planned?.blank.length }],
    ["Flat width", { kind: "length", value: planned?.blank.width }],
    ["Blanks", { kind: "count", value: planned?.blanks }],
    ["Cut on", text(cutter)],
    ["Brake", text(planned?.tools?.brake.name)],
    ["Die", text(planned?.tools?.die.name)],
    ["Punch", text(planned?.tools?.punch?.name)],
  ];
  if (isQuoted(answer)) {
    const price = refusalOr(() => plan.priceOf(answer));
    const work = refusalOr(() => plan.workOf(answer));
    const dates = refusalOr(() => plan.dates);
    said.push(
      ["Minutes", { kind: "min", value: work instanceof Refusal ? undefined : minutesOf(work.works) }],
      ["Price each", { kind: "money", value: price instanceof Refusal ? undefined : price.unitPrice }],
      ["Price", { kind: "money", value: price instanceof Refusal ? undefined : price.price }],
      ["Done", { kind: "date", value: dates instanceof Refusal ? undefined : dates.lines.get(answer.plan)?.asItIs }],
    );
  }
  return new Map(said.filter(([, { value }]) => value !== undefined));
}

/** What the bill itself says of a line. */
function orderedSaid(line: BillLine): [string, Said][] {
  return [
    ["Quantity", { kind: "count", value: line.quantity }],
    ["Extras", { kind: "count", value: line.spares }],
    ["Material", text(line.material.name)],
    ["Thickness", { kind: "length", value: line.nominal }],
    ["Width", { kind: "length", value: line.width }],
    ["Flanges", { kind: "length", value: line.main.flanges }],
    ["Bend angles", { kind: "angle", value: line.main.angles }],
    ["Cross flanges", { kind: "length", value: line.cross?.flanges }],
    ["Finish", text(line.finish)],
    [
      "Operations",
      text(
        line.operations
          .map(({ station, amount }) => (amount === undefined ? station : `${station} ${amount}`))
          .join("; "),
      ),
    ],
    ["Holes", { kind: "count", value: line.holes }],
    ["Drawing radius", { kind: "length", value: line.radius }],
    ["Area", text(line.area)],
    ["Due", { kind: "date", value: line.due }],
    ["Accepted", text(line.accepted)],
  ];
}

const SECONDS = 60; // of a minute, by definition
const minutesOf = (works: readonly Parameters<typeof timeOf>[0][]): number =>
  works.reduce((sum, work) => sum + timeOf(work), 0) / SECONDS;

function jobSaid(plan: BillPlan): AllSaid {
  const { totals, shop } = plan;
  const money = refusalOr(() => plan.money);
  const dates = refusalOr(() => plan.dates);
  const done = dates instanceof Refusal ? [] : [...dates.lines.values()].map(({ asItIs }) => asItIs);
  const late = dates instanceof Refusal ? undefined : dates.late;
  const said: [string, Said][] = [
    ["Lines", { kind: "count", value: totals.lines }],
    ...(["stop", "check", "clear"] as const).map((status): [string, Said] => [
      `Lines: ${status}`,
      { kind: "count", value: totals.of[status] },
    ]),
    ["Lines quoted", { kind: "count", value: totals.quoted }],
    ["Pieces", { kind: "count", value: totals.pieces }],
    ["Blanks to cut", { kind: "count", value: plan.quoted.reduce((sum, line) => sum + line.plan.blanks, 0) }],
    ["Weight", { kind: "mass", value: totals.weight }],
    ["Sheets to pull", { kind: "count", value: totals.sheets }],
    ...shop.stations.map(({ name }): [string, Said] => [
      `Minutes: ${name}`,
      { kind: "min", value: stationMinutes(plan, name) },
    ]),
    ["Price", { kind: "money", value: money instanceof Refusal ? undefined : money.charges.total }],
    ["Done", { kind: "date", value: done.length === 0 ? undefined : Math.max(...done) }],
    ["Late lines", { kind: "count", value: late }],
    ["Must leave by", { kind: "date", value: shop.job.due }],
  ];
  return new Map(said.filter(([, { value }]) => value !== undefined));
}

const stationMinutes = (plan: BillPlan, name: string): number =>
  plan.quoted.reduce((sum, line) => {
    const work = refusalOr(() => plan.workOf(line));
    return work instanceof Refusal ? sum : sum + minutesOf(work.works.filter(({ station }) => station.name === name));
  }, 0);
