/** How many lines stop, want a look, are clear, have no quote or are late: each number is a filter of the list beside it. */

import type { ListedLine } from "../../../papers/line-list.ts";
import { itemAt } from "../../../units/certain.ts";
import { element } from "../dom/element.ts";
import { MARKS } from "./line-view.ts";

export type Filter = "stop" | "check" | "clear" | "no quote" | "late";
const FILTERS: readonly Filter[] = ["stop", "check", "clear", "no quote", "late"];
const WORST_FIRST: readonly ListedLine["status"][] = ["stop", "check", "clear"];

export class Counters {
  filter: Filter | undefined;
  #lines: readonly ListedLine[] = [];
  /** Known a while after the rest. */
  #late: ReadonlySet<number> | undefined;
  readonly #buttons: readonly HTMLElement[];

  /** @param place holds the buttons. @param pressed told when another filter is chosen, or none. */
  constructor(place: HTMLElement, pressed: (filter: Filter | undefined) => void) {
    this.#buttons = FILTERS.map((filter) => {
      const button = element("button", { type: "button", class: filter.replace(" ", "-") });
      button.addEventListener("click", () => {
        this.filter = this.filter === filter ? undefined : filter;
        this.#draw();
        pressed(this.filter);
      });
      return button;
    });
    place.append(...this.#buttons);
  }

  update(lines: readonly ListedLine[]): void {
    this.#lines = lines;
    this.#draw();
  }

  late(rows: readonly number[] | undefined): void {
    this.#late = rows && new Set(rows);
    this.#draw();
  }

  fits({ status, row, isQuoted }: ListedLine, filter = this.filter): boolean {
    if (filter === undefined) return true;
    if (filter === "no quote") return !isQuoted;
    if (filter === "late") return this.#late?.has(row) ?? false;
    return status === filter;
  }

  /** What the filter lets through, the worst first. */
  chosen(): ListedLine[] {
    const fit = this.#lines.filter((line) => this.fits(line));
    return WORST_FIRST.flatMap((status) => fit.filter((line) => line.status === status));
  }

  #draw(): void {
    FILTERS.forEach((filter, i) => {
      const button = itemAt(this.#buttons, i);
      const mark = MARKS[filter as keyof typeof MARKS];
      const isKnown = filter !== "late" || this.#late !== undefined;
      const count = isKnown ? String(this.#lines.filter((line) => this.fits(line, filter)).length) : "–";
      button.setAttribute("aria-pressed", String(this.filter === filter));
      button.replaceChildren(
        ...(mark ? [element("span", { class: "mark", "aria-hidden": "true" }, mark), " "] : []),
        element("b", {}, count),
        element("span", { class: "word" }, ` ${filter}`),
      );
    });
  }
}
