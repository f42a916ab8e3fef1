import { atMost } from "../../../units/nearly.ts";
import { degrees, type Millimetres, mm, radians } from "../../../units/quantity.ts";
import type { Finding } from "../../finding.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/** Are bed and tools as long as the bend, and does the punch's nose go into the die? */
export function roomFindings(line: BendLine, setup: Setup): Finding[] {
  const { bendLength } = line;
  const { brake, die, punch } = setup;
  const lengths = [
    { kind: "bed", name: brake.name, limit: brake.bedLength },
    { kind: "die", name: die.name, limit: die.length ?? mm(Infinity) },
    { kind: "punch", name: punch?.name ?? "", limit: punch?.length ?? mm(Infinity) },
  ];
  // One cause, said once: the shortest of them.
  const { kind, name, limit } = lengths.reduce((a, b) => (b.limit < a.limit ? b : a));
  const tooLong: Finding[] = atMost(bendLength, limit)
    ? []
    : [{ about: "room", status: "stop", kind, figure: bendLength, limit, quantity: "length", name }];
  return [...tooLong, ...noseFindings(line, setup)];
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
