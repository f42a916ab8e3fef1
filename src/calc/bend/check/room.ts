import { atMost } from "../../../units/nearly.ts";
import { degrees, type Millimetres, mm, radians } from "../../../units/quantity.ts";
import type { Finding } from "../../finding.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/** Are bed and tools as long as the bend, and does the punch's nose go into the die? */
export function roomFindings(line: BendLine, setup: Setup): Finding[] {
  const { bendLength } = line;
  const { brake, die, punch } = setup;
  const longer = (kind: "bed" | "die" | "punch", name: string, limit: number | undefined): Finding[] =>
    limit === undefined || atMost(bendLength, limit)
      ? []
      : [{ about: "room", status: "stop", kind, figure: bendLength, limit, quantity: "length", name }];
  return [
    ...longer("bed", brake.name, brake.bedLength),
    ...longer("die", die.name, die.length),
    ...longer("punch", punch?.name ?? "", punch?.length),
    ...noseFindings(line, setup),
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
