/** A workbook open in the page: what it shows, what typing changes, what stands behind a cell, its bytes to save. */

import type { Book } from "../../job/book.ts";
import type { JobPlan } from "../../job/job-plan.ts";
import { bookOf } from "../../job/workbook-book.ts";
import type { CustomFunctions } from "../../sheet/evaluate/custom-functions.ts";
import { keep } from "../../sheet/evaluate/keep.ts";
import { cellName } from "../../sheet/formula/address.ts";
import { serialNow } from "../../sheet/formula/serial-now.ts";
import { Calculator } from "../../sheet/graph/calculator.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import type { Sheet } from "../../sheet/workbook/sheet.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import type { CellValue } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import { shownCell } from "./cell-text.ts";
import { editedBytes, type TypedCell } from "./edited-bytes.ts";
import { grownTable } from "./grown-table.ts";
import { readLooks, type SheetLooks, sheetLooks } from "./looks.ts";
import type { CellDetail, ChangedView, DoneEdit, Edit, Looked, Place, SheetView } from "./protocol.ts";
import type { Trade } from "./trade.ts";
import { asTyped, typedValue } from "./typed-value.ts";

/** Why a long call keeps its old answer for now. */
const LATER = "volatile";

/** Empty rows and columns round what is filled, so that there is room to type. */
const ROOM = { rows: 20, columns: 2 };

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
  #book: Book | undefined;
  #job: JobPlan | undefined | null = null;

  /** Throws FileRefusal on a file that is no readable workbook. */
  constructor(
    bytes: Uint8Array,
    private readonly trade: Trade,
    edits: readonly Edit[] = [],
  ) {
    this.#open(bytes);
    for (const edit of edits) this.#change(edit);
    this.#shown = this.#workbook.sheets.map(copyOf);
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

  views(): SheetView[] {
    return this.#workbook.sheets.map((sheet, index) => {
      const looks = this.#looks[index]!;
      const [rows, columns] = [sheet.lastRow + 1 + ROOM.rows, sheet.lastColumn + 1 + ROOM.columns];
      const each = <T>(make: (row: number, column: number) => T): T[][] =>
        Array.from({ length: sheet.lastRow + 1 }, (_, row) =>
          Array.from({ length: sheet.lastColumn + 1 }, (_, column) => make(row, column)),
        );
      return {
        name: sheet.name,
        rows,
        columns,
        widths: Array.from({ length: columns }, (_, column) => Math.round(looks.width(column) * 7 + 5)),
        cells: each((row, column) => shownCell(sheet.values[column]?.[row], looks.at(row, column).format)),
        looks: each((row, column) => {
          const { bold, shaded } = looks.at(row, column);
          return bold || shaded ? { bold, shaded } : undefined;
        }),
      };
    });
  }

  /** The sheet that holds the bill, else the first. */
  firstSheet(): number {
    const name = this.#jobNow()?.table.sheet.name;
    return Math.max(
      0,
      this.#workbook.sheets.findIndex((sheet) => sheet.name === name),
    );
  }

  /** What the shop's tables lack, and formulas that keep their old value because the engine cannot calculate them. */
  notes(): string[] {
    const kept = [...this.#calculator.formulas()].filter(
      (cell) => (cell.kept && cell.kept.reason !== LATER) || cell.circular,
    );
    const names = kept
      .slice(0, 3)
      .map((cell) => `${this.#workbook.sheets[cell.sheet]!.name}!${cellName(cell.row, cell.column)}`);
    return [
      ...(kept.length > 0
        ? [
            `${kept.length} cells keep the value the file holds, because they cannot be calculated here: ${names.join(", ")}`,
          ]
        : []),
      ...(this.#jobNow()?.missing ?? []),
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
    this.#book = undefined;
    this.#job = null;
    return this.#changes();
  }

  /** Throws Refusal where the cell or what is typed is not taken; nothing has changed then. */
  edit(...edits: readonly Edit[]): ChangedView[] {
    for (const edit of edits) this.#change(edit);
    return this.#changes();
  }

  /** Types what would mend the line that stands there. Throws Refusal where nothing does, or the bill lacks its column. */
  fix(place: Place): { changes: ChangedView[]; done: DoneEdit[] | undefined; says: string } {
    const before = this.#jobNow();
    const offer = this.look(place).fix;
    if (!before || !offer || !("cells" in offer))
      throw wrong(
        "line",
        "one with a fix that the bill has columns for",
        offer && "lacks" in offer ? offer.lacks : null,
      );
    const sheet = this.#workbook.sheets.findIndex(({ name }) => name === before.table.sheet.name);
    const edits = offer.cells.map(({ row, column, value }) => {
      const at = { sheet, row, column };
      return { ...at, typed: asTyped(value, this.#isText(at)) ?? "" };
    });
    const done = this.asDone(edits);
    const changes = this.edit(...edits);
    return { changes, done, says: this.trade.changesSay(before.plan, this.#jobNow()!.plan) };
  }

  /** With what would take them back; undefined where one of them cannot be. */
  asDone(edits: readonly Edit[]): DoneEdit[] | undefined {
    const done = edits.map(({ typed, ...at }) => ({ ...at, before: this.typed(at), after: typed }));
    return done.every((edit): edit is DoneEdit => edit.before !== undefined) ? done : undefined;
  }

  /** What would have to be typed for what the cell holds now. */
  typed({ sheet, row, column }: Place): string | undefined {
    return asTyped(this.#workbook.sheets[sheet]?.values[column]?.[row], this.#isText({ sheet, row, column }));
  }

  #changes(): ChangedView[] {
    return this.#workbook.sheets.flatMap((sheet, index) => this.#differences(sheet, index));
  }

  #change({ sheet, row, column, typed }: Edit): void {
    const locked = this.#locked({ sheet, row, column });
    if (locked) throw wrong("cell", "one that is typed, not calculated", cellName(row, column), locked);
    const value = typedValue(typed, this.#isText({ sheet, row, column }));
    const grown = value === null ? undefined : grownTable(this.#workbook, { sheet, row, column });
    if (grown) {
      // The table's formulas are read anew; what was put off stays put off.
      this.#open(editedBytes(this.#workbook, [...this.#typed.values()], grown));
      this.#typed.clear();
      this.#hasGrown = true;
    }
    this.#calculator.change([{ sheet, row, column, value }]);
    this.#typed.set(`${sheet} ${row} ${column}`, { sheet, row, column, value });
    this.#book = undefined;
    this.#job = null;
  }

  /** A cell whose format keeps what is typed as text. */
  #isText({ sheet, row, column }: Place): boolean {
    return this.#looks[sheet]?.at(row, column).format === "@";
  }

  #differences(sheet: Sheet, index: number): ChangedView[] {
    const before = this.#shown[index]!;
    const found: ChangedView[] = [];
    const columns = Math.max(before.length, sheet.values.length);
    for (let column = 0; column < columns; column++) {
      const [was, is] = [before[column] ?? [], sheet.values[column] ?? []];
      for (let row = 0; row < Math.max(was.length, is.length); row++) {
        if (Object.is(was[row], is[row])) continue;
        const cell = shownCell(is[row], this.#looks[index]!.at(row, column).format);
        found.push({ sheet: index, row, column, cell });
      }
      before[column] = [...is];
    }
    return found;
  }

  look({ sheet, row, column }: Place): Looked {
    const value = this.#workbook.sheets[sheet]?.values[column]?.[row];
    const formula = this.#calculator.grid.formulaAt(sheet, row, column);
    const shown = shownCell(value, undefined);
    const detail: CellDetail = {
      address: cellName(row, column),
      content:
        formula === undefined ? (typeof value === "number" ? String(value) : (shown?.text ?? "")) : readable(formula),
      locked: this.#locked({ sheet, row, column }),
      message: shown?.message,
    };
    const job = this.#jobNow();
    const line = job && this.trade.billRowAt(job, this.#bookNow()[sheet]!, row);
    return {
      detail,
      report: job && line && this.trade.lineReport(line, job.plan),
      fix: job && line && this.trade.fixOffer(job, line),
    };
  }

  /** The file's own bytes where nothing was typed. Else no answer that was put off leaves with it. */
  save(): Uint8Array {
    if (this.#typed.size === 0 && !this.#hasGrown) return this.#workbook.package.bytes;
    this.finish();
    return editedBytes(this.#workbook, [...this.#typed.values()]);
  }

  #bookNow(): Book {
    this.#book ??= bookOf(this.#workbook);
    return this.#book;
  }

  /** After an edit another plan; what the edit did not touch of it is known. */
  #jobNow(): JobPlan | undefined {
    if (this.#job === null) this.#job = this.trade.jobPlan(this.#bookNow());
    return this.#job;
  }

  /** Why a cell cannot be typed over. */
  #locked({ sheet, row, column }: Place): string | undefined {
    const at = this.#workbook.sheets[sheet];
    if (!at || at.part === "") return "this sheet has no cells";
    const owner = at.owners[column]?.[row];
    if (owner)
      return owner.row === row && owner.column === column
        ? "the cell holds a formula, and formulas are changed in Excel"
        : `it is filled by the formula in ${cellName(owner.row, owner.column)}`;
    const table = this.#workbook.tables.find(
      ({ sheet: on, top, left, right }) => on === sheet && row === top && column >= left && column <= right,
    );
    return table ? `it is the header of the table ${table.name}` : undefined;
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
