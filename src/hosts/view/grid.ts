/** One sheet as a grid to look at and to type in. The component draws only the rows and columns in sight. */
import {
  type CellComponent,
  type ColumnDefinition,
  EditModule,
  FormatModule,
  FrozenColumnsModule,
  InteractionModule,
  KeybindingsModule,
  type RangeComponent,
  SelectRangeModule,
  Tabulator,
} from "tabulator-tables";
import { columnLetters } from "../../sheet/formula/address.ts";
import { element } from "../pane/dom/element.ts";
import type { ChangedView, SheetView, ShownCell } from "./protocol.ts";

Tabulator.registerModule([
  EditModule,
  FormatModule,
  FrozenColumnsModule,
  InteractionModule,
  KeybindingsModule,
  SelectRangeModule,
]);

export interface GridEvents {
  selected(row: number, column: number): void;
  /** Answers what editing begins with, or undefined where the cell cannot be typed over. */
  begin(row: number, column: number): Promise<string | undefined>;
  typed(row: number, column: number, text: string): void;
}

type GridRow = Record<string, ShownCell | number | null>;
const field = (column: number): string => `c${column}`;
/** The published types say one cell, the component gives rows of cells. */
const firstOf = (range: RangeComponent): CellComponent | undefined =>
  (range.getCells() as unknown as readonly (readonly CellComponent[])[])[0]?.[0];
const columnOf = (name: string): number => Number(name.slice(1));

export class SheetGrid {
  readonly #table: Tabulator;
  readonly #ready: Promise<void>;
  readonly #looks: SheetView["looks"];
  readonly #events: GridEvents;

