/** Small bills of our own for the tests; lengths in millimeters. */
import { type Blank, type Limits, NO_LIMITS, type Stock } from "../../../src/calc/cutting/index.ts";
import { mm } from "../../../src/units/quantity.ts";

export const blank = (id: string, w: number, h: number, quantity: number, grain: Blank["grain"] = "free"): Blank => ({
  id,
  w: mm(w),
  h: mm(h),
  quantity,
  grain,
});

export const sheet = (id: string, w: number, h: number, more: Partial<Stock> = {}): Stock => ({
  id,
  w: mm(w),
  h: mm(h),
  quantity: Number.POSITIVE_INFINITY,
  price: null,
  grain: "w",
  trim: mm(0),
  remnant: false,
  ...more,
});

export const limits = (more: { [name in keyof Limits]?: number | boolean } = {}): Limits =>
  ({ ...NO_LIMITS, cutToMark: false, ...more }) as Limits;

export const sheetsOf = (plan: { readonly sheets: readonly { readonly count: number }[] }): number =>
  plan.sheets.reduce((sum, { count }) => sum + count, 0);
