/** Cells to and from the clipboard, as spreadsheets put them there: tabs between them, a line a row. */
import { csvRows } from "../../job/part-list/csv.ts";

interface Cells {
  /** In a field the clipboard is the field's own. */
  isOff(): boolean;
  copied(): readonly (readonly string[])[];
  pasted(rows: readonly (readonly string[])[]): void;
}

export function listenToClipboard(place: HTMLElement, cells: Cells): void {
  place.addEventListener("copy", (event) => {
    if (cells.isOff()) return;
    event.preventDefault();
    const lines = cells.copied().map((row) => row.map(quoted).join("\t"));
    event.clipboardData?.setData("text/plain", lines.join("\n"));
  });
  place.addEventListener("paste", (event) => {
    if (cells.isOff()) return;
    event.preventDefault();
    const rows = csvRows(event.clipboardData?.getData("text/plain") ?? "", "\t");
    cells.pasted(Array.from(rows, (row) => row.map((text) => text.trim())));
  });
}

const quoted = (text: string): string => (/[\t\n"]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
