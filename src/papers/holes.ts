/** Holes and notches as the bill states them: how many, how large, how near to a bend. Where they lie only the drawing says. */
import type { BillLine } from "../bill/nouns/line.ts";
import { missing } from "../units/certain.ts";
import { show } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";

/** "2 holes 0.5 in, 1 notch", and what the line instructs about them or else; "" of a part without any. */
export const holesCounted = ({ holes, holeDiameter, notches, instruction }: BillLine, system: UnitSystem): string =>
  [
    holes > 0 ? `${many(holes, "hole", "holes")} ${show(holeDiameter ?? missing(), "length", system, 4)}` : "",
    notches > 0 ? many(notches, "notch", "notches") : "",
    instruction,
  ]
    .filter((words) => words !== "")
    .join(", ");

const many = (count: number, one: string, more: string): string => `${count} ${count === 1 ? one : more}`;

/** "2 holes 0.5 in; positions by the drawing" with what else the bill says of them; "" of a part without any. */
export function holesSay(
  { holes, holeDiameter, holeDistance, notches, notchPath }: BillLine,
  system: UnitSystem,
): string {
  const length = (value: number) => show(value, "length", system, 4);
  const said = [
    holes > 0 ? `${many(holes, "hole", "holes")} ${length(holeDiameter ?? missing())}` : "",
    // A bill may say how near the nearest one is without counting them.
    holeDistance === undefined
      ? ""
      : `${holes > 0 ? "nearest" : "nearest hole, size not in the bill,"} ${length(holeDistance)} from a flange's inside face`,
    notches > 0 ? `${many(notches, "notch", "notches")}, ${length(notchPath ?? missing())} of cut each` : "",
  ].filter((words) => words !== "");
  return said.length === 0 ? "" : `${said.join("; ")}; positions by the drawing`;
}
