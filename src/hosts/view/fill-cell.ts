/** What stands in a cell of the grid: its text, its side, the mark of a status, the sentence of what is wrong. */
import { missing } from "../../units/certain.ts";
import { element } from "../pane/dom/element.ts";
import { MARKS } from "../pane/line/line-view.ts";
import type { CellLook, ShownCell } from "./protocol.ts";

interface Shown {
  readonly look: CellLook | undefined;
  /** What may stand there, where what does cannot be read. */
  readonly fault: string | undefined;
  readonly isRight: boolean;
}

export function fillCell(box: HTMLTableCellElement, cell: ShownCell | null, { look, fault, isRight }: Shown): void {
  const status = cell ? MARKS[cell.text as keyof typeof MARKS] : undefined;
  box.className = [
    look?.bold && "bold",
    look?.shaded && "shaded",
    isRight && "number",
    cell?.kind === "error" && "error",
    status && `status ${(cell ?? missing()).text}`,
    fault !== undefined && "bad",
  ]
    .filter(Boolean)
    .join(" ");
  box.title = fault ?? cell?.message ?? cell?.text ?? "";
  if (fault === undefined) box.removeAttribute("aria-invalid");
  else box.setAttribute("aria-invalid", "true");
  const text = cell?.text ?? "";
  if (box.scope === "col") box.replaceChildren(element("div", {}, text));
  else box.textContent = text;
  if (status) box.prepend(element("span", { class: "mark", "aria-hidden": "true" }, status));
  // The sentence stands on the cell itself, cut where the cell ends; whole when it is selected.
  if (cell?.message) box.append(element("span", { class: "said" }, ` ${cell.message}`));
}
