/** The week as pictures: load of every machine by day, and the jobs from their first step to their last against their dates. */

import { dayOfWeek } from "../../bill/day.ts";
import type { Instant } from "../../bill/pictures.ts";
import type { Week } from "../../bill/week/week.ts";
import { showNumber } from "../../units/show.ts";
import { drawing, element, LETTERS, line, polygon, text } from "../drawing/svg.ts";

const HOUR = 3600; // seconds, by definition
const DAY = 86_400; // seconds, by definition
// Millimeters of paper: what a letter page holds beside its margins, names at the left, a row, letters.
const WIDTH = 184;
const NAMES = 30;
const ROW = 9;
const LETTER = 2.6;
const MOST_DAYS = 16; // columns that can still be read

const box = (left: number, top: number, right: number, bottom: number, fill = 0): string =>
  polygon(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    { "stroke-width": 0.2, ...(fill > 0 ? { fill: "currentColor", "fill-opacity": fill, stroke: "none" } : {}) },
  );
const left = (x: number, y: number, words: string, bold = false): string =>
  text([x, y], words, { ...LETTERS, "text-anchor": "start", "font-weight": bold ? 700 : undefined });

/** "Mon 05-18" */
const shortDay = (day: Instant): string => dayOfWeek(day).replace(/ \d{4}-/, " ");

/** A column a day: the outline is what the machine has, the dark part its work; the hours stand in it. Longer weeks go on below. */
export function loadPictures({ days }: Week): string[] {
  const columns = [...new Set(days.map(({ day }) => day))].sort((a, b) => a - b);
  const machines = [...new Set(days.map(({ machine }) => machine))];
  const most = Math.max(1, ...days.map(({ available, load }) => Math.max(available, load)));
  const pictures: string[] = [];
  for (let from = 0; from < columns.length; from += MOST_DAYS) {
    const shown = columns.slice(from, from + MOST_DAYS);
    const wide = (WIDTH - NAMES) / Math.max(shown.length, MOST_DAYS / 2);
    const parts = shown.map((day, i) => text([NAMES + (i + 0.5) * wide, -1.5], shortDay(day), LETTERS));
    machines.forEach((machine, row) => {
      const top = row * ROW * 1.25;
      parts.push(left(0, top + ROW * 0.65, machine));
      for (const each of days) {
        const at = shown.indexOf(each.day);
        if (each.machine !== machine || at < 0) continue;
        const [x, right] = [NAMES + at * wide + 0.8, NAMES + (at + 1) * wide - 0.8];
        const height = (of: number) => top + ROW - (ROW * of) / most;
        parts.push(box(x, height(each.available), right, top + ROW));
        if (each.load > 0) parts.push(box(x, height(each.load), right, top + ROW, 0.28));
        if (each.load <= 0) continue;
        const free = Math.max(0, each.available - each.load) / HOUR;
        parts.push(text([(x + right) / 2, top + ROW - 1], showNumber(each.load / HOUR, 2), LETTERS));
        parts.push(text([(x + right) / 2, top + LETTER + 0.6], `+${showNumber(free, 2)}`, LETTERS));
      }
    });
    const described = days
      .filter(({ load, day }) => load > 0 && shown.includes(day))
      .map(
        ({ machine, day, load, available }) =>
          `${machine} ${dayOfWeek(day)}: ${showNumber(load / HOUR, 3)} of ${showNumber(available / HOUR, 3)} h`,
      );
    pictures.push(
      drawing(
        {
          title: "Load by station and day, hours",
          description: described.join("; "),
          box: { left: 0, top: -5, right: WIDTH, bottom: machines.length * ROW * 1.25 },
          margin: 0.5,
          letter: LETTER,
        },
        ...parts,
      ),
    );
  }
  return pictures;
}

/** A bar a job from its first step to its last, dark where one of its lines is at a station; a tall mark where it must leave. */
export function jobsPicture({ now, jobs, steps, deliveries }: Week): string {
  const ends = [
    ...steps.map(({ finish }) => finish),
    ...deliveries.flatMap(({ due }) => (due === undefined ? [] : [due])),
  ];
  const [first, last] = [Math.floor(now / DAY) * DAY, Math.ceil(Math.max(now + DAY, ...ends) / DAY) * DAY];
  const x = (at: number) => NAMES + ((WIDTH - NAMES) * (Math.min(Math.max(at, first), last) - first)) / (last - first);
  const bottom = jobs.length * ROW * 1.3;
  const count = (last - first) / DAY;
  const every = Math.ceil(count / MOST_DAYS);
  const parts: string[] = [];
  for (let i = 0; i <= count; i++) {
    const at = x(first + i * DAY);
    parts.push(line([at, 0], [at, bottom], { "stroke-width": 0.1, "stroke-dasharray": "0.6 1" }));
    if (i % every === 0 && i < count) {
      parts.push(text([(at + x(first + (i + 1) * DAY)) / 2, -1.5], shortDay((first + i * DAY) as Instant), LETTERS));
    }
  }
  jobs.forEach(({ name, late }, job) => {
    const top = job * ROW * 1.3 + 1;
    parts.push(left(0, top + ROW * 0.6, name.length > LONGEST ? `${name.slice(0, LONGEST - 1)}…` : name, late > 0));
    const own = steps.filter((step) => step.job === job);
    if (own.length > 0)
      parts.push(
        box(
          x(Math.min(...own.map(({ begins }) => begins))),
          top + 2,
          x(Math.max(...own.map(({ finish }) => finish))),
          top + ROW - 2,
        ),
      );
    for (const [from, to] of together(own))
      parts.push(
        element("rect", {
          x: x(from),
          y: top + 2,
          width: Math.max(0.15, x(to) - x(from)),
          height: ROW - 4,
          fill: "currentColor",
          "fill-opacity": 0.35,
          stroke: "none",
        }),
      );
    for (const { due, late: by, finish } of deliveries.filter((each) => each.job === job)) {
      if (due === undefined) continue;
      parts.push(line([x(due), top], [x(due), top + ROW], { "stroke-width": 0.8 }));
      if (by > 0)
        parts.push(
          line([x(due), top + 1], [x(finish), top + 1], { "stroke-width": 0.6, "stroke-dasharray": "1.2 0.6" }),
        );
    }
  });
  const described = jobs.map(
    ({ name, late }) => `${name}: ${late > 0 ? `late by ${showNumber(late / HOUR, 3)} h` : "in time"}`,
  );
  return drawing(
    {
      title: "Jobs against their dates",
      description: described.join("; "),
      box: { left: 0, top: -5, right: WIDTH, bottom },
      margin: 0.5,
      letter: LETTER,
    },
    ...parts,
  );
}
const LONGEST = 18;

/** Spans in which one step or another is under way. */
function together(steps: Week["steps"]): [from: number, to: number][] {
  const spans: [number, number][] = [];
  for (const { begins, finish } of [...steps].sort((a, b) => a.begins - b.begins)) {
    const last = spans.at(-1);
    if (last && begins <= last[1]) last[1] = Math.max(last[1], finish);
    else spans.push([begins, finish]);
  }
  return spans;
}
