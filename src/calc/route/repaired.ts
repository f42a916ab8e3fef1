import { type Label, type Move, withMove } from "./labels.ts";
import type { Prices } from "./multipliers.ts";

/** A first plan: moves with the least penalty for the relief they bring, until both loads fit. */
export function repaired(root: Label, moves: readonly Move[], capacity: Prices): Label | undefined {
  let label = root;
  const open = new Map(moves.entries());
  const over = (l: { shear: number; waterjet: number }) =>
    Math.max(0, l.shear - capacity.shear) + Math.max(0, l.waterjet - capacity.waterjet);
  while (over(label) > 0) {
    let next: { label: Label; key: number; worth: number } | undefined;
    for (const [key, move] of open) {
      const moved = withMove(label, move, key);
      const gained = over(label) - over(moved);
      if (gained <= 0) continue;
      const worth = move.penalty / gained;
      if (!next || worth < next.worth) next = { label: moved, key, worth };
    }
    if (!next) return undefined;
    label = next.label;
    open.delete(next.key);
  }
  return label;
}
