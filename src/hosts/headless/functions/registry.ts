import { aggregates } from "./aggregates.ts";
import type { WorksheetFunction } from "./define.ts";
import { information } from "./information.ts";
import { logical } from "./logical.ts";
import { mathematics } from "./mathematics.ts";

const families: readonly (readonly WorksheetFunction[])[] = [logical, mathematics, aggregates, information];

const byName = new Map(families.flat().map((f) => [f.name, f] as const));

export const worksheetFunction = (name: string): WorksheetFunction | undefined => byName.get(name);
export const worksheetFunctionNames = (): readonly string[] => [...byName.keys()].sort();
