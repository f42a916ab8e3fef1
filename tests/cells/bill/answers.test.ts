/** What each function about a bill answers, against figures worked by hand from the sample shop. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { WORKED_BRACKET } from "../../reference/worked-bracket.ts";
import {
  ARGUMENTS,
  BRACKET,
  BRAKE,
  bill,
  columnOf,
  DIES,
  MONDAY,
  PRESS_HEADER,
  PUNCHES,
  RATE_ROWS,
  RATES,
  type Row,
  range,
  rates,
  SHEAR,
  STATIONS,
  WATERJET,
} from "./sample-shop.ts";

const worked = (line: number): number => WORKED_BRACKET[line - 1]!.value;
const DEDUCTION = worked(13);
const H = 1 / 24;

function ask(name: string, args: (CellMatrix | CellValue)[]): CellMatrix {
  const { value } = shopFunctions.call(name, args);
  if (isCellError(value)) throw new Error(value.message);
  return value as CellMatrix;
}
const args = (name: string, of: CellMatrix, table = RATES): (CellMatrix | CellValue)[] => ARGUMENTS(of, table)[name]!;
/** Some columns of a bill, by header. */
const billOf = (header: string[], ...rows: CellValue[][]) =>
  range(["Part", "Material", "Thickness (in)", "Quantity", "Flanges (in)", "Bend angles", ...header], ...rows);
/** The stations with another queue, in hours. */
const queued = (queues: Record<string, number>): CellMatrix =>
  STATIONS.map((row) =>
    queues[row[0] as string] === undefined ? row : row.map((cell, i) => (i === 5 ? queues[row[0] as string]! : cell)),
  );

describe("BILL.BLANKS", () => {
  it("a tray is flat in both directions, its bends as long as its base", () => {
    const tray = billOf(
      ["Cross flanges (in)", "Cross angles", "Holes", "Hole diameter (in)", "Notches", "Notch path (in)"],
      ["Tray", "A36", 0.25, 1, "2; 6; 2", 90, "2; 4; 2", 90, 3, 0.5, 4, 2.5],
    );
    const spill = ask("BILL.BLANKS", args("BILL.BLANKS", tray));
    const [length, width] = [10 - 2 * DEDUCTION, 8 - 2 * DEDUCTION];
    expect(columnOf(spill, "Length")[0]).toBeCloseTo(length, 8);
    expect(columnOf(spill, "Width")[0]).toBeCloseTo(width, 8);
    expect(columnOf(spill, "Cut path")[0]).toBeCloseTo(2 * (length + width) + 3 * Math.PI * 0.5 + 4 * 2.5, 8);
    expect(columnOf(spill, "Pierces")[0]).toBe(4);
  });

  it.each([
    ["across", "length"],
    ["along", "width"],
    [null, ""],
  ])("a bend line %s the grain: the blank's %s along the rolling", (grain, along) => {
    const one = billOf(["Width (in)", "Grain"], ["A", "A36", 0.25, 1, "2; 3", 90, 4, grain]);
    expect(columnOf(ask("BILL.BLANKS", args("BILL.BLANKS", one)), "Grain")).toEqual([along]);
  });

  it("6061-T6 is locked across the grain even where nobody said so", () => {
    const one = billOf(["Width (in)"], ["A", "6061-T6", 0.125, 1, "2; 3", 90, 4]);
    const wide = range(["Punch", "Nose radius (in)", "Angle (deg)"], ["R3/8", 0.375, 60]);
    const spill = ask("BILL.BLANKS", [one, BRAKE, range(DIES[0]!, ["V1.5", 1.5, 60]), wide, RATES]);
    expect(columnOf(spill, "Grain")).toEqual(["length"]);
  });

  it("scrap is rounded up, first pieces added", () => {
    const rows = [1, 50, 51].map((quantity) => ["A", "A36", 0.25, quantity, "2; 3", 90, 4]);
    const spill = ask("BILL.BLANKS", args("BILL.BLANKS", billOf(["Width (in)"], ...rows)));
    expect(columnOf(spill, "Quantity")).toEqual([1 + 1 + 1, 50 + 1 + 1, 51 + 2 + 1]);
  });

  it("the actual thickness is what is bent and weighed, the nominal what is bought", () => {
    const rows = [["A", "A36", 0.25, 1, "2; 3", 90, 4, 0.28]];
    const spill = ask("BILL.BLANKS", args("BILL.BLANKS", billOf(["Width (in)", "Actual thickness (in)"], ...rows)));
    const radius = worked(10);
    const deduction = 2 * (radius + 0.28) - (Math.PI / 2) * (radius + 0.42 * 0.28);
    expect(columnOf(spill, "Thickness")[0]).toBeCloseTo(0.25, 12);
    expect(columnOf(spill, "Length")[0]).toBeCloseTo(5 - deduction, 8);
    expect(columnOf(spill, "Weight each")[0]).toBeCloseTo((5 - deduction) * 4 * 0.28 * 0.284, 8);
  });
});

