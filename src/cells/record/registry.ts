/**
 * Finds a record by the name typed in a cell. Filled once by the catalogue: functions that answer about functions
 * (FUNCTIONS, SOURCE, WORKING) are records themselves and cannot import the list they stand in.
 */
import type { AnyRecord } from "./record.ts";

/** In a saved file dots become underscores, so two names never differ only there. */
const fold = (name: string): string => name.toUpperCase().replace(/\./g, "_");
const byName = new Map<string, AnyRecord>();

export function register(records: readonly AnyRecord[]): void {
  for (const record of records) byName.set(fold(record.name), record);
}

/** The record of a name without namespace, in any case, with dots or underscores. */
export const findRecord = (name: string): AnyRecord | undefined => byName.get(fold(name));
export const allRecords = (): readonly AnyRecord[] => [...byName.values()];
export const recordNames = (): readonly string[] => allRecords().map(({ name }) => name);
