/** The quote as the workbook's own BILL.PRICE says it: pieces and prices, none of the shop's costs. */

import type { Book } from "../job/book.ts";
import { findTable, foldHeader } from "../job/find-table.ts";
import { type CellValue, isBlank, isCellError } from "../units/cell.ts";
import { BLANK, heading, table } from "./page.ts";

const PRICES = { has: [["Part"], ["Quantity"], ["Unit price"], ["Price"]] } as const;

export function quotePage(book: Book, describe: (part: string) => string): string {
  const found = findTable(book, PRICES);
  if (!found)
    return `${heading("Quote")}<p>This workbook has no prices: no sheet holds what BILL.PRICE answers (columns Part, Quantity, Unit price, Price). Nothing is quoted without it.</p>`;
  const [header = [], ...rows] = found.matrix;
  const column = (title: string) => header.findIndex((cell) => foldHeader(cell) === foldHeader(title));
  const at = (row: readonly CellValue[], title: string): CellValue => row[column(title)] ?? null;
  const shown = (value: CellValue): string => (isCellError(value) ? value.code : isBlank(value) ? "" : String(value));
  const lines = rows.map((row) => {
    const part = shown(at(row, "Part"));
    const message = shown(at(row, "Message"));
    return [
      part,
      isBlank(at(row, "Quantity")) ? "" : describe(part),
      shown(at(row, "Quantity")),
      money(at(row, "Unit price")),
      message !== "" && isBlank(at(row, "Price")) ? "no price" : money(at(row, "Price")),
    ];
  });
  return [
    heading("Quote"),
    `<p>To ${BLANK} &nbsp; date ${BLANK} &nbsp; good until ${BLANK}</p>`,
    table(
      [
        { title: "Part" },
        { title: "Description" },
        { title: "Pieces", number: true },
        { title: "Price each", number: true },
        { title: "Price", number: true },
      ],
      lines,
    ),
    "<p class=\"foot\">What a bracket carries is not checked by this shop's calculation; that is a licensed engineer's work.</p>",
  ].join("\n");
}

const money = (value: CellValue): string => {
  if (typeof value !== "number") return isCellError(value) ? value.code : String(value ?? "");
  const [whole = "", cents] = Math.abs(value).toFixed(2).split(".");
  return `${value < 0 ? "-" : ""}${whole.replace(/\B(?=(?:\d{3})+$)/g, ",")}.${cents}`;
};
