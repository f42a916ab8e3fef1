/** Sheets whose layout is settled: they are cut so whatever the rest of the plan is, and their blanks are no longer asked for. */
import { itemAt, missing } from "../../units/certain.ts";
import { Refusal } from "../../units/refusal.ts";
import { eachPiece, type PartsNode } from "./cut-tree.ts";
import { patternOf, type Use } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { canBeSheared } from "./shear-check.ts";
import type { Blank, PinnedNode, PinnedParts, Stock } from "./types.ts";

/** Throws the Refusal of a layout that names no blank, cannot be cut from its sheet, or gives more than is wanted. */
export function pinnedUses(problem: Problem, asked: readonly Blank[], stock: readonly Stock[]): Use[] {
  const left = asked.map(({ quantity }) => quantity);
  return stock.flatMap(({ id, quantity, pinned }, sheet): Use[] => {
    if (!pinned || quantity === 0) return [];
    const name = `Pinned of ${id}`;
    if (quantity === Infinity) refuse(name, "beside a Count", "none", "so many sheets are cut to it");
    const pattern = patternOf(sheet, treeOf(pinned, asked, name));
    let lies = true;
    eachPiece(pattern.root, ({ item, turned }) => {
      lies &&= itemAt(turned ? problem.turned : problem.plain, sheet)[item] === 1;
    });
    if (!lies || !canBeSheared(problem, pattern))
      refuse(name, "a layout that the shear can cut from the sheet", "one it cannot", "pin what CUT.PLAN says now");
    pattern.items.forEach((item, k) => {
      const wanted = itemAt(pattern.counts, k) * quantity;
      if (wanted > itemAt(left, item))
        refuse(
          name,
          `no more of ${itemAt(asked, item).id} than is still wanted, ${left[item]}`,
          wanted,
          "lower its Count",
        );
      left[item] = (left[item] ?? missing()) - wanted;
    });
    return [{ pattern, repeats: quantity }];
  });
}

function treeOf({ direction, parts }: PinnedParts, asked: readonly Blank[], name: string): PartsNode {
  const node = (part: PinnedNode) => {
    if (!("blank" in part)) return treeOf(part, asked, name);
    const item = asked.findIndex(({ id }) => id === part.blank);
    if (item < 0) refuse(name, "a layout of parts that are cut from this sheet", part.blank);
    return { item, turned: part.turned };
  };
  return { direction, parts: parts.map(node) };
}

function refuse(name: string, rule: string, got: unknown, hint?: string): never {
  throw new Refusal("#VALUE!", `${name} must be ${rule}; got ${String(got)}${hint ? `; ${hint}` : ""}`);
}
