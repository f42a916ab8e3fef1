import { firstOf, itemAt } from "../../units/certain.ts";
import type { Program } from "./regex-program.ts";

/** Where a match and its groups begin and end; -1 for a group that took no part. */
export type Match = readonly number[];

interface Thread {
  readonly step: number;
  readonly saved: number[];
}

/**
 * The first match at or after a place, leftmost, with the choices a backtracking matcher would make first (Pike's
 * machine: all threads advance together in order of preference). Every character costs at most one look at every step,
 * so no pattern and no text can make it hang.
 */
export function matchFrom({ steps, groups }: Program, text: string, from: number): Match | undefined {
  let best: Match | undefined;
  let current: Thread[] = [];
  const seen = new Int32Array(steps.length).fill(-1);
  const follow = (list: Thread[], start: Thread, at: number): void => {
    const open = [start];
    for (let thread = open.pop(); thread; thread = open.pop()) {
      if (seen[thread.step] === at) continue;
      seen[thread.step] = at;
      const step = steps[thread.step]!;
      if (step.kind === "jump") open.push({ step: step.to, saved: thread.saved });
      else if (step.kind === "split")
        open.push({ step: step.second, saved: thread.saved }, { step: step.first, saved: thread.saved });
      else if (step.kind === "save") {
        const saved = thread.saved.slice();
        saved[step.slot] = at;
        open.push({ step: thread.step + 1, saved });
      } else if (step.kind === "assert") {
        if (step.holds(text, at)) open.push({ step: thread.step + 1, saved: thread.saved });
      } else list.push(thread);
    }
  };
  for (let at = from; ; at++) {
    const begun = current;
    current = [];
    for (const thread of begun) follow(current, thread, at);
    // A new beginning comes after all threads that began earlier; once something is found none begins.
    if (!best) follow(current, { step: 0, saved: new Array<number>(2 * groups + 2).fill(-1) }, at);
    if (current.length === 0 && (best || at >= text.length)) return best;
    const code = text.charCodeAt(at);
    const next: Thread[] = [];
    for (const thread of current) {
      const step = steps[thread.step]!;
      if (step.kind === "done") {
        best = thread.saved;
        break;
      }
      if (step.kind === "char" && at < text.length && step.test(code))
        next.push({ step: thread.step + 1, saved: thread.saved });
    }
    if (at >= text.length) return best;
    current = next;
  }
}

/** Every match, one behind the other; an empty one moves on by a character. */
export function* allMatches(program: Program, text: string): Generator<Match> {
  for (let at = 0; at <= text.length; ) {
    const match = matchFrom(program, text, at);
    if (!match) return;
    yield match;
    at = Math.max(itemAt(match, 1), firstOf(match) + 1);
  }
}
