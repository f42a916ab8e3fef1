/** The workbook's own tables: tabs of one group at a time, what stands behind the selected cell, and the grid. */

import { cellName } from "../../sheet/formula/address.ts";
import { itemAt } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import { type GridEvents, SheetGrid } from "./grid.ts";
import type { Board, CellDetail, ChangedView, SheetName, SheetPlace, SheetView } from "./protocol.ts";
import type { Spot, TypedSpot } from "./spot.ts";

interface TableEvents {
  view(sheet: number): Promise<SheetView>;
  look(place: SheetPlace): Promise<CellDetail>;
  typed(cells: readonly (SheetPlace & { readonly typed: string })[]): Promise<boolean>;
  row(place: SheetPlace, change: "insert" | "remove"): void;
  say(words: string): void;
}

const HINT =
  "Type to change a cell, F2 to edit it, Enter takes it. A line typed right below a table belongs to it. Paste takes many cells.";

export class TablesView {
  readonly element = element("div", { class: "tables" });
  readonly #address = element("output", { id: "address" });
  readonly #content = element("span", { id: "content" }, HINT);
  readonly #place = element("div", { class: "sheet" });
  #names: readonly SheetName[] = [];
  #grids: (SheetGrid | undefined)[] = [];
  #faults: Board["faults"] = [];
  #open = 0;
  /** The other tables of the group, in the order of their tabs. */
  #beside: readonly number[] = [];

  constructor(
    private readonly events: TableEvents,
    /** Shows the tab of a table. */
    private readonly turnTo: (sheet: number) => void,
  ) {
    const button = (words: string, key: string, change: "insert" | "remove") => {
      const made = element("button", { type: "button", title: key }, words);
      made.addEventListener("click", () => {
        events.row(this.place, change);
        this.#grids[this.#open]?.focus();
      });
      return made;
    };
    this.element.append(
      element(
        "div",
        { class: "cell-line" },
        element("p", { id: "cell" }, this.#address, " ", this.#content),
        button("Insert row", "Insert", "insert"),
        button("Remove row", "Shift+Delete", "remove"),
      ),
      this.#place,
    );
  }

  get place(): SheetPlace {
    const { row, column } = this.#grids[this.#open]?.active ?? { row: 0, column: 0 };
    return { sheet: this.#open, row, column };
  }

  /** Another workbook, or the same one calculated anew. */
  reset(names: readonly SheetName[]): void {
    this.#names = names;
    this.#grids = [];
    this.#place.replaceChildren();
  }

  async show(sheet: number, spot?: Spot): Promise<void> {
    this.#open = sheet;
    const { group, name } = itemAt(this.#names, sheet);
    this.#beside = this.#names.flatMap((one, i) => (one.group === group ? [i] : []));
    let grid = this.#grids[sheet];
    if (!grid) {
      const view = await this.events.view(sheet);
      grid = this.#grids[sheet] ??= new SheetGrid(name, view, this.#gridEvents(sheet));
      grid.mark(this.#faults.filter((fault) => fault.sheet === sheet));
    }
    if (this.#open !== sheet) return; // the person has moved on
    this.#place.replaceChildren(grid.element);
    if (spot) grid.select(spot);
    else await this.look();
  }

  focus(): void {
    this.#grids[this.#open]?.focus();
  }

  update(changes: readonly ChangedView[], board: Board | undefined): void {
    this.#faults = board?.faults ?? [];
    this.#grids.forEach((grid, sheet) => {
      grid?.update(changes.filter((change) => change.sheet === sheet));
      grid?.mark(this.#faults.filter((fault) => fault.sheet === sheet));
    });
  }

  /** What stands behind the selected cell, said anew. */
  async look(): Promise<void> {
    const asked = this.place;
    this.#address.textContent = cellName(asked.row, asked.column);
    const { content, message } = await this.events.look(asked);
    if (!samePlace(asked, this.place)) return;
    const fault = this.#faults.find((one) => samePlace(one, asked))?.says ?? message;
    this.#content.replaceChildren(
      content === "" && !fault ? HINT : content,
      ...(fault ? [element("span", { class: "fault" }, ` ${fault}`)] : []),
    );
  }

  #gridEvents(sheet: number): GridEvents {
    return {
      selected: () => void this.look(),
      begin: async (spot: Spot) => {
        const { locked, content } = await this.events.look({ sheet, ...spot });
        if (locked) this.events.say(`This cell cannot be typed over: ${locked}.`);
        return locked ? undefined : content;
      },
      typed: (cells: readonly TypedSpot[]) => this.events.typed(cells.map((cell) => ({ sheet, ...cell }))),
      turn: async (step) => {
        const at = this.#beside.indexOf(this.#open);
        const next = itemAt(this.#beside, (at + step + this.#beside.length) % this.#beside.length);
        this.turnTo(next);
        await this.show(next);
        this.focus(); // the next key goes on from there
      },
      row: (change) => this.events.row(this.place, change),
    };
  }
}

const samePlace = (a: SheetPlace, b: SheetPlace): boolean =>
  a.sheet === b.sheet && a.row === b.row && a.column === b.column;