  constructor(place: HTMLElement, sheet: SheetView, events: GridEvents) {
    this.#looks = sheet.looks;
    this.#events = events;
    const data = Array.from({ length: sheet.rows }, (_, row): GridRow => {
      const cells: GridRow = { id: row };
      for (let column = 0; column < sheet.columns; column++) cells[field(column)] = sheet.cells[row]?.[column] ?? null;
      return cells;
    });
    this.#table = new Tabulator(place, {
      data,
      index: "id",
      height: "100%",
      renderHorizontal: "virtual",
      rowHeight: 26,
      headerSortElement: "",
      selectableRange: 1,
      selectableRangeRows: true,
      editTriggerEvent: "dblclick",
      columnDefaults: { minWidth: 24 },
      rowHeader: {
        field: "id",
        width: 46,
        hozAlign: "right",
        frozen: true,
        formatter: "rownum",
      },
      columns: sheet.widths.map((width, column) => this.#column(column, width)),
    });
    this.#ready = new Promise((done) => {
      this.#table.on("tableBuilt", () => done());
    });
    void this.#ready.then(() => nameRoles(place));
    this.#table.on("cellClick", (_, cell) => this.#selected(cell));
    this.#table.on("rangeChanged", (range) => {
      const cell = firstOf(range);
      if (cell) this.#selected(cell);
    });
    place.addEventListener("keydown", (event) => this.#startByTyping(event));
  }

  /** Shows what has changed. */
  async update(changes: readonly ChangedView[]): Promise<void> {
    await this.#ready;
    const rows = new Map<number, GridRow>();
    for (const { row, column, cell } of changes) {
      const cells = rows.get(row) ?? { id: row };
      cells[field(column)] = cell;
      rows.set(row, cells);
    }
    await this.#table.updateData([...rows.values()]);
  }

  /** Brings a cell into sight and selects it. */
  async select(row: number, column: number): Promise<void> {
    await this.#ready;
    await this.#table.scrollToRow(row, "nearest", false);
    const cell = this.#table.getRow(row).getCell(field(column));
    this.#table.getRanges()[0]?.setBounds(cell, cell);
    this.#selected(cell);
  }

  redraw(): void {
    void this.#ready.then(() => this.#table.redraw(true));
  }

  #column(column: number, width: number): ColumnDefinition {
    return {
      title: columnLetters(column),
      field: field(column),
      width: Math.max(width, 24),
      formatter: (cell) => this.#draw(cell),
      editor: (cell, onRendered, _success, cancel) => this.#editor(cell, onRendered, cancel),
    };
  }

  #draw(cell: CellComponent): HTMLElement | string {
    const value = cell.getValue() as ShownCell | null;
    const row = cell.getRow().getIndex() as number;
    const column = columnOf(cell.getField());
    const look = this.#looks[row]?.[column];
    const box = cell.getElement();
    box.classList.toggle("bold", look?.bold ?? false);
    box.classList.toggle("shaded", look?.shaded ?? false);
    box.classList.toggle("number", value?.kind === "number");
    box.classList.toggle("error", value?.kind === "error");
    if (!value) return "";
    // Letters run on over empty cells to the right, as in every sheet.
    const runsOn = value.kind === "text" && (cell.getData() as GridRow)[field(column + 1)] === null;
    box.classList.toggle("runs-on", runsOn);
    const text = element("span", { title: value.message ?? value.text }, value.text);
    // The sentence stands on the cell itself, cut where the cell ends; whole when it is pointed at or selected.
    if (value.message) text.append(element("span", { class: "said" }, ` ${value.message}`));
    return text;
  }

  #editor(cell: CellComponent, onRendered: (run: () => void) => void, cancel: (value: unknown) => void): HTMLElement {
    const row = cell.getRow().getIndex() as number;
    const column = columnOf(cell.getField());
    const before = cell.getValue() as ShownCell | null;
    const input = element("input", {
      type: "text",
      "aria-label": `Cell ${columnLetters(column)}${row + 1}`,
      autocomplete: "off",
      spellcheck: "false",
    });
    let touched = this.#typedKey !== undefined;
    let over = false;
    const finish = (keep: boolean) => {
      if (over) return;
      over = true;
      cancel(before); // the engine's answer is what will be shown
      if (keep && touched) this.#events.typed(row, column, input.value);
    };
    input.value = this.#typedKey ?? before?.text ?? "";
    this.#typedKey = undefined;
    void this.#events.begin(row, column).then((content) => {
      if (content === undefined) finish(false);
      else if (!touched) {
        input.value = content;
        input.select();
      }
    });
    onRendered(() => {
      input.focus();
      if (!touched) input.select();
    });
    input.addEventListener("input", () => {
      touched = true;
    });
    input.addEventListener("blur", () => finish(true));
    input.addEventListener("keydown", (event) => {
      if (event.key !== "Enter" && event.key !== "Tab" && event.key !== "Escape") return;
      event.preventDefault();
      event.stopPropagation();
      finish(event.key !== "Escape");
    });
    return input;
  }

  #typedKey: string | undefined;

  /** A letter or figure on a selected cell begins to type over it, as in every grid. */
  #startByTyping(event: KeyboardEvent): void {
    if (event.target instanceof HTMLInputElement || event.ctrlKey || event.metaKey || event.altKey) return;
    const [range] = this.#table.getRanges();
    const cell = range && firstOf(range);
    if (!cell) return;
    if (event.key.length !== 1 && event.key !== "F2" && event.key !== "Delete") return;
    event.preventDefault();
    if (event.key === "Delete") {
      this.#events.typed(cell.getRow().getIndex() as number, columnOf(cell.getField()), "");
      return;
    }
    this.#typedKey = event.key === "F2" ? undefined : event.key;
    cell.edit(true);
    this.#typedKey = undefined;
  }

  #selected(cell: CellComponent): void {
    if (!/^c\d+$/.test(cell.getField())) return;
    this.#events.selected(cell.getRow().getIndex() as number, columnOf(cell.getField()));
  }
}

/** The part that scrolls can have the focus, so it must have a role that a grid may hold; what lies in it adds none. */
function nameRoles(grid: HTMLElement): void {
  grid.querySelector(".tabulator-tableholder")?.setAttribute("role", "rowgroup");
  grid.querySelector(".tabulator-table")?.setAttribute("role", "presentation");
}
