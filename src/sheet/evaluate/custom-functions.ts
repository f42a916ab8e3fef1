import type { CellMatrix, CellValue } from "../../units/cell.ts";

/** The add-in's own functions as the engine sees them; the engine itself knows no trade. A call never throws. */
export interface CustomFunctions {
  /** What stands before the dot of a typed call ("NAME" of NAME.FUNCTION), in capitals; "" where there are none. */
  readonly namespace: string;
  /** Canonical name ("BEND.TONNAGE") from any case, prefix already taken off, underscores possibly standing for dots. */
  resolve(name: string): string | undefined;
  names(): readonly string[];
  call(
    name: string,
    args: readonly (CellValue | CellMatrix | undefined)[],
  ): { readonly value: CellValue | CellMatrix; readonly unit: string | null };
}

/** For workbooks that call none of them. */
export const noCustomFunctions: CustomFunctions = {
  namespace: "",
  resolve: () => undefined,
  names: () => [],
  call: (name) => {
    throw new Error(`no custom function ${name}`);
  },
};

/** Every name a person may call, for hints. */
export const callableNames = (custom: CustomFunctions, worksheet: readonly string[]): readonly string[] => [
  ...custom.names().map((name) => `${custom.namespace}.${name}`),
  ...worksheet,
];
