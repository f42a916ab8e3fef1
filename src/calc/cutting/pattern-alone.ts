/** The pattern with one piece alone on a sheet; null where the shear cannot cut it so. */
import { itemAt } from "../../units/certain.ts";
import { type CutPattern, patternOf } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { canBeSheared } from "./shear-check.ts";

export function patternAlone(problem: Problem, item: number, sheet: number): CutPattern | null {
  for (const direction of itemAt(problem.sheets, sheet).roots) {
    for (const turned of [false, true]) {
      if (itemAt(turned ? problem.turned : problem.plain, sheet)[item] !== 1) continue;
      const pattern = patternOf(sheet, { direction, parts: [{ item, turned }] });
      if (canBeSheared(problem, pattern)) return pattern;
    }
  }
  return null;
}
