/** What each function about a bill answers, against figures worked by hand from the invented shop. */
import { describe, expect, it } from "vitest";
import type { CellMatrix } from "../../../src/units/cell.ts";
import { WORKED_BRACKET } from "../../reference/worked-bracket.ts";
import { PRESS_HEADER } from "../example/press-header.ts";
import {
  answer,
  ask,
  bill,
  bracket,
  cellOf,
  columnOf,
  given,
  HOUR,
  job,
  type Line,
  MONDAY,
  only,
  type Row,
  range,
  rates,
  refusal,
  SHOP,
  withCell,
} from "../example/tables.ts";

const worked = (line: number): number => WORKED_BRACKET[line - 1]!.value;
const DEDUCTION = worked(13);
const first = (name: string, column: string, changed: Line = {}, tables = {}) =>
  columnOf(answer(name, [bracket(changed)], tables), column)[0];

describe("BILL.BLANKS", () => {
  it("a tray is flat in both directions, its bends as long as its base", () => {
    const tray = {
      ...{ Flanges: "2; 6; 2", Width: null, "Cross flanges": "2; 4; 2", "Cross angles": 90, Quantity: 1 },
      ...{ Holes: 3, "Hole diameter": 0.5, Notches: 4, "Notch path": 2.5 },
    };
    const spill = answer("BILL.BLANKS", [bracket(tray)]);
    const [length, width] = [10 - 2 * DEDUCTION, 8 - 2 * DEDUCTION];
    expect(columnOf(spill, "Length")[0]).toBeCloseTo(length, 8);
    expect(columnOf(spill, "Width")[0]).toBeCloseTo(width, 8);
    expect(columnOf(spill, "Cut path")[0]).toBeCloseTo(2 * (length + width) + 3 * Math.PI * 0.5 + 4 * 2.5, 8);
    expect(columnOf(spill, "Pierces")[0]).toBe(4);
  });

  it("scrap from half a piece on, a first piece from three bends on; what is ordered stands beside it", () => {
    const hat = { Flanges: "1.5; 2; 3; 2; 1.5", "Bend angles": "90; -90; -90; 90", Width: 6 };
    const spill = answer("BILL.BLANKS", [
      ...[1, 24, 25, 75].map((Quantity) => bracket({ Quantity })),
      bracket({ ...hat, Quantity: 50, Thickness: "1/8", Material: "5052-H32" }),
    ]);
    // 2 % of 24 is less than half a piece, of 25 it is half, of 75 it is one and a half.
    expect(columnOf(spill, "Quantity")).toEqual([1, 24, 25 + 1, 75 + 2, 50 + 1 + 1]);
    expect(columnOf(spill, "Ordered")).toEqual([1, 24, 25, 75, 50]);
  });

  it("the actual thickness is what is bent and weighed, the nominal what is bought", () => {
    const changed = { "Actual thickness": 0.26 };
    const deduction = 2 * (worked(10) + 0.26) - (Math.PI / 2) * (worked(10) + 0.42 * 0.26);
    expect(first("BILL.BLANKS", "Thickness", changed)).toBeCloseTo(0.25, 12);
    expect(first("BILL.BLANKS", "Length", changed)).toBeCloseTo(5 - deduction, 8);
    expect(first("BILL.BLANKS", "Weight each", changed)).toBeCloseTo((5 - deduction) * 4 * 0.26 * 0.284, 8);
  });

  it("a line that stops has none, and says why in its own row", () => {
    const spill = answer("BILL.BLANKS", [bracket({ Flanges: "1; 3" }), bracket()]);
    expect(columnOf(spill, "Message")).toEqual([
      "no quote: A flange of 1.000 in falls into die V 2; it needs 1.750 in.",
      "",
    ]);
    expect(columnOf(spill, "Length")[0]).toBe("");
  });
});

