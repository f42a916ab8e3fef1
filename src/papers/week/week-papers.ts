/** The week on paper: an overview, and for every machine a sheet a day. */
import { lineName } from "../../bill/line-name.ts";
import { faultSays } from "../../bill/week/faults.ts";
import type { Rescue } from "../../bill/week/rescue.ts";
import { effectSays, rescueSays } from "../../bill/week/rescue-says.ts";
import { setForSays } from "../../bill/week/set-for-says.ts";
import type { PlannedStep, StationDay, Week } from "../../bill/week/week.ts";
import { showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { cautionsOfSetUp } from "../cautions.ts";
import { dayAndTime, dayOfWeek, timeOfDay } from "../day.ts";
import { fileNames } from "../file-names.ts";
import { BLANK, BOX, type Cell, heading, keyFigures, list, type Paper, paragraph, table, text } from "../page.ts";
import type { Print } from "../papers.ts";
import { jobsPicture, loadPictures } from "./pictures.ts";

const HOUR = 3600; // seconds, by definition
const MINUTE = 60; // seconds, by definition
const DAY = 86_400; // seconds, by definition

export interface WeekFacts {
  readonly version: string;
  readonly system: UnitSystem;
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
      pages: days.map((day) => daySheet(day, week, about.system)),
    };
  });
  const foot = `Week from ${dayAndTime(week.now)} · ${week.jobs.map(({ name }) => name).join(", ")} · Bracket Bill ${about.version}`;
  const papers = [{ file: "index.html", title: "The week", pages: [overview(week, about, sheets)] }, ...sheets];
  return {
    papers: papers.map((paper) => ({
      ...paper,
      pages: paper.pages.map((page) => `${page}\n<p class="foot-line">${text(foot)}</p>`),
    })),
    foot,
    outlines: [],
  };
}

const hours = (seconds: number): string => showNumber(seconds / HOUR, 3);
const minutes = (seconds: number): string => showNumber(seconds / MINUTE, 3);

function overview(week: Week, { system: _, rescues, faults }: WeekFacts, sheets: readonly Paper[]): string {
  const { worth, bound, isProved, jobs, steps } = week;
  const late = jobs.filter((job) => job.late > 0);
  const best = isProved ? "no plan is better" : `at best ${hours(bound.late)} h`;
  return [
    heading("The week", late.length > 0 ? "LATE" : undefined),
    keyFigures([
      { name: "Jobs", value: String(jobs.length), beside: late.length === 0 ? "all in time" : `late: ${late.length}` },
      { name: "Hours late, weighted", value: hours(worth.late), beside: best },
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
      jobs.map(({ name, due, finish, late: by, latestStart, chain, isRush }) => [
        isRush ? `${name} (rush)` : name,
        due === undefined ? "none" : dayAndTime(due),
        finish === undefined ? "nothing open" : dayAndTime(finish),
        by > 0 ? hours(by) : "",
        latestStart === undefined ? "" : latestStart < week.now ? "past" : dayAndTime(latestStart),
        chainSays(
          chain.map((i) => steps[i]!),
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
    paragraph("The outline is what the station has that day, the dark part its work.", "small"),
    ...awayTable(week),
    ...rescues.flatMap(([job, found]) => [
      `<h2>What would save ${text(job)}</h2>`,
      found.length === 0
        ? paragraph("Nothing that was tried.")
        : list(found.map((each) => `${rescueSays(each)}: ${effectSays(each)}`)),
    ]),
    ...named("Not as given", [...faults, ...week.faults.map((fault) => faultSays(fault, dayAndTime))]),
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
        jobs[step.job]!.name,
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
      const names = [...new Set(others.map(({ job }) => jobs[job]!.name))];
      return names.length === 0 ? machine : `${machine}, with ${names.join(" and ")}`;
    })
    .join("; ");
}

/** @param day of one machine. */
function daySheet({ machine, day, load, available, people }: StationDay, week: Week, system: UnitSystem): string {
  const own = week.machines
    .filter(({ name }) => name === machine)
    .flatMap(({ steps }) => steps.map((i) => week.steps[i]!))
    .filter(({ begins, finish }) => begins < day + DAY && finish > day)
    .sort((a, b) => a.begins - b.begins);
  const time = (at: PlannedStep["begins"]): string => (at < day || at >= day + DAY ? dayAndTime(at) : timeOfDay(at));
  let last = "";
  return [
    heading(`${machine}: ${dayOfWeek(day)}`),
    keyFigures([
      { name: "Work", value: `${hours(load)} h`, beside: `of ${hours(available)} h` },
      { name: "People", value: `${hours(people)} h`, beside: "two at a line count twice" },
      { name: "Lines", value: String(own.length), beside: "" },
    ]),
    table(
      [
        { title: "Begin", short: true },
        { title: "Job" },
        { title: "Part", short: true },
        { title: "Pieces", number: true },
        { title: "Tools, sheet" },
        { title: "Set-up, min", number: true },
        { title: "Run, min", number: true },
        { title: "People", number: true },
        { title: "End", short: true },
        { title: "Begun" },
        { title: "Done" },
      ],
      own.map((step): Cell[] => {
        const setFor = setForSays(step, system);
        const isSame = setFor !== "" && setFor === last;
        last = setFor;
        const part = step.lots > 1 ? `${lineName(step.line)}, lot ${step.lot} of ${step.lots}` : lineName(step.line);
        return [
          time(step.begins),
          week.jobs[step.job]!.name,
          part,
          showNumber(step.pieces, 7),
          isSame ? "the same" : setFor,
          step.setUp > 0 ? minutes(step.setUp) : "",
          minutes(step.run),
          String(step.work?.people ?? ""),
          time(step.finish),
          { markup: BOX },
          { markup: BOX },
        ];
      }),
      "tight",
    ),
    own.some(({ station }) => station.name.toLowerCase() === "brake")
      ? `<h2>Before the first stroke</h2>${list(cautionsOfSetUp, "cautions")}`
      : paragraph(
          "Guards in place; lock out before reaching into the machine. Its plate, local codes and licensed practice decide.",
          "small",
        ),
    `<p>Not done, and why ${BLANK} ${BLANK} &nbsp; handed over to ${BLANK} at ${BLANK}</p>`,
  ].join("\n");
}
