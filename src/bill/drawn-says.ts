/** How the tools of a picture and of an order were drawn, in words: from outlines, or from tables, and what was assumed. */
import type { BentStrip } from "./lines/bent-strip.ts";

/** "" where real outlines were given. */
export function drawnSays({ isPlain, assumed, inTheWay }: Pick<BentStrip, "isPlain" | "assumed" | "inTheWay">): string {
  if (!isPlain) return "";
  const sizes = [...assumed.punch.map((size) => `punch ${size}`), ...assumed.die.map((size) => `die ${size}`)];
  const how = inTheWay === undefined ? "assumed" : "assumed slim";
  return sizes.length === 0
    ? "tools drawn from their tables"
    : `tools drawn from their tables; ${how}: ${sizes.join(", ")}`;
}
