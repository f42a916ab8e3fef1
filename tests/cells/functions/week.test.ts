import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";

const call = (name: string, ...args: (CellValue | CellMatrix)[]) => shopFunctions.call(name, args);
const said = (name: string, ...args: (CellValue | CellMatrix)[]): string => {
  const { value } = call(name, ...args);
  return isCellError(value) ? `${value.code} ${value.message}` : `answered ${String(value)}`;
};

const MONDAY = 46_083; // 2 March 2026
const H = 1 / 24;
const CALENDAR: CellMatrix = [
  ["Day", "Start", "End"],
  ...["Mon", "Tue", "Wed", "Thu", "Fri"].map((day) => [day, "7:00", "15:00"]),
];
const HEADER = ["Job", "Part", "Station", "Set-up (min)", "Total (min)", "Set for", "Due", "Started"];
const steps = (...rows: CellValue[][]): CellMatrix => [
  HEADER,
  ...rows.map((row) => HEADER.map((_, i) => row[i] ?? null)),
];
const rowsOf = (name: string, open: CellMatrix, now = MONDAY + 7 * H) => {
  const [header, ...rows] = call(name, open, CALENDAR, now).value as CellMatrix;
  return rows.map((row) => Object.fromEntries(header!.map((title, i) => [title, row[i]])));
};

describe("WEEK.DATES", () => {
  it("two jobs at one brake: the one due first goes first, and the chain names its steps", () => {
    const [fair, pier] = rowsOf(
      "WEEK.DATES",
      steps(
        ["Fair", "A1", "Brake", 0, 240, null, "2026-03-04"],
        ["Pier", "B1", "Brake", 0, 120, null, "2026-03-02 10:00"],
      ),
    );
    expect([pier!["Finish"], fair!["Finish"]]).toEqual([
      expect.closeTo(MONDAY + 9 * H, 8),
      expect.closeTo(MONDAY + 13 * H, 8),
    ]);
    expect([pier!["Decided at"], fair!["Decided at"]]).toEqual(["Brake B1", "Brake B1 (Pier); Brake A1"]);
  });

  it("starts by what its set-up and run leave: three hours due at 14:00 begin at 11:00, of which one is set-up", () => {
    const [one] = rowsOf("WEEK.DATES", steps(["Fair", "A1", "Shear", 60, 180, null, "2026-03-02 14:00"]));
    expect(one!["Start by in plan"]).toBeCloseTo(MONDAY + 11 * H, 8);
    // Where the tools stand already nothing is set up: the run alone decides.
    const [first, second] = rowsOf(
      "WEEK.DATES",
      steps(
        ["Fair", "A1", "Shear", 60, 120, "t", "2026-03-02 10:00"],
        ["Pier", "B1", "Shear", 60, 120, "t", "2026-03-02 14:00"],
      ),
    );
    expect(first!["Start by in plan"]).toBeCloseTo(MONDAY + 8 * H, 8);
    expect(second!["Start by in plan"]).toBeCloseTo(MONDAY + 13 * H, 8);
  });

  it("writes the dates of its messages as dates", () => {
    const [late] = rowsOf("WEEK.DATES", steps(["Fair", "A1", "Brake", 0, 60, null, "2026-02-27 10:00"]));
    expect(late!["Message"]).toContain("due 2026-02-27 10:00, which is past");
    const [day] = rowsOf("WEEK.DATES", steps(["Fair", "A1", "Brake", 0, 60, null, "2026-02-27"]));
    expect(day!["Message"]).toContain("due 2026-02-27, which is past");
  });

  it("what began at a time keeps what is done: four hours begun Friday at 13:00 end Monday at 9:00", () => {
    const begun = steps(["Fair", "A1", "Brake", 30, 240, null, null, "2026-02-27 13:00"]);
    expect(rowsOf("WEEK.DATES", begun)[0]!["Finish"]).toBeCloseTo(MONDAY + 9 * H, 8);
    expect(rowsOf("WEEK.DATES", begun, MONDAY + 8 * H)[0]!["Finish"]).toBeCloseTo(MONDAY + 9 * H, 8);
    expect(rowsOf("WEEK.DATES", begun, MONDAY + 10 * H)[0]!["Message"]).toMatch(/the hours of "Brake" are over/);
    // Later than now is now, with the set-up that both have still to do.
    const [now, later] = ["2026-03-02 07:00", "2026-03-02 09:00"].map(
      (at) => rowsOf("WEEK.DATES", steps(["Fair", "A1", "Brake", 30, 240, null, null, at]))[0]!,
    );
    expect([now!["Finish"], later!["Finish"]]).toEqual([now!["Finish"], expect.closeTo(MONDAY + 11 * H, 8)]);
    expect(later!["Message"]).toContain("begins later than now");
    const untimed = rowsOf("WEEK.DATES", steps(["Fair", "A1", "Brake", 30, 240, null, null, "yes"]))[0]!;
    expect(untimed["Finish"]).toBeCloseTo(MONDAY + 10.5 * H, 8);
    expect(untimed["Message"]).toMatch(/row 2, column "Started"\): "Brake" has no time/);
    expect(said("WEEK.DATES", steps(["Fair", "A1", "Brake", 30, 240, null, null, "soon"]), CALENDAR, MONDAY)).toMatch(
      /^#VALUE! steps row 2 column "Started" must be yes, no, or when it began/,
    );
  });
});

describe("WEEK.LOAD", () => {
  it("says by day what a station has, does and has left", () => {
    const [monday, tuesday] = rowsOf("WEEK.LOAD", steps(["Fair", "A1", "Brake", 60, 600, null, null]));
    expect([monday!["Available (h)"], monday!["Load (h)"], monday!["Slack (h)"]]).toEqual([8, 8, 0]);
    expect([tuesday!["Available (h)"], tuesday!["Load (h)"], tuesday!["Slack (h)"]]).toEqual([8, 2, 6]);
  });
});
