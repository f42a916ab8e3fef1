/** How the tools of a picture and of an order were drawn, in words: from outlines, or from tables, and what was assumed. */
import type { BentStrip } from "./lines/bent-strip.ts";
import type { Punch } from "./nouns/machines.ts";

/** "" where real outlines were given. */
export function drawnSays({ isPlain, assumed, inTheWay }: Pick<BentStrip, "isPlain" | "assumed" | "inTheWay">): string {
  if (!isPlain) return "";
  const sizes = [...assumed.punch.map((size) => `punch ${size}`), ...assumed.die.map((size) => `die ${size}`)];
  const how = inTheWay === undefined ? "assumed" : "assumed slim";
  return sizes.length === 0
    ? "tools drawn from their tables"
    : `tools drawn from their tables; ${how}: ${sizes.join(", ")}`;
}

/**
 * Which way a punch with a throat is mounted: an order holds for that way alone. Drawn from its table its throat is in
 * front; real outlines face as they were drawn. "" of a punch without a throat.
 */
export function throatSays(strip: Pick<BentStrip, "isPlain"> | undefined, punch: Punch | undefined): string {
  if (punch?.reliefDepth === undefined || !strip) return "";
  return strip.isPlain ? "its throat to the operator" : "its throat as in the pictures";
}
