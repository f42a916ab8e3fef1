import type { UnitSystem } from "../../../units/system.ts";
import { step, type Working } from "../../../units/working.ts";
import { type Finding, statusOf } from "../../finding.ts";
import { estimateAirBend } from "../air-estimate.ts";
import { bendOutcome } from "./bottoming.ts";
import { flangeFinding } from "./flange.ts";
import { forceFindings, forceFindingsOf } from "./force.ts";
import { holeFinding } from "./hole.ts";
import { type BendLine, type Setup, sharpestBend } from "./line.ts";
import { loadedAngleFindings } from "./loaded-angle.ts";
import { offCenterFinding } from "./off-center.ts";
import { openingFinding } from "./opening.ts";
import { radiusFinding } from "./radius.ts";
import { roomFindings } from "./room.ts";

/**
 * Does this line bend on this brake, die and punch? Every check that finds something says so with its figure and its
 * limit. The machine's plate decides; a bracket's load rating is not checked.
 */
export function checkBend(line: BendLine, setup: Setup, system: UnitSystem, work?: Working): Finding[] {
  const found = [...findingsOfTools(line, setup, system, work), ...findingsOfBend(line, setup)];
  step(work, "status", "worst of all checks", statusOf(found), "", "clear: no problem found against the tables given");
  return found;
}

const there = <T>(found: T | undefined): found is T => found !== undefined;

/** What tools, brake and flange say; cheap, since no bend is solved for it. */
export const findingsOfTools = (line: BendLine, setup: Setup, system: UnitSystem, work?: Working): Finding[] =>
  [
    ...forceFindings(line, setup, work),
    offCenterFinding(line, setup),
    ...roomFindings(line, setup),
    flangeFinding(line, setup, system, work),
    openingFinding(line, setup),
  ].filter(there);

/** What the bend itself says: it is solved for this. */
export function findingsOfBend(line: BendLine, setup: Setup): Finding[] {
  const inAir = estimateAirBend(sharpestBend(line, setup));
  const { pressed, estimate, force } = bendOutcome(line, setup);
  return [
    radiusFinding(line, estimate, setup.own),
    ...loadedAngleFindings(line, setup, inAir),
    ...(pressed > 0 ? forceFindingsOf(force, line, setup) : []),
    holeFinding(line, setup, estimate),
  ].filter(there);
}
