/** One question about the bill a sheet, each answered by one formula; some feed the next. */
import { SPILLS } from "../../../../cells/record/spill-columns.ts";
import { benders, cutters, RATES, SHEARS, STATIONS, workers } from "../../building/bill-arguments.ts";
import { value } from "../../building/cells.ts";
import { lookUp, shop, spillOf } from "../../building/formulas.ts";
import { spillColumn } from "../../building/spill-block.ts";
import { HEADER_ROW, spillSheet } from "../../building/spill-sheet.ts";
import type { SheetCell, SheetModel } from "../../xlsx/model.ts";
import type { StyleName } from "../../xlsx/styles.ts";
import { cellName } from "../../xlsx/xml.ts";
import { jobCell } from "./job-sheet.ts";

const STOCK = "Stock[#All]";
const EFFORT = "1";
const CALENDAR = "Calendar[#All]";
const anchor = `A${HEADER_ROW}`;
const PARTS = "Parts[#All]";
export const CHECKS = spillOf(`Checks!${anchor}`);
const QUOTED = spillOf(`Quoted!${anchor}`);
const BENDERS = benders(QUOTED);
const CUTTERS = cutters(QUOTED);
const WORKERS = workers(QUOTED);
export const BLANKS = spillOf(`Blanks!${anchor}`);
export const PLAN = spillOf(`'Cut plan'!${anchor}`);
export const ROUTES = spillOf(`Route!${anchor}`);
const MESSAGE = 40;
const TIMED = { calendar: CALENDAR, start: jobCell("start"), due: jobCell("due") };

export const blanksSheet = (): SheetModel =>
  spillSheet({
    name: "Blanks",
    note: "Every flat blank with what is cut beyond the order: scrap allowance and first pieces. Grain says along which side of the blank the sheet must have been rolled. Weights are those of the blank.",
    blocks: [
      {
        spill: "BILL.BLANKS",
        formula: shop("BILL.BLANKS", { ...BENDERS, rates: RATES }),
        widths: { Message: MESSAGE },
      },
    ],
  });

export const checkSheet = (): SheetModel =>
  spillSheet({
    name: "Checks",
    note: "Bends, cut, drawing radius and tolerance of every line. Worst spread: sheared edge, spread of the deduction and of the angle, added up.",
    blocks: [
      {
        spill: "BILL.CHECK",
        formula: shop("BILL.CHECK", { ...cutters(PARTS), rates: RATES }),
        widths: {
          Part: 8,
          Status: 8,
          Sentence: 60,
          Die: 9,
          Punch: 9,
          "Drawing radius": 10,
          Tolerance: 12,
          Message: 25,
        },
        emphasis: { column: "Status", stop: ["stop"], check: ["check"] },
      },
    ],
  });

export const cutPlanSheet = (): SheetModel =>
  spillSheet({
    name: "Cut plan",
    note: "Which sheets are pulled and what is cut from each, by material and thickness. The lower bound says how little the best plan could need. Effort 1 is quick; more effort may save a sheet. What cannot be cut so is left out and named: its sheets are bought, and its line priced, by hand.",
    blocks: [
      {
        spill: "CUT.PLAN",
        formula: shop("CUT.PLAN", { blanks: BLANKS, stock: STOCK, limits: SHEARS, effort: EFFORT }),
        widths: { Pattern: 9, Stock: 19, Blanks: 34, Remnants: 22, Sheets: 7, "Lower bound": 9, Message: 20 },
      },
    ],
  });

export const cutListSheet = (): SheetModel =>
  spillSheet({
    name: "Cut list",
    note: "Every cut of the plan in order, for the person at the shear. Keep hands out of the hold-downs; nobody stands behind the shear where the strip falls.",
    blocks: [
      {
        spill: "CUT.LIST",
        formula: shop("CUT.LIST", { blanks: BLANKS, stock: STOCK, limits: SHEARS, effort: EFFORT }),
        widths: { Cut: 6, Pattern: 9, Piece: 12, Strokes: 9, Falls: 66, Stays: 16, Turn: 8, Note: 42, Message: 12 },
      },
    ],
  });

export const buyingSheet = (): SheetModel =>
  spillSheet({
    name: "Buying",
    note: "The sheets of the cut plan as an order: prices of the sheet Shop, weights of sheet and bundle, who or what lifts them.",
    blocks: [
      {
        spill: "BILL.SHEETS",
        formula: shop("BILL.SHEETS", { ...BENDERS, stock: STOCK, rates: RATES, plan: PLAN }),
        widths: { Stock: 18, Certificate: 11, Handling: 24, Message: 34 },
      },
    ],
  });

export const routeSheet = (): SheetModel =>
  spillSheet({
    name: "Route",
    note: "Which machine cuts which line: the cheapest that is done by the time the lorry leaves (sheet Job). Lines that the shear cannot cut need the waterjet; a line can be pinned on the sheet Parts.",
    blocks: [
      {
        spill: "BILL.ROUTE",
        formula: shop("BILL.ROUTE", { ...WORKERS, ...TIMED }),
        widths: { Part: 8, Route: 10, Why: 20, Message: 22 },
      },
      {
        spill: "BILL.ROUTE summary",
        formula: shop("BILL.ROUTE", { ...WORKERS, ...TIMED, answer: '"summary"' }),
        widths: { Item: 36, Value: 17, Note: 44 },
        days: "Unit",
      },
    ],
  });

