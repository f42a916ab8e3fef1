import { atMost } from "../../units/nearly.ts";
import type { Millimeters } from "../../units/quantity.ts";

/** Does one blank lie on the sheet, the web around it? `grain`: which of its sizes lies along the sheet. */
export function liesOnSheet(
  blank: { readonly length: Millimeters; readonly width: Millimeters; readonly grain: "along" | "across" | "free" },
  sheet: { readonly length: Millimeters; readonly width: Millimeters; readonly grain?: "long" | "short" },
  web: Millimeters,
): boolean {
  const { length, width, grain } = blank;
  const lies = (along: number, up: number) =>
    atMost(along + 2 * web, sheet.length) && atMost(up + 2 * web, sheet.width);
  const [first, second] = sheet.grain === "short" ? ["across", "along"] : ["along", "across"];
  return (grain !== second && lies(length, width)) || (grain !== first && lies(width, length));
}
