/** "Start a bill": a parts list dropped, chosen or pasted; how its columns are read, to be changed; then the workbook. */
import { element } from "../pane/dom/element.ts";
import type { ListAsked, ListUnderstood } from "./start-list.ts";

interface StartEvents {
  understand(asked: ListAsked): Promise<ListUnderstood>;
  start(asked: ListAsked): void;
}

const NO_BILL = [
  "This workbook has no bill: no table with the headings Part, Material, Thickness and Flanges.",
  "Its sheets are behind the words below; start a bill of your own here.",
];
const NOT_READ = "not read";

export class StartView {
  readonly element = element("div", { class: "start" });
  readonly #why = element("ul", { class: "missing" });
  readonly #paste = element("textarea", { id: "paste", rows: "6", spellcheck: "false" });
  readonly #said = element("p", { role: "status" });
  readonly #map = element("div", { class: "map" });
  readonly #go = element("button", { type: "button", class: "main" }, "Start a bill");
  #asked: ListAsked = { name: "", bytes: new Uint8Array(), columns: "" };
  #own = new Map<string, string>();

  constructor(private readonly events: StartEvents) {
    const file = element("input", { type: "file", id: "list-file", accept: ".csv,.txt,.tsv,.xlsx,.xlsm" });
    file.addEventListener("change", async () => {
      const [chosen] = file.files ?? [];
      if (chosen) await this.take(chosen.name, new Uint8Array(await chosen.arrayBuffer()));
    });
    this.#paste.addEventListener("input", () => void this.take("", new TextEncoder().encode(this.#paste.value)));
    this.#go.addEventListener("click", () => events.start(this.#asked));
    this.element.append(
      element("h2", {}, "Start a bill"),
      this.#why,
      element(
        "p",
        {},
        "Drop a parts list on this page, choose a file, or paste rows from a spreadsheet with their heading. Without a list the bill starts with one example line and example machines to type over.",
      ),
      element("p", {}, element("label", { for: "list-file" }, "Parts list: "), file),
      element("p", {}, element("label", { for: "paste" }, "or paste it here"), this.#paste),
      this.#said,
      this.#map,
      element("p", {}, this.#go),
    );
  }

  /** What the tables of the open workbook lack; undefined where it holds no bill. */
  missing(sentences: readonly string[] = NO_BILL): void {
    this.#why.replaceChildren(...sentences.map((sentence) => element("li", {}, sentence)));
  }

  async take(name: string, bytes: Uint8Array): Promise<void> {
    this.#own = new Map();
    this.#asked = { name, bytes, columns: "" };
    await this.#understand();
  }

  async #understand(): Promise<void> {
    const asked = { ...this.#asked, columns: [...this.#own].map(([theirs, ours]) => `${theirs}=${ours}`).join("; ") };
    this.#asked = asked;
    if (asked.bytes.length === 0) {
      this.#said.textContent = "";
      this.#map.replaceChildren();
      this.#go.disabled = false;
      return;
    }
    const found = await this.events.understand(asked);
    if (asked !== this.#asked) return; // something else was pasted meanwhile
    this.#go.disabled = found.refused !== "";
    const lines = `${found.lines} ${found.lines === 1 ? "line" : "lines"} read${asked.name === "" ? "" : ` of ${asked.name}`}.`;
    this.#said.textContent = found.refused === "" ? lines : `It cannot be read: ${found.refused}`;
    if (found.columns.length === 0) return; // the map that led here stays, to be corrected
    this.#map.replaceChildren(
      element(
        "table",
        {},
        element("caption", {}, "How its columns are read"),
        element("tr", {}, ...["Column", "Heading", "Read as"].map((head) => element("th", { scope: "col" }, head))),
        ...found.columns.map(({ letter, title, read, why }) =>
          element(
            "tr",
            {},
            element("td", {}, letter),
            element("td", {}, title),
            element("td", {}, this.#choice(letter, title, read, found.choices), why === "" ? "" : ` ${why}`),
          ),
        ),
      ),
      element("ul", {}, ...found.words.map((words) => element("li", {}, words.trim()))),
    );
  }

  #choice(letter: string, title: string, read: string, choices: readonly string[]): HTMLElement {
    const select = element("select", { "aria-label": `Column ${letter} ${title} is read as` });
    select.append(...["", ...choices].map((choice) => element("option", { value: choice }, choice || NOT_READ)));
    select.value = read;
    select.addEventListener("change", () => {
      this.#own.set(letter, select.value);
      void this.#understand();
    });
    return select;
  }
}
