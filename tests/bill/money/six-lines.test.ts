/** The six lines of tests/reference/worked-six.ts, worked out by ordinary worksheet formulas before this code: to the cent. */
import { describe, expect, it } from "vitest";
import { MaterialTable } from "../../../src/bill/nouns/material-table.ts";
import { BillPlan } from "../../../src/bill/plan.ts";
import { readData } from "../../../src/cells/parameters/read-data.ts";
import { readBill } from "../../../src/cells/tables/bill.ts";
import { readShop } from "../../../src/cells/tables/shop-arguments.ts";
import { noCustomFunctions } from "../../../src/sheet/evaluate/custom-functions.ts";
import { Calculator } from "../../../src/sheet/graph/calculator.ts";
import type { CellValue } from "../../../src/units/cell.ts";
import { bill, range } from "../../cells/example/tables.ts";
import { cellOfRow, SHOP_FIGURES as F, SIX_LINES, TOTAL_CELLS, workedSheets } from "../../reference/worked-six.ts";
import { type Given, valueAt, workbookOf } from "../../sheet/evaluate-on-grid.ts";

const worked = workbookOf(workedSheets() as Record<string, Record<string, Given>>);
new Calculator(worked, { functions: noCustomFunctions }).calculateAll();
const at = (cell: string): number => valueAt(worked, cell) as number;

/** The panel's feed in its own thickness: the shop's timed cut. */
const MATERIALS = range(
  ["Material", "Materials edition", "Timed feed (in/min)"],
  [null, "2026.2", null],
  ["Composite panel", null, F.timedFeed],
);
const TABLES = {
  brakes: range(
    [
      ...["Brake", "Rated force (US ton)", "Bed length (in)", "Between housings (in)", "Open stroke (in)"],
      ...["Approach speed (in/min)", "Bend speed (in/min)", "Return speed (in/min)", "Gauge speed (in/min)"],
    ],
    ["Brake 1", 200, 144, 126, F.openStroke, F.approach, F.bend, F.back, 500],
  ),
  dies: range(
    ["Die", "Opening (in)", "Angle (deg)"],
    ...[1, 1.5, 2].map((opening): CellValue[] => [`V ${opening}`, opening, 78]),
  ),
  punches: range(["Punch", "Nose radius (in)", "Angle (deg)"], ["Plain", 0.0625, 75]),
  shears: range(
    [
      ...["Shear", "Rated thickness (in)", "Rated material", "Cut length (in)", "Strokes per minute"],
      ...["Cuts per blank", "Least remnant (in)", "Remnant worth"],
    ],
    ["Shear 1", 0.5, "A36", 122, F.strokes, F.cutsPerBlank, 10, 0.5],
  ),
  waterjets: range(
    [
      ...["Waterjet", "Pressure (ksi)", "Orifice (in)", "Abrasive rate (lb/min)", "Nozzle diameter (in)"],
      ...["Quality", "Highest feed (in/min)", "Pierce time (s)"],
    ],
    ["Jet 1", 50, 0.014, 0.8, 0.04, 3, 120, F.pierce],
  ),
  stations: range(
    ["Station", "Basis", "Set-up (min)", "Time each (min)", "Rate", "Vendor days", "Price each", "Minimum"],
    ["Shear", "machine", F.shearSetUp, null, F.shearRate],
    ["Waterjet", "machine", F.jetSetUp, null, F.jetRate],
    ["Brake", "machine", F.toolChange, null, F.brakeRate],
    ["Deburr", "ft", 0, F.deburrPerFoot, F.deburrRate],
    ["Coating", "ft2", null, null, 0, 5, F.coatPerFoot, F.coatMinimum],
  ),
  rates: range(
    ["Rate", "Value", "Unit"],
    ["Allowance", F.allowance],
    ["Scrap allowance", F.scrap],
    ["First-piece blanks", F.firstPieces],
    ["Brake line set-up", F.lineSetUp, "min"],
    ["Set-up per further bend", F.setUpPerBend, "min"],
    ["Set-up by bend length", F.setUpPerFoot, "min/ft"],
    ["Handling per piece", F.handling, "s"],
    ["Handling by weight", F.handlingPerPound, "s/lb"],
    ["Handling by length", F.handlingPerFoot, "s/ft"],
    ["Handling at next bends", F.nextBends],
    ["Shear handling per cut", F.shearHandling, "s"],
    ["Shear handling by length", F.shearHandlingPerFoot, "s/ft"],
    ["Sheet loading", F.sheetLoading, "s"],
    ["Blade gap setting", F.bladeGap, "min"],
    ["One-person limit", 45, "lb"],
    ["Second person", F.secondPerson],
    ["Waterjet web", F.web, "in"],
    ["Material mark-up", F.materialMarkUp],
    ["Outside mark-up", F.outsideMarkUp],
    ["Overhead", F.overhead],
    ["Margin", F.margin],
    ["Line minimum", F.lineMinimum],
    ["Minimum charge", F.minimumCharge],
    ["Certificate", F.certificate],
    ["Crate", F.crate],
    ["Truck", F.truck],
    ["Tax", F.tax],
  ),
  stock: range(
    ["Material", "Thickness", "Length (in)", "Width (in)", "Price", "Remnant worth"],
    ["A36", "3/16", 120, 48, 284, 0.5],
    ["304", "1/4", 96, 48, 800, 0.5],
    ["A1011 CS", "10 ga", 120, 48, 205, 0.5],
    ["Composite panel", 0.157, 96, 48, 190, 0.5],
    ["A36", "1/4", 120, 48, 372, 0.5],
    ["A1011 CS", "11 ga", 120, 48, 183, 0.5],
  ),
  job: range(["Job", "Entry"], ["Due", 46_100], ["Due second", 46_110]),
};
const BENT = { Route: "shear", Punch: "Plain" };
const PARTS = bill(
  {
    ...{ ...BENT, Part: "Ledger", Material: "A36", Thickness: "3/16", Quantity: 6, Width: 120, Flanges: "2; 3" },
    ...{ "Bend angles": 90, Die: "V 1.5", Operations: "Coating", Finish: "Black" },
  },
  {
    ...{ ...BENT, Part: "Foot", Material: "304", Thickness: "1/4", Quantity: 8, Width: 4, Flanges: "2; 4" },
    ...{ "Bend angles": 90, Die: "V 2", Certificate: "yes" },
  },
  {
    ...{ ...BENT, Part: "Channel", Material: "A1011 CS", Thickness: "10 ga", Quantity: 5, Width: 120 },
    ...{ Flanges: "1.5; 4; 1.5", "Bend angles": "90; 90", Die: "V 1", Operations: "Coating", Finish: "black" },
  },
  {
    ...{ Part: "Panel", Material: "Composite panel", Thickness: 0.157, Quantity: 2, Width: 46, Flanges: "40" },
    Grain: "across",
  },
  {
    ...{ Part: "Plate", Material: "A36", Thickness: "1/4", Quantity: 9, Width: 48, Flanges: "12", Route: "shear" },
    Operations: "Deburr",
  },
  ...(
    [
      ["Clip, first", 1, null],
      ["Clip, second", 10, "second"],
    ] as const
  ).map(([Part, Quantity, Area]) => ({
    ...{ ...BENT, Part, Material: "A1011 CS", Thickness: "11 ga", Quantity, Width: 120, Flanges: "2; 2" },
    ...{ "Bend angles": 90, Die: "V 1", Area },
  })),
);