describe("BILL.ROUTE", () => {
  const summary = (of: CellMatrix, ...rest: CellValue[]): Record<string, CellValue> => {
    const spill = ask("BILL.ROUTE", [...args("BILL.ROUTE", of), ...rest]);
    return Object.fromEntries(spill.slice(1).map((row) => [row[0], row[1]!]));
  };

  it("one line: the brake's queue and load decide; the shear is the cheaper of two that finish alike", () => {
    const found = summary(bill(BRACKET), null, "summary");
    // Queue of the brake 3 h from 7:00, then its set-up and run.
    const brake = (worked(31) + worked(27)) / 86_400;
    expect(found["Finish"]).toBeCloseTo(MONDAY + 10 * H + brake, 9);
    expect(found["Earliest possible finish"]).toBe(found["Finish"]);
    expect(found["Proved"]).toBe("yes");
    const cut = ((worked(30) + worked(21)) * 60 + (worked(32) + worked(29)) * 55) / 3600;
    expect(found["Cutting cost"]).toBeCloseTo(cut, 3);
    expect(found["All on the waterjet: cost"] as number).toBeGreaterThan(cut);
    expect(found["Saved against all on the waterjet"]).toBeCloseTo(
      (found["All on the waterjet: cost"] as number) - cut,
      3,
    );
  });

  it("a pin is kept, a notch needs the waterjet, and why stands beside it", () => {
    const of = billOf(
      ["Width (in)", "Route", "Notches", "Notch path (in)"],
      ["A", "A36", 0.25, 5, "2; 3", 90, 4, "waterjet", 0, null],
      ["B", "A36", 0.25, 5, "2; 3", 90, 4, null, 2, 3],
      ["C", "A36", 0.25, 5, "2; 3", 90, 4, "shear", 0, null],
      ["D", "A36", 0.25, 5, "2; 3", 90, 4, "shear", 2, 3],
    );
    const spill = ask("BILL.ROUTE", args("BILL.ROUTE", of));
    expect(columnOf(spill, "Route")).toEqual(["waterjet", "waterjet", "shear", ""]);
    expect(columnOf(spill, "Why")).toEqual(["pinned", "needs the waterjet", "pinned", ""]);
    expect(columnOf(spill, "Message")[3]).toMatch(
      /^bill row 5 column "Route" must be a machine that can cut the line; got "shear"; notches need/,
    );
  });

  it("a due time that cannot be met is said", () => {
    const spill = ask("BILL.ROUTE", [...args("BILL.ROUTE", bill(BRACKET)), MONDAY + 8 * H, "summary"]);
    expect(spill[1]![3]).toBe("no assignment meets the due time; this is the earliest");
  });
});

