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

/** @param isGiven tells an argument from a step of the calculation. */
export function workingRows(
  steps: readonly Step[],
  system: UnitSystem,
  isGiven: (step: Step) => boolean,
): CellValue[][] {
  return onceEach(steps, isGiven).map(({ symbol, meaning, value, unit, source }) => {
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

/**
 * Each symbol once: what the calculation itself says again takes an argument's place, the same step of several bends
 * or lines stands once, where it is first needed (the answer at the end), and another figure of the same symbol is numbered.
 */
function onceEach(steps: readonly Step[], isGiven: (step: Step) => boolean): Step[] {
  const answer = JSON.stringify(steps.at(-1));
  const stands = new Map<string, number>();
  steps.forEach((step, i) => {
    const words = JSON.stringify(step);
    if (!stands.has(words) || words === answer) stands.set(words, i);
  });
  const ofCalculation = new Set(steps.filter((step) => !isGiven(step)).map(({ symbol }) => symbol));
  const known = new Map<string, number>();
  return steps
    .filter((step, i) => (isGiven(step) ? !ofCalculation.has(step.symbol) : stands.get(JSON.stringify(step)) === i))
    .map((step) => {
      const times = (known.get(step.symbol) ?? 0) + 1;
      known.set(step.symbol, times);
      return times === 1 ? step : { ...step, symbol: `${step.symbol} ${times}` };
    });
}
