import { type Money, money, type Ratio } from "../../units/quantity.ts";

/**
 * What a remnant that goes back to the rack is worth: its share of the sheet's price, times what the shop says a small one
 * is worth of the same area of a new sheet; the nearer it comes to a whole sheet, the nearer to the full price:
 * P a w^(1 - a). A sheet with one strip off is a sheet; an offcut of odd size (0 to 0.25) or of a sheet that was bought
 * for this job (0) is little or nothing. Half for common stock is common practice, the exponent is chosen: it runs from
 * w to 1 without a jump, rises with the area and is never more than the price of it.
 * @param share its area over the sheet's, 0 to 1. @param worth 0 to 1.
 */
export const remnantCredit = (sheetPrice: Money, share: Ratio, worth: Ratio): Money =>
  money(worth === 0 ? 0 : sheetPrice * share * worth ** (1 - share));
