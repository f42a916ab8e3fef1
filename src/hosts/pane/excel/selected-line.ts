/** The bill's line under the selection, followed as it moves; the workbook is read again only after it has changed. */
import { billRowAt } from "../../../job/bill-row.ts";
import type { Book } from "../../../job/book.ts";
import { type LineReport, lineReport } from "../../../job/line-report.ts";
import { readShopBill, type ShopBill } from "../../../job/shop-bill.ts";
import { readBook } from "./read-book.ts";

export class SelectedLine {
  #book: Book | undefined;
  #bill: ShopBill | undefined;
  #asked = 0;

  /** `show` gets the line, or undefined where the selection is on none. */
  constructor(private readonly show: (report: LineReport | undefined, bill: ShopBill | undefined) => void) {}

  /** Begins to listen and shows where the selection is now. */
  async follow(): Promise<void> {
    await Excel.run(async (context) => {
      context.workbook.onSelectionChanged.add(() => this.look());
      context.workbook.worksheets.onChanged.add(() => {
        this.#book = undefined;
        return this.look();
      });
      context.workbook.worksheets.onCalculated.add(async () => {
        this.#book = undefined;
      });
      await context.sync();
    });
    await this.look();
  }

  async look(): Promise<void> {
    const asked = ++this.#asked;
    await Excel.run(async (context) => {
      const cell = context.workbook.getActiveCell();
      cell.load("rowIndex");
      cell.worksheet.load("name");
      await context.sync();
      if (!this.#book) {
        this.#book = await readBook(context);
        this.#bill = readShopBill(this.#book);
      }
      if (asked !== this.#asked) return; // the selection has moved on
      const sheet = this.#book.find(({ name }) => name === cell.worksheet.name);
      const row = this.#bill && sheet && billRowAt(this.#bill, sheet, cell.rowIndex);
      this.show(row && lineReport(row, this.#bill!), this.#bill);
    });
  }
}