describe("BILL.CHECK", () => {
  it("one status a line, worst first, notes and fix in columns of their own", () => {
    const spill = answer("BILL.CHECK", [
      bracket(),
      bracket({ Part: "F", Flanges: "1; 3" }),
      bracket({ Part: "T", Thickness: 0.2 }),
    ]);
    expect(columnOf(spill, "Status")).toEqual(["clear", "stop", "check"]);
    expect(columnOf(spill, "Sentence")).toEqual([
      "",
      "A flange of 1.000 in falls into die V 2; it needs 1.750 in.",
      "Stock has no A36 of 0.200 in: planned at 0.250 in throughout, the next thickness up.",
    ]);
    expect(columnOf(spill, "Fix")).toEqual([
      "",
      "make the short flange 1.750 in and trim it after bending",
      "make it 0.2500 in thick, which is in Stock, if the customer agrees", // as it is planned already: the bill says so from then on
    ]);
    expect(columnOf(spill, "Then")).toEqual(["", "clear", "clear"]);
    expect(columnOf(spill, "Quoted")).toEqual(["yes", "no", "yes"]);
    expect(columnOf(spill, "Notes")[0]).toMatch(
      /^Radius about 0\.\d+ in, published 0\.\d+ in; usual on this die\. Deburr/,
    );
  });
  it("the radius and the deduction are those the flat is made with", () => {
    const spill = answer("BILL.CHECK", [bracket()]);
    expect(columnOf(spill, "Radius")[0]).toBeCloseTo(worked(10), 9);
    expect(columnOf(spill, "Deduction")[0]).toBeCloseTo(DEDUCTION, 8);
    expect(columnOf(spill, "Flat length")[0]).toBeCloseTo(5 - DEDUCTION, 8);
    expect(columnOf(spill, "Method")).toEqual(["rule"]);
  });
});

describe("BILL.ROUTE and BILL.SUMMARY", () => {
  const summary = (lines: Line[], tables = {}) => {
    const spill = answer("BILL.SUMMARY", lines, tables);
    return {
      of: (item: string) => cellOf(spill, item, "Value"),
      note: (item: string) => cellOf(spill, item, "Note"),
      spill,
    };
  };

  it("one line: the brake's queue and load decide; the shear is the cheaper of two that finish alike", () => {
    const { of } = summary([bracket()]);
    // Queue of the brake 6 h from 7:00, then its set-up and run; the shear is done before.
    const brake = (worked(31) + worked(27)) / 86_400;
    expect(of("Cutting and bending done")).toBeCloseTo(MONDAY + 13 * HOUR + brake, 9);
    expect(of("Earliest possible finish")).toBe(of("Cutting and bending done"));
    expect(of("Proved")).toBe("yes");
    const cut = ((worked(30) + worked(21)) * 78 + (worked(32) + worked(29)) * 54) / 3600;
    expect(of("Cutting cost")).toBeCloseTo(cut, 3);
    expect(of("All on the waterjet: cost") as number).toBeGreaterThan(cut);
    expect(of("Saved against all on the waterjet")).toBeCloseTo((of("All on the waterjet: cost") as number) - cut, 3);
  });

  it("a pin is kept, a need named; what no machine cuts is not quoted, and the summary names it", () => {
    const lines = [
      bracket({ Part: "A", Route: "waterjet" }),
      bracket({ Part: "B", Notches: 2, "Notch path": 3 }),
      bracket({ Part: "C", Route: "shear" }),
      bracket({ Part: "D", Route: "shear", Notches: 2, "Notch path": 3 }),
    ];
    const spill = answer("BILL.ROUTE", lines);
    expect(columnOf(spill, "Route")).toEqual(["waterjet", "waterjet", "shear", ""]);
    expect(columnOf(spill, "Why")).toEqual(["pinned", "needs the waterjet", "pinned", ""]);
    const why = "A shear makes no notches, and no station in the table does.";
    expect(columnOf(spill, "Message")[3]).toBe(`no quote: ${why}`);
    const { spill: items, note } = summary(lines);
    expect(items.find(([item]) => item === "No quote")!.slice(1, 4)).toEqual(["D", "text", why]);
    expect(note("Lines quoted")).toBe("without 1 line");
  });

  it("a due time that cannot be met is said", () => {
    const { note } = summary([bracket()], { job: job({ Due: MONDAY + 8 * HOUR }) });
    expect(note("Cutting and bending done")).toBe("no route meets the due time; this is the earliest");
  });

  it("counts, weights and sheets of quoted lines alone", () => {
    const { of } = summary([bracket(), bracket({ Part: "F", Flanges: "1; 3" })]);
    expect([
      of("Lines"),
      of("Lines: stop"),
      of("Lines: clear"),
      of("Lines quoted"),
      of("Pieces"),
      of("Sheets to pull"),
    ]).toEqual([2, 1, 1, 1, 20, 1]);
    expect(of("Weight")).toBeCloseTo(20 * worked(15), 7);
    expect(of("Price")).toBe(250); // the line is below the order minimum
  });
});

