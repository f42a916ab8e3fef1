import type { Finding } from "../../calc/finding.ts";
import { HANDS_CHECK_IN, HANDS_NOTE_IN } from "../../data/thresholds.ts";
import { atLeast } from "../../units/nearly.ts";
import type { Rates } from "../nouns/rates.ts";
import type { Blank } from "./blank.ts";

/** How near the fingers come that hold the blank at the die: by its other side, or by neither (common practice). */
export function handsFinding({ length, width }: Pick<Blank, "length" | "width">, rates: Rates): Finding | undefined {
  const [long, short] = [Math.max(length, width), Math.min(length, width)];
  const about = { about: "hands", figure: short, beside: long, quantity: "length" } as const;
  const check = rates.limit(HANDS_CHECK_IN);
  if (!atLeast(long, check)) return { ...about, status: "check", kind: "neither side", limit: check };
  const note = rates.limit(HANDS_NOTE_IN);
  return atLeast(short, note) ? undefined : { ...about, status: "note", kind: "one side", limit: note };
}
