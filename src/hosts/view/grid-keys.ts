/** What a key does in a grid of cells. */

type Meant =
  | { readonly do: "move"; readonly down: number; readonly right: number; readonly extend: boolean }
  | { readonly do: "turn"; readonly step: 1 | -1 }
  | { readonly do: "row"; readonly change: "insert" | "remove" }
  | { readonly do: "clear" }
  /** `first`: the letter that begins to type over what stands there. */
  | { readonly do: "edit"; readonly first?: string };

/** Further than any sheet goes. */
const END = 1e6;

/** Rows down and columns to the right. */
const STEPS: Readonly<Record<string, (page: number) => readonly [number, number]>> = {
  ArrowDown: () => [1, 0],
  ArrowUp: () => [-1, 0],
  ArrowRight: () => [0, 1],
  ArrowLeft: () => [0, -1],
  PageDown: (page) => [page, 0],
  PageUp: (page) => [-page, 0],
  Home: () => [0, -END],
  End: () => [0, END],
};

/** @param page rows of a page. Undefined where the key means nothing in the grid. */
export function meaningOf(event: KeyboardEvent, page: number): Meant | undefined {
  const { key, shiftKey } = event;
  const command = event.ctrlKey || event.metaKey || event.altKey;
  if (command && (key === "PageDown" || key === "PageUp")) return { do: "turn", step: key === "PageDown" ? 1 : -1 };
  const to = STEPS[key];
  if (to && !event.altKey) {
    const [down, right] = to(page);
    const far = command ? END : 1;
    return { do: "move", down: down * far, right: right * far, extend: shiftKey };
  }
  if (command) return undefined;
  if (key === "Tab") return { do: "move", down: 0, right: shiftKey ? -1 : 1, extend: false };
  if (key === "Insert") return { do: "row", change: "insert" };
  if (key === "Delete" && shiftKey) return { do: "row", change: "remove" };
  if (key === "Delete" || key === "Backspace") return { do: "clear" };
  if (key === "Enter" || key === "F2") return { do: "edit" };
  return key.length === 1 ? { do: "edit", first: key } : undefined;
}
