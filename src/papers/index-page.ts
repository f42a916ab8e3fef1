/** The cover: what a foreman asks first, what the tables lack, every line with its status, and where its paper is. */

import type { DatesPlan } from "../bill/dates/plan-dates.ts";
import { dayAndTime } from "../bill/day.ts";
import { lineName } from "../bill/line-name.ts";
import { weightOf } from "../bill/load/plan-load.ts";
import type { BillPlan } from "../bill/plan.ts";
import { RELEASES, releaseOf } from "../bill/release.ts";
import { notCheckedSays, notFromPlateSays, withoutSays } from "../bill/says.ts";
import { firstOf, itemAt } from "../units/certain.ts";
import { Refusal } from "../units/refusal.ts";
import { refusalOr } from "../units/remember.ts";
import { show, showNumber } from "../units/show.ts";
import { leavesSays } from "./job-figures.ts";
import {
  type Cell,
  heading,
  type KeyFigure,
  keyFigures,
  list,
  type Paper,
  type PaperFacts,
  paragraph,
  table,
  text,
} from "./page.ts";

/** @param setUps one a line, in the order of the bill, with the number of its set of tools where it is bent. */
export function indexPage(
  plan: BillPlan,
  about: PaperFacts,
  setUps: readonly { readonly sheet: Paper; readonly set: number | undefined }[],
  others: readonly Paper[],
): string {
  const { name, version, date, stale, missing } = about;
  const { job } = plan.shop;
  const rows = plan.lines.map((line, i): Cell[] => [
    link(itemAt(setUps, i).sheet, lineName(line)),
    line.plan ? showNumber(line.plan.line.quantity, 7) : "",
    line.isQuoted ? `${line.cutter ?? ""} ${itemAt(setUps, i).set ?? ""}`.trim() : "no quote",
    releaseOf(line),
  ]);
  const third = Math.ceil(rows.length / 3);
  return [
    heading(job.name === "" ? name : job.name),
    paragraph([job.customer, job.quote].filter((words) => words !== "").join(" · ")),
    keyFigures(figures(plan, date)),
    list(
      [
        stale > 0 ? `${stale} cells of the workbook could not be calculated; their values may be old.` : "",
        ...missing,
        notCheckedSays(plan.notChecked),
        notFromPlateSays(plan.notFromPlate),
      ].filter((words) => words !== ""),
    ),
    stations(plan),
    `<p>${others.map((paper) => link(paper, paper.title).markup).join(" · ")}</p>`,
    `<div class="thirds">${[0, 1, 2].map((i) => table(COLUMNS, rows.slice(i * third, (i + 1) * third))).join("")}</div>`,
    `<p class="foot">Cut, set: what cuts a line, and the number of the set-up that bends it. STOP: not made. HOLD: open checks, nobody has accepted them. The plates of machines and tools, local codes and licensed practice decide. What a bracket carries is not checked. Bracket Bill ${text(version)}</p>`,
  ].join("\n");
}

const COLUMNS = [
  { title: "Line" },
  { title: "Pieces", number: true },
  { title: "Cut, set" },
  { title: "Status" },
] as const;

const link = ({ file }: Paper, words: string) => ({ markup: `<a href="${text(file)}">${text(words)}</a>` });

function figures(plan: BillPlan, date: string): KeyFigure[] {
  const { lines, quoted, pieces, sheets } = plan.totals;
  const { system, job } = plan.shop;
  const releases = plan.lines.map(releaseOf);
  const counts = RELEASES.map((release) => [release, releases.filter((one) => one === release).length] as const);
  const load = refusalOr(() => weightOf(plan.load));
  const dates = refusalOr(() => plan.dates);
  const late = dates instanceof Refusal ? undefined : dates.late;
  return [
    {
      name: "Lines",
      value: showNumber(lines, 7),
      beside: counts
        .filter(([, count]) => count > 0)
        .map(([release, count]) => `${release} ${count}`)
        .join(", "),
    },
    { name: "Pieces", value: showNumber(pieces, 7), beside: withoutSays(lines - quoted) },
    { name: "Sheets to pull", value: showNumber(sheets, 7), beside: "" },
    ...(load instanceof Refusal
      ? []
      : [{ name: "On the truck", value: show(load, "mass", system, 4), beside: "of the blanks" }]),
    ...(job.due === undefined
      ? []
      : [
          {
            name: "Must leave by",
            value: dayAndTime(job.due),
            beside: leavesSays(job.due, late, date),
          },
        ]),
    ...(dates instanceof Refusal ? [] : spanOf(dates)),
  ];
}

/** When the plan is done, and to when it can be put off. */
function spanOf(dates: DatesPlan): KeyFigure[] {
  const begin = dates.latestStart();
  return [
    ...(dates.finish === undefined ? [] : [{ name: "Done", value: dayAndTime(dates.finish), beside: "" }]),
    ...(begin === undefined
      ? []
      : [
          begin === "past"
            ? { name: "Latest start", value: begin, beside: `${dates.late} late as the shifts are` }
            : { name: "Latest start", value: dayAndTime(begin), beside: "of the whole bill" },
        ]),
  ];
}

/** Hours of every station that has work of this bill; nothing where there are no dates. */
function stations(plan: BillPlan): string {
  const dates = refusalOr(() => plan.dates);
  if (dates instanceof Refusal) return paragraph(`No dates: ${dates.message}`);
  const hours = (value: number) => {
    const tenths = (value / SECONDS_PER_HOUR).toFixed(1);
    return value > 0 && tenths === "0.0" ? "under 0.1" : tenths;
  };
  return table(
    [
      { title: "Station" },
      { title: "This bill, h", number: true },
      { title: "Before it, h", number: true },
      { title: "Has until then, h", number: true },
    ],
    dates.stations
      .filter(({ load }) => load > 0)
      .flatMap(({ station, load, queue, available, machines }) => [
        [
          machines.length === 1 ? `${station}, ${firstOf(machines).name}` : station,
          hours(load),
          hours(queue),
          hours(available),
        ],
        ...(machines.length === 1 ? [] : machines).map(({ name, load: own }) => [`– ${name}`, hours(own), "", ""]),
      ]),
    "tight",
  );
}
const SECONDS_PER_HOUR = 3600; // by definition
