import { BOX_CLEAR_IN, BOX_SHORT_IN } from "../../../data/thresholds.ts";
import { type Millimeters, mm } from "../../../units/quantity.ts";
import { remember } from "../../../units/remember.ts";
import type { Finding } from "../../finding.ts";
import { limitOf, type OwnThresholds } from "../../limit-of.ts";

/** A bend between two flanges that stand at its ends, and the tool that goes in between them. */
export interface Between {
  /** From inside face to inside face. */
  readonly inside: Millimeters;
  readonly name: string;
  readonly length: Millimeters | undefined;
  readonly sections: readonly Millimeters[] | undefined;
}

/**
 * Can a tool be made up that goes between two flanges: a little shorter than the room, and not so short that the bend
 * is bent without a tool at its ends (common practice)? Sections that are not listed are not known to be there.
 */
export function boxFinding({ inside, name, length, sections }: Between, own?: OwnThresholds): Finding | undefined {
  const most = mm(inside - limitOf(BOX_CLEAR_IN, own));
  const least = mm(inside - limitOf(BOX_SHORT_IN, own));
  const best = sections === undefined ? undefined : longestUpTo(sections, most);
  if ([best, length].some((made) => made !== undefined && made >= least - GRID && made <= most + GRID))
    return undefined;
  const found = { about: "room", status: "check", limit: most, quantity: "length", name } as const;
  return best === undefined
    ? { ...found, kind: "box, none listed", figure: inside, beside: least }
    : { ...found, kind: "box", figure: best, beside: inside };
}

const GRID = 0.01; // mm, chosen: finer than any section is ground to
const MOST_REMEMBERED = 256; // chosen: a list of sections and a box each

/** The longest that some of the pieces make together within a length: subset sums on a grid. */
export const longestUpTo = remember(
  MOST_REMEMBERED,
  (pieces: readonly Millimeters[], most: Millimeters): Millimeters => {
    if (!(most > 0)) return mm(0);
    const made = new Uint8Array(Math.round(most / GRID) + 1);
    made[0] = 1;
    for (const piece of pieces) {
      const step = Math.round(piece / GRID);
      for (let i = made.length - 1; i >= step; i--) if (made[i - step]) made[i] = 1;
    }
    return mm(made.lastIndexOf(1) * GRID);
  },
);
