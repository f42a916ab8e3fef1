import { type Money, money, type Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";

/** Material by area where there is no cut plan: blanks' area at the sheet's price per area, over the yield. Area in mm2. */
export function materialByArea(
  blanks: number,
  areaEach: number,
  sheetPrice: Money,
  sheetArea: number,
  materialYield: Ratio,
  work?: Working,
): Money {
  step(work, "n", "blanks, scrap and first pieces included", blanks, "", "the workbook's allowances");
  return step(
    work,
    "material",
    "material at the stated yield",
    money((blanks * areaEach * (sheetPrice / sheetArea)) / materialYield),
    "money",
    "area x price per area / yield (derived)",
  );
}
