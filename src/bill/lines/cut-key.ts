import type { Cutter } from "../nouns/line.ts";
import { machineFor } from "./cutting.ts";
import type { LinePlan } from "./plan-line.ts";

/** Lines with the same key are cut together, of the same sheets by the same machine. Sorted, the shear's come first. */
export function cutKey({ cutting, line, sheetThickness }: LinePlan, cutter: Cutter): string {
  const thickness = Math.round(sheetThickness * 1000);
  const machine = cutter === "shear" ? machineFor(cutting, "shear").name : "";
  return `${cutter} ${line.material.name} ${String(thickness).padStart(8, "0")} ${machine}`;
}
