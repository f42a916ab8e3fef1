/**
 * One sheet as a grid to look at and to type in. Only the rows in sight are drawn; headings of tables and the first
 * column stay. It is one stop of the Tab key, and Escape lets it go.
 */
import { firstOf, itemAt } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import { CellEditor } from "./cell-editor.ts";
import { listenToClipboard } from "./clipboard.ts";
import { Columns } from "./columns.ts";
import { fillCell } from "./fill-cell.ts";
import { meaningOf } from "./grid-keys.ts";
import type { ChangedView, SheetView, ShownCell } from "./protocol.ts";
import { RowHeights } from "./row-heights.ts";
import { idOf, type Spot, sameSpot, spotOf, steps, type TypedSpot } from "./spot.ts";

export interface GridEvents {
  selected(spot: Spot): void;
  /** Answers what editing begins with, or undefined where the cell cannot be typed over. */
  begin(spot: Spot): Promise<string | undefined>;
  /** Answers whether it was taken. */
  typed(cells: readonly TypedSpot[]): Promise<boolean>;
  /** Another table of the same group. */
  turn(step: 1 | -1): void;
  row(change: "insert" | "remove"): void;
}

/** Rows drawn beyond those in sight. */
const MORE_ROWS = 8;
const NUMBERS_WIDTH = 44; // px, of the column of row numbers; as in view.css
const LETTERS_HEIGHT = 22;

export class SheetGrid {
  readonly element = element("div", { class: "grid" });
  readonly #table = element("table", { role: "grid", tabindex: "0" });
  readonly #body = element("tbody");
  readonly #heights: RowHeights;
  readonly #drawn = new Map<number, HTMLTableRowElement>();
  /** Rows that are not drawn, as high as they are together. */
  readonly #gaps: HTMLElement[] = [];
  readonly #cells: (ShownCell | null)[][];
  readonly #columns: Columns;
  #faults: ReadonlyMap<string, string> = new Map();
  #active: Spot = { row: 0, column: 0 };
  /** The other corner of what is selected. */
  #corner: Spot = { row: 0, column: 0 };
  #editor: CellEditor | undefined;
  /** Escape was pressed: the next Tab leaves. */
  #isLoose = false;

