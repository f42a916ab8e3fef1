import type { PinnedParts } from "../../calc/cutting/types.ts";
import type { Material } from "../../data/materials/material.ts";
import { atMost } from "../../units/nearly.ts";
import type { Kilograms, Millimeters, Money } from "../../units/quantity.ts";

/** Sheets that can be bought or lie in the rack. */
export interface StockSheet {
  readonly name: string;
  readonly material: Material;
  readonly thickness: Millimeters;
  /** The long side. */
  readonly length: Millimeters;
  readonly width: Millimeters;
  readonly weight: Kilograms;
  /** undefined: no price is known. */
  readonly price: Money | undefined;
  /** undefined: as many as wanted. */
  readonly count: number | undefined;
  readonly leadDays: number | undefined;
  readonly isRemnant: boolean;
  /** The side along which it was rolled. */
  readonly grain: "long" | "short";
  /** Its edges are sheared already, so that no trim comes off. */
  readonly edgesSheared: boolean;
  /** What a remnant of it that is kept counts, from 0 to 1 of the same area of a new sheet. */
  readonly remnantWorth: number;
  /** Whether Stock says so; else it is common practice, and the price bears a note. */
  readonly saysRemnantWorth: boolean;
  /** The layout to which all of them are cut, its parts by name. */
  readonly pinned?: PinnedParts | undefined;
}

/**
 * Two ways to write one thickness, such as 4 mm and 0.157 in, differ by at most half a thousandth of an inch, to which
 * inch decimals are rounded. That is below the step between two gauges that a brake bends.
 */
const SAME_MM = 0.0127;
/** By more than a way of writing. */
export const isThinner = (thickness: Millimeters, other: Millimeters): boolean => !atMost(other, thickness + SAME_MM);

export interface SheetsToCut {
  /** All sheets of the material in that thickness, in an order of their own: never that of the table. */
  readonly sheets: readonly StockSheet[];
  readonly thickness: Millimeters;
  /** The thickness that was asked for is not there, and this is the next thicker one. */
  readonly isThicker: boolean;
}

/** What a line of this material and thickness is cut from; undefined where Stock has neither it nor a thicker one. */
export function sheetsToCut(
  material: Pick<Material, "name">,
  thickness: Millimeters,
  stock: readonly StockSheet[],
): SheetsToCut | undefined {
  const same = stock.filter((sheet) => sheet.material.name === material.name);
  const enough = same.filter((sheet) => !isThinner(sheet.thickness, thickness)).map((sheet) => sheet.thickness);
  if (enough.length === 0) return undefined;
  const least = Math.min(...enough) as Millimeters;
  const isThicker = isThinner(thickness, least);
  return {
    sheets: ordered(same.filter((sheet) => sheet.thickness >= least && !isThinner(least, sheet.thickness))),
    thickness: least,
    isThicker,
  };
}

/** Cheapest by area first, then the larger, then by name. */
function ordered(sheets: readonly StockSheet[]): StockSheet[] {
  const perArea = ({ price, length, width }: StockSheet) => (price ?? 0) / (length * width);
  return [...sheets].sort(
    (a, b) =>
      perArea(a) - perArea(b) ||
      b.length * b.width - a.length * a.width ||
      (a.name < b.name ? -1 : a.name > b.name ? 1 : 0),
  );
}

/** Does a blank lie on the sheet, turned or not? */
export function fitsOn(
  sheet: Pick<StockSheet, "length" | "width">,
  blank: { readonly length: Millimeters; readonly width: Millimeters },
): boolean {
  const [long, short] = [Math.max(blank.length, blank.width), Math.min(blank.length, blank.width)];
  return atMost(long, sheet.length) && atMost(short, sheet.width);
}
