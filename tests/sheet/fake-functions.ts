import type { CustomFunctions } from "../../src/sheet/evaluate/custom-functions.ts";
import { CellError, type CellMatrix, type CellValue } from "../../src/units/cell.ts";

/** Two invented functions to test the engine without the catalogue: one doubles, one always refuses. */
export const fakeFunctions: CustomFunctions = {
  namespace: "SHOP",
  resolve: (name) => {
    const canonical = name.toUpperCase().replaceAll("_", ".");
    return ["TEST.DOUBLE", "TEST.REFUSE"].includes(canonical) ? canonical : undefined;
  },
  names: () => ["TEST.DOUBLE", "TEST.REFUSE"],
  call: (name, args) => {
    if (name === "TEST.REFUSE") return { value: new CellError("#N/A", "die must be owned; got none"), unit: null };
    const double = (value: CellValue): CellValue => (typeof value === "number" ? value * 2 : value);
    const given = args[0] as CellValue | CellMatrix;
    return { value: Array.isArray(given) ? given.map((row) => row.map(double)) : double(given), unit: "mm" };
  },
};
