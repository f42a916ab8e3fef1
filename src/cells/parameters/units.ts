/** `units`: rules plain numbers and the result of this call. Nothing is remembered between calls. */
import { UNIT_SYSTEMS, type UnitSystem } from "../../units/system.ts";
import type { CellParameter } from "../record/record.ts";
import { choice } from "./choice.ts";

export const units = (): CellParameter<UnitSystem> =>
  choice({
    description:
      'Units of plain numbers and of the result: "in" (inches, US tons, pounds) or "mm" (millimeters, kN, kg)',
    words: UNIT_SYSTEMS,
    fallback: "in",
  });