describe("BILL.PRICE", () => {
  const priced = (of: CellMatrix, table = RATES, ...rest: (CellMatrix | CellValue)[]) =>
    ask("BILL.PRICE", [...args("BILL.PRICE", of, table), ...rest]);

  it("outside work has its minimum, its days, and closes the holes", () => {
    const row = BRACKET.map((cell, i) => (i === 9 ? "Coating" : cell));
    const spill = priced(bill(row));
    // 20 pieces of about 1/4 ft2, both faces, at 1.20: below the vendor's minimum of 75.
    expect(columnOf(spill, "Outside")[0]).toBe(75);
    expect(columnOf(spill, "Note")[0]).toBe(
      "cut on the shear; Coating outside, 5 vendor days, holes close by 0.006 in",
    );
    const many = priced(bill(row.map((cell, i) => (i === 3 ? 2000 : cell))));
    expect(columnOf(many, "Outside")[0]).toBeCloseTo((2 * worked(14) * 4 * 2000 * 1.2) / 144, 6);
  });

  it("minimum and rush are lines of their own", () => {
    const table = rates({ "Minimum charge": 200 });
    const spill = priced(bill(BRACKET), table, null, null, "rush");
    expect(columnOf(spill, "Part")).toEqual(["HB1", "Minimum charge", "Rush", "Total"]);
    expect(columnOf(spill, "Price")).toEqual([128.6, 71.4, 50, 250]);
  });

  it("mark-up only where it is asked for", () => {
    const spill = priced(bill(BRACKET), RATES, null, null, null, "markup");
    expect(columnOf(spill, "Unit price")[0]).toBe(Math.ceil((worked(36) / 20) * 1.45 * 100) / 100);
  });

  it("material is the cut plan's price, shared by area", () => {
    const plan = range(
      ["Pattern", "Stock", "Material", "Thickness (in)", "Length (in)", "Width (in)", "Sheets", "Price"],
      ["1", "48 x 96", "A36", 0.25, 96, 48, 2, 440],
      ["2", "48 x 96", "A36", 0.25, 96, 48, 1, 220],
      ["Total", null, "A36", 0.25, null, null, 3, 660],
    );
    const double = BRACKET.map((cell, i) => (i === 0 ? "HB2" : i === 4 ? 8 : cell));
    const spill = priced(bill(BRACKET, double), RATES, plan);
    expect(columnOf(spill, "Material").slice(0, 2)).toEqual([220, 440].map((value) => expect.closeTo(value, 8)));
  });

  it("the routes of BILL.ROUTE are followed, a pin before them", () => {
    const routes = range(["Part", "Route"], ["HB1", "waterjet"]);
    expect(columnOf(priced(bill(BRACKET), RATES, null, routes), "Note")[0]).toBe("cut on the waterjet");
    const pinned = BRACKET.map((cell, i) => (i === 10 ? "shear" : cell));
    expect(columnOf(priced(bill(pinned), RATES, null, routes), "Note")[0]).toBe("cut on the shear");
  });

  it("a blank that fits on no sheet, and a material not in stock, have no price", () => {
    const [big, other] = [
      BRACKET.map((cell, i) => (i === 4 ? 100 : cell)),
      BRACKET.map((cell, i) => (i === 1 ? "A572-50" : cell)),
    ];
    const spill = priced(bill(big, other, BRACKET));
    expect(columnOf(spill, "Message").slice(0, 2)).toEqual([
      expect.stringMatching(
        /^stock must be a table with a sheet that the blank fits on; got a blank of 100 in x 4.529 in/,
      ),
      expect.stringMatching(/^stock must be a table with a sheet of A572-50 of at least 0.25 in/),
    ]);
    expect(columnOf(spill, "Unit price")[2]).toBe(6.43);
  });
});

describe("BILL.SHEETS", () => {
  it("by area: whole sheets, what they weigh, and who lifts them", () => {
    const spill = ask("BILL.SHEETS", args("BILL.SHEETS", bill(BRACKET)));
    const at = (header: string) => columnOf(spill, header)[0];
    expect([at("Stock"), at("Sheets"), at("Price"), at("Handling"), at("Lead days")]).toEqual([
      "48 x 96",
      1,
      220,
      "hoist",
      0,
    ]);
    expect(at("Bundle weight")).toBeCloseTo(96 * 48 * 0.25 * 0.284, 8);
  });

  it("says when the rack has too few", () => {
    const many = BRACKET.map((cell, i) => (i === 3 ? 2000 : cell));
    const spill = ask("BILL.SHEETS", args("BILL.SHEETS", bill(many)));
    // 2041 blanks of 18.117 in2 at 80 % of 4608 in2 each: 10.03, so 11 sheets; 4 are there.
    expect(columnOf(spill, "Sheets")).toEqual([11]);
    expect(columnOf(spill, "Message")).toEqual(["stock has 4 of them"]);
  });
});

