/** The first view: how many lines stop, want a look or are clear, as filters; and the lines with the worst of each. */

import { SHAPE_BOX } from "../../papers/drawing/shape.ts";
import type { JobFigures } from "../../papers/job-figures.ts";
import type { ListedLine } from "../../papers/line-list.ts";
import { entryOf } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import { Counters } from "../pane/line/counters.ts";
import { MARKS } from "../pane/line/line-view.ts";
import type { Board } from "./protocol.ts";

export interface BoardEvents {
  /** A line of the bill by its row; `open`: it is to be seen at once, where there is room for one thing. */
  selected(row: number, open: boolean): void;
  fix(row: number): void;
  problem(words: string, hasProblems: boolean): void;
}

export class BoardView {
  readonly element = element("div", { class: "board" });
  /** Tables that the bill is not held against. */
  readonly #missing = element("ul", { class: "missing", "aria-label": "What is missing" });
  readonly #list = element("ul", { role: "listbox", tabindex: "0", "aria-label": "Lines of the bill" });
  readonly #options = new Map<number, { readonly option: HTMLElement; told: string }>();
  #lines: readonly ListedLine[] = [];
  readonly #counters: Counters;
  /** Rows in the order they are shown in: nothing moves by itself when a line gets better. */
  #shown: number[] = [];
  #selected: number | undefined;

