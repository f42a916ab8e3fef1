/** The bill's line under the selection, followed as it moves; the workbook is read again only after it has changed. */
import { billRowAt } from "../../../job/bill-row.ts";
import type { Book } from "../../../job/book.ts";
import { type FixOffer, fixOffer } from "../../../job/fix-cells.ts";
import { type JobPlan, jobPlan } from "../../../job/job-plan.ts";
import { type LineReport, lineReport } from "../../../papers/line-report.ts";
import { readBook } from "./read-book.ts";

export { JobLines } from "./job-lines.ts";

export class SelectedLine {
  #book: Book | undefined;
  #job: JobPlan | undefined;
  #asked = 0;

  /** `show` gets the line, or undefined where the selection is on none. */
  constructor(
    private readonly show: (
      report: LineReport | undefined,
      job: JobPlan | undefined,
      fix: FixOffer | undefined,
    ) => void,
  ) {}

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
        this.#job = jobPlan(this.#book);
      }
      if (asked !== this.#asked) return; // the selection has moved on
      const sheet = this.#book.find(({ name }) => name === cell.worksheet.name);
      const job = this.#job;
      const line = job && sheet && billRowAt(job, sheet, cell.rowIndex);
      this.show(job && line && lineReport(line, job.plan), job, job && line && fixOffer(job, line));
    });
  }
}