describe("BILL.MACHINES", () => {
  it("the smallest machines, by hand", () => {
    const stainless = BRACKET.map((cell, i) =>
      i === 0 ? "S" : i === 1 ? "304" : i === 2 ? "14 ga" : i === 4 ? 30 : cell,
    );
    const spill = ask("BILL.MACHINES", args("BILL.MACHINES", bill(BRACKET, stainless)));
    const value = (question: string) => spill.find((row) => row[0] === question)!;
    expect(value("Shortest brake bed").slice(1, 4)).toEqual([30, "in", "S"]);
    // 14 ga 304 is 50/640 in to four places; A36 low 0.7 x 58 ksi, 304 high 0.7 x 107 ksi, the parallel rule rules.
    expect(value("Least shear rating, mild steel").slice(1, 4)).toEqual([0.25, "in", "HB1"]);
    expect(value("Lines that Brake A bends").slice(1)).toEqual([2, "lines", "", 2, 1]);
    const alone = ask("BILL.MACHINES", args("BILL.MACHINES", bill(stainless)));
    expect(alone[4]![1]).toBeCloseTo((0.0781 * 107) / 58, 8);
    // Lange: (1 + 4t/V) UTS L t^2 / V in kip, half of it US tons.
    const bracket = ask("BILL.MACHINES", args("BILL.MACHINES", bill(BRACKET)));
    expect(bracket[1]![1]).toBeCloseTo((1.5 * 65 * 4 * 0.25 ** 2) / 2 / 2, 8);
  });
});

