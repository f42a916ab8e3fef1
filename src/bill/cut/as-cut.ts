/** A line's flat as its blanks are cut: on the cut plan's grid, with the last digit it has in every other view. */
import { fromGrid, gridDown, gridUp } from "../../calc/cutting/grid.ts";
import type { Millimeters } from "../../units/quantity.ts";
import { showPlain } from "../../units/show.ts";
import { UNIT_SYSTEMS, type UnitSystem } from "../../units/system.ts";
import type { Blank } from "../lines/blank.ts";

/** One grid step up or down, 1/320 mm at most: less metal than a figure that would read differently is worth. */
export function asCut(blank: Blank, system: UnitSystem): Blank {
  const onGrid = (length: Millimeters): Millimeters => {
    const steps = [fromGrid(gridUp(length)), fromGrid(gridDown(length))];
    const readsSame = (systems: readonly UnitSystem[]) =>
      steps.find((step) => systems.every((each) => showPlain(step, each) === showPlain(length, each)));
    // The grid is finer than either reading: one of the steps reads the same in the shop's own units.
    return readsSame(UNIT_SYSTEMS) ?? readsSame([system]) ?? length;
  };
  return { ...blank, length: onGrid(blank.length), width: onGrid(blank.width) };
}
