/** Recorded steps as rows of cells, figures in the unit system of the call. */
import type { CellValue } from "../../units/cell.ts";
import { fromInternal, type QuantityKind, SCALES, type UnitSystem, unitName } from "../../units/system.ts";
import type { Step } from "../../units/working.ts";

/** The unit words that calc functions write in a step, and the quantity each belongs to. */
const KINDS: Record<string, { readonly kind: QuantityKind; readonly power?: number }> = {
  mm: { kind: "length" },
  mm2: { kind: "length", power: 2 },
  N: { kind: "force" },
  "N/mm": { kind: "lineLoad" },
  MPa: { kind: "stress" },
  kg: { kind: "mass" },
  "kg/mm^3": { kind: "density" },
  "mm/min": { kind: "feed" },
};

export function workingRows(steps: readonly Step[], system: UnitSystem): CellValue[][] {
  return steps.map(({ symbol, meaning, value, unit, source }) => {
    const known = typeof value === "number" ? KINDS[unit] : undefined;
    if (!known) return [symbol, meaning, value, unit, source];
    const { kind, power = 1 } = known;
    const figure =
      power === 1
        ? fromInternal(value as number, kind, system)
        : (value as number) / SCALES[kind][system].size ** power;
    const name = unitName(kind, system);
    return [symbol, meaning, figure, power === 1 ? name : `${name}${power}`, source];
  });
}
