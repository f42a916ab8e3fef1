import { HOUSINGS_LESS_IN, THROAT_IN } from "../../../data/thresholds.ts";
import { atMost } from "../../../units/nearly.ts";
import { degrees, type Millimetres, mm, radians } from "../../../units/quantity.ts";
import type { Finding } from "../../finding.ts";
import { limitOf } from "../../limit-of.ts";
import type { Die, Punch } from "../tooling.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/** Are bed and tools as long as the bend, does what passes the housings fit the throat, does the nose go into the die? */
export function roomFindings(line: BendLine, setup: Setup): Finding[] {
  const { bendLength } = line;
  const { brake, die, punch } = setup;
  const lengths = [
    { kind: "bed", name: brake.name, limit: brake.bedLength },
    { kind: "die", name: die.name, limit: lengthOf(die) },
    { kind: "punch", name: punch?.name ?? "", limit: lengthOf(punch) },
  ];
  // One cause, said once: the shortest of them.
  const { kind, name, limit } = lengths.reduce((a, b) => (b.limit < a.limit ? b : a));
  const tooLong: Finding[] = atMost(bendLength, limit)
    ? []
    : [{ about: "room", status: "stop", kind, figure: bendLength, limit, quantity: "length", name }];
  return [...tooLong, ...throatFindings(line, setup), ...noseFindings(line, setup)];
}

/** As stated, or of all its sections together. */
const lengthOf = (tool: Die | Punch | undefined): Millimetres =>
  tool?.length ?? (tool?.sections ? mm(tool.sections.reduce((sum, piece) => sum + piece, 0)) : mm(Infinity));

/**
 * A bend longer than the room between the housings stands before them, and what lies behind it goes no deeper than the
 * throat: at least the shorter of the two flanges beside each bend, whichever end is at the gauge (geometry).
 */
function throatFindings({ bendLength, flanges, bendAngles }: BendLine, { brake, own }: Setup): Finding[] {
  if (atMost(bendLength, brake.betweenHousings - limitOf(HOUSINGS_LESS_IN, own))) return [];
  const figure = Math.max(...bendAngles.map((_, i) => Math.min(flanges[i]!, flanges[i + 1]!)));
  const limit = brake.throat ?? limitOf(THROAT_IN, own);
  if (atMost(figure, limit)) return [];
  const isStated = brake.throat !== undefined;
  const kind = isStated ? "throat" : "throat not stated";
  return [
    { about: "room", status: isStated ? "stop" : "check", kind, figure, limit, quantity: "length", name: brake.name },
  ];
}

/** Round the nose the sheet's outer face must leave its arc before it meets the die's edge: (R + t) sin(A/2) <= V/2 (geometry). */
function noseFindings(line: BendLine, { die, punch }: Setup): Finding[] {
  if (punch?.nose === undefined) return [];
  const half = Math.sin(radians(degrees(sharpest(line) / 2)));
  const limit: Millimetres = mm(die.opening / 2 / half - line.thickness);
  return atMost(punch.nose, limit)
    ? []
    : [
        {
          about: "room",
          status: "stop",
          kind: "nose",
          figure: punch.nose,
          limit,
          quantity: "length",
          name: punch.name,
          words: die.name,
        },
      ];
}
