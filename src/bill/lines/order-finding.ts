import { type Obstacle, obstacleInWords } from "../../calc/bend/order/watch.ts";
import type { Finding } from "../../calc/finding.ts";
import { ORDER_CLEARANCE_IN } from "../../data/thresholds.ts";
import type { Rates } from "../nouns/rates.ts";
import type { BentStrip } from "./bent-strip.ts";

/** A flange that falls into the die, or a sheet that meets the tools' faces, is said already: one cause, one sentence. */
const isSaid = ({ tool, phase }: Obstacle, known: readonly Finding[]): boolean =>
  known.some(
    ({ about }) =>
      (about === "flange" && tool === "die opening") ||
      (about === "loaded angle" && phase === "bend" && (tool === "die" || tool === "punch")),
  );

/**
 * The bend order decides: none on real outlines stops, none on tools drawn from their tables asks for a look.
 * @param known what is found about the tools already.
 */
export function orderFinding(
  { order, isPlain }: BentStrip,
  known: readonly Finding[],
  rates: Rates,
): Finding | undefined {
  if (!order.feasible) {
    const { bend, obstacle } = order.blocked[0]!;
    if (isSaid(obstacle, known)) return undefined;
    return {
      about: "bend order",
      status: isPlain ? "check" : "stop",
      kind: isPlain ? "none on plain tools" : "none on outlines",
      figure: bend,
      words: obstacleInWords(obstacle),
    };
  }
  const gaps = order.hits.flatMap(({ gap }) => (gap === undefined ? [] : [gap]));
  const least = Math.min(...gaps);
  const limit = rates.limit(ORDER_CLEARANCE_IN);
  return isPlain && least < limit
    ? { about: "bend order", status: "note", kind: "tight", figure: least, limit, quantity: "length" }
    : undefined;
}
