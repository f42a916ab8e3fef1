/** A workbook open in the page: what it shows, what typing changes, what stands behind a cell, its bytes to save. */

import type { Book } from "../../job/book.ts";
import type { FixOffer } from "../../job/fix-cells.ts";
import type { JobPlan } from "../../job/job-plan.ts";
import { bookOf } from "../../job/workbook-book.ts";
import type { CutSheet } from "../../papers/cut-sheets.ts";
import type { JobFigures } from "../../papers/job-figures.ts";
import type { LineReport } from "../../papers/line-report.ts";
import type { CustomFunctions } from "../../sheet/evaluate/custom-functions.ts";
import { keep } from "../../sheet/evaluate/keep.ts";
import { cellName } from "../../sheet/formula/address.ts";
import { serialNow } from "../../sheet/formula/serial-now.ts";
import { Calculator } from "../../sheet/graph/calculator.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import type { Sheet } from "../../sheet/workbook/sheet.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import type { CellValue } from "../../units/cell.ts";
import { itemAt, missing } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";
import { boardOf, headerOf, withUnits } from "./board.ts";
import { shownCell } from "./cell-text.ts";
import { editedBytes, type TypedCell } from "./edited-bytes.ts";
import { grownTable } from "./grown-table.ts";
import { lockedBy } from "./locked-by.ts";
import { readLooks, type SheetLooks, sheetLooks } from "./looks.ts";
import type {
  Board,
  CellDetail,
  ChangedView,
  DoneEdit,
  Edit,
  Looked,
  SheetName,
  SheetPlace,
  SheetView,
} from "./protocol.ts";
import { rowEdits } from "./row-edits.ts";
import { groupOf, sheetView } from "./sheet-view.ts";
import type { Trade } from "./trade.ts";
import { asTyped, typedValue } from "./typed-value.ts";
import { widerTable, withColumns } from "./wider-table.ts";

/** Why a long call keeps its old answer for now. */
const LATER = "volatile";

export class Session {
  #workbook!: Workbook;
  #calculator!: Calculator;
  #looks!: readonly SheetLooks[];
  /** Values as last shown, a copy of each sheet. */
  readonly #shown: (CellValue | undefined)[][][];
  readonly #typed = new Map<string, TypedCell>();
  /** Long calls keep their old answer until they are asked for; what stands here is then calculated again. */
  #postpones = true;
  #waits = false;
  /** The bytes are not the file's own any more. */
  #hasGrown = false;
  #book: Book = [];
  #isBookNow = false;
  #job: JobPlan | undefined | null = null;

  /** Throws FileRefusal on a file that cannot be read as a workbook. */
  constructor(
    bytes: Uint8Array,
    private readonly trade: Trade,
    edits: readonly (readonly Edit[])[] = [],
  ) {
    this.#open(bytes);
    this.#shown = this.#workbook.sheets.map(copyOf);
    for (const each of edits) this.edit(...each);
  }