describe("BILL.SETUPS", () => {
  it("lines on the same tools together; stops, order and depth", () => {
    const of = billOf(
      ["Width (in)", "Die"],
      ["A", "A36", 0.25, 1, "2; 3", 90, 4, "V2"],
      ["B", "5052-H32", 0.125, 1, "2; 3", 90, 4, "V1"],
      ["C", "A36", 0.25, 1, "2; 4; 2", 90, 4, "V2"],
      ["D", "A36", 0.25, 1, "5", null, 4, null],
    );
    const spill = ask("BILL.SETUPS", args("BILL.SETUPS", of));
    expect(columnOf(spill, "Part")).toEqual(["A", "C", "B", "D"]);
    expect(columnOf(spill, "Set-up")).toEqual([1, 1, 2, ""]);
    // From the edge to the bend line: the flange less half a deduction, 2 - 0.2354. The second bend is gauged without
    // turning the sheet, against the first flange's outside face: 4 - 0.2354.
    expect(columnOf(spill, "Stops").slice(0, 2)).toEqual(["1.765", "1.765; 3.765"]);
    expect(columnOf(spill, "Order").slice(0, 2)).toEqual(["1", "1; 2"]);
    expect(columnOf(spill, "Order from").slice(0, 2)).toEqual(["plain tools", "plain tools"]);
    // The travel of AIR.DEPTH, which starts on the upper face, less the sheet.
    const travel = ask("AIR.DEPTH", ["A36", 0.25, 90, 2, 0.0625, 80]) as unknown as number;
    expect(columnOf(spill, "Depth")[0]).toBeCloseTo(travel - 0.25, 9);
    expect(columnOf(spill, "Caution")[3]).toBe("Flat: not for the brake.");
  });

  const DIES_OF = (...openings: number[]) =>
    range(["Die", "Opening (in)", "Angle (deg)"], ...openings.map((v) => [`V${v}`, v, 80]));
  const setUps = (dies: CellMatrix, of: CellMatrix, ...more: CellMatrix[]) => {
    const given = [...args("BILL.SETUPS", of)];
    given[2] = dies;
    return ask("BILL.SETUPS", [...given, ...more]);
  };

  it("lines share a die that bends both without a problem, though each alone would take another", () => {
    const [thin, thick]: Row[] = [
      ["A", "A36", 0.12, 1, 4, "4; 4", 90],
      ["B", "A36", 0.14, 1, 4, "4; 4", 90],
    ];
    const dies = DIES_OF(0.96, 1.04, 1.12);
    expect(columnOf(setUps(dies, bill(thin!)), "Die")).toEqual(["V0.96"]); // 8 thicknesses
    expect(columnOf(setUps(dies, bill(thick!)), "Die")).toEqual(["V1.12"]);
    const both = setUps(dies, bill(thin!, thick!));
    expect(columnOf(both, "Set-up")).toEqual([1, 1]);
    // |log(V/8t)| of both lines is the same sum over each of the three dies; the first of equals stands.
    expect(new Set(columnOf(both, "Die")).size).toBe(1);
    expect(
      columnOf(ask("BILL.CHECK", [bill(thin!, thick!), BRAKE, dies, PUNCHES, SHEAR, WATERJET, RATES]), "Die"),
    ).toEqual(columnOf(both, "Die"));
    // A line that names its die keeps it.
    const named = billOf(
      ["Width (in)", "Die"],
      ["A", "A36", 0.12, 1, "4; 4", 90, 4, "V0.96"],
      ["B", "A36", 0.14, 1, "4; 4", 90, 4, "V1.12"],
    );
    expect(columnOf(setUps(dies, named), "Set-up")).toEqual([1, 2]);
  });

  it("says what stands in the way where no order is found", () => {
    // A channel deeper than it is wide closes on any straight punch.
    const deep = setUps(DIES_OF(1), bill(["A", "A36", 0.12, 1, 4, "4; 1.5; 4", 90]));
    expect(columnOf(deep, "Order from")).toEqual(["usual"]);
    expect(columnOf(deep, "Order")).toEqual(["1; 2"]);
    expect(columnOf(deep, "Caution")[0]).toMatch(
      /No order found on plain tools: at bend \d flange \d meets the (punch|ram)\./,
    );
  });

  it("tries the outlines that are drawn, and wants both tables or none", () => {
    const corners = (tool: string, ...points: [number, number][]): Row[] => points.map(([x, y]) => [tool, x, y]);
    const outlines = range(
      ["Tool", "X (mm)", "Y (mm)"],
      ...corners("punch", [0, 0], [10, 17.32], [10, 120], [-10, 120], [-10, 17.32]),
      ...corners("ram", [-10, 120], [10, 120], [10, 600], [-10, 600]),
      ...corners("die", [-25, 0], [-12.7, 0], [0, -15.1], [12.7, 0], [25, 0], [25, -60], [-25, -60]),
      ...corners("bed", [-50, -60], [50, -60], [50, -700], [-50, -700]),
      ...corners("finger", [0, 0], [60, 0], [60, 25], [0, 25]),
    );
    const press = range(PRESS_HEADER, [1, 0, 80, 0, 25, 5, 700, "yes", 150, 200, 1, "no"]);
    const part = bill(["A", "A36", 0.12, 1, 4, "4; 4", 90]);
    expect(columnOf(setUps(DIES_OF(1), part, outlines, press), "Order from")).toEqual(["outlines"]);
    // Drawn for another opening: they say nothing about this die.
    expect(columnOf(setUps(DIES_OF(0.96), part, outlines, press), "Order from")).toEqual(["plain tools"]);
    const given = [...args("BILL.SETUPS", part), outlines];
    expect(shopFunctions.call("BILL.SETUPS", given).value).toMatchObject({
      message: expect.stringMatching(/^press must be given where outlines are/),
    });
  });
});