describe("BILL.PRICE", () => {
  const priced = (lines: Line[], tables = {}) => answer("BILL.PRICE", lines, tables);
  it("outside work has its minimum, its days, and closes the holes", () => {
    const spill = priced([bracket({ Operations: "Coating" })]);
    expect(columnOf(spill, "Outside")[0]).toBeCloseTo(85 * 1.1, 9); // and 10 % for the trouble
    expect(columnOf(spill, "Note")[0]).toBe(
      "cut on the shear; Coating outside, 5 vendor days, holes close by 0.006 in",
    );
  });
  it("minimum and rush are lines of their own", () => {
    const tables = { rates: rates({ "Minimum charge": 700 }), job: job({ Pace: "rush" }) };
    const spill = priced([bracket()], tables);
    expect(columnOf(spill, "Part")).toEqual(["HB1", "Minimum charge", "Rush", "Crate", "Truck", "Tax", "Total"]);
    // 20 % on the line and on what is missing to the least order.
    expect(columnOf(spill, "Price")).toEqual([246.8, 453.2, 140, 0, 0, 0, 840]);
  });
  it("mark-up only where the job asks for it", () => {
    const spill = priced([bracket()], { job: job({ "Profit as": "markup" }) });
    expect(columnOf(spill, "Unit price")[0]).toBe(Math.ceil((worked(36) / 20) * 1.4 * 100) / 100);
  });
  it("the total says without how many lines it is", () => {
    const lines = [
      bracket(),
      bracket({ Part: "big", Flanges: "60", "Bend angles": null, Width: 60 }),
      bracket({ Part: "none", Material: "C110 half hard" }),
    ];
    const spill = priced(lines);
    expect(columnOf(spill, "Price").slice(0, 3)).toEqual([worked(38), "", ""]);
    expect(columnOf(spill, "Message").slice(1, 3)).toEqual([
      "no quote: A blank of 60.000 in x 60.000 in is larger than every sheet of A36.",
      "no quote: C110 half hard 0.250 in is not in Stock: buy.",
    ]);
    expect(spill.at(-1)![spill[0]!.indexOf("Note")]).toBe("without 2 lines");
    expect(cellOf(spill, "Total", "Price")).toBe(250);
  });
});

describe("BILL.SHEETS and the cut plan", () => {
  const lines = [bracket(), bracket({ Part: "W", Material: "304" })];
  it("whole sheets, what they weigh, who lifts them, and on which machine they are cut", () => {
    const spill = answer("BILL.SHEETS", lines);
    expect(columnOf(spill, "Stock")).toEqual(["Plate 1/4", "Stainless 1/4"]);
    expect(columnOf(spill, "Cut on")).toEqual(["shear", "waterjet"]);
    expect(columnOf(spill, "Sheets")).toEqual([1, 1]);
    expect(columnOf(spill, "Handling")).toEqual(["hoist", "hoist"]);
    expect(columnOf(spill, "Bundle weight")[0]).toBeCloseTo(120 * 48 * 0.25 * 0.284, 8);
  });
  it("CUT.PLAN has the same sheets and prices; CUT.LIST holds the shear's alone", () => {
    const plan = answer("CUT.PLAN", lines);
    const totals = plan.filter((row) => row.includes("Total"));
    expect(totals.map((row) => row[plan[0]!.indexOf("Sheets")])).toEqual([1, 1]);
    expect(totals.map((row) => row[plan[0]!.indexOf("Price")])).toEqual([372, 791]);
    expect(columnOf(plan, "Cut on").filter((on, i, all) => all.indexOf(on) === i)).toEqual(["Shear 1", "waterjet"]);
    const list = answer("CUT.LIST", lines);
    expect(new Set(columnOf(list, "Material"))).toEqual(new Set(["A36"]));
  });
  it("when the rack has too few, the line is not quoted and says how many cannot be cut", () => {
    const stock = withCell(SHOP.stock, "Plate 1/4", "Sheets", 2);
    const spill = answer("BILL.SHEETS", [bracket({ Quantity: 2000 })], { stock });
    expect(columnOf(spill, "Message")[0]).toMatch(
      /^no quote: Stock of A36 runs out: \d+ of its blanks cannot be cut. Buy\.$/,
    );
  });
});

