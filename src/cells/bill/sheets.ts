/** BILL.SHEETS: what to buy, what it weighs and how it is handled. */
import { toCent } from "../../calc/cost/cent.ts";
import { density } from "../../calc/material/strength.ts";
import { handlePiece } from "../../calc/time/handling.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { type Kilograms, kilograms, type Millimetres } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import type { BillLine } from "../tables/bill.ts";
import type { Rates } from "../tables/rates.ts";
import type { StockSheet } from "../tables/stock.ts";
import { blankOf } from "./blank.ts";
import { sheetToCutFrom } from "./material.ts";
import { type PlanRow, rowsFor, sheetKey } from "./plan-range.ts";
import { isAnswered, outcomes, rowsOf } from "./rows.ts";
import { blanksFor, handlingRules } from "./shop.ts";
import { type BendTools, chooseTools } from "./tools.ts";

export interface SheetsShop extends BendTools {
  readonly stock: readonly StockSheet[];
  readonly rates: Rates;
  readonly plan: readonly PlanRow[];
  readonly system: UnitSystem;
}

interface Need {
  readonly line: BillLine;
  readonly sheet: StockSheet;
  readonly area: number;
}

export function billSheets(shop: SheetsShop, work?: Working): CellMatrix {
  const { stock, rates, plan, system } = shop;
  const found = outcomes(shop.bill, (line): Need => {
    const blank = blankOf(line, chooseTools(line, shop, system), system);
    const area = blank.length * blank.width * blanksFor(line.quantity, rates);
    return { line, sheet: sheetToCutFrom(line, blank, stock), area };
  });
  const groups = new Map<string, Need[]>();
  for (const { line, answer } of found.filter(isAnswered)) {
    const key = plan.length > 0 ? sheetKey(line.material.name, line.nominal) : `${stock.indexOf(answer.sheet)}`;
    groups.set(key, [...(groups.get(key) ?? []), answer]);
  }
  const bought = [...groups.values()].flatMap((needs) =>
    plan.length > 0 ? byPlan(needs, shop) : [byArea(needs, shop)],
  );
  const total = bought.reduce((sum, row) => sum + ((row["Price"] as number | undefined) ?? 0), 0);
  step(work, "total", "price of all sheets", total, "money", "sum");
  return spill("BILL.SHEETS", [...bought, ...rowsOf(found, () => []).map(asMessage)], system);
}

/** A refused line needs sheets too: its sentence stands below the list. */
const asMessage = ({ Part, Message }: SpillRow): SpillRow => ({ Stock: Part, Message });

/** Area over the stated yield, up to whole sheets. */
function byArea(needs: readonly Need[], shop: SheetsShop): SpillRow {
  const { sheet } = needs[0]!;
  const area = needs.reduce((sum, need) => sum + need.area, 0);
  const sheets = Math.ceil(area / (sheet.length * sheet.width * shop.rates.get("materialYield")) - LAST_BITS);
  return row(needs, { ...sheet, sheets, price: sheet.price * sheets }, sheet.weight, shop, sheet);
}
const LAST_BITS = 1e-9;

function byPlan(needs: readonly Need[], shop: SheetsShop): SpillRow[] {
  const { line } = needs[0]!;
  const sizes = new Map<string, PlanRow>();
  for (const planned of rowsFor(shop.plan, line.material, line.nominal)) {
    const key = `${planned.stock} ${planned.length} ${planned.width}`;
    const known = sizes.get(key);
    sizes.set(
      key,
      known ? { ...known, sheets: known.sheets + planned.sheets, price: known.price + planned.price } : planned,
    );
  }
  return [...sizes.values()].map((planned) => {
    const weight = kilograms(planned.length * planned.width * planned.thickness * density(line.material));
    const known = shop.stock.find(({ name }) => name === planned.stock);
    return row(needs, { ...planned, name: planned.stock }, weight, shop, known);
  });
}

function row(
  needs: readonly Need[],
  bought: {
    readonly name: string;
    readonly thickness: number;
    readonly length: number;
    readonly width: number;
    readonly sheets: number;
    readonly price: number;
  },
  weight: Kilograms,
  { rates }: SheetsShop,
  known: StockSheet | undefined,
): SpillRow {
  const { how } = handlePiece(weight, bought.length as Millimetres, handlingRules(rates));
  const short = known?.count !== undefined && known.count < bought.sheets;
  return {
    Material: needs[0]!.line.material.name,
    Thickness: bought.thickness,
    Stock: bought.name,
    Length: bought.length,
    Width: bought.width,
    Sheets: bought.sheets,
    "Price each": bought.sheets === 0 ? undefined : toCent(bought.price / bought.sheets),
    Price: toCent(bought.price),
    "Lead days": known?.leadDays,
    Certificate: needs.some(({ line }) => line.wantsCertificate) ? "wanted" : "",
    "Weight each": weight,
    "Bundle weight": weight * bought.sheets,
    Handling: how,
    Message: short ? `stock has ${known.count} of them` : "",
  };
}