  constructor(
    counters: HTMLElement,
    private readonly events: BoardEvents,
  ) {
    this.#counters = new Counters(counters, () => this.#filtered());
    const heads = ["", "Part", "Qty", "Shape", "Sheet and tools", "Worst reason"];
    this.element.append(
      this.#missing,
      element("div", { class: "heads", "aria-hidden": "true" }, ...heads.map((head) => element("span", {}, head))),
      this.#list,
    );
    this.#list.addEventListener("click", (event) => {
      const row = (event.target as Element).closest<HTMLElement>("[data-row]")?.dataset["row"];
      if (row !== undefined) this.select(Number(row), true);
    });
    this.#list.addEventListener("keydown", (event) => this.#key(event));
  }

  #late: ReadonlyMap<number, string> = new Map();

  get selected(): number | undefined {
    return this.#selected;
  }

  /** Another bill: the first problem is opened. */
  first(): void {
    this.#counters.filter = undefined;
    this.#choose();
    this.#draw();
    const [first] = this.#shown;
    if (first !== undefined) this.select(first);
  }

  /** The lines as they are now; what changed of them is drawn anew. */
  update({ lines, missing }: Board): void {
    this.#lines = lines;
    this.#counters.update(lines);
    this.#missing.replaceChildren(...missing.map((sentence) => element("li", {}, sentence)));
    const rows = new Set(lines.map(({ row }) => row));
    const known = new Set(this.#shown);
    const gone = this.#shown.some((row) => !rows.has(row));
    const added = lines.filter(
      (line) => !known.has(line.row) && !this.#options.has(line.row) && this.#counters.fits(line),
    );
    if (gone) this.#shown = this.#shown.filter((row) => rows.has(row));
    this.#shown.push(...added.map(({ row }) => row));
    this.#draw();
  }

  /** Which lines are late is known a while after the rest. */
  figures({ late }: JobFigures): void {
    this.#late = new Map(late?.map(({ row, says }) => [row, says]));
    this.#counters.late(late?.map(({ row }) => row));
    this.#draw();
  }

  focus(): void {
    this.#list.focus();
  }

  /** The keys that the foot of the page names. Answers whether it is one. */
  letter(letter: string): boolean {
    if (letter === "n") this.step(1);
    else if (letter === "p") this.step(-1);
    else if (letter === "f" && this.#selected !== undefined) this.events.fix(this.#selected);
    else return false;
    return true;
  }

  select(row: number, open = false): void {
    this.#mark(row);
    this.events.selected(row, open);
  }

  /** The next or previous line that stops or wants a look, of those shown. */
  step(by: 1 | -1): void {
    const at = this.#shown.indexOf(this.#selected ?? -1);
    const around = [...this.#shown.slice(at + 1), ...this.#shown.slice(0, Math.max(at, 0))];
    const problems = new Set(this.#problems());
    const next = (by > 0 ? around : around.reverse()).find((row) => problems.has(row));
    if (next !== undefined) this.select(next, true);
  }

  #mark(row: number): void {
    const before = this.#selected === undefined ? undefined : this.#options.get(this.#selected)?.option;
    before?.setAttribute("aria-selected", "false");
    this.#selected = row;
    const option = this.#options.get(row)?.option;
    option?.setAttribute("aria-selected", "true");
    if (option) this.#list.setAttribute("aria-activedescendant", option.id);
    option?.scrollIntoView({ block: "nearest" });
    this.#sayProblem();
  }

  #problems(): number[] {
    const isProblem = new Set(this.#lines.filter(({ status }) => status !== "clear").map(({ row }) => row));
    return this.#shown.filter((row) => isProblem.has(row));
  }

  #sayProblem(): void {
    const problems = this.#problems();
    const at = problems.indexOf(this.#selected ?? -1);
    const count = problems.length === 0 ? "No problem here" : `${problems.length} to solve`;
    this.events.problem(at < 0 ? count : `Problem ${at + 1} of ${problems.length}`, problems.length > 0);
  }

  #choose(): void {
    this.#shown = this.#counters.chosen().map(({ row }) => row);
  }

  #filtered(): void {
    this.#choose();
    this.#draw();
    this.#list.scrollTop = 0;
    const [first] = this.#shown;
    if (first !== undefined && !this.#shown.includes(this.#selected ?? -1)) this.select(first);
  }

  #draw(): void {
    const byRow = new Map(this.#lines.map((line) => [line.row, line]));
    for (const row of this.#options.keys()) if (!byRow.has(row)) this.#options.delete(row);
    const options = this.#shown.map((row) => this.#option(entryOf(byRow, row)));
    const { children } = this.#list;
    if (options.length !== children.length || options.some((one, i) => one !== children[i]))
      this.#list.replaceChildren(...options);
    this.#sayProblem();
  }

  #option(line: ListedLine): HTMLElement {
    const reason = line.reason || this.#late.get(line.row) || "—";
    const told = JSON.stringify([line, reason]);
    const known = this.#options.get(line.row);
    if (known?.told === told) return known.option;
    const option =
      known?.option ??
      element("li", {
        role: "option",
        id: `line-${line.row}`,
        "data-row": String(line.row),
        "aria-selected": String(line.row === this.#selected),
      });
    this.#options.set(line.row, { option, told });
    option.className = line.status;
    option.replaceChildren(
      element(
        "span",
        { class: "mark" },
        element("span", { "aria-hidden": "true" }, MARKS[line.status]),
        element("span", { class: "unseen" }, line.status),
      ),
      element("span", { class: "part" }, element("b", {}, line.part), small(line.description)),
      element("span", { class: "quantity" }, line.quantity),
      element("span", { class: "shape", "aria-hidden": "true" }, ...(line.shape === "" ? [] : [shape(line.shape)])),
      element("span", { class: "metal" }, line.sheet.replace(/ (?=in\b|mm\b|\()/g, "\u00a0"), small(line.tools)),
      element("span", { class: "reason" }, reason),
    );
    return option;
  }

  #key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const at = this.#shown.indexOf(this.#selected ?? -1);
    const move = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: this.#shown.length - 1 }[event.key];
    const row = move === undefined ? undefined : this.#shown[Math.max(0, Math.min(move, this.#shown.length - 1))];
    if (row !== undefined) this.select(row);
    else if (event.key === "Enter" && this.#selected !== undefined) this.select(this.#selected, true);
    else return;
    event.preventDefault();
  }
}

const small = (words: string) => element("small", {}, words);

function shape(d: string): SVGElement {
  const name = "http://www.w3.org/2000/svg";
  const svg = document.createElementNS(name, "svg");
  svg.setAttribute("viewBox", `-2 -2 ${SHAPE_BOX.width + 4} ${SHAPE_BOX.height + 4}`);
  const line = document.createElementNS(name, "path");
  line.setAttribute("d", d);
  svg.append(line);
  return svg;
}
