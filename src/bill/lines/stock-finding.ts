import type { Finding } from "../../calc/finding.ts";
import type { BillLine } from "../nouns/line.ts";
import { fitsOn, type SheetsToCut } from "../nouns/stock.ts";
import type { Blank } from "./blank.ts";

/** Is there a sheet for this line? None at all, only thicker ones, or none that its blank fits on. */
export function stockFindings(
  { material, nominal }: BillLine,
  { length, width }: Blank,
  found: SheetsToCut | undefined,
): Finding[] {
  const about = { about: "stock", quantity: "length", name: material.name } as const;
  if (!found) return [{ ...about, status: "check", kind: "not there", figure: nominal }];
  const thicker: Finding[] = found.isThicker
    ? [{ ...about, status: "check", kind: "thicker", figure: nominal, limit: found.thickness }]
    : [];
  if (found.sheets.some((sheet) => fitsOn(sheet, { length, width }))) return thicker;
  return [...thicker, { ...about, status: "stop", kind: "larger", figure: length, beside: width }];
}