describe("BILL.MACHINES", () => {
  const machines = (...lines: Line[]) => {
    const spill = answer("BILL.MACHINES", lines);
    return (question: string) => spill.find((row) => row[0] === question)!;
  };
  it("the smallest machines, by hand", () => {
    const stainless = bracket({ Part: "S", Material: "304", Thickness: "14 ga", Width: 30 });
    const value = machines(bracket(), stainless);
    expect(value("Shortest brake bed").slice(1, 4)).toEqual([30, "in", "S"]);
    expect(value("Least shear rating, mild steel").slice(1, 4)).toEqual([0.25, "in", "HB1"]);
    expect(value("Lines that Brake 1 bends").slice(1)).toEqual([2, "lines", "", 2, 1]);
    // 14 ga 304 is 50/640 in to four places; A36 low 0.7 x 58 ksi, 304 high 0.7 x 107 ksi, the parallel rule rules.
    expect(machines(stainless)("Least shear rating, mild steel")[1]).toBeCloseTo((0.0781 * 107) / 58, 8);
    // Lange: (1 + 4t/V) UTS L t^2 / V in kip, half of it US tons.
    expect(machines(bracket())("Smallest brake force, expected")[1]).toBeCloseTo((1.5 * 65 * 4 * 0.25 ** 2) / 2 / 2, 8);
  });
});

describe("BILL.SETUPS", () => {
  it("lines on the same tools together; stops, order and depth", () => {
    const lines = [
      bracket({ Part: "A", Holes: 0, Die: "V 2", Punch: "Plain" }),
      bracket({ Part: "B", Holes: 0, Material: "5052-H32", Thickness: "1/8", Die: "V 1", Punch: "Plain" }),
      bracket({ Part: "C", Holes: 0, Flanges: "2; 4; 2", Die: "V 2", Punch: "Plain" }),
      bracket({ Part: "D", Holes: 0, Flanges: "5", "Bend angles": null }),
    ];
    const spill = answer("BILL.SETUPS", lines);
    expect([...columnOf(spill, "Part")].sort()).toEqual(["A", "B", "C", "D"]);
    const at = (part: string, column: string) => columnOf(spill, column)[columnOf(spill, "Part").indexOf(part)];
    expect(at("A", "Set-up")).toBe(at("C", "Set-up"));
    expect(at("A", "Set-up")).not.toBe(at("B", "Set-up"));
    // From the edge to the bend line: the flange less half a deduction, 2 - 0.2354. The second bend is gauged without
    // turning the sheet, against the first flange's outside face: 4 - 0.2354.
    expect([at("A", "Stops"), at("C", "Stops")]).toEqual(["1.765", "1.765; 3.765"]);
    expect([at("A", "Order"), at("C", "Order")]).toEqual(["1", "1; 2"]);
    expect(at("A", "Order from")).toBe("plain tools");
    // The travel of AIR.DEPTH, which starts on the upper face, less the sheet.
    const travel = ask("AIR.DEPTH", "A36", 0.25, 90, 2, 0.0625, 78, 0.16) as unknown as number;
    expect(at("A", "Punch below die")).toBeCloseTo(travel - 0.25, 9);
    expect(at("D", "Caution")).toBe("Flat: not for the brake.");
  });

  it("says what stands in the way where no order is found", () => {
    const deep = answer(
      "BILL.SETUPS",
      [bracket({ Thickness: 0.125, Flanges: "4; 1.5; 4", Holes: 0, Die: "V 1", Punch: "Plain" })],
      {
        stock: range(SHOP.stock[0]!, ["Plate 1/8", "A36", 0.125, 120, 48, null, 200, 1]),
      },
    );
    expect(columnOf(deep, "Order from")).toEqual(["usual"]);
    expect(columnOf(deep, "Order")).toEqual(["1; 2"]);
    expect(columnOf(deep, "Caution")[0]).toMatch(
      /No bend order as drawn: at bend \d flange \d meets the (punch|ram)\./,
    );
  });

  it("tries the outlines that are drawn, and needs both tables or none", () => {
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
    const part = bracket({ Material: "5052-H32", Thickness: "1/8", Flanges: "4; 4", Holes: 0, Punch: "Plain" });
    const from = (Die: string, drawn: Record<string, CellMatrix>) =>
      columnOf(answer("BILL.SETUPS", [{ ...part, Die }], drawn), "Order from");
    expect(from("V 1", { outlines, press })).toEqual(["outlines"]);
    // Drawn for another opening: they say nothing about this die.
    expect(from("V 1-1/2", { outlines, press })).toEqual(["plain tools"]);
    expect(refusal("BILL.SETUPS", ...given(bill(part)), outlines)).toMatch(/^press must be given where outlines are/);
  });
});

