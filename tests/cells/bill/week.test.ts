import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { bill, bracket, given, MONDAY, range, SHOP } from "../example/tables.ts";

const NOW = MONDAY + 7 / 24;
const STEPS = [
  "Job",
  "Part",
  "Station",
  "Set-up (min)",
  "Total (min)",
  "Set for",
  "Due",
  "Vendor days",
  "Done",
  "Started",
];
const steps = (...rows: readonly (readonly CellValue[])[]): CellMatrix => range(STEPS, ...rows);
const ask = (name: string, table: CellMatrix): CellMatrix => {
  const { value } = shopFunctions.call(name, [table, SHOP.calendar, NOW]);
  if (isCellError(value)) throw new Error(value.message);
  return value as CellMatrix;
};
const column = ([header, ...rows]: CellMatrix, name: string) => {
  const at = header!.findIndex((cell) => String(cell).replace(/ \(.*\)$/, "") === name);
  return rows.map((row) => row[at]);
};
const hour = (day: number, hours: number) => day + hours / 24;

// Shifts of the invented shop: 7:00 to 15:30, Monday to Friday.
describe("WEEK.DATES", () => {
  it("one part after another in the shifts: worked by hand", () => {
    const table = steps(
      ["Fair", "A", "Brake", 30, 240, "V 1", MONDAY],
      ["Fair", "A", "Shear", 5, 65, "10 ga", MONDAY],
      ["Fair", "A", "Weld", null, 300, null, MONDAY],
    );
    const found = ask("WEEK.DATES", table);
    // Cut 7:00-8:05, bent 8:05-11:35 on tools set before, welded 11:35-15:30 and 7:00-8:05: 8:05 h past the last second of Monday.
    expect(column(found, "Finish")[0]).toBeCloseTo(hour(MONDAY + 1, 8 + 5 / 60), 9);
    expect(column(found, "Late")[0]).toBeCloseTo(8 + 5 / 60 + 1 / 3600, 9);
    expect(column(found, "Decided at")).toEqual(["Shear A; Brake A; Weld A"]);
  });

  it("a date beside one operation is the part's; two dates are two deliveries, each made in full", () => {
    const shear = ["Fair", "A", "Shear", 5, 65, "10 ga"];
    const brake = ["Fair", "A", "Brake", 30, 240, "V 1"];
    const once = ask("WEEK.DATES", steps([...shear, MONDAY + 1], [...brake, MONDAY + 1]));
    expect(ask("WEEK.DATES", steps([...shear, null], [...brake, MONDAY + 1]))).toEqual(once);
    // Two lines of one part: the brake, set once, ends 210 min after the first 210, which began at 8:05.
    const twice = ask(
      "WEEK.DATES",
      steps(...[1, 2].flatMap((day) => [shear, brake].map((row) => [...row, MONDAY + day]))),
    );
    expect(column(twice, "Finish")[0]).toBeCloseTo(hour(MONDAY, 15 + 5 / 60), 9);
    expect(column(twice, "Due")[0]).toBeCloseTo(MONDAY + 3 - 1 / 86_400, 9);
    // A date beside the shear and another beside the brake: nobody knows which, so each is a delivery of its own.
    expect(column(ask("WEEK.DATES", steps([...shear, MONDAY + 1], [...brake, MONDAY + 2])), "Late")).toEqual([0]);
  });

  it("what is due first goes first, and equal words in Set for share the set-up", () => {
    const rows = (setFor: CellValue) =>
      steps(
        ["Late", "L", "Brake", 60, 180, "V 1", MONDAY + 5],
        ["Soon", "S", "Brake", 60, 120, setFor, MONDAY + 9 / 24],
      );
    expect(column(ask("WEEK.DATES", rows("V 1")), "Finish")).toEqual(
      [hour(MONDAY, 11), hour(MONDAY, 9)].map((at) => expect.closeTo(at, 9)),
    );
    expect(column(ask("WEEK.DATES", rows("V 2")), "Finish")).toEqual(
      [hour(MONDAY, 12), hour(MONDAY, 9)].map((at) => expect.closeTo(at, 9)),
    );
  });

  it("what is done is gone with all before it; a vendor takes working days", () => {
    const table = steps(
      ["Fair", "A", "Shear", 5, 65, null, null],
      ["Fair", "A", "Brake", 30, 240, null, null, null, "yes"],
      ["Fair", "A", "Coating", null, null, null, null, 2],
    );
    const found = ask("WEEK.DATES", table);
    expect(column(found, "Finish")[0]).toBeCloseTo(NOW + 2, 9);
    expect(column(found, "Message")[0]).toContain("no time to leave by");
  });

  it("reads BILL.TIMES with the job beside it", () => {
    const { value } = shopFunctions.call("BILL.TIMES", given(bill(bracket())));
    const [header, ...rows] = value as CellMatrix;
    const table = [["Job", ...header!], ...rows.map((row) => ["Fair", ...row])];
    const load = ask("WEEK.LOAD", table);
    const total = column(value as CellMatrix, "Total").reduce((sum: number, cell) => sum + Number(cell), 0);
    expect(column(load, "Load").reduce((sum: number, cell) => sum + Number(cell), 0)).toBeCloseTo(total / 60, 9);
  });

  it("names a row that says too little", () => {
    const { value } = shopFunctions.call("WEEK.DATES", [steps(["Fair", "A", "Shear"]), SHOP.calendar, NOW]);
    expect(isCellError(value) && value.message).toContain('steps row 2 column "Total" must be given, or "Vendor days"');
    const closed = shopFunctions.call("WEEK.DATES", [
      steps(["Fair", "A", "Shear", 5, 65]),
      range(["Day", "Start", "End"], ["2026-05-25"]),
      NOW,
    ]);
    expect(isCellError(closed.value) && closed.value.message).toContain("calendar must be one with a shift");
  });
});

describe("WEEK.LOAD", () => {
  it("what each station has and is asked for, day by day", () => {
    const found = ask("WEEK.LOAD", steps(["Fair", "A", "Weld", 30, 900, null, MONDAY + 9]));
    expect(column(found, "Day")).toEqual([MONDAY, MONDAY + 1]);
    expect(column(found, "Available")).toEqual([8.5, 8.5]);
    expect(column(found, "Load")).toEqual([8.5, 6.5].map((hours) => expect.closeTo(hours, 9)));
    expect(column(found, "Slack")).toEqual([0, 2].map((hours) => expect.closeTo(hours, 9)));
  });
});
