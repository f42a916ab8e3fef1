import type { CellValue } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import type { CustomFunctions } from "../evaluate/custom-functions.ts";
import { Frame } from "../evaluate/frame.ts";
import { Keep } from "../evaluate/keep.ts";
import { dereference } from "../evaluate/reference.ts";
import type { Value } from "../evaluate/value.ts";
import type { Area } from "../formula/address.ts";
import { ACTIVE, DONE, type FormulaCell, NEW } from "../workbook/formula-cell.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { coverage, Dependants } from "./dependants.ts";
import { iterate } from "./iterate.ts";
import { namedElsewhere } from "./named-elsewhere.ts";
import { Pending, PendingCells } from "./pending.ts";
import { precedentAreas } from "./precedent-areas.ts";
import { presentable, presentableAll, single } from "./presentable.ts";
import { claimStored, fillArray, spill } from "./spill.ts";
import { Templates } from "./templates.ts";
import { fillDataTable } from "./what-if.ts";
import { WorkbookGrid } from "./workbook-grid.ts";

interface CalculatorOptions {
  readonly functions: CustomFunctions;
  /** Serial date for TODAY and NOW; undefined keeps their values. */
  readonly now?: number | undefined;
  /** Called now and then; may throw to stop a run that takes too long. */
  readonly tick?: (() => void) | undefined;
}

interface CellChange {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  /** null empties the cell. */
  readonly value: CellValue;
}

/** How often spills may resize one another before the engine gives up. */
const MOST_PASSES = 50;

/** From so many changed formulas on, and half of all, the whole is calculated: finding them would cost as much. */
const MANY = 10_000;

interface Step {
  readonly cell: FormulaCell;
  /** Put here because the cell below really read it, not only because it names it. */
  readonly read: boolean;
}

/**
 * Calculates a workbook. Every cell is evaluated after what it reads, with a stack of its own instead of recursion, so
 * a chain of a million cells is no deeper than one. First the references a formula names are made ready; a reference
 * that only shows while evaluating (OFFSET, a lookup's answer) throws Pending and the cell is tried again afterwards.
 */
export class Calculator {
  readonly grid: WorkbookGrid;
  readonly circles: FormulaCell[][] = [];
  private readonly templates: Templates;
  private dependants: Dependants | undefined;
  private resized: { sheet: number; area: Area }[] = [];
  private readonly dataTables: FormulaCell[] = [];
  /** How many formulas there are. */
  private count = 0;
  private ticks = 0;

  constructor(
    readonly workbook: Workbook,
    private readonly options: CalculatorOptions,
  ) {
    this.grid = new WorkbookGrid(workbook, options.functions, options.now);
    this.templates = new Templates(this.grid);
    for (const cell of this.formulas()) {
      this.count++;
      if (cell.kind !== "normal") claimStored(itemAt(workbook.sheets, cell.sheet), cell);
      if (cell.kind === "data-table") this.dataTables.push(cell);
    }
  }

  *formulas(): Generator<FormulaCell> {
    for (const sheet of this.workbook.sheets) yield* sheet.formulas;
  }

  /** Calculates every formula. */
  calculateAll(): void {
    const cells = [...this.formulas()];
    for (const cell of cells) this.templates.compile(cell);
    // Spills first: cells that read where they spill then read the new values.
    const formulas = cells.filter((cell) => cell.kind !== "data-table");
    formulas.sort((a, b) => Number(b.kind === "dynamic") - Number(a.kind === "dynamic"));
    this.run(formulas);
    this.iterate();
    this.fillDataTables(this.dataTables);
  }

  /** Where the workbook asks for iteration, circles are no circles. Those with spills stay what they are. */
  private iterate(): void {
    const { iteration, sheets } = this.workbook;
    if (!iteration || this.circles.length === 0) return;
    const circle = this.circles.flat();
    const readers = this.readers().all(circle.map((cell) => ({ sheet: cell.sheet, area: coverage(cell) })));
    const cells = [...new Set([...circle, ...readers])];
    if (cells.some((cell) => cell.kind !== "normal")) return;
    const done = iterate(
      cells,
      iteration,
      (cell) => {
        this.grid.end(); // what was remembered may have changed
        this.evaluate(cell);
      },
      (cell) => sheets[cell.sheet]?.values[cell.column]?.[cell.row],
    );
    if (done) this.circles.length = 0;
  }

  /** Data tables show other formulas under other inputs: they come after everything, then whoever reads them again. */
  private fillDataTables(tables: readonly FormulaCell[]): void {
    if (tables.length === 0) return;
    for (const table of tables) {
      try {
        fillDataTable(table, this.grid, this.workbook.sheets, this.readers());
      } catch (error) {
        if (error instanceof Keep) table.kept = error;
        else if (error instanceof RangeError)
          table.kept = { reason: "depth", detail: "chain behind the data table is too deep" };
        else throw error;
      }
    }
    const areas = tables.map((table) => ({ sheet: table.sheet, area: coverage(table) }));
    this.run([...this.readers().all(areas)]);
  }

  /** Changes input cells and recalculates what depends on them. Answers with the formulas that were evaluated. */
  change(changes: readonly CellChange[]): Set<FormulaCell> {
    for (const { sheet, row, column, value } of changes)
      this.workbook.sheets[sheet]?.set(row, column, value ?? undefined);
    const start = changes.map(({ sheet, row, column }) => ({
      sheet,
      area: { top: row, left: column, bottom: row, right: column },
    }));
    const dirty = this.readers().all(start, Math.max(MANY, this.count / 2));
    if (dirty === undefined) {
      this.calculateAll();
      return new Set(this.formulas());
    }
    this.run([...dirty]);
    this.iterate();
    this.fillDataTables(this.dataTables);
    return dirty;
  }

