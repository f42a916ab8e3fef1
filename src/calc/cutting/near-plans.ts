/** Complete plans that count little more than the best one, what counts least with its time first. */
import type { Solution } from "./solution.ts";

/** Plans kept beside the best one, and how much more they may count: chosen. */
const MOST_NEAR = 8;
const NEAR = 0.02;

/** `perSecond`: what a second at the shear counts; Infinity: nothing but it. */
export function withNear(near: readonly Solution[], solution: Solution, perSecond: number): readonly Solution[] {
  if (near.some(({ net, effort }) => net === solution.net && effort() === solution.effort())) return near;
  const all = ({ net, effort }: Solution) => (perSecond === Infinity ? effort() : net + perSecond * effort());
  const sorted = [...near, solution].sort((a, b) => all(a) - all(b) || a.net - b.net);
  const least = Math.min(...sorted.map(({ net }) => net));
  return sorted.filter(({ net }, k) => k < MOST_NEAR && net <= least * (1 + NEAR));
}
