/** The cut list with every sheet drawn: which sheets are pulled and in which order the cuts are made. */
import { blanksFor } from "../cells/bill/shop.ts";
import type { BlankToCut } from "../cells/cut/blanks-table.ts";
import { cutLimits } from "../cells/cut/limits-table.ts";
import { listRows } from "../cells/cut/plan-rows.ts";
import { planSheets } from "../cells/cut/plan-sheets.ts";
import type { ReadContext } from "../cells/record/record.ts";
import { headerRow, spill } from "../cells/record/spill-columns.ts";
import { stock } from "../cells/tables/stock.ts";
import type { Book } from "../job/book.ts";
import { findTable, foldHeader } from "../job/find-table.ts";
import type { LineWork } from "../job/line-report.ts";
import { type ShopBill, TABLES } from "../job/shop-bill.ts";
import { type CellMatrix, type CellValue, isBlank, isCellError } from "../units/cell.ts";
import { Refusal } from "../units/refusal.ts";
import { show, showNumber, showReading } from "../units/show.ts";
import { drawPattern } from "./drawing/cut-plan.ts";
import { BOX, heading, table, text } from "./page.ts";

const EFFORT = 2; // the effort CUT.PLAN has where none is given
const LEFT_OUT = ["Pattern", "Message"]; // the pattern stands in the heading, messages stand below

export interface CutListOptions {
  /** Said before each material and thickness is planned. */
  readonly tick?: ((name: string) => void) | undefined;
}

/** One page or more a material and thickness; a sentence where there is no plan. */
export function cutListPages(
  book: Book,
  bill: ShopBill,
  works: readonly LineWork[],
  { tick }: CutListOptions,
): string[] {
  const { shop, system } = bill;
  if (!shop || works.length === 0) return [`${heading("Cut list")}<p>No line of the bill can be cut as it stands.</p>`];
  const context: ReadContext = { system, materials: shop.materials, material: undefined };
  try {
    const { matrix, priced } = stockOf(book);
    const sheets = stock().read(matrix, "stock", context);
    const [limits] = cutLimits().read(findTable(book, TABLES.shears)?.matrix ?? [[null]], "shears", context);
    const allowance = shop.rates.find("scrapAllowance") !== undefined && shop.rates.find("firstPieces") !== undefined;
    const blanks = works.map(
      ({ line, check }): BlankToCut => ({
        part: line.part,
        material: line.material,
        thickness: line.nominal,
        length: check.blank.length,
        width: check.blank.width,
        quantity: allowance ? blanksFor(line.quantity, shop.rates) : line.quantity,
        grain: check.blank.grain === "length" ? "along" : check.blank.grain === "width" ? "across" : "free",
      }),
    );
    const notes = [
      priced ? "" : "The stock table has no prices: the plan keeps the weight of sheets low instead of their price.",
      allowance
        ? "Scrap allowance and first pieces are in the numbers."
        : "No scrap allowance and no first pieces: the workbook has no rates for them.",
      "Shear guards in place; hands and the strip's fall clear; nobody behind the blade.",
    ].filter(Boolean);
    const groups = new Map<string, BlankToCut[]>();
    for (const blank of blanks) {
      const name = `${blank.material.name} ${show(blank.thickness, "length", system, 4)}`;
      groups.set(name, [...(groups.get(name) ?? []), blank]);
    }
    return [...groups].flatMap(([name, some]) => {
      tick?.(name);
      return planSheets(some, sheets, limits!, EFFORT).map((sheetPlan) => {
        const { plan } = sheetPlan;
        const start = `${heading(`Cut list: ${name}`)}<p>${text(notes.join(" "))}</p>`;
        if (plan instanceof Refusal)
          return `${start}<p><strong>${text(plan.message)}</strong></p>${table(
            [{ title: "Part" }, { title: "Blank" }, { title: "Pieces", number: true }],
            some.map((blank) => [
              blank.part,
              `${showReading(blank.length, system)} x ${showReading(blank.width, system)}`,
              showNumber(blank.quantity, 7),
            ]),
          )}`;
        const rows = spill("CUT.LIST", listRows(sheetPlan, system), system);
        const pull = plan.patterns.reduce((sum, { repeats }) => sum + repeats, 0);
        return [
          start,
          `<p>Pull <strong>${pull}</strong> sheet${pull === 1 ? "" : "s"}; use ${showNumber((100 * plan.blankArea) / plan.sheetArea, 3)} % of the metal.</p>`,
          ...plan.patterns.map(
            (pattern) =>
              `<figure class="plan"><figcaption>${text(`Pattern ${pattern.id}: ${pattern.repeats} x ${pattern.stock}`)}</figcaption>${drawPattern(pattern, plan.cuts, system)}</figure>`,
          ),
          cutTable(rows, headerRow("CUT.LIST", system), `${name}, `),
          ...rows.slice(1).flatMap((row) => messageOf(row, headerRow("CUT.LIST", system))),
        ].join("\n");
      });
    });
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    return [`${heading("Cut list")}<p>${text(problem.message)}</p>`];
  }
}

/** A stock without prices is planned by weight. */
function stockOf(book: Book): { matrix: CellMatrix; priced: boolean } {
  const matrix = findTable(book, TABLES.stock)?.matrix ?? [[null]];
  const priced = matrix[0]!.some((cell) => foldHeader(cell).startsWith("price"));
  if (priced || isBlank(matrix[0]![0])) return { matrix, priced: true };
  return { matrix: matrix.map((row, i) => [...row, i === 0 ? "Price per lb" : 1]), priced };
}

const shown = (value: CellValue): string => {
  if (isBlank(value)) return "";
  if (typeof value === "number") return showNumber(value, 5);
  return isCellError(value) ? value.code : String(value);
};

/** `known` stands in the heading and need not stand in every note. */
function cutTable([, ...rows]: CellMatrix, header: readonly string[], known: string): string {
  const kept = header.map((title, i) => ({ title, i })).filter(({ title }) => !LEFT_OUT.includes(title));
  return table(
    [
      ...kept.map(({ title }) => ({
        title,
        number: /\(|^Cut$|^Strokes$/.test(title),
        short: title !== "Falls" && title !== "Stays",
      })),
      { title: "Done" },
    ],
    rows.map((row) => [...kept.map(({ i }) => shown(row[i] ?? null).replace(known, "")), { markup: BOX }]),
    "cuts",
  );
}

const messageOf = (row: readonly CellValue[], header: readonly string[]): string[] => {
  const message = row[header.indexOf("Message")];
  return typeof message === "string" && message !== "" ? [`<p>${text(message)}</p>`] : [];
};
