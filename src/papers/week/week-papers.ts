/** The week on paper: an overview, and for every machine a sheet a day. */

import { dayAndTime, dayOfWeek, timeOfDay } from "../../bill/day.ts";
import { lineName } from "../../bill/line-name.ts";
import type { BillPlan } from "../../bill/plan.ts";
import { releaseOf } from "../../bill/release.ts";
import { problemsSay } from "../../bill/says.ts";
import { emptySays, faultSays, weekWithoutSays } from "../../bill/week/faults.ts";
import { provedSays } from "../../bill/week/proved-says.ts";
import type { Rescue } from "../../bill/week/rescue.ts";
import { effectSays, rescueSays } from "../../bill/week/rescue-says.ts";
import { setForSays } from "../../bill/week/set-for-says.ts";
import { setUpSays } from "../../bill/week/set-up-says.ts";
import type { PlannedStep, StationDay, Week } from "../../bill/week/week.ts";
import { itemAt } from "../../units/certain.ts";
import { showForce, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { cautionsOfSetUp } from "../cautions.ts";
import { fileNames } from "../file-names.ts";
import {
  BLANK,
  BOX,
  type Cell,
  type Column,
  footed,
  heading,
  keyFigures,
  list,
  type Paper,
  paragraph,
  table,
  text,
} from "../page.ts";
import type { Print } from "../papers.ts";
import { sheetSays, workSays } from "./day-words.ts";
import { jobsPicture, loadPictures } from "./pictures.ts";

const HOUR = 3600; // seconds, by definition
const MINUTE = 60; // seconds, by definition
const DAY = 86_400; // seconds, by definition

interface WeekFacts {
  readonly version: string;
  readonly system: UnitSystem;
  /** Of the jobs, in their order. */
  readonly plans: readonly BillPlan[];
  readonly rescues: readonly (readonly [job: string, found: readonly Rescue[]])[];
  /** What is wrong with files, a sentence each. */
  readonly faults: readonly string[];
}

export function weekPapers(week: Week, about: WeekFacts): Print {
  const machines = [...new Set(week.days.map(({ machine }) => machine))];
  const names = fileNames(machines);
  const sheets = machines.map((machine, i): Paper => {
    const days = week.days.filter((day) => day.machine === machine && day.load > 0);
    return {
      file: `station/${names[i]}.html`,
      title: `Day sheets: ${machine}`,
      pages: days.map((day) => daySheet(day, week, about)),
    };
  });
  const foot = `Week from ${dayAndTime(week.now)} · ${week.jobs.map(({ name }) => name).join(", ")} · Bracket Bill ${about.version}`;
  const papers = [{ file: "index.html", title: "The week", pages: [overview(week, about, sheets)] }, ...sheets];
  return { papers: papers.map((paper) => footed(paper, foot)), outlines: [] };
}

const hours = (seconds: number): string => showNumber(seconds / HOUR, 3);
const minutes = (seconds: number): string => showNumber(seconds / MINUTE, 3);

function overview(week: Week, { system: _, rescues, faults }: WeekFacts, sheets: readonly Paper[]): string {
  const { worth, jobs, steps } = week;
  const late = jobs.filter((job) => job.late > 0);
  return [
    heading("The week", late.length > 0 ? "LATE" : undefined),
    keyFigures([
      {
        name: "Jobs",
        value: String(jobs.length),
        beside: [late.length === 0 ? "all in time" : `late: ${late.length}`, weekWithoutSays(week)]
          .filter((words) => words !== "")
          .join(", "),
      },
      { name: "Hours late, weighted", value: hours(worth.late), beside: provedSays(week) },
      { name: "Set-up, h", value: hours(worth.setUp), beside: "" },
      { name: "Steps", value: String(steps.length), beside: `from ${dayAndTime(week.now)}` },
    ]),
    table(
      [
        { title: "Job" },
        { title: "Must leave by", short: true },
        { title: "Done", short: true },
        { title: "Late, h", number: true },
        { title: "Start by in plan", short: true },
        { title: "What decides it" },
      ],
      jobs.map(({ name, due, finish, late: by, latestStart, isStartPast, chain, isRush }) => [
        [isRush ? `${name} (rush)` : name, weekWithoutSays(week, name)].filter((words) => words !== "").join(", "),
        due === undefined ? (finish === undefined ? "" : "none") : dayAndTime(due),
        finish === undefined ? emptySays(week, name) : dayAndTime(finish),
        by > 0 ? hours(by) : "",
        latestStart === undefined ? "" : isStartPast ? "past" : dayAndTime(latestStart),
        chainSays(
          chain.map((i) => itemAt(steps, i)),
          week,
        ),
      ]),
    ),
    "<h2>Jobs against their dates</h2>",
    `<div class="plan">${jobsPicture(week)}</div>`,
    paragraph(
      "A bar: from its first step to its last, dark while one of its lines is at a station, nights and weekends included. A thick mark: it must leave. Start by: the latest start in the order planned here; another order may allow a later one.",
      "small",
    ),
    "<h2>Load by station and day, hours</h2>",
    ...loadPictures(week).map((picture) => `<div class="plan">${picture}</div>`),
    paragraph(
      `The outline is what the station has that day, the dark part its work: below its hours, above those still free. ${setUpSays(week)}`.trim(),
      "small",
    ),
    ...awayTable(week),
    ...rescues.flatMap(([job, found]) => [
      `<h2>What would save ${text(job)}</h2>`,
      found.length === 0
        ? paragraph("Nothing that was tried saves it.")
        : list(found.map((each) => `${rescueSays(each)}: ${effectSays(each)}`)),
    ]),
    ...named("To correct in the workbooks", [...faults, ...week.faults.map((fault) => faultSays(fault, dayAndTime))]),
    `<p>${sheets.map(({ file, title }) => `<a href="${text(file)}">${text(title)}</a>`).join(" · ")}</p>`,
  ].join("\n");
}

/** What leaves for a vendor, and when it is back. */
function awayTable({ steps, jobs }: Week): string[] {
  const away = steps.filter(({ work }) => work === undefined).sort((a, b) => a.ready - b.ready);
  if (away.length === 0) return [];
  const columns = [
    { title: "Out", short: true },
    { title: "Vendor" },
    { title: "Job" },
    { title: "Part" },
    { title: "Pieces", number: true },
    { title: "Back", short: true },
  ];
  return [
    "<h2>To vendors</h2>",
    table(
      [...columns, { title: "Out" }, { title: "Back" }],
      away.map((step): Cell[] => [
        dayAndTime(step.ready),
        step.station.name,
        itemAt(jobs, step.job).name,
        lineName(step.line),
        showNumber(step.pieces, 7),
        dayAndTime(step.finish),
        { markup: BOX },
        { markup: BOX },
      ]),
      "tight",
    ),
  ];
}

const named = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : [`<h2>${title}</h2>${list(lines)}`];

/** "Brake 2; Weld, with Pier railing": machines of the chain, each with the other jobs that are on it in between. */
export function chainSays(chain: readonly PlannedStep[], { jobs }: Week): string {
  const own = chain.at(-1)?.job;
  return [...new Set(chain.map(({ machine }) => machine))]
    .map((machine) => {
      const others = chain.filter((step) => step.machine === machine && step.job !== own);
      const names = [...new Set(others.map(({ job }) => itemAt(jobs, job).name))];
      return names.length === 0 ? machine : `${machine}, with ${names.join(" and ")}`;
    })
    .join("; ");
}

type DayStep = PlannedStep & { readonly bench: number };
type DayColumn = readonly [column: Column, cell: (step: DayStep) => Cell];

/** @param day of one machine. */
function daySheet(
  { machine, day, load, available, people }: StationDay,
  week: Week,
  { system, plans }: WeekFacts,
): string {
  const benches = week.machines.filter(({ name }) => name === machine);
  const own = benches
    .flatMap(({ steps }, bench) => steps.map((i) => ({ ...itemAt(week.steps, i), bench: bench + 1 })))
    .filter(({ begins, finish }) => begins < day + DAY && finish > day)
    .sort((a, b) => a.begins - b.begins || a.line.row - b.line.row || a.lot - b.lot);
  const time = (at: PlannedStep["begins"]): string =>
    at >= day && at < day + DAY
      ? timeOfDay(at)
      : Math.abs(at - day) < DAYS_APART * DAY
        ? `${dayOfWeek(at).slice(0, 3)} ${timeOfDay(at)}`
        : dayAndTime(at);
  const isBrake = own.some(({ station }) => station.name.toLowerCase() === "brake");
  const warned = warningsOf(own, week, system);
  let last = "";
  const atBench: DayColumn[] = [[{ title: "At", number: true }, ({ bench }) => String(bench)]];
  const atBrake: DayColumn[] = [
    [
      { title: "Tools" },
      (step) => {
        const isSame = step.setFor !== "" && step.setFor === last;
        last = step.setFor;
        return isSame ? "the same" : setForSays(step, system);
      },
    ],
    [
      { title: "Force", short: true },
      ({ line: { plan } }) => (plan.force ? showForce(plan.force.expected, system) : ""),
    ],
  ];
  const columns: readonly DayColumn[] = [
    [{ title: "Begin", short: true }, (step) => `${time(step.begins)}${step.isCritical ? ` ${DECIDES}` : ""}`],
    ...(benches.length > 1 ? atBench : []),
    [{ title: "Job" }, (step) => itemAt(week.jobs, step.job).name],
    [{ title: "Line", number: true }, (step) => String(step.line.row - 1)],
    [
      { title: "Part", short: true },
      (step) => (step.lots > 1 ? `${lineName(step.line)}, lot ${step.lot} of ${step.lots}` : lineName(step.line)),
    ],
    ...(warned.length > 0
      ? [[{ title: "Release", short: true }, ({ line }) => releaseMark(line)] satisfies DayColumn]
      : []),
    [{ title: "Pieces", number: true }, (step) => showNumber(step.pieces, 7)],
    ...(own.some((step) => workSays(step, system) !== "")
      ? [[{ title: "What" }, (step) => workSays(step, system)] satisfies DayColumn]
      : []),
    [{ title: "Sheet", short: isBrake }, (step) => sheetSays(step, itemAt(plans, step.job))],
    ...(isBrake ? atBrake : []),
    [{ title: "Set-up, min", number: true }, (step) => (step.setUp > 0 ? minutes(step.setUp) : "")],
    [{ title: "Run, min", number: true }, (step) => minutes(step.run)],
    [{ title: "People", number: true }, (step) => String(step.work?.people ?? "")],
    [{ title: "End", short: true }, (step) => time(step.finish)],
    [
      { title: "Begun", short: true },
      (step) => (step.isStarted ? (step.begun ? time(step.begun) : "yes") : { markup: BOX }),
    ],
    [{ title: "Done" }, () => ({ markup: BOX })],
  ];
  return [
    heading(`${machine}: ${dayOfWeek(day)}`),
    keyFigures([
      { name: "Work", value: `${hours(load)} h`, beside: `of ${hours(available)} h` },
      { name: "Free", value: `${hours(available - load)} h`, beside: "" },
      { name: "People", value: `${hours(people)} h`, beside: "two at a line count twice" },
      { name: "Lines", value: String(own.length), beside: "" },
    ]),
    table(
      columns.map(([column]) => column),
      own.map((step) => columns.map(([, cell]) => cell(step))),
      "tight",
    ),
    ...named("Before these lines are made", warned),
    own.some(({ isCritical }) => isCritical)
      ? paragraph(`${DECIDES} a late job waits for it, or it has no time to spare.`, "small")
      : "",
    isBrake
      ? `<h2>Before the first stroke</h2>${list(cautionsOfSetUp, "cautions")}`
      : paragraph(
          "Guards in place; lock out before reaching into the machine. Its plate, local codes and licensed practice decide.",
          "small",
        ),
    `<p>Not done, and why ${BLANK} ${BLANK} &nbsp; handed over to ${BLANK} at ${BLANK}</p>`,
  ].join("\n");
}

const releaseMark = (line: PlannedStep["line"]): Cell => {
  const release = releaseOf(line);
  return release === "CLEAR" ? "" : { markup: `<b class="held-mark">${release}</b>` };
};

/** A sentence a line that is not clear: its release, and the worst that is found about it. */
function warningsOf(steps: readonly PlannedStep[], { jobs }: Week, system: UnitSystem): string[] {
  const said = steps.flatMap(({ job, line }) => {
    const release = releaseOf(line);
    if (release === "CLEAR") return [];
    const [worst = "see its set-up sheet."] = problemsSay(line.findings, system);
    return [`${release} ${itemAt(jobs, job).name}, ${lineName(line)}: ${worst}`];
  });
  return [...new Set(said)];
}
const DAYS_APART = 6; // up to here a weekday alone says which day is meant
const DECIDES = "\u25c6";
