/** The week in words, at most 100 columns wide. */

import { dayAndTime } from "../../bill/day.ts";
import { emptySays, faultSays, weekWithoutSays } from "../../bill/week/faults.ts";
import { type MovedJob, movedSays } from "../../bill/week/move-bar.ts";
import { provedSays } from "../../bill/week/proved-says.ts";
import type { Rescue } from "../../bill/week/rescue.ts";
import { effectSays, rescueSays } from "../../bill/week/rescue-says.ts";
import { setUpSays } from "../../bill/week/set-up-says.ts";
import type { SaidWeek } from "../../job/week-json.ts";
import { itemAt, lastOf } from "../../units/certain.ts";
import { showNumber } from "../../units/show.ts";
import { WIDTH, wrapped } from "./wrapped.ts";

const HOUR = 3600; // seconds, by definition
const NAME = 26;
const TIME = 18;
const hours = (seconds: number): string => showNumber(seconds / HOUR, 3);

export function weekWords({ week, rescues, moved, taken, latest, faults }: SaidWeek): string {
  const { jobs, worth, steps } = week;
  const all = [...faults, ...week.faults.map((fault) => faultSays(fault, dayAndTime))];
  const missing = weekWithoutSays(week);
  const against = setUpSays(week);
  return [
    `${jobs.length} ${jobs.length === 1 ? "job" : "jobs"}, ${steps.length} steps from ${dayAndTime(week.now)}${missing === "" ? "" : `, ${missing}`}: ${hours(worth.late)} h late by weight (${provedSays(week)}), set-up ${hours(worth.setUp)} h`,
    "",
    `${"Job".padEnd(NAME)}${"Must leave by".padEnd(TIME)}${"Done".padEnd(TIME)}${"Start by in plan".padEnd(TIME)}Late`,
    ...jobs.map(({ name, due, finish, late, latestStart, isStartPast }) =>
      [
        name.length < NAME ? name.padEnd(NAME) : `${name.slice(0, NAME - 2)}… `,
        (due === undefined ? "" : dayAndTime(due)).padEnd(TIME),
        (finish === undefined ? emptySays(week, name) : dayAndTime(finish)).padEnd(TIME),
        (latestStart === undefined ? "" : isStartPast ? "past" : dayAndTime(latestStart)).padEnd(TIME),
        [late > 0 ? `${hours(late)} h` : "", weekWithoutSays(week, name)].filter((words) => words !== "").join(", "),
      ]
        .join("")
        .trimEnd(),
    ),
    ...(latest
      ? [
          "",
          "Latest start at which a plan was found with nobody later:",
          ...jobs.map(({ name }, i) => `  ${name}: ${latest[i] ? dayAndTime(latest[i]) : noLatestSays(week, i)}`),
        ]
      : []),
    "",
    ...loads(week),
    ...(against === "" ? [] : wrapped(against, WIDTH, 2)),
    ...(taken ? takenWords(taken, week) : []),
    ...rescues.flatMap(([job, found]) => ["", `What would save ${job}:`, ...ways(found)]),
    ...(moved ? ["", ...movedWords(moved)] : []),
    ...(all.length > 0
      ? ["", "To correct in the workbooks:", ...all.flatMap((fault) => wrapped(`  ${fault}`, WIDTH, 2))]
      : []),
  ].join("\n");
}

function noLatestSays(week: SaidWeek["week"], at: number): string {
  const { name, due, finish } = itemAt(week.jobs, at);
  return finish === undefined ? emptySays(week, name) : due === undefined ? "has no date" : "has begun";
}

const movedWords = (moved: readonly MovedJob[]): string[] =>
  moved.length === 0
    ? ["Nothing has moved since the plan before."]
    : [
        "Moved since the plan before:",
        ...moved.flatMap((each) => wrapped(`  ${movedSays(each, dayAndTime)}`, WIDTH, 4)),
      ];

const ways = (found: readonly Rescue[]): string[] =>
  found.length === 0
    ? ["  nothing that was tried saves it"]
    : found.flatMap((each) => wrapped(`  ${rescueSays(each)}: ${effectSays(each)}`, WIDTH, 4));

/** By machine what it has to do against what it has until its last step. */
function loads({ days }: SaidWeek["week"]): string[] {
  const machines = [...new Set(days.map(({ machine }) => machine))];
  return machines.map((machine) => {
    const own = days.filter((each) => each.machine === machine);
    const sum = (of: "load" | "available") => own.reduce((total, each) => total + each[of], 0);
    return `${machine.padEnd(NAME)}${hours(sum("load"))} h of ${hours(sum("available"))} h in ${own.length} ${own.length === 1 ? "day" : "days"}`;
  });
}

function takenWords({ name, earliest, wanted, earlier, kept }: NonNullable<SaidWeek["taken"]>, week: SaidWeek["week"]) {
  const missing = weekWithoutSays(week, lastOf(week.jobs).name);
  if (earliest === undefined) return ["", `${name} cannot be taken: ${emptySays(week, lastOf(week.jobs).name)}.`];
  const done = `done ${dayAndTime(earliest)} at the earliest${missing === "" ? "" : `, ${missing}`}`;
  const asked = wanted === undefined ? "" : `; it must leave by ${dayAndTime(wanted)}`;
  const isInTime = wanted === undefined || earliest <= wanted;
  return [
    "",
    ...wrapped(`${name} without harm to the others: ${done}${asked}.`, WIDTH, 2),
    ...kept.flatMap(({ job, leaves }) =>
      wrapped(`  ${job} is late without it too: it leaves ${dayAndTime(leaves)} or earlier, as before.`, WIDTH, 4),
    ),
    ...(isInTime ? [] : ["To be earlier:", ...ways(earlier)]),
  ];
}