/** The hand calculation uses the shop's rule, whatever the edition's own method is. */
const { edition, materials: known } = readData(MATERIALS, "materials", "in");
const byRule = new MaterialTable(
  edition,
  known.map(({ airMethod: _, ...material }) => material),
);
const context = { system: "in" as const, materials: byRule, material: undefined };
const plan = new BillPlan(readShop(TABLES, context), readBill(PARTS, "bill", context));

describe("six lines, worked by hand", () => {
  it.each(SIX_LINES.map((part, i) => [part, i] as const))("%s", (part, i) => {
    const line = plan.quoted.find((found) => found.part === part)!;
    expect(line, JSON.stringify(plan.lines.find((found) => found.part === part)?.findings)).toBeDefined();
    const price = plan.priceOf(line);
    const hand = (row: string) => at(cellOfRow(row, i));
    // Cut plans work on a grid of 1/320 mm: remnants are that much shorter than by hand.
    for (const row of ["material", "labor", "setUp", "outside", "extras", "overhead"] as const)
      expect(price[row], row).toBeCloseTo(hand(row), row === "material" ? 2 : 8);
    expect(price.unitPrice).toBe(hand("unitPrice"));
    expect(price.price).toBeCloseTo(hand("price"), 9);
  });
  it("the order, tax and all", () => {
    const { tax, total } = plan.money.charges;
    expect([tax, total].map((value) => value.toFixed(2))).toEqual(
      [TOTAL_CELLS.tax, TOTAL_CELLS.total].map((cell) => at(cell).toFixed(2)),
    );
  });
});
