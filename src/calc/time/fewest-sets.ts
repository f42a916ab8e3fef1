/** One way to do a job: which set it needs, and how little it is liked (0 or more). */
export interface SetOption {
  readonly key: string;
  readonly dislike: number;
}

/** Choices looked at before the best so far is taken; shop bills need some dozens (chosen). */
const MOST_TRIES = 100_000;

/**
 * The fewest sets with which every job can be done, and of these the ones liked best: a smallest hitting set, by branching on the
 * job with the fewest options left (exact within `MOST_TRIES`; derived).
 * @param jobs the options of each; a job without any is left out of account.
 * @returns the keys, and whether they are proved to be fewest.
 */
export function fewestSets(jobs: readonly (readonly SetOption[])[]): {
  readonly keys: ReadonlySet<string>;
  readonly proved: boolean;
} {
  const groups = grouped(jobs);
  let best: { keys: ReadonlySet<string>; dislike: number } | undefined;
  let tries = 0;
  const visit = (keys: Set<string>, open: readonly Group[]): void => {
    if (tries++ >= MOST_TRIES && best) return;
    const left = open.filter(({ options }) => !options.some(({ key }) => keys.has(key)));
    if (left.length === 0) {
      const dislike = total(groups, keys);
      if (!best || keys.size < best.keys.size || (keys.size === best.keys.size && dislike < best.dislike))
        best = { keys: new Set(keys), dislike };
      return;
    }
    if (best && keys.size + apart(left) > best.keys.size) return;
    const branch = left.reduce((a, b) => (b.options.length < a.options.length ? b : a));
    // The option that does most of what is left first, so that a good answer is there early.
    const reach = (key: string) => left.filter(({ options }) => options.some((option) => option.key === key)).length;
    for (const { key } of [...branch.options].sort((a, b) => reach(b.key) - reach(a.key) || a.dislike - b.dislike)) {
      keys.add(key);
      visit(keys, left);
      keys.delete(key);
    }
  };
  visit(new Set(), groups);
  return { keys: best!.keys, proved: tries <= MOST_TRIES };
}

/** Jobs that have the same options and like them alike. */
interface Group {
  readonly options: readonly SetOption[];
  readonly jobs: number;
}

function grouped(jobs: readonly (readonly SetOption[])[]): Group[] {
  const groups = new Map<string, Group>();
  for (const options of jobs) {
    if (options.length === 0) continue;
    const name = JSON.stringify(options.map(({ key, dislike }) => [key, dislike]));
    groups.set(name, { options, jobs: (groups.get(name)?.jobs ?? 0) + 1 });
  }
  return [...groups.values()];
}

const total = (groups: readonly Group[], keys: ReadonlySet<string>): number =>
  groups.reduce(
    (sum, { options, jobs }) =>
      sum + jobs * Math.min(...options.filter(({ key }) => keys.has(key)).map(({ dislike }) => dislike)),
    0,
  );

/** Groups of which no two share an option: each needs a set of its own. */
function apart(groups: readonly Group[]): number {
  const taken = new Set<string>();
  let count = 0;
  for (const { options } of [...groups].sort((a, b) => a.options.length - b.options.length)) {
    if (options.some(({ key }) => taken.has(key))) continue;
    for (const { key } of options) taken.add(key);
    count++;
  }
  return count;
}
