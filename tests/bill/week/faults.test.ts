/** What is wrong with a week, in words, and how much of it is missing. */
import { describe, expect, it } from "vitest";
import { emptySays, faultSays, linesWithout, type WeekFault, weekWithoutSays } from "../../../src/bill/week/faults.ts";
import { setForSays } from "../../../src/bill/week/set-for-says.ts";
import { setUpSays } from "../../../src/bill/week/set-up-says.ts";
import { instant } from "../../../src/calc/schedule/calendar.ts";

const notQuoted = (job: string, ...lines: string[]): WeekFault => ({
  kind: "not quoted",
  job,
  lines,
  says: "no quote",
});
const untimed = (job: string): WeekFault => ({ kind: "untimed", job, line: "A", says: "rates must be given" });
const noShift = (job: string): WeekFault => ({ kind: "no shift", job, line: "B", station: "Brake" });
const unplanned = (job: string): WeekFault => ({ kind: "unplanned", job, says: "no file" });
const noDue = (job: string): WeekFault => ({ kind: "no due", job });

describe("what a week is without", () => {
  it("is counted by job: lines without a quote, a time or a shift, and all of one that is not planned", () => {
    const faults = [notQuoted("a", "1", "2"), untimed("a"), noShift("a"), noDue("a"), untimed("b"), unplanned("c")];
    expect(["a", "b", "c", "d"].map((job) => linesWithout(faults, job))).toEqual([4, 1, Infinity, 0]);
  });
  it("is said of all jobs, of one, and of those that have no row", () => {
    const jobs = ["a", "b"].map((name) => ({ name }));
    const of = (faults: WeekFault[], only?: string) => weekWithoutSays({ faults, jobs }, only);
    expect(of([])).toBe("");
    expect(of([notQuoted("a", "1", "2"), untimed("b")])).toBe("without 3 lines");
    expect(of([notQuoted("a", "1", "2"), untimed("b")], "b")).toBe("without 1 line");
    expect(of([unplanned("b")], "b")).toBe("not planned");
    expect(of([unplanned("b")], "a")).toBe("");
    expect(of([unplanned("b")])).toBe("without 1 job (b)");
    expect(of([untimed("a"), unplanned("b"), unplanned("x")])).toBe("without 1 line, without 2 jobs (b, x)");
    const many = Array.from({ length: 8 }, (_, i) => unplanned(`j${i}`));
    expect(of(many)).toBe("without 8 jobs (j0, j1, j2, j3, j4, j5 and 2 more)");
    expect(of(many.slice(0, 6))).toBe("without 6 jobs (j0, j1, j2, j3, j4, j5)");
  });
  it("is why nothing of a job stands in it", () => {
    const copy: WeekFault = { kind: "same bill", job: "a", than: "b" };
    expect(emptySays({ faults: [noDue("a"), copy] }, "a")).toBe("same as b");
    expect(emptySays({ faults: [copy, untimed("b")] }, "b")).toBe("nothing planned");
    expect(emptySays({ faults: [copy, noDue("b")] }, "b")).toBe("nothing open");
  });
});

describe("a fault", () => {
  const mark = { job: "J", line: "L", row: 4, column: "Started", mark: "Brake" } as const;
  const at = instant(7);
  const faults: readonly WeekFault[] = [
    unplanned("J"),
    notQuoted("J", "1", "2"),
    untimed("J"),
    { ...mark, kind: "unknown mark", nearest: "Shear" },
    ...(["marked twice", "begun before", "begun untimed", "begun later", "overdue"] as const).map((kind) => ({
      ...mark,
      kind,
    })),
    { ...mark, kind: "other machine", planned: "Brake 2" },
    ...(["pin passed", "pin closed", "pin early", "pin missed"] as const).map((kind) => ({ ...mark, kind, at })),
    noShift("J"),
    { kind: "no calendar", job: "J" },
    noDue("J"),
    { kind: "people", job: "J", lines: ["1"], station: "Brake", needed: 3, there: 2 },
    { kind: "due passed", job: "J", due: at },
    { kind: "other shop", job: "J", than: "K", tables: ["rates", "stations"] },
    { kind: "same bill", job: "J", than: "K" },
    { ...mark, kind: "begun together", beside: "K", places: 1 },
    { ...mark, kind: "begun short", beside: "K", places: 1 },
  ];
  const says = (fault: WeekFault) => faultSays(fault, (instantOf) => `day ${instantOf}`);
  it("has a sentence of its own that begins with its job, and names the mark's line, row and column", () => {
    expect(new Set(faults.map(says)).size).toBe(faults.length);
    for (const fault of faults) {
      expect(says(fault)).toMatch(/^J[:,]/);
      if ("mark" in fault) expect(says(fault)).toMatch(/^J, L \(row 4, column "Started"\): .*"Brake"/);
      if ("at" in fault || fault.kind === "due passed") expect(says(fault)).toContain("day 7");
    }
  });
  it("of a mark with commas says how stations are parted; of one that is unknown the nearest", () => {
    const unknown = { ...mark, kind: "unknown mark", nearest: "Shear" } as const;
    expect(says(unknown)).toContain('nearest is "Shear"');
    expect(says({ ...unknown, mark: "Shear, Brake" })).toContain('separate stations by ";"');
  });
  it("of tables that differ speaks of one calendar, or of several tables", () => {
    const other = (...tables: ("calendar" | "rates")[]): WeekFault => ({
      kind: "other shop",
      job: "J",
      than: "K",
      tables,
    });
    expect(says(other("calendar"))).toContain("calendar differs from that of K, which is used");
    expect(says(other("rates", "calendar"))).toContain("rates, calendar differ from those of K, which are used");
  });
});

describe("what a machine is set up for", () => {
  const step = (setFor: string, change: number) =>
    setForSays(
      { setFor, change, line: { plan: { line: { material: { name: "A36" }, thickness: 6.35 } } } } as never,
      "in",
    );
  it("is said as the shop says a sheet, and tools by their names", () => {
    expect(step("A36 6.35", 600)).toMatch(/^A36 0\.250 in/);
    expect(step("V 2, Plain", 600)).toBe("V 2, Plain");
    expect(step("", 600)).toBe("");
    expect(step("A36 6.35", 0)).toBe("A36 6.35");
  });
});

describe("the set-ups of a week against the bills", () => {
  const step = (station: string, setUp: number, inBill: number, more: object = {}) => ({
    ...{ station: { name: station }, work: { setUp: inBill }, setUp, isStarted: false, lot: 1 },
    ...more,
  });
  const says = (...steps: object[]) => setUpSays({ steps } as never);
  it("are said by station, the most hours more first, and only where they differ as printed", () => {
    expect(says()).toBe("");
    expect(says(step("Brake", 3600, 3600), step("Shear", 170, 0))).toBe("");
    const all = says(
      step("Shear", 600, 2040),
      step("Brake", 3600, 1800),
      step("Brake", 3600, 3600),
      step("Saw", 7200, 0),
    );
    expect(all).toMatch(/: Saw 2 h more, Brake 0\.5 h more, Shear 0\.4 h less\.$/);
  });
  it("count nothing in the bill for what has begun and for the lots after the first, and nothing at a vendor", () => {
    expect(says(step("Brake", 0, 3600, { isStarted: true }), step("Brake", 0, 3600, { lot: 2 }))).toBe("");
    expect(says(step("Brake", 1800, 3600, { lot: 2 }))).toMatch(/: Brake 0\.5 h more\.$/);
    expect(says({ ...step("Coating", 0, 0), work: undefined })).toBe("");
  });
});
