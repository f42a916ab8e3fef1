/** The catalogue of cell functions as the hosts see it. */
import { entryOf } from "../units/certain.ts";
import { type Argument, type CallResult, callRecord } from "./call/call.ts";
import { RECORDS } from "./catalogue.generated.ts";
import { findRecord, register } from "./record/registry.ts";

register(RECORDS);

export { findRecord, RECORDS };

/** In front of every name in a cell: SHOP.BEND.TONNAGE. */
export const NAMESPACE = "SHOP";

/** The functions as a host calls them. A call never throws. */
export const shopFunctions = {
  namespace: NAMESPACE,
  resolve: (name: string): string | undefined => findRecord(name)?.name,
  names: (): readonly string[] => RECORDS.map((record) => record.name),
  call: (name: string, given: readonly Argument[]): CallResult => callRecord(entryOf({ get: findRecord }, name), given),
};
