/** A part bent in both directions: do the shop's tools go between the flanges that stand already? */
import { boxFinding } from "../../calc/bend/check/box.ts";
import type { Setup } from "../../calc/bend/check/line.ts";
import type { Finding } from "../../calc/finding.ts";
import { mm } from "../../units/quantity.ts";
import type { BillLine, Strip } from "../nouns/line.ts";

/** Either direction may be bent second; the easier one decides. */
export function boxFindings({ main, cross, thickness }: BillLine, tools: Setup): Finding[] {
  if (!cross || main.angles.length === 0 || cross.angles.length === 0) return [];
  const found = [secondFindings(main, cross, thickness, tools), secondFindings(cross, main, thickness, tools)];
  return found.reduce((a, b) => (b.length < a.length ? b : a));
}

/** What the tools of one direction's bends meet where the other direction is bent already. */
function secondFindings(second: Strip, first: Strip, thickness: number, { die, punch, own }: Setup): Finding[] {
  const widest = mm(Math.max(...first.flanges));
  const base = first.flanges.indexOf(widest);
  const ends = [first.angles[base - 1], first.angles[base]];
  // With one end free the tool stands out over it.
  if (ends.some((angle) => angle === undefined || angle === 0)) return [];
  const inside = mm(widest - 2 * thickness);
  const stands = (way: number) => ends.every((angle) => angle !== undefined && Math.sign(angle) === way);
  // Flanges that stand up leave room for a punch between them, those that hang down for a die.
  const tool = second.angles.some((angle) => stands(Math.sign(angle)))
    ? punch
    : second.angles.some((angle) => stands(-Math.sign(angle)))
      ? die
      : undefined;
  const finding = tool && boxFinding({ inside, name: tool.name, length: tool.length, sections: tool.sections }, own);
  return finding ? [finding] : [];
}
