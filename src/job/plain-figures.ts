/** Figures of a plan as they stand in JSON: plain, in the shop's own units, absent as null. */
import { fromInternal, type QuantityKind, type UnitSystem } from "../units/system.ts";

const DIGITS = 15; // what a worksheet keeps: the last bits that a unit conversion leaves behind are no answer

export const plain = (value: number): number => Number(value.toPrecision(DIGITS));

export const figureIn =
  (system: UnitSystem) =>
  (value: number, quantity: QuantityKind): number =>
    plain(fromInternal(value, quantity, system));

export const orNull = <T>(value: T | undefined): T | null => value ?? null;

/** "" in a bill is a cell that nobody filled in. */
export const textOrNull = (text: string | undefined): string | null => text || null;

const MS_PER_SECOND = 1000;
const FIRST_DAY = Date.UTC(1899, 11, 30); // day 0 of a worksheet's dates

/** The shop's own clock, without a time zone: "2026-03-04T12:00:00". @param at seconds of the worksheet's dates. */
export const isoTime = (at: number): string =>
  new Date(FIRST_DAY + Math.round(at) * MS_PER_SECOND).toISOString().slice(0, 19);
