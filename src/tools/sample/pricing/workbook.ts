import { SHOP_TABLES } from "../../../cells/example/invented-shop.ts";
import { readMeSheet } from "../../../job/building/read-me.ts";
import { tableSheet } from "../../../job/building/table-sheet.ts";
import { shopSheet } from "../../../job/job-sheets/shop-sheet.ts";
import type { SheetModel, WorkbookModel } from "../../../job/xlsx/model.ts";
import { SHOP_NOTE } from "../stage-job/workbook.ts";
import {
  BED,
  BED_COLUMNS,
  BEND_COLUMNS,
  BENDS,
  PART_COLUMNS,
  PARTS,
  STRIP_COLUMNS,
  STRIPS,
} from "./bill/catalogue-parts.ts";
import { airBendsSheet, oneBendSheet } from "./sheets/air-sheets.ts";
import { everyFunctionSheet, functionsIn } from "./sheets/every-function-sheet.ts";
import { materialsSheet } from "./sheets/materials-sheet.ts";
import { breaksSheet, priceSheet } from "./sheets/price-sheets.ts";
import { correctionSheet, evennessSheet, stripCheckSheet } from "./sheets/strip-sheets.ts";

const readMe = (): SheetModel =>
  readMeSheet({
    title: "Prices and bends of our own",
    subject: "Rates, machines, strips and prices of an invented shop",
    about:
      "Machines, rates, parts and measured strips are invented: no machine, firm or price of these is meant. Sheets that calculate are locked without a password, their shaded cells are not. For a copy that goes out, with figures and no formulas: npm run -s shop -- freeze pricing.xlsx",
    contents: [
      [
        "Rates and machines",
        "Machines, tools, stations, rates, shifts and sheets: everything a price hangs on, on one sheet.",
      ],
      ["Parts", "What the shop makes again and again."],
      ["Price", "Cost and price of each; Breaks shows what quantity and margin do to one of them."],
      [
        "Strips",
        "Test strips as measured; Strip check holds each against its prediction, Correction says by how much our bends differ.",
      ],
      ["Bed", "Angles along the bed; Evenness says how ram or crowning must change."],
      ["Bends", "Bends we want to know; Air bends answers with our correction, One bend with bands."],
      ["Materials", "The built-in values and where each comes from."],
      ["Every function", "The functions that no other sheet of the sample workbooks shows."],
    ],
  });

const inputs = (): SheetModel[] => [
  tableSheet({
    name: "Parts",
    table: "Parts",
    note: "One part a row. Plain numbers are inches; text brings its own unit. Width is the length of the bend line. Invented.",
    columns: PART_COLUMNS,
    rows: PARTS,
  }),
  priceSheet(),
  breaksSheet(),
  tableSheet({
    name: "Strips",
    table: "Strips",
    note: "One test strip a row: blank measured before bending, outside flanges and angle after it. Invented measurements; measure your own, at least three of a sheet.",
    columns: STRIP_COLUMNS,
    rows: STRIPS,
  }),
  stripCheckSheet(),
  correctionSheet(),
  tableSheet({
    name: "Bed",
    table: "Bed",
    note: "Strips of one sheet bent at places along the bed, from one end. Invented.",
    columns: BED_COLUMNS,
    rows: BED,
  }),
  evennessSheet(),
  tableSheet({
    name: "Bends",
    table: "Bends",
    note: "Bends to be answered on the sheet Air bends. Dies and punches are those of the sheet Rates and machines. Invented.",
    columns: BEND_COLUMNS,
    rows: BENDS,
  }),
  airBendsSheet(),
  oneBendSheet(),
  materialsSheet(),
];

/** The shop lead's workbook; `others`: the workbooks whose functions need not be shown again. */
export function pricingModel(others: readonly WorkbookModel[]): WorkbookModel {
  const sheets = [readMe(), shopSheet({ shop: SHOP_TABLES, shopNote: SHOP_NOTE }, "Rates and machines"), ...inputs()];
  return {
    title: "Bracket bill: rates, prices and bends of an invented shop",
    sheets: [...sheets, everyFunctionSheet(functionsIn({ sheets }, ...others))],
  };
}
