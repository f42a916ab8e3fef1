/** What a terminal shows beside each other without wrapping by itself. */
export const WIDTH = 100;

/** Breaks at blanks; what does not fit goes on below, indented. A word longer than a row is cut. */
export function wrapped(text: string, width: number, indent: number): string[] {
  const rows: string[] = [];
  let rest = text.trimEnd();
  let start = "";
  while (start.length + rest.length > width) {
    const room = width - start.length;
    const at = rest.lastIndexOf(" ", room);
    const from = rows.length === 0 ? indent : 0; // never break within the head of the first row
    const cut = at > from ? at : room;
    rows.push((start + rest.slice(0, cut)).trimEnd());
    rest = rest.slice(cut).trimStart();
    start = " ".repeat(indent);
  }
  rows.push(start + rest);
  return rows;
}