  /** Who reads what, from the last calculation. */
  readers(): Dependants {
    this.dependants ??= new Dependants(this.workbook.sheets, this.formulas());
    return this.dependants;
  }

  private run(cells: readonly FormulaCell[]): void {
    let round = cells;
    for (let pass = 0; round.length > 0 && pass < MOST_PASSES; pass++) {
      this.resized = [];
      this.runOnce(round);
      if (this.resized.length === 0) return;
      round = [...this.readers().all(this.resized)];
    }
  }

  private runOnce(cells: readonly FormulaCell[]): void {
    const pending = new PendingCells();
    for (const cell of cells) {
      cell.state = cell.template ? NEW : DONE;
      cell.lazy = false;
      if (cell.state === DONE) continue;
      pending.add(cell.sheet, cell.row, cell.column, cell);
      if (cell.covers) {
        for (let row = cell.covers.top; row <= cell.covers.bottom; row++) {
          for (let column = cell.covers.left; column <= cell.covers.right; column++) {
            if (row !== cell.row || column !== cell.column) pending.add(cell.sheet, row, column, cell);
          }
        }
      }
    }
    pending.seal();
    this.grid.begin(pending);
    for (const cell of cells) if (cell.state === NEW) this.settle(cell, pending);
    this.grid.end();
  }

  /** Evaluates a cell and, before it, everything it waits for. */
  private settle(first: FormulaCell, pending: PendingCells): void {
    const stack: Step[] = [{ cell: first, read: true }];
    first.state = ACTIVE;
    for (let top = stack.at(-1); top; top = stack.at(-1)) {
      const { cell } = top;
      const waiting = cell.lazy ? undefined : this.waitingPrecedent(cell, pending);
      if (waiting) {
        waiting.state = ACTIVE;
        stack.push({ cell: waiting, read: false });
        continue;
      }
      const blocked = this.evaluate(cell);
      if (blocked === undefined) {
        cell.state = DONE;
        stack.pop();
      } else if (blocked.state === NEW) {
        blocked.state = ACTIVE;
        stack.push({ cell: blocked, read: true });
      } else this.resolveCircle(stack, blocked);
    }
  }

  private waitingPrecedent(cell: FormulaCell, pending: PendingCells): FormulaCell | undefined {
    let found: FormulaCell | undefined;
    const { sheets } = this.workbook;
    precedentAreas(cell, (sheet, top, left, bottom, right) => {
      if (found) return;
      if (top === bottom && left === right) {
        const owner = sheets[sheet]?.owners[left]?.[top];
        if (owner !== undefined && owner.state === NEW) found = owner;
      } else found = pending.first(sheet, top, left, bottom, right, isActive);
    });
    return found;
  }

  /**
   * The cell on top reads one further down the stack. If every step between them was a real reading, that is a circle.
   * If some cell is there only because another names it without having read it (the branch of an IF that may not be
   * taken), go back to that other cell and evaluate it on demand.
   */
  private resolveCircle(stack: Step[], target: FormulaCell): void {
    const start = stack.findIndex((step) => step.cell === target);
    for (let i = start + 1; i < stack.length; i++) {
      if (itemAt(stack, i).read) continue;
      const before = itemAt(stack, i - 1).cell;
      if (before.lazy) continue;
      before.lazy = true;
      for (const step of stack.splice(i)) step.cell.state = NEW;
      return;
    }
    const circle = stack.splice(start).map((step) => step.cell);
    for (const cell of circle) {
      cell.circular = true;
      cell.state = DONE;
    }
    this.circles.push(circle);
  }

  /** Evaluates once. Answers with the cell it has to wait for, if any. */
  private evaluate(cell: FormulaCell): FormulaCell | undefined {
    if ((++this.ticks & 1023) === 0) this.options.tick?.();
    const template = cell.compiled;
    const { grid } = this;
    const frame = new Frame(grid, cell.sheet, cell.row, cell.column, cell.literals);
    if (template.dynamic) grid.record(cell);
    try {
      const value = template.code(frame);
      cell.kept = namedElsewhere(cell, value);
      cell.circular = false;
      if (!cell.kept) this.store(cell, value, frame);
    } catch (error) {
      if (error instanceof Pending) return error.cell;
      if (error instanceof Keep) cell.kept = error;
      else if (error instanceof RangeError) cell.kept = { reason: "depth", detail: "evaluation is nested too deeply" };
      else throw error;
    } finally {
      if (template.dynamic) {
        grid.record(undefined);
        this.dependants?.readsChanged();
      }
    }
    return undefined;
  }

  private store(cell: FormulaCell, result: Value, frame: Frame): void {
    const sheet = this.workbook.sheets[cell.sheet];
    if (!sheet) throw new Error(`no sheet ${cell.sheet}`);
    if (cell.kind === "normal") {
      sheet.set(cell.row, cell.column, presentable(single(result, frame)));
      return;
    }
    const plain = presentableAll(dereference(result, frame));
    if (cell.kind === "array") fillArray(sheet, cell, plain);
    else {
      const changed = spill(sheet, cell, plain);
      if (changed) this.resized.push({ sheet: cell.sheet, area: changed });
    }
  }

  /** Every cell whose value may be out of date because something it reads was kept or stands in a circle. */
  stale(): Set<FormulaCell> {
    const roots = [...this.formulas()].filter((cell) => cell.kept || cell.circular);
    if (roots.length === 0) return new Set();
    const stale = this.readers().all(roots.map((cell) => ({ sheet: cell.sheet, area: coverage(cell) })));
    for (const root of roots) stale.delete(root);
    return stale;
  }
}

const isActive = (cell: FormulaCell): boolean => cell.state === ACTIVE;
