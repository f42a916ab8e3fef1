/** The week of the page: what `shop week` says of the same files, what a moved bar does, and back. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { withPins } from "../../../../src/bill/week/move-bar.ts";
import { planWeek } from "../../../../src/bill/week/plan-week.ts";
import { searchWeek } from "../../../../src/bill/week/replan-week.ts";
import type { WeekJob } from "../../../../src/bill/week/steps.ts";
import { TimeScale } from "../../../../src/hosts/view/week/time-scale.ts";
import { WeekSession } from "../../../../src/hosts/view/week/week-session.ts";
import { weekJob } from "../../../../src/job/week-jobs.ts";
import { bookOf } from "../../../../src/job/workbook-book.ts";
import { serialOfIso } from "../../../../src/sheet/formula/serial-now.ts";
import { readWorkbook } from "../../../../src/sheet/workbook/read-workbook.ts";

const NOW = "2026-05-18T07:00";
const JOBS = ["orchard-crates", "pier-railing", "school-lockers"];
const files = JOBS.map((name) => ({ name, bytes: new Uint8Array(readFileSync(`sample-workbooks/week/${name}.xlsx`)) }));

describe("the week's board", () => {
  const session = new WeekSession(
    [...files, { name: "torn", bytes: new Uint8Array([1, 2, 3]) }, { name: "gone", bytes: "no such file" }],
    undefined,
    NOW,
  );
  const board = session.board();

  it("shows the plan of the same jobs, and names a file that cannot be read", () => {
    const jobs = files.map(({ name, bytes }) => weekJob(name, bookOf(readWorkbook(bytes))).job as WeekJob);
    const now = Math.round(serialOfIso(NOW)! * 86_400) as Parameters<typeof planWeek>[1]["now"];
    const week = planWeek(jobs, { now, units: 0 });
    expect(board.jobs.map(({ name, late }) => [name, late])).toEqual(week.jobs.map(({ name, late }) => [name, late]));
    const spans = board.jobs.flatMap(({ bars }) => bars.map(({ begins, finish }) => [begins, finish]));
    expect(Math.min(...spans.map(([begins]) => begins!))).toBe(Math.min(...week.steps.map(({ begins }) => begins)));
    expect(Math.max(...spans.map(([, finish]) => finish!))).toBe(Math.max(...week.steps.map(({ finish }) => finish)));
    expect(board.days).toEqual(week.days);
    expect(board.faults.filter((fault) => fault.startsWith("torn: not planned"))).toHaveLength(1);
    expect(board.figures[0]![1]).toContain("without 2 jobs (torn, gone)");
    expect(board.faults).toContain("gone: not planned: no such file");
  });

  it("pins a moved bar, says what moves and where it would be kept, and takes it back", () => {
    const [job] = board.jobs;
    const bar = job!.bars.find(({ isAway }) => !isAway)!;
    const to = (bar.begins + 3 * 86_400) as typeof bar.begins;
    const after = session.move({ job: job!.name, step: { row: bar.row, station: bar.station }, to });
    const now = after.jobs[0]!.bars.find(({ row, station }) => row === bar.row && station === bar.station)!;
    expect(now.finish).toBeGreaterThan(to);
    expect(now.was).toEqual([bar.begins, bar.finish]);
    expect(after.moves.join(" ")).toContain(`${job!.name}: `);
    const [pin] = after.pins;
    expect(after.pins).toHaveLength(1);
    // The bill's own column takes what is shown.
    expect(pin!.mark).toMatch(new RegExp(`^${bar.station} \\d{4}-\\d{2}-\\d{2} \\d{2}:\\d{2}$`));
    expect(after.missed).toEqual([]);
    const back = session.undo();
    expect(back.pins).toEqual([]);
    expect(back.jobs).toEqual(board.jobs);
    expect(session.undo().jobs).toEqual(board.jobs); // nothing left to take back
  });

  it("says of a bar that is moved before its work can begin that the pin is not kept", () => {
    const [job] = board.jobs;
    const bars = job!.bars.filter(({ row }) => row === job!.bars[0]!.row);
    const { row, station } = bars.find(({ isAway }, i) => i > 0 && !isAway)!;
    const { missed } = session.move({ job: job!.name, step: { row, station }, to: board.now });
    expect(missed).toEqual([expect.stringContaining(`"${station}" cannot keep its pin`)]);
    session.undo();
  });

  it("searches on from a moved week, and is no worse than a fresh search with the same pins", () => {
    const own = new WeekSession(files, undefined, NOW);
    const first = own.search();
    const job = first.jobs.find(({ name }) => name === "pier-railing")!;
    const begins = Math.min(...job.bars.map((bar) => bar.begins));
    const to = (begins + 86_400) as (typeof job.bars)[0]["begins"];
    const moved = own.move({ job: job.name, step: undefined, to });
    const searched = own.search();
    const late = (of: typeof moved) => of.jobs.reduce((sum, each) => sum + each.late, 0);
    expect(late(searched)).toBeLessThanOrEqual(late(moved));
    expect(searched.pins).toEqual(moved.pins);
    const now = Math.round(serialOfIso(NOW)! * 86_400) as Parameters<typeof planWeek>[1]["now"];
    const marked = files.map(({ name, bytes }) => {
      const read = weekJob(name, bookOf(readWorkbook(bytes))).job as WeekJob;
      if (name !== job.name) return read;
      const pins = moved.jobs.find((each) => each.name === name)!.bars.filter(({ pin }) => pin !== undefined);
      expect(pins.length).toBeGreaterThan(0);
      return pins.reduce(
        (all, { row, station, pin }) => withPins([all], name, [{ row, part: "", station, at: pin! }])[0]!,
        read,
      );
    });
    const fresh = searchWeek(marked, { now });
    expect(late(searched)).toBeLessThanOrEqual(fresh.jobs.reduce((sum, each) => sum + each.late, 0) + 1);
    // What is said of the move is said of the plan that is shown.
    const done = searched.jobs.filter(({ bars }) => bars.some(({ was }) => was)).map(({ name }) => name);
    expect(searched.moves.map((said) => said.split(":")[0])).toEqual(done);
  }, 60_000);

  it("refuses where no file holds a job", () => {
    expect(() => new WeekSession([{ name: "torn", bytes: new Uint8Array([1]) }], undefined, NOW)).toThrow(/torn/);
  });
});

describe("the scale of the board", () => {
  const scale = new TimeScale(new WeekSession(files, undefined, NOW).board());

  it("puts a day's hours in order across the board and leads back to a quarter of an hour", () => {
    const [first] = scale.days;
    let last = -1;
    for (let hour = 8; hour < 15; hour++) {
      const time = first!.day + hour * 3600;
      expect(scale.at(time)).toBeGreaterThan(last);
      last = scale.at(time);
      expect(scale.time(last)).toBe(time);
    }
    expect(scale.at(first!.day - 86_400)).toBe(0);
    expect(scale.at(first!.day + 90 * 86_400)).toBeLessThanOrEqual(100);
  });

  it("goes on by worked hours, over the night into the next day", () => {
    const { day } = scale.days[0]!;
    const evening = day + 15 * 3600;
    const next = scale.along(evening, 2);
    expect(next).toBeGreaterThan(day + 86_400);
    expect(scale.along(next, -2)).toBe(evening);
    expect(scale.along(day + 8 * 3600, "day")).toBe(day + 86_400 + 8 * 3600);
  });
});