  #open(bytes: Uint8Array): void {
    this.#workbook = readWorkbook(bytes);
    const functions: CustomFunctions = {
      ...this.trade.functions,
      call: (name, args) => {
        if (!this.#postpones || !this.trade.isLong(name)) return this.trade.functions.call(name, args);
        this.#waits = true;
        return keep(LATER, name);
      },
    };
    this.#calculator = new Calculator(this.#workbook, { functions, now: serialNow(new Date()) });
    this.#calculator.calculateAll();
    const looks = readLooks(this.#workbook);
    this.#looks = this.#workbook.sheets.map((sheet) =>
      sheetLooks(sheet, this.#workbook.sheetText.get(sheet.part), looks),
    );
  }

  names(): SheetName[] {
    return this.#workbook.sheets.map(({ name }) => ({ name, group: groupOf(name) }));
  }

  view(index: number): SheetView {
    const sheet = itemAt(this.#workbook.sheets, index);
    const view = sheetView(this.#workbook, sheet, itemAt(this.#looks, index));
    const job = this.#jobNow();
    return job && job.table.sheet.name === sheet.name ? withUnits(view, job, this.trade.columnUnit) : view;
  }

  /** The bill as it is now; undefined where there is none. */
  board(): Board | undefined {
    const job = this.#jobNow();
    return job && boardOf(job, this.#workbook, this.trade.lineList(job.plan));
  }

  figures(): JobFigures | undefined {
    const job = this.#jobNow();
    return job && this.trade.jobFigures(job.plan, new Date().toISOString().slice(0, 10));
  }

  cuts(): readonly CutSheet[] {
    const job = this.#jobNow();
    return job ? this.trade.cutSheets(job.plan) : [];
  }

  /** Formulas that keep their old value because the engine cannot calculate them. */
  notes(): string[] {
    const kept = [...this.#calculator.formulas()].filter(
      (cell) => (cell.kept && cell.kept.reason !== LATER) || cell.circular,
    );
    const names = kept
      .slice(0, 3)
      .map((cell) => `${itemAt(this.#workbook.sheets, cell.sheet).name}!${cellName(cell.row, cell.column)}`);
    return [
      ...(kept.length > 0
        ? [
            `${kept.length} cells keep the value the file holds, because they cannot be calculated here: ${names.join(", ")}`,
          ]
        : []),
    ];
  }

  /** Whether a long call still has its old answer. */
  get waits(): boolean {
    return this.#waits;
  }

  /** Calculates what was put off, and everything that reads it. */
  finish(): ChangedView[] {
    if (!this.#waits) return [];
    this.#postpones = false;
    this.#waits = false;
    this.#calculator.calculateAll();
    this.#postpones = true;
    this.#isBookNow = false;
    this.#job = null;
    return this.#changes();
  }

  /** Throws Refusal where the cell or what is typed is not taken; nothing has changed then. */
  edit(...edits: readonly Edit[]): ChangedView[] {
    // All or none: what is refused is found before anything is typed.
    const typed = this.#read(edits);
    this.#makeRoom(typed);
    for (const cell of typed) this.#typed.set(`${cell.sheet} ${cell.row} ${cell.column}`, cell);
    this.#calculator.change(typed);
    this.#isBookNow = false;
    this.#job = null;
    return this.#changes();
  }

  /** Types what would mend the line. Throws Refusal where nothing does, or the bill lacks its column. */
  fix(row: number): { changes: ChangedView[]; done: DoneEdit[] | undefined; says: string } {
    const before = this.#jobNow();
    const offer = this.line(row).fix;
    if (!before || !offer || offer.lacks.length > 0)
      throw wrong("line", "one with a fix that the bill has columns for", offer?.lacks.join(" and ") ?? null);
    const { sheet } = headerOf(before, this.#workbook);
    const edits = offer.cells.map(({ row, column, value }) => {
      const at = { sheet, row, column };
      return { ...at, typed: asTyped(value, this.#isText(at)) ?? "" };
    });
    const done = this.asDone(edits);
    const changes = this.edit(...edits);
    return { changes, done, says: this.trade.changesSay(before.plan, (this.#jobNow() ?? missing()).plan) };
  }

  /** What is said of a line of the bill, its header being row 1. */
  line(row: number): { report: LineReport | undefined; fix: FixOffer | undefined } {
    const job = this.#jobNow();
    const line = job?.plan.lines.find((each) => each.row === row);
    const offer = job && line && this.trade.fixOffer(job, line);
    return {
      report: job && line && this.trade.lineReport(line, job.plan),
      fix: job && offer && withColumns(this.#workbook, offer, headerOf(job, this.#workbook)),
    };
  }

  /** The edits that put an empty row into the table that stands there, or take a row out of it. */
  rowEdits(place: SheetPlace, change: "insert" | "remove"): Edit[] {
    return rowEdits(this.#workbook, place, change, (at) => this.typed(at) ?? "");
  }

  /** With what would take them back; undefined where one of them cannot be. */
  asDone(edits: readonly Edit[]): DoneEdit[] | undefined {
    const done = edits.map(({ typed, ...at }) => ({ ...at, before: this.typed(at), after: typed }));
    return done.every((edit): edit is DoneEdit => edit.before !== undefined) ? done : undefined;
  }

  /** What would have to be typed for what the cell holds now. */
  typed({ sheet, row, column }: SheetPlace): string | undefined {
    return asTyped(this.#workbook.sheets[sheet]?.values[column]?.[row], this.#isText({ sheet, row, column }));
  }

  #changes(): ChangedView[] {
    return this.#workbook.sheets.flatMap((sheet, index) => this.#differences(sheet, index));
  }

  #read(edits: readonly Edit[]): TypedCell[] {
    const cells = edits.map(({ typed, ...at }) => ({ ...at, value: typedValue(typed, this.#isText(at)) }));
    for (const cell of cells) {
      const locked = lockedBy(this.#workbook, cell);
      if (locked && !widerTable(this.#workbook, cell, cells))
        throw wrong("cell", "one that is typed, not calculated", cellName(cell.row, cell.column), locked);
    }
    return cells;
  }

  /** Tables grow by what is typed right below them, or as a heading right of them. */
  #makeRoom(typed: readonly TypedCell[]): void {
    const filled = typed.filter(({ value }) => value !== null);
    for (;;) {
      const grown =
        filled.map((cell) => grownTable(this.#workbook, cell, filled)).find((table) => table) ??
        typed.map((cell) => widerTable(this.#workbook, cell, typed)).find((table) => table);
      if (!grown) return;
      // The table's formulas are read anew; what was put off stays put off.
      this.#open(editedBytes(this.#workbook, [...this.#typed.values()], grown));
      this.#typed.clear();
      this.#hasGrown = true;
    }
  }

  /** A cell whose format keeps what is typed as text. */
  #isText({ sheet, row, column }: SheetPlace): boolean {
    return this.#looks[sheet]?.at(row, column).format === "@";
  }

  #differences(sheet: Sheet, index: number): ChangedView[] {
    const before = itemAt(this.#shown, index);
    const found: ChangedView[] = [];
    const columns = Math.max(before.length, sheet.values.length);
    for (let column = 0; column < columns; column++) {
      const [was, is] = [before[column] ?? [], sheet.values[column] ?? []];
      for (let row = 0; row < Math.max(was.length, is.length); row++) {
        if (Object.is(was[row], is[row])) continue;
        const cell = shownCell(is[row], itemAt(this.#looks, index).at(row, column).format);
        found.push({ sheet: index, row, column, cell });
      }
      before[column] = [...is];
    }
    return found;
  }

  look({ sheet, row, column }: SheetPlace): Looked {
    const value = this.#workbook.sheets[sheet]?.values[column]?.[row];
    const formula = this.#calculator.grid.formulaAt(sheet, row, column);
    const shown = shownCell(value, undefined);
    const detail: CellDetail = {
      address: cellName(row, column),
      content:
        formula === undefined ? (typeof value === "number" ? String(value) : (shown?.text ?? "")) : readable(formula),
      locked: lockedBy(this.#workbook, { sheet, row, column }),
      message: shown?.message,
    };
    const job = this.#jobNow();
    return { detail, line: job && this.trade.billRowAt(job, itemAt(this.#bookNow(), sheet), row)?.row };
  }

  /** The file's own bytes where nothing was typed. Else no answer that was put off leaves with it. */
  save(): Uint8Array {
    if (this.#typed.size === 0 && !this.#hasGrown) return this.#workbook.package.bytes;
    this.finish();
    return editedBytes(this.#workbook, [...this.#typed.values()]);
  }

  #bookNow(): Book {
    if (!this.#isBookNow) this.#book = bookOf(this.#workbook, this.#book);
    this.#isBookNow = true;
    return this.#book;
  }

  /** After an edit another plan; what the edit did not touch of it is known. */
  #jobNow(): JobPlan | undefined {
    if (this.#job === null) this.#job = this.trade.jobPlan(this.#bookNow());
    return this.#job;
  }
}

const copyOf = ({ values }: Sheet): (CellValue | undefined)[][] =>
  Array.from(values, (column) => (column ? [...column] : []));

/** As Excel shows it: SHOP.BEND.TONNAGE instead of the stored _xldudf_SHOP_BEND_TONNAGE. */
const readable = (formula: string): string =>
  formula
    .replace(/(?:\[\d+\]!)?_xldudf_([A-Z0-9_]+)/gi, (_, name: string) => name.replaceAll("_", "."))
    .replace(/_xlfn\.ANCHORARRAY\(([^()]+)\)/g, "$1#")
    .replace(/_xl(?:fn|ws|pm)\./g, "");
