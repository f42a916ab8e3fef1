import { mm } from "../../../units/quantity.ts";
import { show } from "../../../units/show.ts";
import type { UnitSystem } from "../../../units/system.ts";
import { type Problem, statusOf } from "../../problem.ts";
import type { Brake, Die, Punch } from "../tooling.ts";
import { leastFlange } from "./flange.ts";
import type { BendLine, Setup } from "./line.ts";

export interface Tooling {
  readonly brakes: readonly Brake[];
  readonly dies: readonly Die[];
  readonly punches: readonly Punch[];
}
type Check = (line: BendLine, setup: Setup) => Problem[];
interface Change {
  readonly changes: "die" | "punch" | "both" | "brake" | "part";
  readonly words: string;
  readonly line: BendLine;
  readonly setup: Setup;
}

/**
 * Adds to every problem the nearest change that mends it: another tool of the shop's own tables, else a change of the
 * part. Every change is tried with the same check and must come out clear or check, never stop.
 */
export function withRemedies(
  problems: readonly Problem[],
  line: BendLine,
  setup: Setup,
  tooling: Tooling,
  check: Check,
  system: UnitSystem,
): Problem[] {
  if (statusOf(problems) === "clear") return [...problems];
  const all = [...changes(line, setup, tooling, system)].map((change) => tried(change, check));
  const punchFirst = [...all].sort(
    (a, b) => Number(b.change.changes === "punch") - Number(a.change.changes === "punch"),
  );
  return problems.map((problem) => {
    if (problem.severity === "note") return problem;
    const found = (problem.check.startsWith("punch") ? punchFirst : all).find(({ problems }) =>
      mends(problems(), problem),
    );
    return { ...problem, remedy: found ? `Nearest remedy: ${found.change.words}.` : NONE[problem.severity] };
  });
}

/** Checked at most once, and only if somebody asks. */
function tried(change: Change, check: Check): { readonly change: Change; readonly problems: () => Problem[] } {
  let problems: Problem[] | undefined;
  return {
    change,
    problems: () => {
      problems ??= check(change.line, change.setup);
      return problems;
    },
  };
}

const mends = (left: readonly Problem[], problem: Problem): boolean =>
  statusOf(left) !== "stop" && !left.some((other) => other.check === problem.check && other.severity !== "note");

const NONE = {
  check: "No tool of the tables does better: bend a test piece first.",
  stop: "No tool of the tables mends it: change the part, or send it out.",
} as const;

/** Nearest first: one tool changed, then two, then another brake, then the part itself. */
function* changes(
  line: BendLine,
  setup: Setup,
  { brakes, dies, punches }: Tooling,
  system: UnitSystem,
): Generator<Change> {
  const { die, punch } = setup;
  const distance = (other: Die) =>
    Math.abs(Math.log(other.opening / die.opening)) + Math.abs(other.angle - die.angle) / 180;
  const otherDies = dies.filter((other) => other !== die).sort((a, b) => distance(a) - distance(b));
  const noseDistance = (other: Punch) =>
    Math.abs((other.nose ?? 0) - (punch?.nose ?? 0)) + Math.abs(other.angle - (punch?.angle ?? other.angle)) / 10; // 10 deg of face count like 1 mm of nose
  const otherPunches = punches.filter((other) => other !== punch).sort((a, b) => noseDistance(a) - noseDistance(b));
  for (const other of otherDies)
    yield { changes: "die", words: `die ${other.name}`, line, setup: { ...setup, die: other } };
  for (const other of otherPunches)
    yield { changes: "punch", words: `punch ${other.name}`, line, setup: { ...setup, punch: other } };
  for (const another of otherDies)
    for (const other of otherPunches)
      yield {
        changes: "both",
        words: `die ${another.name} with punch ${other.name}`,
        line,
        setup: { ...setup, die: another, punch: other },
      };
  for (const other of brakes)
    if (other !== setup.brake)
      yield { changes: "brake", words: `brake ${other.name}`, line, setup: { ...setup, brake: other } };
  yield* partChanges(line, setup, system);
}

function* partChanges(line: BendLine, setup: Setup, system: UnitSystem): Generator<Change> {
  if (line.grain !== "across")
    yield {
      changes: "part",
      words: "turn the blank so that the bend line lies across the grain",
      line: { ...line, grain: "across" },
      setup,
    };
  const drilled = { ...line, holeDistance: undefined };
  if (line.holeDistance !== undefined)
    yield { changes: "part", words: "drill the hole after bending", line: drilled, setup };
  const least = leastFlange(line, setup.die.opening, setup.die.shoulder, system);
  const flanges = line.flanges.map((flange) => mm(Math.max(flange, least)));
  const longer = `make the short flange ${show(least, "length", system)} and trim it after bending`;
  yield { changes: "part", words: longer, line: { ...line, flanges }, setup };
  if (line.holeDistance !== undefined)
    yield { changes: "part", words: `${longer}, hole drilled after`, line: { ...drilled, flanges }, setup };
}
