/**
 * The shop's board: a strip of paper a job across the days, darker where more of it is worked on at once, its date a flag; its
 * lines below it when it is opened; and, in the same columns, what every station has to do. A bar is moved by pointer or by keys.
 */

import { dayAndTime, dayOfWeek, timeOfDay } from "../../../bill/day.ts";
import type { Instant } from "../../../bill/pictures.ts";
import type { MovedBar } from "../../../bill/week/move-bar.ts";
import { firstOf, itemAt, missing } from "../../../units/certain.ts";
import { showNumber } from "../../../units/show.ts";
import { element } from "../../pane/dom/element.ts";
import type { Bar, BoardJob, WeekBoard } from "./protocol.ts";
import { TimeScale } from "./time-scale.ts";

const HOUR = 3600; // seconds, by definition
const LEAST = 0.35; // percent of the board that the shortest bar takes, to be seen and met
const LAST = 90; // percent: a flag further right hangs to the left
const DRAGGED = 4; // pixels: less is a click

export interface BoardEvents {
  move(moved: MovedBar): void;
  /** What the bar under pointer or focus is. */
  tell(words: string): void;
  /** Where the bill of a job is opened; undefined where it is not served. */
  bill(job: string): string | undefined;
}

/** A button on the board that can be moved. */
interface Movable {
  readonly key: string;
  readonly button: HTMLButtonElement;
  readonly begins: Instant;
  readonly finish: Instant;
  readonly says: string;
  readonly moved: Omit<MovedBar, "to">;
}

export class WeekBoardView {
  readonly element = element("div", { class: "board-week" });
  #board: WeekBoard | undefined;
  #scale!: TimeScale;
  readonly #opened = new Set<string>();
  /** Bars by the row they stand in. */
  #rows: Movable[][] = [];
  #current = "";
  /** Taken up: where it would be put down. */
  #held: { readonly bar: Movable; to: Instant } | undefined;

