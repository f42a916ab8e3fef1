/** Finds every figure in a JavaScript source and puts a switch in its place: `$figure(17, 0.42)` answers 0.42 until told otherwise. */
import { type Node, parse } from "acorn";

export interface Constant {
  /** Its number in the bundle. */
  readonly id: number;
  readonly file: string;
  readonly value: number;
  /** The statement's line as it stands in the source, to be found again. */
  readonly line: string;
}

export const SWITCH = "$figure";

interface Switched {
  readonly code: string;
  readonly constants: readonly Constant[];
}

/** `code` is plain JavaScript, types already removed. Ids count up from `firstId`. */
export function switched(code: string, file: string, firstId: number): Switched {
  const literals = figuresIn(parse(code, { ecmaVersion: "latest", sourceType: "module" }));
  const constants = literals.map(({ start, value }, i): Constant => {
    const from = code.lastIndexOf("\n", start) + 1;
    const to = code.indexOf("\n", start);
    return { id: firstId + i, file, value, line: code.slice(from, to < 0 ? undefined : to).trim() };
  });
  let text = "";
  let at = 0;
  literals.forEach(({ start, end }, i) => {
    text += `${code.slice(at, start)}${SWITCH}(${firstId + i}, ${code.slice(start, end)})`;
    at = end;
  });
  return { code: text + code.slice(at), constants };
}

interface Figure {
  readonly start: number;
  readonly end: number;
  readonly value: number;
}

function figuresIn(tree: Node): Figure[] {
  const found: Figure[] = [];
  const visit = (node: unknown, isKey: boolean): void => {
    if (Array.isArray(node)) for (const part of node) visit(part, false);
    if (typeof node !== "object" || node === null || !("type" in node)) return;
    const { type, start, end, value } = node as Figure & { type: string };
    if (type === "Literal" && typeof value === "number" && !isKey) found.push({ start, end, value });
    const isComputed = "computed" in node && node.computed === true;
    for (const [name, part] of Object.entries(node)) visit(part, name === "key" && !isComputed);
  };
  visit(tree, false);
  return found.sort((a, b) => a.start - b.start);
}