  constructor(
    name: string,
    private readonly view: SheetView,
    private readonly events: GridEvents,
  ) {
    this.#cells = view.cells.map((row) => [...row]);
    this.#heights = new RowHeights(view);
    this.#columns = new Columns(view);
    this.#table.setAttribute("aria-label", name);
    this.#table.setAttribute("aria-rowcount", String(view.rows));
    this.#table.setAttribute("aria-colcount", String(view.columns));
    const { columns, letters } = this.#columns.head(NUMBERS_WIDTH);
    this.#table.append(columns, element("thead", {}, letters), this.#body);
    this.#table.style.width = `${NUMBERS_WIDTH + this.#columns.widths.reduce((sum, width) => sum + width, 0)}px`;
    this.element.append(this.#table);
    this.element.addEventListener("scroll", () => this.#draw());
    new ResizeObserver(() => this.#draw()).observe(this.element);
    this.#active = this.#corner = { row: (view.headings[0] ?? -1) + 1, column: 0 };
    this.#listen();
  }

  get active(): Spot {
    return this.#active;
  }

  focus(): void {
    this.#table.focus({ preventScroll: true });
  }

  /** Shows what has changed. */
  update(changes: readonly ChangedView[]): void {
    for (const { row, column, cell } of changes) {
      this.#cells[row] ??= [];
      this.#cells[row][column] = cell;
      this.#refresh({ row, column });
    }
  }

  /** Cells that cannot be read, and what may stand there. */
  mark(faults: readonly (Spot & { readonly says: string })[]): void {
    const before = this.#faults;
    this.#faults = new Map(faults.map(({ row, column, says }) => [`${row} ${column}`, says]));
    for (const key of new Set([...before.keys(), ...this.#faults.keys()])) {
      const [row = 0, column = 0] = key.split(" ").map(Number);
      this.#refresh({ row, column });
    }
  }

  /** Brings a cell into sight and selects it. */
  select(spot: Spot, keepCorner = false): void {
    const row = Math.max(0, Math.min(spot.row, this.view.rows - 1));
    const column = Math.max(0, Math.min(spot.column, this.view.columns - 1));
    const touched = this.#picked();
    this.#active = { row, column };
    if (!keepCorner) this.#corner = this.#active;
    this.#draw(); // without rows there is nothing to scroll
    this.#reveal();
    this.#draw();
    for (const at of [...touched, ...this.#picked()]) {
      const box = this.#boxAt(at);
      if (box) this.#dress(box, at);
    }
    this.#table.setAttribute("aria-activedescendant", idOf(this.#active));
    this.events.selected(this.#active);
  }

  #draw(): void {
    const top = this.element.scrollTop;
    const height = this.element.clientHeight;
    if (height === 0) return;
    const from = Math.max(0, this.#heights.at(top) - MORE_ROWS);
    const to = Math.min(this.view.rows - 1, this.#heights.at(top + height) + MORE_ROWS);
    const heading = this.view.headings.findLast((row) => row <= this.#heights.at(top));
    const wanted = heading !== undefined && heading < from ? [heading] : [];
    for (let row = from; row <= to; row++) wanted.push(row);
    const kept = new Set(wanted);
    for (const row of this.#drawn.keys()) if (!kept.has(row) && row !== this.#editor?.spot.row) this.#drawn.delete(row);
    const rows: HTMLElement[] = [];
    let gaps = 0;
    const leave = (height: number) => {
      if (height <= 0) return;
      this.#gaps[gaps] ??= element("tr", { class: "gap", "aria-hidden": "true" });
      itemAt(this.#gaps, gaps).style.height = `${height}px`;
      rows.push(itemAt(this.#gaps, gaps++));
    };
    let end = 0;
    for (const row of [...new Set([...wanted, ...this.#drawn.keys()])].sort((a, b) => a - b)) {
      leave(this.#heights.top(row) - end);
      let drawn = this.#drawn.get(row);
      if (!drawn) {
        drawn = this.#drawRow(row);
        this.#drawn.set(row, drawn);
      }
      rows.push(drawn);
      end = this.#heights.top(row + 1);
    }
    leave(this.#heights.top(this.view.rows) - end);
    // What stands there already is not touched: it may have the focus, or be under a click.
    if (rows.length !== this.#body.childElementCount || rows.some((one, i) => one !== this.#body.children[i]))
      this.#body.replaceChildren(...rows);
  }

  #drawRow(row: number): HTMLTableRowElement {
    const isHeading = this.view.headings.includes(row);
    const drawn = element("tr", { "aria-rowindex": String(row + 1), "data-row": String(row) });
    if (isHeading) drawn.className = "heading";
    drawn.append(element("th", { scope: "row" }, String(row + 1)));
    if (this.#heights.isNote(row)) {
      const note = element("td", { class: "note", colspan: String(this.view.columns), id: idOf({ row, column: 0 }) });
      note.append(element("div", {}, firstOf(itemAt(this.#cells, row))?.text ?? ""));
      note.style.height = `${this.#heights.of(row)}px`;
      drawn.append(note);
      this.#dress(note, { row, column: 0 });
      return drawn;
    }
    for (let column = 0; column < this.view.columns; column++) {
      // A heading without words heads nothing.
      const box = isHeading && this.#cells[row]?.[column] ? element("th", { scope: "col" }) : element("td");
      box.id = idOf({ row, column });
      box.dataset["column"] = String(column);
      drawn.append(box);
      this.#fill(box, { row, column });
    }
    return drawn;
  }

  #boxAt({ row, column }: Spot): HTMLTableCellElement | undefined {
    return this.#drawn.get(row)?.cells[column + 1] as HTMLTableCellElement | undefined;
  }

  #refresh(spot: Spot): void {
    const box = this.#boxAt(spot);
    if (box && !this.#heights.isNote(spot.row) && !sameSpot(this.#editor?.spot, spot)) this.#fill(box, spot);
  }

  #fill(box: HTMLTableCellElement, spot: Spot): void {
    const cell = this.#cells[spot.row]?.[spot.column] ?? null;
    fillCell(box, cell, {
      look: this.view.looks[spot.row]?.[spot.column],
      fault: this.#faults.get(`${spot.row} ${spot.column}`),
      isRight: cell !== null && this.#columns.isRight(spot, cell),
    });
    this.#dress(box, spot);
  }

  #dress(box: HTMLElement, spot: Spot): void {
    box.classList.toggle("active", sameSpot(spot, this.#active));
    const { top, bottom, left, right } = this.#range();
    const isPicked = spot.row >= top && spot.row <= bottom && spot.column >= left && spot.column <= right;
    box.classList.toggle("picked", isPicked && (top !== bottom || left !== right));
  }

  #range() {
    const [a, b] = [this.#active, this.#corner];
    return {
      top: Math.min(a.row, b.row),
      bottom: Math.max(a.row, b.row),
      left: Math.min(a.column, b.column),
      right: Math.max(a.column, b.column),
    };
  }

  /** Selected cells that are drawn or could be copied. */
  #picked(): Spot[] {
    const { top, bottom, left, right } = this.#range();
    return steps(top, bottom).flatMap((row) => steps(left, right).map((column) => ({ row, column })));
  }

  /** Out from under headings and first column, which stay where they are. */
  #reveal(): void {
    const { row, column } = this.#active;
    const { element: box } = this;
    const under = this.view.headings.some((heading) => heading < row) ? this.#heights.tall : 0;
    const [top, bottom] = [this.#heights.top(row) - under, this.#heights.top(row + 1) + LETTERS_HEIGHT];
    box.scrollTop = Math.max(bottom - box.clientHeight, Math.min(box.scrollTop, top));
    if (column === 0) return;
    const [left, right] = this.#columns.edges(column);
    box.scrollLeft = Math.max(right + NUMBERS_WIDTH - box.clientWidth, Math.min(box.scrollLeft, left));
  }

  #edit(first?: string): void {
    const spot = this.#active;
    const box = this.#boxAt(spot);
    if (!box || this.#heights.isNote(spot.row)) return void this.events.begin(spot);
    this.#editor = new CellEditor(box, spot, first ?? this.#cells[spot.row]?.[spot.column]?.text ?? "", {
      isFresh: first !== undefined,
      begin: () => this.events.begin(spot),
      over: (typed, then) => {
        this.#editor = undefined;
        this.#refresh(spot);
        if (then) this.focus();
        if (typed !== undefined) void this.#type(spot, typed);
        if (then === "right") this.select({ ...spot, column: spot.column + 1 });
      },
    });
  }

  /** What is typed stands there at once, and goes again where it is refused. */
  async #type(spot: Spot, typed: string): Promise<void> {
    const show = (cell: ShownCell | null) => this.update([{ sheet: 0, ...spot, cell }]);
    const before = this.#cells[spot.row]?.[spot.column] ?? null;
    show(typed.trim() === "" ? null : { text: typed, kind: before?.kind ?? "text" });
    if (!(await this.events.typed([{ ...spot, typed }]))) show(before);
  }

  #listen(): void {
    this.#table.addEventListener("pointerdown", (event) => {
      const spot = spotOf(event.target);
      if (!spot || event.button !== 0 || sameSpot(this.#editor?.spot, spot)) return;
      this.select(spot, event.shiftKey);
    });
    this.#table.addEventListener("dblclick", (event) => {
      if (spotOf(event.target) && !this.#editor) this.#edit();
    });
    this.#table.addEventListener("keydown", (event) => this.#key(event));
    listenToClipboard(this.#table, {
      isOff: () => this.#editor !== undefined,
      copied: () => {
        const { top, bottom, left, right } = this.#range();
        const text = (row: number, column: number) => this.#cells[row]?.[column]?.text ?? "";
        return steps(top, bottom).map((row) => steps(left, right).map((column) => text(row, column)));
      },
      pasted: (rows) => {
        const { top, left } = this.#range();
        void this.events.typed(
          rows.flatMap((row, i) => row.map((typed, k) => ({ row: top + i, column: left + k, typed }))),
        );
      },
    });
  }

  #key(event: KeyboardEvent): void {
    if (this.#editor || event.target !== this.#table) return;
    const isLoose = this.#isLoose;
    if (event.key !== "Shift") this.#isLoose = event.key === "Escape";
    const meant = meaningOf(event, Math.max(1, Math.floor(this.element.clientHeight / this.#heights.usual) - 3));
    if (!meant || (event.key === "Tab" && isLoose)) return;
    event.preventDefault();
    event.stopPropagation();
    const { row, column } = this.#active;
    if (meant.do === "move") this.select({ row: row + meant.down, column: column + meant.right }, meant.extend);
    else if (meant.do === "turn") this.events.turn(meant.step);
    else if (meant.do === "row") this.events.row(meant.change);
    else if (meant.do === "clear") void this.events.typed(this.#picked().map((spot) => ({ ...spot, typed: "" })));
    else this.#edit(meant.first);
  }
}
