import { bendLines } from "../../calc/bend/order/part.ts";
import type { Finding } from "../../calc/finding.ts";
import { density } from "../../calc/material/strength.ts";
import { SWING_FROM_IN, SWING_HEAVY_LB, SWING_THIN_IN } from "../../data/thresholds.ts";
import { itemAt } from "../../units/certain.ts";
import { atMost } from "../../units/nearly.ts";
import type { Millimeters } from "../../units/quantity.ts";
import type { BillLine } from "../nouns/line.ts";
import type { Rates } from "../nouns/rates.ts";
import { type BentStrip, hitsOf } from "./bent-strip.ts";

/**
 * The sheet in front of the die swings up with the bend. A long front needs room and a hand; a thin one sags and kinks
 * at the die, a heavy one drags the bend open: a sheet follower, or a second pair of hands (common practice). The front
 * is taken as flat: flanges it has already only shorten it.
 */
export function swingFinding(
  strip: BentStrip,
  { material }: Pick<BillLine, "material">,
  bendLength: Millimeters,
  rates: Rates,
): Finding | undefined {
  const { part } = strip;
  const lines = bendLines(part);
  const flat =
    part.flanges.reduce((sum, flange) => sum + flange, 0) -
    part.bends.reduce((sum, { deduction }) => sum + deduction, 0);
  const fronts = hitsOf(strip).map(({ bend, gaugedEnd }) => {
    const fromFirst = itemAt(lines, bend - 1);
    return gaugedEnd === "first" ? flat - fromFirst : fromFirst;
  });
  const front = Math.max(...fronts);
  const limit = rates.limit(SWING_FROM_IN);
  if (atMost(front, limit)) return undefined;
  const weight = front * bendLength * part.thickness * density(material);
  const thin = atMost(part.thickness, rates.limit(SWING_THIN_IN));
  const heavy = !atMost(weight, rates.limit(SWING_HEAVY_LB));
  const kind = thin ? "sags" : heavy ? "heavy" : "swings";
  return {
    about: "swing",
    status: thin || heavy ? "check" : "note",
    kind,
    figure: front,
    limit,
    quantity: "length",
  };
}
