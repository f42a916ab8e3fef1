/**
 * Inside the project every quantity has exactly one unit, carried by its type: lengths are millimeters, forces newtons,
 * masses kilograms, stresses megapascals, angles degrees. A plain number does not pass for a quantity, so a formula
 * that mixes inches into millimeters does not compile.
 */
declare const unit: unique symbol;

export type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

export type Millimeters = Quantity<"mm">;
export type Newtons = Quantity<"N">;
export type NewtonsPerMillimeter = Quantity<"N/mm">;
export type Kilograms = Quantity<"kg">;
export type Megapascals = Quantity<"MPa">;
export type KilogramsPerCubicMillimeter = Quantity<"kg/mm^3">;
export type Degrees = Quantity<"deg">;
export type MillimetersPerMinute = Quantity<"mm/min">;
export type GramsPerMinute = Quantity<"g/min">;
export type Hours = Quantity<"h">;
export type Minutes = Quantity<"min">;
export type Money = Quantity<"money">;
export type Ratio = number;

/** Names a plain number as a quantity. The one place where a number gains a unit: readers, data and calc results. */
export const mm = (value: number) => value as Millimeters;
export const newtons = (value: number) => value as Newtons;
export const newtonsPerMillimeter = (value: number) => value as NewtonsPerMillimeter;
export const kilograms = (value: number) => value as Kilograms;
export const megapascals = (value: number) => value as Megapascals;
export const kilogramsPerCubicMillimeter = (value: number) => value as KilogramsPerCubicMillimeter;
export const degrees = (value: number) => value as Degrees;
export const millimetersPerMinute = (value: number) => value as MillimetersPerMinute;
export const gramsPerMinute = (value: number) => value as GramsPerMinute;
export const hours = (value: number) => value as Hours;
export const minutes = (value: number) => value as Minutes;
export const money = (value: number) => value as Money;

export const radians = (angle: Degrees): number => (angle * Math.PI) / 180;
