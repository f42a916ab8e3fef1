/** A field in a cell of the grid, until Enter or Tab takes what is typed or Escape leaves it. */
import { columnLetters } from "../../sheet/formula/address.ts";
import { element } from "../pane/dom/element.ts";

interface Events {
  /** A letter began it: what stood there is typed over. */
  readonly isFresh: boolean;
  /** Answers what editing begins with, or undefined where the cell cannot be typed over. */
  readonly begin: () => Promise<string | undefined>;
  /** `typed` is undefined where nothing is to change; `then`: where the focus goes, which is the grid's again. */
  readonly over: (typed: string | undefined, then: "right" | "stay" | undefined) => void;
}

export class CellEditor {
  #isOver = false;

  constructor(
    box: HTMLElement,
    readonly spot: { readonly row: number; readonly column: number },
    text: string,
    private readonly events: Events,
  ) {
    const input = element("input", {
      type: "text",
      "aria-label": `Cell ${columnLetters(spot.column)}${spot.row + 1}`,
      autocomplete: "off",
      spellcheck: "false",
    });
    let isTouched = events.isFresh;
    input.value = text;
    box.classList.add("editing");
    box.replaceChildren(input);
    input.focus();
    if (!isTouched) input.select();
    const finish = (keep: boolean, then?: "right" | "stay") =>
      this.#finish(keep && isTouched ? input.value : undefined, then);
    void events.begin().then((content) => {
      if (content === undefined) finish(false, "stay");
      else if (!isTouched) {
        input.value = content;
        input.select();
      }
    });
    input.addEventListener("input", () => {
      isTouched = true;
    });
    input.addEventListener("blur", () => finish(true));
    input.addEventListener("keydown", (event) => {
      if (!["Enter", "Tab", "Escape"].includes(event.key)) return;
      event.preventDefault();
      event.stopPropagation();
      finish(event.key !== "Escape", event.key === "Tab" ? "right" : "stay");
    });
  }

  #finish(typed: string | undefined, then: "right" | "stay" | undefined): void {
    if (this.#isOver) return;
    this.#isOver = true;
    this.events.over(typed, then);
  }
}
