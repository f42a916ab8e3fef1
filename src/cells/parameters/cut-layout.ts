/**
 * A sheet's layout as one cell of text, printed by CUT.PLAN and read under "Pinned" of Stock: parts side by side along the
 * sheet or across it, in each other: "along(3 x across(2 x A-1, B-2 turned), C-3)".
 */
import type { PinnedNode, PinnedParts } from "../../calc/cutting/types.ts";
import { itemAt } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";

const DIRECTIONS = ["along", "across"] as const;
/** Names that cannot be mistaken for anything else of the text. */
const PLAIN = /^(?!\d+\s+x\s)(?!.* turned$)[^\s"(),][^"(),]*$/;

export const showLayout = (node: PinnedNode): string => {
  if ("blank" in node) {
    const name = PLAIN.test(node.blank) ? node.blank : `"${node.blank.replaceAll('"', '""')}"`;
    return node.turned ? `${name} turned` : name;
  }
  const parts: { readonly says: string; count: number }[] = [];
  for (const part of node.parts) {
    const says = showLayout(part);
    const last = parts.at(-1);
    if (last?.says === says) last.count++;
    else parts.push({ says, count: 1 });
  }
  return `${DIRECTIONS[node.direction]}(${parts.map(({ says, count }) => (count > 1 ? `${count} x ${says}` : says)).join(", ")})`;
};

/** Pieces of a sheet, and parts in parts: chosen, no layout of the planner is near it. */
const MOST_PIECES = 10_000;
const MOST_DEPTH = 20;

export function readLayout(text: string, name: string): PinnedParts {
  let rest = text.trim();
  const bad = () => wrong(name, "a layout as CUT.PLAN prints it, such as along(2 x A-1, across(B-2, C-3))", text);
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const found = pattern.exec(rest);
    if (found) rest = rest.slice(found[0].length).trimStart();
    return found;
  };
  const piece = (): PinnedNode => {
    const quoted = take(/^"((?:[^"]|"")+)"/);
    if (quoted) return { blank: itemAt(quoted, 1).replaceAll('""', '"'), turned: take(/^turned/i) !== null };
    const plain = take(/^[^"(),]+/)?.[0].trim();
    if (!plain) throw bad();
    const blank = plain.replace(/\s+turned$/i, "");
    return { blank, turned: blank !== plain };
  };
  const layout = (depth: number): { readonly node: PinnedParts; readonly pieces: number } | null => {
    const opened = take(/^(along|across)\s*\(/i);
    if (!opened) return null;
    if (depth > MOST_DEPTH) throw bad();
    const parts: PinnedNode[] = [];
    let pieces = 0;
    do {
      const count = Number(take(/^(\d+)\s+x\s+/i)?.[1] ?? 1);
      const inner = layout(depth + 1);
      const part = inner?.node ?? piece();
      pieces += count * (inner?.pieces ?? 1);
      if (count < 1 || pieces > MOST_PIECES) throw bad();
      for (let n = 0; n < count; n++) parts.push(part);
    } while (take(/^,/));
    if (!take(/^\)/)) throw bad();
    return { node: { direction: itemAt(opened, 1).toLowerCase() === "along" ? 0 : 1, parts }, pieces };
  };
  const found = layout(0);
  if (rest !== "" || !found) throw bad();
  return found.node;
}
