/** Prices are whole cents of whatever money the shop counts in: the smallest coin, one hundredth. */
import { type Money, money } from "../../units/quantity.ts";

const CENTS = 100; // by definition, hundredths
const LAST_BITS = 1e-6; // chosen: a ten-thousandth of a hundredth of a cent is rounding of the arithmetic, not money

/** Up to the next whole cent. */
export const upToCent = (amount: number): Money => money(Math.max(0, Math.ceil(amount * CENTS - LAST_BITS)) / CENTS);
/** To the nearest cent: for sums of cents, whose last bits are not money. */
export const toCent = (amount: number): Money => money(Math.round(amount * CENTS) / CENTS);