export const timesSheet = (): SheetModel =>
  spillSheet({
    name: "Times",
    note: "Minutes of every line at every station, on the routes of the sheet Route. People: who must handle it.",
    landscape: false,
    blocks: [
      {
        spill: "BILL.TIMES",
        formula: shop("BILL.TIMES", { ...WORKERS, routes: ROUTES }),
        widths: { Part: 8, Note: 36, Message: 24 },
      },
    ],
  });

export const setUpsSheet = (): SheetModel =>
  spillSheet({
    name: "Set-ups",
    note: "The fewest sets of tools for the whole job, in the order that changes least. Depth is a first setting: go short on the first hit, measure, correct. Order and stops are tried on plain tools drawn from the tables; walk the part through on the real ones before the run.",
    blocks: [
      {
        spill: "BILL.SETUPS",
        formula: shop("BILL.SETUPS", { ...BENDERS, rates: RATES }),
        widths: { Run: 5, "Set-up": 7, Part: 8, "Order from": 11, Caution: 50, Message: 30 },
      },
    ],
  });

export const machinesSheet = (): SheetModel =>
  spillSheet({
    name: "Machines",
    note: "The smallest machines that would do this bill, which line decides, and how much of it each of ours can do.",
    blocks: [
      { spill: "BILL.MACHINES", formula: shop("BILL.MACHINES", cutters(PARTS)), widths: { Question: 44, Unit: 9 } },
    ],
  });

export const priceSheet = (): SheetModel =>
  spillSheet({
    name: "Price",
    note: "Cost and price of every line, in the money of the sheet Shop: material from the cut plan, work at the stations' rates, set-up spread over the quantity, overhead, margin. For the shop; the customer's page is the sheet Quote.",
    blocks: [
      {
        spill: "BILL.PRICE",
        formula: shop("BILL.PRICE", {
          ...CUTTERS,
          stock: STOCK,
          stations: STATIONS,
          rates: RATES,
          plan: PLAN,
          routes: ROUTES,
          pace: jobCell("pace"),
        }),
        widths: { Part: 15, Note: 34, Message: MESSAGE },
      },
    ],
  });

/** Rows of the answers about one date above the lines. */
const DATES_ROW = HEADER_ROW;
const WHATIF_ROW = DATES_ROW + 6;
const DATES_COLUMN = spillColumn("BILL.WHATIF", "Finish"); // wide enough for a day and an hour

/** The brake alone against the calendar: what the three date functions say of its hours. */
function dateRows(): SheetCell[] {
  const stations = SPILLS["BILL.WHATIF"].length + 2;
  const all = spillOf(cellName(WHATIF_ROW, stations));
  const at = (header: string) => `INDEX(${all},0,${spillColumn("BILL.WHATIF stations", header)})`;
  const hours = cellName(DATES_ROW, DATES_COLUMN);
  const given = { hours, calendar: CALENDAR, station: '"Brake"' };
  const rows: readonly (readonly [string, string, StyleName])[] = [
    [
      "Brake: hours waiting and of this bill",
      `${lookUp('"Brake"', at("Station"), at("Queue"))}+${lookUp('"Brake"', at("Station"), at("Load"))}`,
      "inchShort",
    ],
    [
      "Brake: done, if it need not wait for cut blanks",
      shop("DATE.FINISH", { start: TIMED.start, ...given }),
      "moment",
    ],
    ["Brake: to be begun at the latest", shop("DATE.LATESTSTART", { due: TIMED.due, ...given }), "moment"],
    [
      "Brake: working hours left over",
      shop("DATE.SLACK", { start: TIMED.start, due: TIMED.due, ...given }),
      "inchShort",
    ],
  ];
  return rows.flatMap(([label, formula, style], i): SheetCell[] => [
    value(DATES_ROW + i, 1, "label", label),
    {
      row: DATES_ROW + i,
      column: DATES_COLUMN,
      formula,
      style,
      ...(formula.startsWith("_xldudf") ? { spills: [style] } : {}),
    },
  ]);
}

export function whatIfSheet(): SheetModel {
  const given = { ...WORKERS, ...TIMED, routes: ROUTES };
  return spillSheet({
    name: "What-if",
    note: "If it must leave by the time on the sheet Job: which lines are in time, which need overtime, go outside, or break it. Lines are taken in the order of the bill. Right: the hours of every station.",
    headerRow: WHATIF_ROW,
    others: dateRows(),
    blocks: [
      {
        spill: "BILL.WHATIF",
        formula: shop("BILL.WHATIF", given),
        widths: { Part: 8, Note: 20, Message: 20 },
        emphasis: { column: "Verdict", stop: ["breaks it"], check: ["overtime", "outside"] },
      },
      {
        spill: "BILL.WHATIF stations",
        formula: shop("BILL.WHATIF", { ...given, answer: '"stations"' }),
        widths: { Note: 20 },
      },
    ],
  });
}

export const loadInSheet = (): SheetModel =>
  spillSheet({
    name: "Load-in",
    note: "In which order the parts go onto the lorry, in which piles, and what stands on the labels. Weights are sheet weights; who may lift is for the site to decide.",
    blocks: [
      {
        spill: "BILL.LOADIN",
        formula: shop("BILL.LOADIN", { ...BENDERS, rates: RATES }),
        widths: { Order: 7, Area: 16, Piles: 7, Part: 8, Handling: 36, Label: 46, Message: 14 },
      },
    ],
  });
