import { readdirSync, realpathSync, statSync } from "node:fs";
import { join, sep } from "node:path";
import { refuse } from "../../sheet/package/file-refusal.ts";
import { missing } from "../../units/certain.ts";
import { callerPath, isFile, isFolder } from "./caller.ts";
import { kindOf } from "./file-kind.ts";
import { UsageError } from "./usage.ts";

export interface Job {
  /** Paths as the report shows them: as given, or below the folder given. */
  readonly in: string;
  readonly out: string | null;
  readonly from: string;
  readonly to: string | null;
}

/** Which files to recalculate and where each result goes. The input is never the output unless asked. */
export function planJobs(
  paths: readonly string[],
  mode: { readonly verify: boolean; readonly inPlace: boolean },
): Job[] {
  const [source, target] = paths;
  if (source === undefined || paths.length > 2)
    throw new UsageError("recalc takes IN and OUT, or IN alone with --verify or --in-place");
  const alone = mode.verify || mode.inPlace;
  if (mode.verify && mode.inPlace) throw new UsageError("--verify writes nothing; leave out --in-place");
  if (alone && target !== undefined) throw new UsageError(`${mode.verify ? "--verify" : "--in-place"} takes IN alone`);
  if (!alone && target === undefined) throw new UsageError("recalc needs OUT, or --in-place to overwrite IN");
  const from = callerPath(source);
  const goal = mode.verify ? null : mode.inPlace ? source : (target ?? missing());
  if (isFolder(from)) return folderJobs(source, from, goal, mode.inPlace);
  if (!isFile(from)) refuseInput(source, from);
  if (goal !== null && isFolder(callerPath(goal))) throw new UsageError(`${goal} is a folder, ${source} a file`);
  return [checked({ in: source, out: goal, from, to: goal === null ? null : callerPath(goal) }, mode.inPlace)];
}

function refuseInput(source: string, from: string): never {
  const found = statSync(from, { throwIfNoEntry: false });
  return refuse("unreadable", source, "a file or a folder", found ? kindOf(found) : "nothing of that name");
}

function folderJobs(source: string, from: string, goal: string | null, inPlace: boolean): Job[] {
  if (goal !== null && isFile(callerPath(goal))) throw new UsageError(`${goal} is a file, ${source} a folder`);
  const files = workbooksBelow(from).sort();
  return files.map((name) => {
    const out = goal === null ? null : join(goal, name);
    return checked(
      { in: join(source, name), out, from: join(from, name), to: out === null ? null : callerPath(out) },
      inPlace,
    );
  });
}

/** Workbooks of a folder and those in it. A link counts where it leads to a file of the same tree; folders of links do not. */
export function workbooksBelow(folder: string): string[] {
  const tree = realpathSync(folder);
  const inside = (path: string): boolean => isFile(path) && realpathSync(path).startsWith(`${tree}${sep}`);
  const found: string[] = [];
  const walk = (below: string): void => {
    for (const entry of readdirSync(join(folder, below), { withFileTypes: true })) {
      const name = join(below, entry.name);
      if (entry.isDirectory()) walk(name);
      else if (/\.xls[xm]$/i.test(name) && !entry.name.startsWith("~$") && inside(join(folder, name))) found.push(name);
    }
  };
  walk("");
  return found;
}

function checked(job: Job, inPlace: boolean): Job {
  if (job.to !== null && !inPlace && isFile(job.to) && realpathSync(job.to) === realpathSync(job.from)) {
    throw new UsageError(`${job.out} is the input; say --in-place to overwrite it`);
  }
  return job;
}
