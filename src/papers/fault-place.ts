/** Where the worst finding about a line shows in its pictures. A finding that names no place has none. */
import type { LinePlan } from "../bill/lines/plan-line.ts";
import type { Finding } from "../bill/problems.ts";

export type FaultPlace =
  /** Every bend, as all of them have the same radius; or the sharpest, which force is asked for. */
  | { readonly kind: "bent"; readonly bends: "all" | "sharpest" }
  /** A flange, counted from 0. */
  | { readonly kind: "bent"; readonly flange: number }
  /** Nearer than this, mm, to a flange's inside face no hole keeps its shape. */
  | { readonly kind: "bent"; readonly holesFrom: number }
  | { readonly kind: "flat"; readonly side: "bend lines" | "length" | "width" }
  /** A bend by its number; `rests` where it is the flange's end on the die. */
  | { readonly kind: "hit"; readonly bend: number; readonly rests: boolean };

/** Of the main direction: what is found in a second one is not told apart. */
export function faultPlace({ about, kind, figure, limit }: Finding, plan: LinePlan): FaultPlace | undefined {
  const [first, second] = plan.strips;
  const flanges: readonly number[] = first?.part.flanges ?? [];
  switch (about) {
    case "radius":
    case "drawing radius":
      return { kind: "bent", bends: "all" };
    case "brake force":
      return second ? undefined : { kind: "bent", bends: "sharpest" };
    case "hole":
      return limit === undefined ? undefined : { kind: "bent", holesFrom: limit };
    case "room":
      if (["bed", "die", "punch"].includes(kind)) return second ? undefined : { kind: "flat", side: "bend lines" };
      return kind.startsWith("throat") ? flangeOf(flanges, figure) : undefined;
    case "flange": {
      // Where it leaves no order of the bends, the bend that fails is marked already.
      if (!first?.order.feasible) return undefined;
      const at = flanges.indexOf(figure ?? Number.NaN);
      const isFree = at === 0 || at === flanges.length - 1;
      return isFree ? { kind: "hit", bend: Math.max(1, at), rests: true } : flangeOf(flanges, figure);
    }
    case "bend order":
      return kind === "slides off" && figure !== undefined ? { kind: "hit", bend: figure, rests: false } : undefined;
    case "cutting":
    case "narrow strip": {
      const { length, width } = plan.blank;
      if (figure !== length && figure !== width) return undefined;
      return { kind: "flat", side: figure === length ? "length" : "width" };
    }
    default:
      return undefined;
  }
}

function flangeOf(flanges: readonly number[], figure: number | undefined): FaultPlace | undefined {
  const flange = flanges.indexOf(figure ?? Number.NaN);
  return flange < 0 ? undefined : { kind: "bent", flange };
}
