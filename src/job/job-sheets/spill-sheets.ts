/** One question about the bill a sheet, each answered by one formula; all of them take the same tables. */
import { SPILLS, type SpillName } from "../../cells/record/spill-columns.ts";
import { missing } from "../../units/certain.ts";
import { ofTables } from "../building/bill-arguments.ts";
import { value } from "../building/cells.ts";
import { lookUp, shop, spillOf } from "../building/formulas.ts";
import { STATE } from "../building/read-me.ts";
import { spillColumn } from "../building/spill-block.ts";
import { type Block, HEADER_ROW, spillSheet } from "../building/spill-sheet.ts";
import { onlyWhenRunning } from "../building/state.ts";
import type { SheetCell, SheetModel } from "../xlsx/model.ts";
import type { StyleName } from "../xlsx/styles.ts";
import { cellName } from "../xlsx/xml.ts";
import { hasTable, type JobContents } from "./contents.ts";
import { FINISHED } from "./finished-sheet.ts";
import { jobCell } from "./job-sheet.ts";

const anchor = `A${HEADER_ROW}`;
export const CHECKS = spillOf(`Checks!${anchor}`);
const MESSAGE = 40;

/** The tables that every function about the bill is given, and the unit of plain numbers where it is not the usual one. */
const givenIn = ({ shop: tables, system }: JobContents): Readonly<Record<string, string>> => ({
  ...ofTables([...tables.map(({ name }) => name), FINISHED]),
  ...(system === "mm" ? { units: '"mm"' } : {}),
});

/** What carries the totals of money says none where the functions do not run, as the quote does. */
const whereRunning = (job: JobContents, spill: SpillName): Pick<Block, "formula"> => ({
  formula: onlyWhenRunning(STATE, shop(spill, givenIn(job))),
});

/** A spill of the plan by its name, with what its columns need. */
const blockOf =
  (job: JobContents) =>
  (spill: SpillName, widths: Block["widths"], more: Partial<Block> = {}): Block => ({
    spill,
    formula: shop(spill, givenIn(job)),
    ...(widths ? { widths } : {}),
    ...more,
  });

export const checkSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Checks",
    pagesWide: 3,
    note: "What is found about every line on the machines, tools and sheets of the sheet Shop, and the smallest change that improves it, already tried. A clear line has no sentence; notes only inform. Worst spread: edge, spread of the deduction and of the angle, added up.",
    blocks: [
      blockOf(job)(
        "BILL.CHECK",
        {
          Part: 8,
          Status: 8,
          Sentence: 56,
          Fix: 22,
          Then: 7,
          Notes: 40,
          "Cut on": 10,
          Die: 9,
          Punch: 10,
          Method: 8,
          "Drawing radius": 10,
          Description: 24,
          Message: 25,
        },
        { emphasis: { column: "Status", stop: ["stop"], check: ["check"] } },
      ),
    ],
  });

export const blanksSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Blanks",
    note: "Every flat blank of the quoted lines with what is cut beyond the order: scrap allowance and first pieces. Grain says along which side of the blank the sheet must have been rolled. Weights are those of the blank.",
    blocks: [blockOf(job)("BILL.BLANKS", { Message: MESSAGE })],
  });

export const cutPlanSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Cut plan",
    note: "Which sheets are pulled and what is cut from each, by material, thickness and machine; only quoted lines. The lower bound says the least that any plan could need. More effort (sheet Shop, Rates) may save a sheet. The waterjet's sheets are drawn in the printed cut list.",
    blocks: [
      blockOf(job)("CUT.PLAN", {
        Pattern: 9,
        Stock: 19,
        "Cut on": 10,
        Blanks: 34,
        Remnants: 22,
        Sheets: 7,
        "Lower bound": 9,
        Message: 20,
      }),
    ],
  });

export const cutListSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Cut list",
    note: "Every cut of the shear in order. Keep hands out of the hold-downs; nobody stands behind the shear where the strip drops.",
    blocks: [
      blockOf(job)("CUT.LIST", {
        Cut: 6,
        Pattern: 9,
        Piece: 12,
        Strokes: 9,
        Drops: 60,
        "On table": 16,
        Turn: 8,
        Note: 36,
        Message: 12,
      }),
    ],
  });

export const buyingSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Buying",
    note: "The sheets of the cut plan as an order: prices of the sheet Shop, weights of sheet and bundle, who or what lifts them.",
    blocks: [blockOf(job)("BILL.SHEETS", { Stock: 18, "Cut on": 10, Certificate: 11, Handling: 14, Message: 44 })],
  });

export const routeSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Route",
    note: "Which machine cuts which line: the cheapest that is done by the time the truck leaves (sheet Job). Lines that the shear cannot cut need the waterjet; a line can be pinned on the sheet Parts.",
    blocks: [blockOf(job)("BILL.ROUTE", { Part: 8, Route: 10, Why: 20, Message: 44 })],
  });

export const summarySheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Summary",
    note: "The job in figures: lines, pieces, weight, sheets, price, what the route saves, and which lines are not quoted.",
    landscape: false,
    blocks: [
      blockOf(job)(
        "BILL.SUMMARY",
        { Item: 32, Value: 17, Note: 60 },
        { days: "Unit", ...whereRunning(job, "BILL.SUMMARY") },
      ),
    ],
  });