  constructor(private readonly events: BoardEvents) {
    this.element.addEventListener("keydown", (event) => this.#key(event));
  }

  draw(board: WeekBoard): void {
    this.#board = board;
    // A bar that is being moved stays in hand; the new plan is drawn when it is put down.
    if (this.#held) return;
    const hadFocus = this.element.contains(document.activeElement);
    this.#scale = new TimeScale(board);
    this.#rows = [];
    this.element.style.setProperty("--days", String(this.#scale.columns));
    this.element.replaceChildren(
      this.#head(),
      ...board.jobs.map((job) => this.#job(job)),
      element("h2", {}, "Load by station and day, hours"),
      ...this.#loads(board),
    );
    const all = this.#rows.flat();
    const current = all.find(({ key }) => key === this.#current) ?? all[0];
    if (!current) return;
    current.button.tabIndex = 0;
    this.#current = current.key;
    if (hadFocus) current.button.focus();
  }

  #head(): HTMLElement {
    const days = this.#scale.days.map(({ day, isOpen, left, width }) => {
      const [word = "", date = ""] = dayOfWeek(day).split(" ");
      const shown = element("span", { class: isOpen ? "day" : "day closed" }, isOpen ? `${word} ${date.slice(5)}` : "");
      return placed(shown, left, width);
    });
    return row("head", element("span", { class: "name" }), ...days);
  }

  #job(job: BoardJob): HTMLElement {
    const isOpen = this.#opened.has(job.name);
    const name = element("button", { type: "button", class: "job-name", "aria-expanded": String(isOpen) }, job.name);
    name.addEventListener("click", () => {
      if (!this.#opened.delete(job.name)) this.#opened.add(job.name);
      this.draw(this.#board ?? missing());
      [...this.element.querySelectorAll<HTMLElement>(".job-name")].find((one) => one.textContent === job.name)?.focus();
    });
    const bill = this.events.bill(job.name);
    const isLate = job.late > 0;
    const verdict = element(
      "span",
      { class: `badge ${isLate ? "stop" : "clear"}` },
      element("span", { "aria-hidden": "true" }, isLate ? "■ " : "○ "),
      job.verdict,
    );
    const about = element(
      "div",
      { class: "name" },
      name,
      ...(job.isRush ? [" rush"] : []),
      ...(bill === undefined ? [] : [" ", element("a", { href: bill, target: "_blank" }, "bill")]),
      element("small", {}, job.says),
      verdict,
    );
    const strip = row("strip", about, ...this.#columns(), ...this.#strip(job));
    const lines = isOpen ? this.#lines(job) : [];
    return element("section", { class: isLate ? "job late" : "job", "aria-label": job.name }, strip, ...lines);
  }

  #strip(job: BoardJob): HTMLElement[] {
    const { bars } = job;
    const parts: HTMLElement[] = bars.map(({ begins, finish, isAway }) =>
      this.#span(isAway ? "work away" : "work", begins, finish),
    );
    const here: Movable[] = [];
    if (bars.length > 0) {
      const [begins, finish] = [Math.min(...bars.map((bar) => bar.begins)), Math.max(...bars.map((bar) => bar.finish))];
      const says = `${job.name}, all of it: ${span(begins, finish)}; ${job.verdict}`;
      const whole = { begins: begins as Instant, finish: finish as Instant, says };
      here.push(this.#movable("bar whole", whole, { job: job.name, step: undefined }));
      parts.push(firstOf(here).button);
    }
    this.#rows.push(here);
    for (const { due, late, finish } of job.deliveries) {
      if (due === undefined) continue;
      if (late > 0) parts.push(this.#span("over", due, finish));
      const at = this.#scale.at(due);
      const flag = element("span", { class: at > LAST ? "due last" : "due" }, element("b", {}, timeOfDay(due)));
      flag.style.left = `${at}%`;
      parts.push(flag);
    }
    return parts;
  }

  #lines({ name, bars }: BoardJob): HTMLElement[] {
    return [...new Set(bars.map((bar) => bar.row))].map((line) => {
      const own = bars.filter((bar) => bar.row === line).sort((a, b) => a.begins - b.begins);
      const ghosts = own.flatMap(({ was }) => (was ? [this.#span("was", ...was)] : []));
      const here = own.map((bar) => {
        const { begins, finish, part, station, says, pin } = bar;
        const pinned = pin === undefined ? "" : `, pinned for ${dayAndTime(pin)}`;
        const words = `${part}, ${station}: ${span(begins, finish)}${pinned}; ${says}${bar.isStarted ? "; begun" : ""}`;
        const made = this.#movable(
          `bar ${kinds(bar)}`,
          { begins, finish, says: words },
          { job: name, step: { row: line, station } },
        );
        made.button.append(element("span", {}, station));
        if (bar.isStarted) made.button.setAttribute("aria-disabled", "true");
        return made;
      });
      this.#rows.push(here);
      return row(
        "line-row",
        element("span", { class: "name" }, firstOf(own).part),
        ...this.#columns(),
        ...ghosts,
        ...here.map(({ button }) => button),
      );
    });
  }

  #loads({ days }: WeekBoard): HTMLElement[] {
    return [...new Set(days.map(({ machine }) => machine))].map((machine) => {
      const cells = this.#scale.days.flatMap(({ day, left, width }) => {
        const own = days.find((each) => each.machine === machine && each.day === day);
        if (!own) return [];
        const cell = element(
          "span",
          { class: "load" },
          element("b", {}, hours(own.load)),
          ` of ${hours(own.available)}`,
        );
        cell.style.setProperty("--level", `${(own.load / Math.max(own.available, own.load, 1)) * 100}%`);
        return [placed(cell, left, width)];
      });
      return row("load-row", element("span", { class: "name" }, machine), ...cells);
    });
  }

  readonly #columns = (): HTMLElement[] =>
    this.#scale.days.map(({ isOpen, left, width }) =>
      placed(element("span", { class: isOpen ? "column" : "column closed" }), left, width),
    );

  #span(kind: string, begins: number, finish: number): HTMLElement {
    const left = this.#scale.at(begins);
    return placed(element("span", { class: kind }), left, Math.max(LEAST, this.#scale.at(finish) - left));
  }

  #movable(kind: string, about: Pick<Movable, "begins" | "finish" | "says">, moved: Movable["moved"]): Movable {
    const key = JSON.stringify(moved);
    const button = element("button", { type: "button", class: kind, "aria-label": about.says, tabindex: "-1" });
    const left = this.#scale.at(about.begins);
    placed(button, left, Math.max(LEAST, this.#scale.at(about.finish) - left));
    const made: Movable = { key, button, moved, ...about };
    button.addEventListener("focus", () => {
      for (const one of this.#rows.flat()) one.button.tabIndex = one === made ? 0 : -1;
      this.#current = key;
      this.events.tell(made.says);
    });
    button.addEventListener("pointerenter", () => {
      if (!this.#held) this.events.tell(made.says);
    });
    button.addEventListener("pointerdown", (event) => this.#dragged(made, event));
    return made;
  }

  #dragged(bar: Movable, down: PointerEvent): void {
    if (bar.button.ariaDisabled === "true") return;
    const lane = (bar.button.parentElement ?? missing()).getBoundingClientRect();
    const move = ({ clientX }: PointerEvent) => {
      const by = clientX - down.clientX;
      if (!this.#held && Math.abs(by) < DRAGGED) return;
      this.#hold(bar, this.#scale.time(this.#scale.at(bar.begins) + (by * 100) / lane.width));
    };
    const end = ({ type }: PointerEvent) => {
      for (const name of ["pointermove", "pointerup", "pointercancel"] as const)
        bar.button.removeEventListener(name, name === "pointermove" ? move : end);
      if (!this.#held) return;
      if (type === "pointerup") this.#put();
      else this.#let();
    };
    bar.button.setPointerCapture(down.pointerId);
    bar.button.addEventListener("pointermove", move);
    bar.button.addEventListener("pointerup", end);
    bar.button.addEventListener("pointercancel", end);
  }

  #hold(bar: Movable, to: Instant): void {
    this.#held = { bar, to };
    bar.button.classList.add("held");
    bar.button.style.translate = `${((this.#scale.at(to) - this.#scale.at(bar.begins)) * (bar.button.parentElement ?? missing()).clientWidth) / 100}px`;
    this.events.tell(
      `${bar.says.split(":")[0]}: to ${dayOfWeek(to)} ${timeOfDay(to)}. Enter pins its run there, any set-up before it; Esc leaves it.`,
    );
  }

  #let(): void {
    const { button, says } = (this.#held ?? missing()).bar;
    button.classList.remove("held");
    button.style.translate = "";
    this.#held = undefined;
    this.draw(this.#board ?? missing());
    this.events.tell(says);
  }

  #put(): void {
    const { bar, to } = this.#held ?? missing();
    if (to === bar.begins) this.#let();
    else {
      this.#held = undefined;
      this.events.move({ ...bar.moved, to });
    }
  }

  #key(event: KeyboardEvent): void {
    const at = this.#rows.findIndex((one) => one.some(({ button }) => button === event.target));
    const bar = this.#rows[at]?.find(({ button }) => button === event.target);
    if (!bar || event.ctrlKey || event.metaKey || event.altKey) return;
    const side = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (this.#held) {
      if (event.key === "Escape") this.#let();
      else if (event.key === "Enter" || event.key === " ") this.#put();
      else if (side)
        this.#hold(bar, this.#scale.along(this.#held.to, event.shiftKey ? (side > 0 ? "day" : "day before") : side));
      else return;
    } else if (event.key === "Enter" || event.key === " ") {
      if (bar.button.ariaDisabled === "true") this.events.tell(`${bar.says}: what has begun stays where it is.`);
      else this.#hold(bar, bar.begins);
    } else if (side) itemAt(this.#rows, at)[itemAt(this.#rows, at).indexOf(bar) + side]?.button.focus();
    else if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      const others = event.key === "ArrowUp" ? this.#rows.slice(0, at).reverse() : this.#rows.slice(at + 1);
      const next = others.find(({ length }) => length > 0);
      next
        ?.reduce((a, b) => (Math.abs(b.begins - bar.begins) < Math.abs(a.begins - bar.begins) ? b : a))
        .button.focus();
    } else return;
    event.preventDefault();
  }
}

const kinds = ({ isAway, isStarted, pin }: Bar): string =>
  [isAway ? "away" : "", isStarted ? "begun" : "", pin === undefined ? "" : "pinned"].join(" ");
const hours = (seconds: number): string => showNumber(seconds / HOUR, 2);
const span = (from: number, to: number): string => `${dayAndTime(from as Instant)} to ${dayAndTime(to as Instant)}`;
const row = (kind: string, name: HTMLElement, ...lane: readonly HTMLElement[]): HTMLElement =>
  element("div", { class: `row ${kind}` }, name, element("div", { class: "lane" }, ...lane));

/** Percent of the lane. */
function placed<T extends HTMLElement>(one: T, left: number, width: number): T {
  one.style.left = `${left}%`;
  one.style.width = `${width}%`;
  return one;
}