describe("BILL.WHATIF and BILL.STATIONS", () => {
  const queued = (queues: Record<string, number>): CellMatrix =>
    SHOP.stations.map((row) => (String(row[0]) in queues ? row.with(5, queues[String(row[0])]!) : row));
  const verdict = (queues: Record<string, number>, due: number, Route: string | null = null) => {
    const spill = answer("BILL.WHATIF", [bracket({ Route })], { stations: queued(queues), job: job({ Due: due }) });
    return (column: string) => columnOf(spill, column)[0];
  };

  it.each([
    ["in time", { Brake: 3 }, MONDAY + 11 * HOUR, null],
    ["breaks it", { Brake: 3 }, MONDAY + 10 * HOUR, null],
    ["overtime", { Brake: 8.5 }, MONDAY, null],
    ["outside", { Waterjet: 100 }, MONDAY + 5, "waterjet"],
    ["breaks it", { Waterjet: 100 }, MONDAY + 2, "waterjet"],
  ] as const)("%s", (expected, queues, due, route) => {
    expect(verdict(queues, due, route)("Verdict")).toBe(expected);
  });

  it("says which station decides, when it is due, and how late it is", () => {
    const late = verdict({ Brake: 3 }, MONDAY + 10 * HOUR);
    expect(late("Station")).toBe("Brake");
    expect(late("Due")).toBeCloseTo(MONDAY + 10 * HOUR, 9);
    expect(late("Late by")).toBeCloseTo((worked(31) + worked(27)) / 3600, 9);
  });

  it("a line's own due time goes before the job's, and its work before the others'", () => {
    const spill = answer("BILL.WHATIF", [
      bracket({ Part: "later" }),
      bracket({ Part: "first", Due: MONDAY + 13.5 * HOUR }),
    ]);
    const [later, early] = columnOf(spill, "Finish") as number[];
    expect(early!).toBeLessThan(later!);
    expect(columnOf(spill, "Verdict")).toEqual(["in time", "in time"]);
  });

  it("says how many lines go to a vendor, and which of them have no color beside others that do", () => {
    const coated = (Part: string, Finish: string | null) => bracket({ Part, Finish, Operations: "Coating" });
    const note = (lines: ReturnType<typeof bracket>[]) => cellOf(answer("BILL.STATIONS", lines), "Coating", "Note");
    expect(note([coated("A", "Black"), coated("B", null)])).toBe("2 lines go there: days, no hours");
    expect(note([bracket()])).toBe("no work of this bill");
    const uncolored = (lines: ReturnType<typeof bracket>[]) =>
      answer("BILL.SUMMARY", lines).find(([item]) => item === "Coated without a Finish");
    expect(uncolored([coated("A", "Black"), coated("B", null)])?.slice(1)).toEqual([
      1,
      "count",
      "B: a lot of their own beside those with a Finish",
    ]);
    expect(uncolored([coated("A", null), coated("B", null)])).toBeUndefined();
  });

  it("shows hours of every station against the calendar", () => {
    const tables = { stations: queued({ Brake: 3 }), job: job({ Due: MONDAY }) };
    const spill = answer("BILL.STATIONS", [bracket()], tables);
    const brake = spill.find((row) => row[0] === "Brake")!;
    expect(brake.slice(1, 6)).toEqual([3, expect.closeTo((worked(31) + worked(27)) / 3600, 9), 8.5, 2, 0]);
    expect(cellOf(spill, "Tap", "Note")).toBe("no work of this bill");
  });

  it.each([
    ["no calendar", { calendar: undefined }, /^calendar must be given; got nothing/],
    ["no job", { job: undefined }, /^job must be a table with an entry at "Work can begin"; got none/],
  ] as const)("%s", (_, changed, says) => {
    for (const name of ["BILL.WHATIF", "BILL.STATIONS"])
      expect(refusal(name, ...given(bill(bracket()), { ...SHOP, ...changed } as unknown as typeof SHOP))).toMatch(says);
  });
  it("a job whose times nobody has typed yet is no error: a row says what is missing", () => {
    const tables = { job: range(["Job", "Entry"], ["Start", MONDAY]) };
    const says = 'no dates yet: type "Must leave by" into the table of the job';
    expect(columnOf(answer("BILL.WHATIF", [bracket()], tables), "Message")).toEqual([says]);
    expect(columnOf(answer("BILL.STATIONS", [bracket()], tables), "Note")).toEqual([says]);
  });
});

