/** Finished jobs correct every time of a bill, and the working says so. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import type { CellMatrix } from "../../../src/units/cell.ts";
import { ask, askNow, BRACKET, bill, cellOf, columnOf, given, range, SHOP } from "../../cells/example/tables.ts";

const FINISHED = range(
  ["Part", "Station", "Estimated (min)", "Recorded (min)", "Own factor"],
  ["A", "Brake", 40, 50],
  ["B", "Brake", 60, 75],
  ["C", "brake", 20, 25],
  ["D", "Shear", 30, 20],
  ["E", "Shear", 30, 20],
);
const finished = { ...SHOP, finished: FINISHED };
const times = (tables: Record<string, CellMatrix>) => ask("BILL.TIMES", ...given(bill(BRACKET), tables));
const brake = (spill: CellMatrix, column: string) =>
  columnOf(spill, column)[columnOf(spill, "Station").indexOf("Brake")] as number;

describe("finished jobs", () => {
  const weight = 3 / 0.35 ** 2 / (3 / 0.35 ** 2 + 25);
  const factor = 1.25 ** weight;
  it("three similar jobs give the station a factor; two give none", () => {
    const table = ask("TIME.TABLE", FINISHED);
    expect(cellOf(table, "Brake", "Own factor")).toBeCloseTo(factor, 12);
    expect(cellOf(table, "Shear", "Own factor")).toBe(1);
    expect(cellOf(table, "Shear", "Note")).toBe("fewer than three jobs: no factor yet");
  });
  it("is in every time of the bill at that station, and stands beside it", () => {
    const [plain, taught] = [times(SHOP), times(finished)];
    expect(brake(taught, "Each")).toBeCloseTo(brake(plain, "Each") * factor, 9);
    expect(brake(taught, "Own factor")).toBeCloseTo(factor, 12);
    expect(brake(plain, "Own factor")).toBe(1);
    const shear = columnOf(plain, "Station").indexOf("Shear");
    expect(columnOf(taught, "Total")[shear]).toBe(columnOf(plain, "Total")[shear]);
  });
  it("raises the price by the time, and the working names it", () => {
    const cost = (tables: Record<string, CellMatrix>) =>
      columnOf(ask("BILL.PRICE", ...given(bill(BRACKET), tables)), "Cost")[0] as number;
    expect(cost(finished)).toBeGreaterThan(cost(SHOP));
    const steps = shopFunctions.call("WORKING", ["BILL.TIMES", ...given(bill(BRACKET), finished)]).value as CellMatrix;
    const step = steps.find(([symbol]) => symbol === "f Brake")!;
    expect(step[1]).toBe("own factor, 3 finished jobs");
    expect(step[2]).toBeCloseTo(factor, 12);
  });
  it("an estimate that held a factor already is taken back to what it was without", () => {
    const again = FINISHED.map((row, i) =>
      i === 0 || row[1] === "Shear" ? row : [row[0]!, row[1]!, (row[2] as number) * 1.1, row[3]!, 1.1],
    );
    expect(cellOf(ask("TIME.TABLE", again), "Brake", "Own factor")).toBeCloseTo(factor, 12);
  });
  it("minutes of zero are refused by their cell", () => {
    const { value } = shopFunctions.call("TIME.TABLE", [range(FINISHED[0]!, ["A", "Brake", 0, 5])]);
    expect(value).toMatchObject({ message: expect.stringContaining('finished row 2 column "Estimated"') });
  });
});

describe("materials among the tables", () => {
  const materials = range(
    ["Material", "Materials edition", "Timed feed (in/min)"],
    [null, "2026.2", null],
    ["Composite panel", null, 80],
  );
  const stock = [...SHOP.stock, ["Panel", "ACM", 0.157, 96, 48, null, 190, null, 0.5]];
  const panel = { Part: "P1", Material: "ACM", Thickness: 0.157, Quantity: 4, Width: 12, Flanges: "24" };
  const asked = (name: string) => askNow(name, ...given(bill(panel), { ...SHOP, stock }), materials);
  it("are read by every function about a bill: a panel is cut, timed and priced like the rest", () => {
    expect(columnOf(asked("BILL.CHECK"), "Status")).toEqual(["clear"]);
    expect(columnOf(asked("BILL.ROUTE"), "Route")).toEqual(["waterjet"]);
    expect(columnOf(asked("BILL.PRICE"), "Price")[0]).toBeGreaterThan(0);
    expect(columnOf(asked("BILL.SHEETS"), "Sheets")).toEqual([1]);
    for (const name of ["BILL.TIMES", "BILL.WHATIF", "BILL.LOADIN", "BILL.BLANKS", "CUT.PLAN"])
      expect(columnOf(asked(name), "Message")[0], name).toBe("");
  });
  it("without them the panel is not known, and an edition beside them is refused", () => {
    expect(columnOf(askNow("BILL.CHECK", ...given(bill(panel), { ...SHOP, stock })), "Status")).toEqual(["stop"]);
    const args = [...given(bill(panel), { ...SHOP, stock }), materials];
    const { value } = shopFunctions.call("BILL.CHECK", [
      ...args,
      ...Array(17 - args.length).fill(null),
      "in",
      "2026.1",
    ]);
    expect(value).toMatchObject({
      message: expect.stringContaining("data must be left out where a table of materials"),
    });
  });
});
