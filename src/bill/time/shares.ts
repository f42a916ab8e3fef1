import { entryOf } from "../../units/certain.ts";
import type { LinePlan } from "../lines/plan-line.ts";

interface Run {
  readonly plan: LinePlan;
  /** Lines with the same one share a set-up. */
  readonly key: string;
  readonly run: number;
}

/** Of a set-up that lines share, each line's part: by its run, so that no line pays for coming first. */
export function sharesOf(runs: readonly Run[]): Map<LinePlan, number> {
  const sums = new Map<string, number>();
  for (const { key, run } of runs) sums.set(key, (sums.get(key) ?? 0) + run);
  return new Map(runs.map(({ plan, key, run }) => [plan, run / entryOf(sums, key)]));
}
