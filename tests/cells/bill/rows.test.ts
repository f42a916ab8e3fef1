/** What holds for the spills of all functions about a bill: rows, columns, units, tables in any order, nonsense. */
import { describe, expect, it } from "vitest";
import { findRecord, RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import { headers, SPILLS, type SpillName } from "../../../src/cells/record/spill-columns.ts";
import { CellError, type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import {
  answer,
  ask,
  BRACKET,
  before,
  bill,
  bracket,
  columnOf,
  given,
  NONSENSE,
  rates,
  refusal,
  SHOP,
  underRule,
  without,
} from "../example/tables.ts";

const SECOND = bracket({
  ...{ Part: "HB2", Material: "5052-H32", Thickness: 0.125, Quantity: 12, Width: 6, Flanges: "1; 2; 1", Holes: 0 },
  ...{ Operations: "Deburr; Tap 2; Coating", Area: "Truss" },
});
const names = RECORDS.map(({ name }) => name).filter((name) => /^(?:BILL|CUT)\./.test(name));
/** Spills with a row or more of every line. */
const lined = ["BILL.BLANKS", "BILL.CHECK", "BILL.TIMES", "BILL.ROUTE", "BILL.SETUPS", "BILL.PRICE", "BILL.WHATIF"];

describe("one row of nonsense", () => {
  const WHY = /line 2 \(row 3 of the range\) column "Thickness" must be a thickness of .+; got -4$/;
  it.each(lined)("%s: says so in its own row and leaves the others right", (name) => {
    const good = answer(name, [BRACKET, SECOND]);
    const mixed = answer(name, [BRACKET, NONSENSE, SECOND]);
    const own = mixed.filter((row) => row.some((cell) => WHY.test(String(cell))));
    expect(own).toHaveLength(1);
    expect(own[0]!.includes("??")).toBe(true);
    const others = mixed.filter((row) => row !== own[0]);
    expect(others.map((row) => row.map((cell) => (cell === "without 1 line" ? "" : cell)))).toEqual(good);
  });

  it.each(["CUT.PLAN", "CUT.LIST", "BILL.STATIONS"])("%s: is as if it were not there", (name) => {
    expect(answer(name, [BRACKET, NONSENSE, SECOND])).toEqual(answer(name, [BRACKET, SECOND]));
  });

  it.each(["BILL.SHEETS", "BILL.LOADIN"])("%s: stands below the others", (name) => {
    const mixed = answer(name, [BRACKET, NONSENSE, SECOND]);
    expect(mixed.slice(0, -1)).toEqual(answer(name, [BRACKET, SECOND]));
    expect(mixed.at(-1)!.some((cell) => WHY.test(String(cell)))).toBe(true);
  });

  it("BILL.MACHINES counts it apart; BILL.SUMMARY names it", () => {
    const mixed = answer("BILL.MACHINES", [BRACKET, NONSENSE, SECOND]);
    expect(mixed.slice(0, -1)).toEqual(answer("BILL.MACHINES", [BRACKET, SECOND]));
    expect(mixed.at(-1)!.slice(0, 2)).toEqual(["Lines that could not be read", 1]);
    const summary = answer("BILL.SUMMARY", [BRACKET, NONSENSE]);
    expect(summary.filter(([item]) => item === "No quote").map((row) => row[1])).toEqual(["??"]);
  });

  it("the total says that a line is missing, and is still a figure", () => {
    const spill = answer("BILL.PRICE", [BRACKET, NONSENSE]);
    expect(columnOf(spill, "Note").at(-1)).toBe("without 1 line");
    expect(columnOf(spill, "Price").at(-1)).toBeGreaterThan(0);
  });
});

describe("every spill", () => {
  it.each(names)("%s has the columns that are fixed, and a value in every cell", (name) => {
    const spill = answer(name, [BRACKET, SECOND]);
    expect(spill[0]!.map((cell) => String(cell).replace(/ \(.*\)$/, ""))).toEqual(headers(name as SpillName));
    for (const row of spill) {
      expect(row).toHaveLength(SPILLS[name as SpillName].length);
      for (const cell of row) expect(["number", "string"]).toContain(typeof cell);
    }
  });

  it.each(names)("%s answers the same in millimeters", (name) => {
    const units = Object.keys(findRecord(name)!.parameters).indexOf("units");
    // Plain figures of the bill are inches: they are written with their unit.
    const inInches = ({ Thickness, Width, "Hole diameter": diameter, Flanges, ...rest }: typeof SECOND) => ({
      ...rest,
      "Thickness (in)": Thickness!,
      "Width (in)": Width!,
      "Hole diameter (in)": diameter!,
      "Flanges (in)": Flanges!,
    });
    const stock = SHOP.stock.map((row, i) =>
      i === 0 ? row.map((cell) => (cell === "Thickness" ? "Thickness (in)" : cell)) : row,
    );
    const args = given(bill(inInches(BRACKET), inInches(SECOND)), { ...SHOP, stock });
    const inches = ask(name, ...args);
    const leading = before(name, bill(BRACKET)).length;
    const padded = [...args, ...Array.from({ length: units - leading - args.length }, () => null), "mm"];
    const metric = ask(name, ...padded);
    SPILLS[name as SpillName].forEach(({ header, kind }) => {
      if (kind !== "length") return;
      const pairs = columnOf(inches, header).map((value, i) => [value, columnOf(metric, header)[i]]);
      for (const [inch, mm] of pairs) if (typeof inch === "number") expect(mm).toBeCloseTo(inch * 25.4, 6);
    });
  });
});

describe("the tables of a call", () => {
  const args = given(bill(BRACKET, SECOND));
  it.each(names)("%s: are told by their headers, in any order, in the spare places too", (name) => {
    const there = ask(name, ...args);
    const [of, ...tables] = args;
    expect(ask(name, of!, ...[...tables].reverse())).toEqual(there);
    const gap = [
      of!,
      ...tables.slice(0, 3),
      ...Array.from({ length: 9 }, () => null),
      ...tables.slice(3, 7),
      ...tables.slice(7),
    ];
    if (gap.length <= 17) expect(ask(name, ...gap)).toEqual(there);
  });

  it("the order of their rows changes nothing but the rows of BILL.STATIONS and BILL.MACHINES", () => {
    const turned = Object.fromEntries(
      Object.entries(SHOP).map(([key, [header, ...rows]]) => [
        key,
        key === "job" ? [header!, ...rows] : [header!, ...rows.reverse()],
      ]),
    );
    for (const name of names) {
      const there = answer(name, [BRACKET, SECOND]);
      const here = answer(name, [BRACKET, SECOND], turned);
      const inRows = ["BILL.STATIONS", "BILL.MACHINES"].includes(name);
      const sorted = (spill: CellMatrix) =>
        inRows ? [...spill].sort((a, b) => (String(a[0]) < String(b[0]) ? -1 : 1)) : spill;
      expect(sorted(here), name).toEqual(sorted(there));
    }
  });

  it("a table given twice, or one that is not the shop's, is refused by name", () => {
    expect(refusal("BILL.CHECK", ...args, SHOP.dies)).toBe(
      'outlines must be another table than dies, which is given already; got "a second dies table"',
    );
    expect(refusal("BILL.CHECK", bill(BRACKET), [["Color"], ["red"]])).toMatch(
      /^brakes must be a table of the shop, told by its header row; got "Color"; a brakes table has "Brake", "Rated force"/,
    );
  });

  it("an error cell in a header is named by its code", () => {
    const broken: CellMatrix = [
      ["Die", new CellError("#REF!")],
      ["V 2", 2],
    ];
    expect(refusal("BILL.CHECK", bill(BRACKET), broken)).toContain('got "Die, #REF!"');
  });

  it.each([
    ["a start in the place of a table", [46083.375], /start, due and other entries stand in the job's table/],
    [
      "a view or a pace",
      ["summary"],
      /units is an argument of its own; pace, basis and other words stand in the job's table/,
    ],
    [
      "the routes of BILL.ROUTE",
      [
        [
          ["Part", "Route"],
          ["HB1", "shear"],
        ],
      ],
      /leave out what BILL\.ROUTE and CUT\.PLAN answer/,
    ],
    [
      "a cut plan",
      [
        [
          ["Pattern", "Stock", "Sheets"],
          ["1", "Plate", 1],
        ],
      ],
      /leave out what BILL\.ROUTE and CUT\.PLAN answer/,
    ],
  ] as [string, (CellValue | CellMatrix)[], RegExp][])(
    "an argument of an earlier order is refused: %s",
    (_, extra, hint) => {
      for (const name of ["BILL.PRICE", "BILL.WHATIF", "BILL.ROUTE", "CUT.PLAN"])
        expect(refusal(name, bill(BRACKET), SHOP.brakes, SHOP.dies, ...extra)).toMatch(hint);
    },
  );

  it("CUT.PLAN of blanks, stock and limits, as it was, is refused", () => {
    const blanks = [
      ["Part", "Material", "Thickness (in)", "Length (in)", "Width (in)", "Quantity"],
      ["A", "A36", 0.25, 24, 12, 1],
    ];
    expect(refusal("CUT.PLAN", blanks as CellMatrix, SHOP.stock, [["Cut length (in)"], [98]])).toMatch(
      / must be .+; got /,
    );
  });

  it("fewer tables plan with fewer, and the summary names what was not looked at", () => {
    const { brakes, dies, punches } = SHOP;
    const spill = ask("BILL.SUMMARY", ...given(bill(BRACKET), { brakes, dies, punches }));
    expect(spill[1]!.at(-1)).toBe("not checked: shears, waterjets, stations, rates, stock, calendar");
    const check = ask("BILL.CHECK", ...given(bill(BRACKET), { brakes, dies, punches }));
    expect([columnOf(check, "Status"), columnOf(check, "Quoted")]).toEqual([["clear"], ["no"]]);
    const { shears, stock } = SHOP;
    const blanks = ask("BILL.BLANKS", ...given(bill(BRACKET), { brakes, dies, punches, shears }));
    expect(columnOf(blanks, "Message")).toEqual([""]);
    const times = ask("BILL.TIMES", ...given(bill(BRACKET), { brakes, dies, punches, shears, stock }));
    expect(columnOf(times, "Message")[0]).toMatch(/ must be .+; got /);
  });
});

describe("rates", () => {
  it("what is missing is asked for by name", () => {
    const { value } = shopFunctions.call(
      "BILL.PRICE",
      given(bill(BRACKET), { ...SHOP, rates: without(SHOP.rates, "Overhead") }),
    );
    expect(isCellError(value) && value.message).toBe('rates must be a table with a row "Overhead"; got none');
  });

  it("a percentage is read once, and refused where it could be two things", () => {
    const price = (cell: CellValue, unit: CellValue) => {
      const table = rates({}).map((row): CellValue[] => (row[0] === "Margin" ? ["Margin", cell, unit] : row));
      const { value } = shopFunctions.call(
        "BILL.PRICE",
        underRule("BILL.PRICE", given(bill(BRACKET), { ...SHOP, rates: table })),
      );
      return isCellError(value) ? value.message : columnOf(value as CellMatrix, "Unit price")[0];
    };
    expect(price(0.28, null)).toBe(12.34);
    expect(price(28, "%")).toBe(12.34);
    expect(price("28%", null)).toBe(12.34);
    expect(price(0.28, "%")).toContain("must be clear");
    expect(price(28, null)).toContain("must be a share");
  });
});
