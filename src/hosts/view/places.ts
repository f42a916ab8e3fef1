/** Where the person is: in the lines or in one of the tables at the foot; on a phone also which of three screens. */
import { entryOf, firstOf, itemAt, missing } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import type { SheetName } from "./protocol.ts";

interface PlaceViews {
  lines(): HTMLElement;
  table(sheet: number): HTMLElement;
  cuts(): Promise<HTMLElement>;
  start(): HTMLElement;
  guide(): Promise<HTMLElement>;
}
type Screen = "list" | "line" | "drawing";

interface Opened {
  readonly screen: Screen;
  /** How many screens lie below it. */
  readonly depth: number;
}
const depth = (): number => (history.state as Opened | null)?.depth ?? 0;

interface Tab {
  readonly words: string;
  readonly what: number | "cuts" | "start" | "guide";
}

const LINES = "Problems";
const GROUPS = ["Bill", "Shop", "Cutting", "Work", "Money", "More"];
const OWN_TABS: Readonly<Record<string, readonly Tab[]>> = {
  Cutting: [{ words: "Sheets as cut", what: "cuts" }],
  More: [
    { words: "Start a bill", what: "start" },
    { words: "Functions", what: "guide" },
  ],
};

export class Places {
  readonly #nav = document.getElementById("places") ?? missing();
  readonly #work = document.getElementById("work") ?? missing();
  #groups = new Map<string, readonly Tab[]>();
  #group = LINES;
  #open: Tab["what"] | undefined;

  constructor(private readonly views: PlaceViews) {
    (document.getElementById("back") ?? missing()).addEventListener("click", () => history.back());
    addEventListener("popstate", (event) => {
      document.body.dataset["screen"] = (event.state as Opened | null)?.screen ?? "list";
    });
  }

  get isLines(): boolean {
    return this.#open === undefined;
  }

  get isTable(): boolean {
    return typeof this.#open === "number";
  }

  /** @param hasBill without one the page opens where a bill is begun. */
  reset(sheets: readonly SheetName[], hasBill: boolean): void {
    const tabs = (group: string): Tab[] => [
      ...(OWN_TABS[group] ?? []),
      ...sheets.flatMap(({ name, group: of }, what) =>
        of === group && name !== "Functions" ? [{ words: name, what }] : [],
      ),
    ];
    this.#groups = new Map(GROUPS.map((group) => [group, tabs(group)]));
    this.#nav.replaceChildren(
      ...[LINES, ...GROUPS]
        .filter((group) => group === LINES || entryOf(this.#groups, group).length > 0)
        .map((group) => {
          const button = element("button", { type: "button" }, group);
          button.addEventListener("click", () => this.#enter(group));
          return button;
        }),
    );
    if (hasBill) this.#enter(LINES);
    else this.open("start");
  }

  open(what: "start" | "guide" | "cuts"): void {
    this.#show(what);
  }

  openSheet(sheet: number): void {
    if (this.#open !== sheet) this.#show(sheet);
  }

  /** Where there is room for one thing at a time; the browser's own way back leads back. */
  screen(screen: Screen): void {
    if (document.body.dataset["screen"] === screen) return;
    document.body.dataset["screen"] = screen;
    history.pushState({ screen, depth: depth() + 1 }, "");
  }

  /** The list or a table: the way back leads through no line that was opened before. */
  #top(): void {
    document.body.dataset["screen"] = "list";
    if (depth() > 0) history.go(-depth());
  }

  #enter(group: string): void {
    if (group === LINES) {
      this.#mark(LINES, undefined);
      this.#work.replaceChildren(this.views.lines());
      this.#top();
      return;
    }
    this.#show(firstOf(entryOf(this.#groups, group)).what);
  }

  #show(what: Tab["what"]): void {
    const [group, tabs] = [...this.#groups].find(([, some]) => some.some((tab) => tab.what === what)) ?? missing();
    this.#mark(group, what);
    this.#top();
    const made = typeof what === "number" ? this.views.table(what) : this.views[what]();
    const list = element("div", { role: "tablist", class: "tabs", "aria-label": `${group}: tables` });
    list.append(...tabs.map((tab) => this.#tab(tab, what)));
    const panel = element("div", { role: "tabpanel", class: "panel", "aria-label": group });
    this.#work.replaceChildren(list, panel);
    void Promise.resolve(made).then((view) => {
      if (this.#open === what) panel.replaceChildren(view);
    });
  }

  #tab({ words, what }: Tab, open: Tab["what"]): HTMLElement {
    const isOpen = what === open;
    const tab = element(
      "button",
      { type: "button", role: "tab", "aria-selected": String(isOpen), tabindex: isOpen ? "0" : "-1" },
      words,
    );
    tab.addEventListener("click", () => this.#show(what));
    tab.addEventListener("keydown", (event) => {
      const step = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
      const tabs = entryOf(this.#groups, this.#group);
      if (step === undefined) return;
      const at = tabs.findIndex((one) => one.what === what);
      this.#show(itemAt(tabs, (at + step + tabs.length) % tabs.length).what);
      this.#work.querySelector<HTMLElement>('[aria-selected="true"]')?.focus();
    });
    return tab;
  }

  #mark(group: string, open: Tab["what"] | undefined): void {
    this.#group = group;
    this.#open = open;
    document.body.dataset["place"] = group === LINES ? "lines" : typeof open === "number" ? "tables" : String(open);
    for (const button of this.#nav.children)
      if (button.textContent === group) button.setAttribute("aria-current", "page");
      else button.removeAttribute("aria-current");
  }
}
