/** From a pattern's tree to the search's layout and back. */
import { firstOf, itemAt } from "../../units/certain.ts";
import type { CutNode, PartsNode } from "./cut-tree.ts";
import { isPiece } from "./cut-tree.ts";
import { DIRECTION, FIRST, GuillotineLayout, INTERNAL, ITEM, NEXT } from "./guillotine-layout.ts";
import { type CutPattern, patternOf } from "./pattern.ts";
import type { Problem } from "./problem.ts";

export function layoutOf(problem: Problem, pattern: CutPattern): GuillotineLayout {
  const { w, h } = itemAt(problem.sheets, pattern.sheet);
  const layout = new GuillotineLayout();
  layout.start(pattern.sheet, w, h, pattern.root.direction);
  const fill = (at: number, node: PartsNode) => {
    for (const part of node.parts) {
      const single = onlyPiece(part);
      if (single) {
        const { w, h } = itemAt(problem.items, single.item);
        const turned = single.turned;
        layout.addTo(at, single.item * 2 + (turned ? 1 : 0), turned ? h : w, turned ? w : h);
      } else fill(layout.addNode(at), part as PartsNode);
    }
  };
  fill(0, pattern.root);
  layout.settle();
  return layout;
}

/** The one piece a chain of single parts ends in; null where there is more than one piece. */
function onlyPiece(node: CutNode) {
  let at = node;
  while (!isPiece(at)) {
    if (at.parts.length !== 1) return null;
    at = firstOf(at.parts);
  }
  return at;
}

/** null for an empty sheet. */
export function patternFrom(layout: GuillotineLayout): CutPattern | null {
  const d = layout.data;
  const read = (at: number): CutNode => {
    const item = itemAt(d, at + ITEM);
    if (item >= 0) return { item: item >> 1, turned: (item & 1) === 1 };
    const parts: CutNode[] = [];
    for (let child = itemAt(d, at + FIRST); child !== -1; child = itemAt(d, child + NEXT)) parts.push(read(child));
    return { direction: d[at + DIRECTION] === 0 ? 0 : 1, parts };
  };
  if (d[ITEM] !== INTERNAL || d[FIRST] === -1) return null;
  return patternOf(layout.sheet, read(0) as PartsNode);
}