describe("BILL.WHATIF", () => {
  const verdict = (queues: Record<string, number>, due: number, route: string | null = null, view = "lines") => {
    const given = args("BILL.WHATIF", bill(BRACKET.map((cell, i) => (i === 10 ? route : cell))));
    given[6] = queued(queues);
    given[10] = due;
    return ask("BILL.WHATIF", [...given, null, view]);
  };
  const first = (spill: CellMatrix, header: string) => columnOf(spill, header)[0];

  it.each([
    ["in time", { Brake: 3 }, MONDAY + 10.5 * H, null],
    ["breaks it", { Brake: 3 }, MONDAY + 10 * H, null],
    ["overtime", { Brake: 8 }, MONDAY + 1, null],
    ["outside", { Waterjet: 100 }, MONDAY + 4, "waterjet"],
    ["breaks it", { Waterjet: 100 }, MONDAY + 2, "waterjet"],
  ] as const)("%s", (expected, queues, due, route) => {
    expect(first(verdict(queues, due, route), "Verdict")).toBe(expected);
  });

  it("says which station decides, and how late it is", () => {
    const spill = verdict({ Brake: 3 }, MONDAY + 10 * H);
    expect(first(spill, "Station")).toBe("Brake");
    expect(first(spill, "Late by")).toBeCloseTo((worked(31) + worked(27)) / 3600, 9);
  });

  it("hours of every station against the calendar", () => {
    const spill = verdict({ Brake: 3 }, MONDAY + 1, null, "stations");
    const brake = spill.find((row) => row[0] === "Brake")!;
    expect(brake.slice(1, 6)).toEqual([3, expect.closeTo((worked(31) + worked(27)) / 3600, 9), 8, 2, 0]);
  });
});

describe("BILL.LOADIN", () => {
  it("what is needed first is loaded last, the heavy parts at the bottom", () => {
    const of = billOf(
      ["Width (in)", "Area", "Spares"],
      ["A", "A36", 0.25, 100, "2; 3", 90, 4, "Deck", 5],
      ["B", "A36", 0.25, 2, "2; 3", 90, 20, "Deck", 0],
      ["C", "A36", 0.25, 1, "2; 3", 90, 4, "Truss", 0],
    );
    const spill = ask("BILL.LOADIN", args("BILL.LOADIN", of));
    expect(columnOf(spill, "Part")).toEqual(["C", "B", "A"]);
    // 90 lb a pile at 1.2863 lb each: 69 to a pile.
    expect(columnOf(spill, "Piles")[2]).toBe(2);
    expect(columnOf(spill, "Pile weight")[2]).toBeCloseTo(69 * worked(15), 6);
    expect(columnOf(spill, "Handling")[2]).toBe("one person a piece, two people a pile");
    expect(columnOf(spill, "Label")[2]).toBe("Deck / A / 100 pcs / 5 spare / 89 lb");
  });
});

describe("one person lifts what the lifting equation allows", () => {
  // NIOSH 94-110: at the best posture the limit is the load constant, 51 lb; reach 20 in halves it.
  const posture = (reach: number) =>
    range(
      ["Rate", "Value", "Unit"],
      ...RATE_ROWS.filter(([name]) => name !== "One-person limit" && name !== "Hoist above"),
      ["Lift reach", reach, "in"],
      ["Lift height", 30, "in"],
      ["Lift travel", 10, "in"],
      ["Lift twist", 0, "deg"],
      ["Lifts per minute", 0.2, null],
      ["Lift hours", 1, "h"],
      ["Lift coupling", "good", null],
    );
  // A flat plate of 1/4 in, 20 in wide: 1.42 lb an inch of length.
  const people = (reach: number, pounds: number) => {
    const of = billOf(["Width (in)"], ["A", "A36", 0.25, 1, pounds / 1.42, null, 20]);
    return columnOf(ask("BILL.TIMES", args("BILL.TIMES", of, posture(reach))), "People")[0];
  };
  it.each([
    [10, 50.9, 1],
    [10, 51.1, 2],
    [20, 25.4, 1],
    [20, 25.6, 2],
  ])("reach %d in, %d lb: %d", (reach, pounds, count) => {
    expect(people(reach, pounds)).toBe(count);
  });
});