export const timesSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Times",
    note: "Minutes of every quoted line at every station. A set of tools is set up once, and its lines share that by their minutes at the brake. People: who must handle it.",
    landscape: false,
    blocks: [blockOf(job)("BILL.TIMES", { Part: 8, Note: 30, Message: 34 })],
  });

export const setUpsSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Set-ups",
    note: "The fewest sets of tools for the whole job, in the order that changes least. Depth is a first setting: go short on the first hit, measure, correct. Order and stops are tried on plain tools drawn from the tables; walk the part through on the real ones before the run.",
    blocks: [blockOf(job)("BILL.SETUPS", { Run: 5, "Set-up": 7, Part: 8, "Order from": 11, Caution: 50, Message: 30 })],
  });

export const machinesSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Machines",
    note: "The smallest machines that would do this bill, which line decides, and how much of it each of ours can do.",
    blocks: [blockOf(job)("BILL.MACHINES", { Question: 44, Unit: 9 })],
  });

export const priceSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Price",
    note: "Cost and price of every quoted line, in the money of the sheet Shop: metal by its share of the sheets that are pulled, less what goes back to the rack, work at the stations' rates, set-up, overhead, margin. For the shop; the customer's page is the sheet Quote.",
    blocks: [
      blockOf(job)(
        "BILL.PRICE",
        { Part: 15, Note: 34, Description: 24, Message: MESSAGE, Remark: 34 },
        whereRunning(job, "BILL.PRICE"),
      ),
    ],
  });

/** Rows of the answers about one date above the lines. */
const DATES_ROW = HEADER_ROW;
const WHATIF_ROW = DATES_ROW + 6;
const DATES_COLUMN = spillColumn("BILL.WHATIF", "Finish"); // wide enough for a day and an hour

/** The brake alone against the calendar: what the three date functions say of its hours. */
function dateRows(job: JobContents): SheetCell[] {
  if (!hasTable(job, "Calendar") || !hasTable(job, "Stations")) return [];
  const stations = SPILLS["BILL.WHATIF"].length + 2;
  const all = spillOf(cellName(WHATIF_ROW, stations));
  const at = (header: string) => `INDEX(${all},0,${spillColumn("BILL.STATIONS", header)})`;
  const hours = cellName(DATES_ROW, DATES_COLUMN);
  const given = { hours, calendar: givenIn(job)["calendar"] ?? missing(), station: '"Brake"' };
  const [start, due] = [jobCell("start"), jobCell("due")];
  // The bill takes a day without a time to its end; these functions take a point in time.
  const end = `IFERROR(${due}+(INT(${due})=${due}+0),${due})`;
  const dated = (formula: string) => `IF(OR(${start}="",${due}=""),"no dates yet",${formula})`;
  const rows: readonly (readonly [string, string, StyleName])[] = [
    [
      "Brake: hours waiting and of this bill",
      dated(`${lookUp('"Brake"', at("Station"), at("Queue"))}+${lookUp('"Brake"', at("Station"), at("Load"))}`),
      "inchShort",
    ],
    ["Brake: done, if it need not wait for cut blanks", dated(shop("DATE.FINISH", { start, ...given })), "moment"],
    ["Brake: must begin at the latest", dated(shop("DATE.LATESTSTART", { due: end, ...given })), "moment"],
    ["Brake: working hours left over", dated(shop("DATE.SLACK", { start, due: end, ...given })), "inchShort"],
  ];
  return rows.flatMap(([label, formula, style], i): SheetCell[] => [
    value(DATES_ROW + i, 1, "label", label),
    {
      row: DATES_ROW + i,
      column: DATES_COLUMN,
      formula,
      style,
      ...(formula.includes("_xldudf") ? { spills: [style] } : {}),
    },
  ]);
}

export const whatIfSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "What-if",
    note: "If it must leave by the time on the sheet Job: which lines are in time, which need overtime or a second shift, go outside, or break it, and what either would save. Lines are taken in the order in which they are due; a day without a time means by its end. Late by counts working hours of the shop. Right: the hours of every station.",
    headerRow: WHATIF_ROW,
    others: dateRows(job),
    blocks: [
      blockOf(job)(
        "BILL.WHATIF",
        { Part: 8, Note: 20, Message: 34 },
        { emphasis: { column: "Verdict", stop: ["breaks it"], check: ["overtime", "second shift", "outside"] } },
      ),
      blockOf(job)("BILL.STATIONS", { Note: 20 }),
    ],
  });

export const loadInSheet = (job: JobContents): SheetModel =>
  spillSheet({
    name: "Load-in",
    note: "In which order the parts go onto the truck, in which stacks, and what goes on the labels; only quoted lines. Weights are sheet weights; who may lift is for the site to decide.",
    blocks: [
      blockOf(job)("BILL.LOADIN", { Order: 7, Area: 16, Stacks: 7, Part: 8, Handling: 30, Label: 46, Message: 34 }),
    ],
  });
