import { BEAM_LEAST_IN, ENDS_CHECK, ENDS_STOP, EXPECTED_CHECK, TOOL_WORST_STOP } from "../../../data/thresholds.ts";
import { atMost } from "../../../units/nearly.ts";
import type { NewtonsPerMillimeter } from "../../../units/quantity.ts";
import type { Working } from "../../../units/working.ts";
import type { Finding, Severity, Subject } from "../../finding.ts";
import { limitOf } from "../../limit-of.ts";
import { type ForceCases, forceCases } from "../force-cases.ts";
import { lineLoadLimit } from "../line-load.ts";
import { type BendLine, type Setup, sharpestBend } from "./line.ts";

/** The force of the bend against what brake, beam, punch and die are rated for; two figures, expected and worst. */
export function forceFindings(line: BendLine, setup: Setup, work?: Working): Finding[] {
  return forceFindingsOf(forceCases(sharpestBend(line, setup), line.bendLength, work), line, setup, work);
}

/** The same of a force that is known: a bend that is bottomed takes several times its force in air. */
export function forceFindingsOf(force: ForceCases, { bendLength }: BendLine, setup: Setup, work?: Working): Finding[] {
  const { brake, die, punch, own } = setup;
  const per = (length: number): ForceCases =>
    ({ expected: force.expected / length, worst: force.worst / length }) as unknown as ForceCases;
  const beam = per(Math.max(bendLength, limitOf(BEAM_LEAST_IN, own)));
  return [
    against("brake force", brake.name, force, { limit: brake.ratedForce, quantity: "force" }, ofBrake(setup)),
    // A brake without the force needs no finding about its ends.
    bendLength > brake.betweenHousings && atMost(force.expected, brake.ratedForce)
      ? against("bend ends", brake.name, force, { limit: brake.ratedForce, quantity: "force" }, ofEnds(setup))
      : undefined,
    against("beam", brake.name, beam, { limit: lineLoadLimit(brake, work), quantity: "lineLoad" }, ofBeam),
    tool("punch", punch, per(bendLength), setup),
    tool("die", die, per(bendLength), setup),
  ].filter((finding) => finding !== undefined);
}

type Judge = (expected: number, worst: number) => Severity | undefined;
const over = (share: number, limit: number): boolean => !atMost(share, limit);

/** Nothing relieves a mechanical brake near the bottom of its stroke: a hard sheet sticks it, or breaks its frame. */
const ofBrake =
  ({ brake, own }: Setup): Judge =>
  (expected, worst) =>
    over(expected, 1) || (brake.drive === "mechanical" && over(worst, 1)) ? "stop" : ofRating(own)(expected, worst);
const ofRating =
  (own: Setup["own"]): Judge =>
  (expected, worst) =>
    over(expected, 1) ? "stop" : over(expected, limitOf(EXPECTED_CHECK, own)) || over(worst, 1) ? "check" : undefined;
const ofTool =
  ({ own }: Setup): Judge =>
  (expected, worst) =>
    over(worst, limitOf(TOOL_WORST_STOP, own)) ? "stop" : ofRating(own)(expected, worst);
const ofBeam: Judge = (expected, worst) => (over(expected, 1) ? "stop" : over(worst, 1) ? "check" : undefined);
const ofEnds =
  ({ own }: Setup): Judge =>
  (expected) =>
    over(expected, limitOf(ENDS_STOP, own)) ? "stop" : over(expected, limitOf(ENDS_CHECK, own)) ? "check" : "note";

const tool = (
  about: "punch" | "die",
  given: { readonly name: string; readonly rating?: NewtonsPerMillimeter | undefined } | undefined,
  load: ForceCases,
  setup: Setup,
): Finding | undefined =>
  given?.rating === undefined
    ? undefined
    : against(about, given.name, load, { limit: given.rating, quantity: "lineLoad" }, ofTool(setup));

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
