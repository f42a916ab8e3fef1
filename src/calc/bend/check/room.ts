import { HOUSINGS_LESS_IN, NOSE_FREE_SHEET, OPENING_STOP, THROAT_IN } from "../../../data/thresholds.ts";
import { itemAt } from "../../../units/certain.ts";
import { atLeast, atMost } from "../../../units/nearly.ts";
import { type Millimeters, mm } from "../../../units/quantity.ts";
import type { Finding } from "../../finding.ts";
import { limitOf } from "../../limit-of.ts";
import { typicalTensile } from "../../material/strength.ts";
import type { Die, Punch } from "../tooling.ts";
import { wrappedNose } from "../wrapped-nose.ts";
import { type BendLine, type Setup, sharpestBend } from "./line.ts";

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
const lengthOf = (tool: Die | Punch | undefined): Millimeters =>
  tool?.length ?? (tool?.sections ? mm(tool.sections.reduce((sum, piece) => sum + piece, 0)) : mm(Infinity));

/**
 * A bend longer than the room between the housings stands before them, and what lies behind it goes no deeper than the
 * throat: at least the shorter of the two flanges beside each bend, whichever end is at the gauge (geometry).
 */
function throatFindings({ bendLength, flanges, bendAngles }: BendLine, { brake, own }: Setup): Finding[] {
  if (atMost(bendLength, brake.betweenHousings - limitOf(HOUSINGS_LESS_IN, own))) return [];
  const figure = Math.max(...bendAngles.map((_, i) => Math.min(itemAt(flanges, i), itemAt(flanges, i + 1))));
  const limit = brake.throat ?? limitOf(THROAT_IN, own);
  if (atMost(figure, limit)) return [];
  const isStated = brake.throat !== undefined;
  const kind = isStated ? "throat" : "throat not stated";
  return [
    { about: "room", status: isStated ? "stop" : "check", kind, figure, limit, quantity: "length", name: brake.name },
  ];
}

/**
 * Between nose and shoulder some sheet must stay straight, or the bend presses the sheet instead of bending it: none left
 * is a stop, less than about its thickness a check, since force and angle hang on the last of it.
 */
function noseFindings(line: BendLine, setup: Setup): Finding[] {
  const { die, punch, own } = setup;
  const tensile = typicalTensile(line.material);
  if (punch?.nose === undefined || tensile === undefined) return [];
  const { freeSheet, widestNose } = wrappedNose(sharpestBend(line, setup), line.thickness, tensile, line.bendLength);
  const least = mm(limitOf(NOSE_FREE_SHEET, own) * line.thickness);
  if (atLeast(freeSheet, least)) return [];
  const fits = freeSheet > 0;
  // Where a die is too narrow for the sheet, its opening is to blame, not the nose.
  if (fits && die.opening < limitOf(OPENING_STOP, own) * line.thickness) return [];
  const found = { about: "room", figure: punch.nose, limit: widestNose(least), quantity: "length" } as const;
  return [
    {
      ...found,
      status: fits ? "check" : "stop",
      kind: fits ? "nose fills" : "nose",
      name: punch.name,
      words: die.name,
    },
  ];
}
