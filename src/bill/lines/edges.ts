import { cracks } from "../../calc/bend/cracks.ts";
import type { Finding } from "../../calc/finding.ts";
import { DEBURR_FROM_IN } from "../../data/thresholds.ts";
import { atLeast } from "../../units/nearly.ts";
import { type BillLine, bentStrips } from "../nouns/line.ts";
import { asksFor } from "../nouns/operations.ts";
import type { Rates } from "../nouns/rates.ts";

/**
 * The corners at the ends of a bend line tear where a burr is left on their outside: thick plate should have them
 * deburred, a temper that cracks must (common practice).
 */
export function edgeFinding(line: BillLine, rates: Rates): Finding | undefined {
  const { material, thickness } = line;
  if (bentStrips(line).length === 0 || asksFor(line, "deburr")) return undefined;
  const found = { about: "edges", name: material.name } as const;
  if (cracks(material)) return { ...found, status: "check", kind: "cracking temper" };
  const limit = rates.limit(DEBURR_FROM_IN);
  return atLeast(thickness, limit)
    ? { ...found, status: "note", kind: "plate", figure: thickness, limit, quantity: "length" }
    : undefined;
}
