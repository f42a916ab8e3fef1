/**
 * Millimeters to the whole numbers the search works in: 1/320 mm, on which both 1/64 in and 0.1 mm are whole. Blanks are
 * never rounded down, sheets and reaches never up.
 */
import { type Millimeters, mm } from "../../units/quantity.ts";

const PER_MM = 320;
/** Far below what a shear can hold; takes away the dust of decimal fractions. */
const DUST = 1e-4;

export const gridUp = (length: Millimeters): number => Math.ceil(length * PER_MM - DUST);
export const gridDown = (length: Millimeters): number => Math.floor(length * PER_MM + DUST);
export const fromGrid = (units: number): Millimeters => mm(units / PER_MM);
/** Grid units squared to square millimeters. */
export const areaFromGrid = (area: number): number => area / (PER_MM * PER_MM);
