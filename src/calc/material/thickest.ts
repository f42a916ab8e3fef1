import { PLATE_FROM_IN, PLATE_OVER, SHEET_OVER } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import { A6_LIMIT_IN } from "../../data/minimum-radii.ts";
import { A6_OVER, A6_OVER_INSIDE, A6_OVER_THICK, SHEET_OVERS } from "../../data/thickness-tolerances.ts";
import { foundIn } from "../../units/certain.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";

/**
 * Thickest that a sheet of this nominal thickness may come: by the absolute figures of its table, or where the edition
 * names none by a share of the thickness. ASTM A6 measures plate near the edge; farther in it may be 1.75 times as much
 * over (note 4), which is said but not used, since a bend runs from edge to edge. Source: thickness-tolerances.ts.
 */
export function thickestSheet(material: Material, thickness: Millimeters, work?: Working): Millimeters {
  const inches = thickness / MM_PER_INCH;
  const isPlate = atLeast(inches, PLATE_FROM_IN.value);
  const record = (value: number, source: string) =>
    step(work, "t max", "thickest within its tolerance", mm(value), "mm", source);
  if (!material.thicknessOver) {
    const share = material.radiusRule?.table === "ASTM A6" && isPlate ? PLATE_OVER : SHEET_OVER;
    return record(thickness * share.value, cite(share));
  }
  if (material.thicknessOver === "ASTM A6" && isPlate) {
    const over = atMost(inches, A6_LIMIT_IN) ? A6_OVER.value : A6_OVER_THICK.value * inches;
    const note = `${cite(A6_OVER)}; away from the edge ${A6_OVER_INSIDE.value} times as much, note 4`;
    return record(thickness + over * MM_PER_INCH, note);
  }
  const { over } = foundIn(SHEET_OVERS, ({ upTo }) => atMost(inches, upTo));
  const isCarbonSteel = material.gaugeSeries === "steel" || material.gaugeSeries === "galvanized";
  const source = isCarbonSteel
    ? cite(over)
    : cite({ source: `${over.source}, taken for this metal too`, mark: "memory" });
  return record(thickness + over.value * MM_PER_INCH, source);
}
