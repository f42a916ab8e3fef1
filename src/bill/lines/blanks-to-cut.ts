/** How many blanks a line is cut in, and what share of them it pays. */
import { blanksNeeded, chargedShare } from "../../calc/cost/blanks-needed.ts";
import type { Ratio } from "../../units/quantity.ts";
import { type BillLine, bentStrips } from "../nouns/line.ts";
import type { Rates } from "../nouns/rates.ts";

/** Up to two bends are tried on a strip from the drop; from three on the first piece is a full blank (common practice). */
const FIRST_PIECE_FROM_BENDS = 3;

type Ordered = Pick<BillLine, "quantity" | "main" | "cross">;

/** A shop that states no allowances cuts what is ordered. */
function allowances(line: Ordered, rates: Rates): [ordered: number, scrap: Ratio, firstPieces: number] {
  const bends = bentStrips(line).reduce((sum, { angles }) => sum + angles.length, 0);
  const firstPieces = bends < FIRST_PIECE_FROM_BENDS ? 0 : (rates.find("firstPieces") ?? 0);
  return [line.quantity, rates.find("scrapAllowance") ?? 0, firstPieces];
}

export const blanksToCut = (line: Ordered, rates: Rates): number => blanksNeeded(...allowances(line, rates));
export const shareCharged = (line: Ordered, rates: Rates): Ratio => chargedShare(...allowances(line, rates));
