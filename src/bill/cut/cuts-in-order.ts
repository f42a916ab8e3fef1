import { type CutListRow, cutList } from "../../calc/cutting/cut-list.ts";
import { showReading } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { CutGroup } from "./plan-cutting.ts";

/** The shear's cuts of a group as a person follows them; none for the waterjet. */
export const cutsInOrder = ({ plan }: CutGroup): readonly CutListRow[] => (plan ? cutList(plan) : []);

/** "strip, setting 3", "trim, to a mark: 0.25 in drops", "cross, front stop: 36 in on table". */
export function cutNote({ stage, setting, by, measure, measured }: CutListRow, system: UnitSystem): string {
  if (by === "gauge") return `${stage}, setting ${setting}`;
  const size = `${showReading(measure, system)} ${measured === "drops" ? "drops" : "on table"}`;
  return `${stage}, ${by === "mark" ? "to a mark" : "front stop"}: ${size}`;
}
