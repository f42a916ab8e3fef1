import type { Hit } from "../bend/order/stops.ts";

/** Bends from the ends inward, each gauged from its nearer edge: the usual order (common practice); BEND.ORDER proves one. */
export function usualOrder(bends: number): Hit[] {
  const hits: Hit[] = [];
  for (let front = 1, back = bends; front <= back; front++, back--) {
    hits.push({ bend: front, gaugedEnd: "first" });
    if (back > front) hits.push({ bend: back, gaugedEnd: "last" });
  }
  return hits;
}
