/** What the pane adds where a workbook is open in Excel: the selected line, and what it does to a workbook. */
import type { FixOffer } from "../../../job/fix-cells.ts";
import type { JobPlan } from "../../../job/job-plan.ts";
import { serialNow } from "../../../sheet/formula/serial-now.ts";
import { missing } from "../../../units/certain.ts";
import { element } from "../dom/element.ts";
import { agreement, lineView } from "../line/line-view.ts";
import { checkExcel } from "./check-excel.ts";
import { explainCell } from "./explain.ts";
import { freezeWorkbook } from "./freeze.ts";
import { insertHere } from "./insert.ts";
import { readBook } from "./read-book.ts";
import { recalculateAll } from "./recalculate.ts";
import { repairFormulas } from "./repair.ts";
import { type Task, TaskBar } from "./task.ts";
import { warnings } from "./warnings.ts";

export class WorkbookPane {
  readonly element: HTMLElement;
  readonly #bar = new TaskBar();
  readonly #undo = element("button", { type: "button", hidden: "" }, "Undo the fix");
  readonly #list = element("input", { type: "file", accept: ".csv,.txt,.tsv,.xlsx,.xlsm" }) as HTMLInputElement;
  readonly #line = element("div", { class: "selected" });
  readonly #warning = element("p", { class: "warning", role: "alert" });

  constructor() {
    this.element = element(
      "section",
      { "aria-label": "Workbook" },
      this.#warning,
      element(
        "div",
        { class: "actions" },
        this.#button("Start a bill", (task) => this.#startBill(task)),
        this.#button("Repair formulas", repairFormulas),
        this.#button("Freeze", (task) => freezeWorkbook(task, new Date())),
        this.#button("Explain this cell", explainCell),
        this.#button("Check this Excel", checkExcel),
        this.#button("Stuck? Recalculate all", recalculateAll),
      ),
      element("label", { class: "list" }, "Your part list, if you have one (CSV or a workbook): ", this.#list),
      this.#bar.element,
      this.#undo,
      this.#line,
    );
  }

  readonly insert = (formula: string): void => {
    void this.#bar.run((task) => insertHere(formula, task));
  };

  async start(): Promise<void> {
    try {
      await Excel.run(async (context) => {
        this.#warning.textContent = warnings(await readBook(context)).join(" ");
      });
      // Planning a bill is half of the page's code: the buttons do not wait for it.
      const { JobLines, SelectedLine } = await import(/* webpackChunkName: "line" */ "./selected-line.ts");
      const lines = new JobLines();
      this.#line.before(lines.element);
      const line = new SelectedLine((report, job, fix) => {
        lines.update(job);
        this.#line.replaceChildren(
          report
            ? lineView(report, fix, () => this.#ask(job, fix))
            : element(
                "p",
                { class: "hint" },
                job ? "Select a line of the bill to see it drawn and checked." : "No bill in this workbook yet.",
              ),
        );
      });
      await line.follow();
    } catch (problem) {
      this.#bar.say(problem instanceof Error ? problem.message : String(problem));
    }
  }

  #ask(job: JobPlan | undefined, fix: FixOffer | undefined): void {
    const asked = fix && agreement(fix, () => void this.#apply(job, fix));
    if (!asked) return void this.#apply(job, fix);
    this.#bar.say(...asked);
    asked[1].focus();
  }

  /** Until another one is applied the last fix can be taken back. */
  async #apply(job: JobPlan | undefined, fix: FixOffer | undefined): Promise<void> {
    if (!job || !fix || fix.lacks.length > 0) return;
    await this.#bar.run(async (task) => {
      const { applyFix } = await import(/* webpackChunkName: "line" */ "./apply-fix.ts");
      const { words, undo } = await applyFix(task, job, fix.cells);
      this.#undo.hidden = undo === undefined;
      this.#undo.onclick = () =>
        void this.#bar.run((again) => {
          this.#undo.hidden = true;
          return (undo ?? missing())(again);
        });
      return words;
    });
  }

  /** The job's sheets are loaded when they are asked for. */
  async #startBill(task: Task): Promise<string> {
    const { startBill } = await import(/* webpackChunkName: "start" */ "./start-bill.ts");
    const [file] = this.#list.files ?? [];
    const list = file && { name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
    return startBill(task, list, Math.floor(serialNow(new Date())));
  }

  #button(words: string, action: (task: Task) => Promise<string>): HTMLButtonElement {
    const button = element("button", { type: "button" }, words);
    button.addEventListener("click", () => void this.#bar.run(action));
    return button;
  }
}