describe("BILL.LOADIN", () => {
  it("what is needed first is loaded last, the heavy parts at the bottom", () => {
    const spill = answer("BILL.LOADIN", [
      bracket({ Part: "A", Quantity: 600, Area: "Deck", Spares: 5, Due: MONDAY + 2 }),
      bracket({ Part: "B", Width: 20, Quantity: 2, Area: "Deck", Due: MONDAY + 2 }),
      bracket({ Part: "C", Quantity: 1, Area: "Truss" }),
    ]);
    expect(columnOf(spill, "Part")).toEqual(["C", "B", "A"]);
    // 600 lb a stack at 1.2863 lb each: 466 to a stack.
    expect(columnOf(spill, "Stacks")[2]).toBe(2);
    expect(columnOf(spill, "Stack weight")[2]).toBeCloseTo(466 * worked(15), 6);
    expect(columnOf(spill, "Handling")[2]).toBe("one person a piece, hoist a stack");
    expect(columnOf(spill, "Label")[2]).toBe("Deck / A / 600 pcs / 5 spare / 599 lb");
  });
});

describe("one person lifts what the lifting equation allows", () => {
  // NIOSH 94-110: at the best posture the limit is the load constant, 51 lb; reach 20 in halves it.
  const posture = (reach: number): CellMatrix => [
    ...SHOP.rates.filter(([name]) => name !== "One-person limit" && name !== "Hoist above"),
    ["Lift reach", reach, "in"],
    ["Lift height", 30, "in"],
    ["Lift travel", 10, "in"],
    ["Lift twist", 0, "deg"],
    ["Lifts per minute", 0.2, null],
    ["Lift hours", 1, "h"],
    ["Lift coupling", "good", null],
  ];
  // A flat plate of 1/4 in, 20 in wide: 1.42 lb an inch of length.
  const people = (reach: number, pounds: number, end: CellMatrix = []) => {
    const plate = bracket({ Flanges: `${pounds / 1.42}`, "Bend angles": null, Width: 20, Quantity: 1, Holes: 0 });
    return columnOf(answer("BILL.TIMES", [plate], { rates: [...posture(reach), ...end] }), "People")[0];
  };
  it.each([
    [10, 50.9, 1],
    [10, 51.1, 2],
    [20, 25.4, 1],
    [20, 25.6, 2],
  ])("reach %d in, %d lb: %d", (reach, pounds, count) => {
    expect(people(reach, pounds)).toBe(count);
  });

  // Put down with care at a reach of 20 in, twice the best one: half the limit again, though it is taken up at 10 in.
  it.each([
    [25.4, 1],
    [25.6, 2],
  ])("placed with care 20 in away, %d lb: %d", (pounds, count) => {
    const end = [
      ["Lift end reach", 20, "in"],
      ["Lift end height", 30, "in"],
      ["Lift end twist", 0, "deg"],
    ];
    expect(people(10, pounds, end)).toBe(count);
  });
});

it("tables of one machine each are a shop as well", () => {
  const tables = { brakes: only(SHOP.brakes, "Brake 1"), dies: only(SHOP.dies, "V 2") };
  expect(first("BILL.CHECK", "Brake", {}, tables)).toBe("Brake 1");
});
