/** Keys that act everywhere, and the words at the foot that say which there are. */
import { itemAt, missing } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";

interface KeyActions {
  step(which: "undo" | "redo"): void;
  save(): void;
  add(): void;
  /** A letter without Ctrl, outside a field. Answers whether it did something. */
  letter(letter: string): boolean;
}

/** Regions of the page in the order F6 goes round, from wherever nothing has the focus: the list or the table first. */
const REGIONS = ["#work", "#line", "#places", "#counters"];
const MAIN = "[role=listbox], [role=grid]";
const FOCUSABLE = 'button:not([disabled]), [tabindex="0"], input, textarea, select, a[href]';

export function listenToKeys(actions: KeyActions): void {
  let areLettersOn = true;
  const letters = element("button", { type: "button", "aria-pressed": "true" }, "Letters on");
  letters.addEventListener("click", () => {
    areLettersOn = !areLettersOn;
    letters.setAttribute("aria-pressed", String(areLettersOn));
    letters.textContent = areLettersOn ? "Letters on" : "Letters off";
  });
  const said = (key: string, words: string) => element("span", {}, element("kbd", {}, key), ` ${words}`);
  (document.getElementById("keys") ?? missing()).append(
    element("span", { class: "of-list" }, said("N", "next"), said("P", "previous"), said("F", "apply fix"), letters),
    element("span", { class: "of-tables" }, said("Esc Tab", "leave the table"), said("Alt+PgDn", "next table")),
    said("Ctrl+L", "add a line"),
    said("Ctrl+Z", "undo"),
    said("Ctrl+S", "save"),
    said("F6", "next region"),
  );
  addEventListener("keydown", (event) => {
    if (event.key === "F6") {
      event.preventDefault();
      nextRegion(event.shiftKey ? -1 : 1);
    }
    if (event.altKey) return;
    const key = event.key.toLowerCase();
    // In a field a letter is typed, and undoing means the field's own text.
    const isField = (event.target as Element).closest?.("input, textarea, select") != null;
    if (!(event.ctrlKey || event.metaKey)) {
      if (!isField && areLettersOn && actions.letter(key)) event.preventDefault();
      return;
    }
    const action =
      key === "s"
        ? actions.save
        : key === "l"
          ? actions.add
          : isField
            ? undefined
            : key === "y" || (key === "z" && event.shiftKey)
              ? () => actions.step("redo")
              : key === "z"
                ? () => actions.step("undo")
                : undefined;
    if (!action) return;
    event.preventDefault();
    action();
  });
}

function nextRegion(by: 1 | -1): void {
  const regions = REGIONS.map((region) => document.querySelector<HTMLElement>(region) ?? missing());
  const here = regions.findIndex((region) => region.contains(document.activeElement));
  for (let i = 1; i <= regions.length; i++) {
    const region = itemAt(regions, (here + by * i + 2 * regions.length) % regions.length);
    // The list or the table itself before what stands above it.
    const target = [
      ...region.querySelectorAll<HTMLElement>(MAIN),
      ...region.querySelectorAll<HTMLElement>(FOCUSABLE),
    ].find((one) => one.offsetParent !== null);
    if (!target) continue;
    target.focus();
    return;
  }
}
