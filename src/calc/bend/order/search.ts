/** One hit in a search: bend number from 1, end at the back 0 or 1. */
import { itemAt, missing } from "../../../units/certain.ts";
export interface Move {
  readonly bend: number;
  readonly end: 0 | 1;
}

export interface Way {
  readonly moves: readonly Move[];
  /** Bit i - 1 set when bend i is finished. */
  readonly set: number;
}

/** What an order costs, compared in this sequence: hits with a tight gap, turns and flips together, flips. */
export const costOf = (tight: number, turns: number, flips: number): number =>
  (tight * 64 + turns + flips) * 64 + flips;

interface Edge {
  /** Lowest possible cost of a whole order by this way; at equal cost the longer way is followed first. */
  readonly key: number;
  readonly from: number;
  readonly to: number;
  readonly bend: number;
  readonly cost: number;
  readonly tried: boolean;
}

/**
 * Cheapest sequence of all bends, or the sets that can be reached when there is none. Dynamic programming over states
 * of finished set and lie of the sheet (which end is at the back, which face is up), the cheapest state first (Dijkstra
 * 1959, with the flip still owed as a lower bound, Hart, Nilsson & Raphael 1968; memory). A hit is computed only when the way to it is the
 * cheapest one left, because computing it is the expensive part. Exact: every state is settled at its least cost.
 * @param faces face that must be up for each bend, 0 or 1.
 * @param tightness of a hit after a set: 0 clear, 1 tight, undefined impossible.
 */
export function cheapestWay(
  faces: readonly number[],
  tightness: (set: number, move: Move) => 0 | 1 | undefined,
): { readonly complete?: Way; readonly reached: readonly Way[] } {
  const count = faces.length;
  const all = (1 << count) - 1;
  const settled = new Map<number, Edge>();
  const queue = new Heap();
  const needed = [0, 1].map((face) => faces.reduce((bits, f, i) => (f === face ? bits | (1 << i) : bits), 0));

  const open = (from: number, cost: number): void => {
    const set = from < 0 ? 0 : from >> 2;
    for (let bend = count; bend >= 1; bend--) {
      if (set & (1 << (bend - 1))) continue;
      const face = itemAt(faces, bend - 1);
      const next = set | (1 << (bend - 1));
      const owed = itemAt(needed, 1 - face) & ~next ? costOf(0, 0, 1) : 0;
      for (const end of [1, 0]) {
        const to = next * 4 + face * 2 + end;
        if (settled.has(to)) continue;
        const changed = from < 0 ? 0 : (from ^ to) & 3;
        const total = cost + costOf(0, changed & 1, changed >> 1);
        queue.push({ key: (total + owed) * 16 + count - size(next), from, to, bend, cost: total, tried: false });
      }
    }
  };
  const wayTo = (state: number): Way => {
    const moves: Move[] = [];
    for (let edge = settled.get(state); edge; edge = settled.get(edge.from))
      moves.unshift({ bend: edge.bend, end: (edge.to & 1) as 0 | 1 });
    return { moves, set: state >> 2 };
  };

  open(-1, 0);
  for (let edge = queue.pop(); edge; edge = queue.pop()) {
    if (settled.has(edge.to)) continue;
    if (!edge.tried) {
      const tight = tightness(edge.from < 0 ? 0 : edge.from >> 2, { bend: edge.bend, end: (edge.to & 1) as 0 | 1 });
      if (tight === undefined) continue;
      if (tight) {
        const more = costOf(1, 0, 0);
        queue.push({ ...edge, key: edge.key + more * 16, cost: edge.cost + more, tried: true });
        continue;
      }
    }
    settled.set(edge.to, edge);
    if (edge.to >> 2 === all) return { complete: wayTo(edge.to), reached: [] };
    open(edge.to, edge.cost);
  }
  const sets = new Map<number, Way>();
  for (const state of settled.keys()) if (!sets.has(state >> 2)) sets.set(state >> 2, wayTo(state));
  return { reached: [{ moves: [], set: 0 }, ...sets.values()] };
}

export function size(set: number): number {
  let bits = 0;
  for (let rest = set; rest; rest &= rest - 1) bits++;
  return bits;
}

/** Binary heap, least key first; of equal keys the one pushed last, so that a search goes on where it is. */
class Heap {
  private readonly items: { edge: Edge; age: number }[] = [];
  private pushed = 0;

  push(edge: Edge): void {
    const { items } = this;
    items.push({ edge, age: -this.pushed++ });
    for (let i = items.length - 1; i > 0; ) {
      const parent = (i - 1) >> 1;
      if (!this.before(i, parent)) break;
      this.swap(i, parent);
      i = parent;
    }
  }

  pop(): Edge | undefined {
    const { items } = this;
    const top = items[0];
    const last = items.pop();
    if (!top || !last || items.length === 0) return top?.edge;
    items[0] = last;
    for (let i = 0; ; ) {
      let least = i;
      for (const child of [2 * i + 1, 2 * i + 2]) if (child < items.length && this.before(child, least)) least = child;
      if (least === i) return top.edge;
      this.swap(i, least);
      i = least;
    }
  }

  private before(i: number, j: number): boolean {
    const [a, b] = [this.items[i] ?? missing(), this.items[j] ?? missing()];
    return a.edge.key < b.edge.key || (a.edge.key === b.edge.key && a.age < b.age);
  }

  private swap(i: number, j: number): void {
    const { items } = this;
    const held = items[i] ?? missing();
    items[i] = items[j] ?? missing();
    items[j] = held;
  }
}
