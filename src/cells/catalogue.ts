/** The catalogue of cell functions, and how a name typed in a cell finds its record. */

import { type Argument, type CallResult, callRecord } from "./call.ts";
import { RECORDS } from "./catalogue.generated.ts";
import type { AnyRecord } from "./record.ts";

export { RECORDS };

/** In front of every name in a cell: SHOP.BEND.TONNAGE. */
export const NAMESPACE = "SHOP";

/** In a saved file dots become underscores, so two names never differ only there. */
const fold = (name: string): string => name.toUpperCase().replace(/\./g, "_");
const byName = new Map(RECORDS.map((record) => [fold(record.name), record]));

/** The record of a name without namespace, in any case, dots or underscores. */
export const findRecord = (name: string): AnyRecord | undefined => byName.get(fold(name));

/** The functions as a host sees them. A call never throws. */
export const shopFunctions = {
  resolve: (name: string): string | undefined => findRecord(name)?.name,
  names: (): readonly string[] => RECORDS.map((record) => record.name),
  call: (name: string, given: readonly Argument[]): CallResult => callRecord(findRecord(name)!, given),
};
