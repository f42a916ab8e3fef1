/** The lines of the bill in the pane: counters that filter, and a click that selects the line in Excel. */
import type { JobPlan } from "../../../job/job-plan.ts";
import { lateLines } from "../../../papers/job-figures.ts";
import { lineList } from "../../../papers/line-list.ts";
import { missing } from "../../../units/certain.ts";
import { element } from "../dom/element.ts";
import { Counters, type Filter } from "../line/counters.ts";
import { MARKS } from "../line/line-view.ts";

export class JobLines {
  readonly element = element("div", { class: "job-lines", hidden: "" });
  readonly #list = element("ul", { "aria-label": "Lines of the bill", tabindex: "0" });
  readonly #counters: Counters;
  #job: JobPlan | undefined;

  constructor() {
    const numbers = element("fieldset", { class: "counters", "aria-label": "Lines shown" });
    this.#counters = new Counters(numbers, (filter) => this.#show(filter));
    this.element.append(numbers, this.#list);
  }

  update(job: JobPlan | undefined): void {
    if (job === this.#job) return;
    this.#job = job;
    this.element.hidden = job === undefined;
    if (!job) return;
    this.#counters.late(undefined);
    this.#counters.update(lineList(job.plan));
    this.#show(this.#counters.filter);
  }

  #show(filter: Filter | undefined): void {
    // Dates need every cut plan: they are worked out when somebody asks which lines are late.
    if (filter === "late") this.#counters.late((lateLines((this.#job ?? missing()).plan) ?? []).map(({ row }) => row));
    const shown = filter === undefined ? [] : this.#counters.chosen();
    this.#list.hidden = shown.length === 0;
    this.#list.replaceChildren(
      ...shown.map(({ row, part, status, reason }) => {
        const button = element(
          "button",
          { type: "button", class: status },
          element("span", { class: "mark", "aria-hidden": "true" }, MARKS[status]),
          " ",
          element("b", {}, part),
          reason === "" ? "" : ` ${reason}`,
        );
        button.addEventListener("click", () => void this.#select(row));
        return element("li", {}, button);
      }),
    );
  }

  /** The pane follows the selection. */
  async #select(row: number): Promise<void> {
    const { table } = this.#job ?? missing();
    await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItem(table.sheet.name);
      sheet.activate();
      sheet.getRangeByIndexes(table.top + row - 1, table.left, 1, 1).select();
      await context.sync();
    });
  }
}
