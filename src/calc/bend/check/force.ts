import { BEAM_LEAST_IN, ENDS_CHECK, ENDS_STOP, EXPECTED_CHECK, TOOL_WORST_STOP } from "../../../data/thresholds.ts";
import { atMost } from "../../../units/nearly.ts";
import type { NewtonsPerMillimetre } from "../../../units/quantity.ts";
import { MM_PER_INCH } from "../../../units/system.ts";
import type { Working } from "../../../units/working.ts";
import type { Finding, Severity, Subject } from "../../finding.ts";
import { type ForceCases, forceCases } from "../force-cases.ts";
import { lineLoadLimit } from "../line-load.ts";
import type { BendLine, Setup } from "./line.ts";

/** The force of the bend against what brake, beam, punch and die are rated for; two figures, expected and worst. */
export function forceFindings(line: BendLine, { brake, die, punch }: Setup, work?: Working): Finding[] {
  const { material, thickness, bendLength } = line;
  const force = forceCases(material, thickness, bendLength, die.opening, work);
  const per = (length: number): ForceCases =>
    ({ expected: force.expected / length, worst: force.worst / length }) as unknown as ForceCases;
  const beam = per(Math.max(bendLength, BEAM_LEAST_IN.value * MM_PER_INCH));
  return [
    against("brake force", brake.name, force, { limit: brake.ratedForce, quantity: "force" }, ofBrake),
    // A brake that has not the force at all need not be told about its ends.
    bendLength > brake.betweenHousings && atMost(force.expected, brake.ratedForce)
      ? against("bend ends", brake.name, force, { limit: brake.ratedForce, quantity: "force" }, ofEnds)
      : undefined,
    against("beam", brake.name, beam, { limit: lineLoadLimit(brake, work), quantity: "lineLoad" }, ofBeam),
    tool("punch", punch, per(bendLength)),
    tool("die", die, per(bendLength)),
  ].filter((finding) => finding !== undefined);
}

type Judge = (expected: number, worst: number) => Severity | undefined;
const over = (share: number, limit: number): boolean => !atMost(share, limit);

const ofBrake: Judge = (expected, worst) =>
  over(expected, 1) ? "stop" : over(expected, EXPECTED_CHECK.value) || over(worst, 1) ? "check" : undefined;
const ofTool: Judge = (expected, worst) => (over(worst, TOOL_WORST_STOP.value) ? "stop" : ofBrake(expected, worst));
const ofBeam: Judge = (expected, worst) => (over(expected, 1) ? "stop" : over(worst, 1) ? "check" : undefined);
const ofEnds: Judge = (expected) =>
  over(expected, ENDS_STOP.value) ? "stop" : over(expected, ENDS_CHECK.value) ? "check" : "note";

const tool = (
  about: "punch" | "die",
  given: { readonly name: string; readonly rating?: NewtonsPerMillimetre | undefined } | undefined,
  load: ForceCases,
): Finding | undefined =>
  given?.rating === undefined
    ? undefined
    : against(about, given.name, load, { limit: given.rating, quantity: "lineLoad" }, ofTool);

function against(
  about: Subject,
  name: string,
  { expected, worst }: ForceCases,
  { limit, quantity }: { readonly limit: number; readonly quantity: "force" | "lineLoad" },
  judge: Judge,
): Finding | undefined {
  const status = judge(expected / limit, worst / limit);
  return status && { about, status, kind: "over", figure: expected, beside: worst, limit, quantity, name };
}
