import { atMost } from "../../../units/nearly.ts";
import type { Finding } from "../../finding.ts";
import type { BendLine, Setup } from "./line.ts";

/** Are bed and tools as long as the bend? */
export function roomFindings({ bendLength }: BendLine, { brake, die, punch }: Setup): Finding[] {
  const longer = (kind: "bed" | "die" | "punch", name: string, limit: number | undefined): Finding[] =>
    limit === undefined || atMost(bendLength, limit)
      ? []
      : [{ about: "room", status: "stop", kind, figure: bendLength, limit, quantity: "length", name }];
  return [
    ...longer("bed", brake.name, brake.bedLength),
    ...longer("die", die.name, die.length),
    ...longer("punch", punch?.name ?? "", punch?.length),
  ];
}
