/** One way to do a job: which set it needs, and how little it is liked (0 or more). */
export interface SetOption {
  readonly key: string;
  readonly dislike: number;
}

/** Choices looked at before the quick answer is taken; shop bills need some dozens (chosen). */
const MOST_TRIES = 5_000;

/**
 * The fewest sets with which every job can be done, and of these the ones liked best: a smallest hitting set, by branching
 * on the job with the fewest options (exact within `MOST_TRIES`; derived).
 * @param jobs the options of each; a job without any is left out of account.
 * @returns the keys, and whether they are proved to be fewest.
 */
export function fewestSets(jobs: readonly (readonly SetOption[])[]): {
  readonly keys: ReadonlySet<string>;
  readonly proved: boolean;
} {
  const groups = grouped(jobs);
  let tries = 0;
  let best: { keys: ReadonlySet<string>; dislike: number } | undefined;
  const visit = (keys: ReadonlySet<string>, open: readonly Group[], most: number): void => {
    tries++;
    const left = open.filter(({ options }) => !options.some(({ key }) => keys.has(key)));
    if (tries > MOST_TRIES || keys.size + apart(left) > most) return;
    if (left.length === 0) {
      const dislike = total(groups, keys);
      if (!best || dislike < best.dislike) best = { keys, dislike };
      return;
    }
    const { options } = left.reduce((a, b) => (b.options.length < a.options.length ? b : a));
    for (const { key } of options) visit(new Set([...keys, key]), left, most);
  };
  for (let most = apart(groups); !best && tries <= MOST_TRIES; most++) visit(new Set(), groups, most);
  return best && tries <= MOST_TRIES ? { keys: best.keys, proved: true } : { keys: quickly(groups), proved: false };
}

/** The set that does the most of what is left, one after another. */
function quickly(groups: readonly Group[]): ReadonlySet<string> {
  const keys = new Set<string>();
  for (let left = groups; left.length > 0; ) {
    const counts = new Map<string, number>();
    for (const { options, jobs } of left) for (const { key } of options) counts.set(key, (counts.get(key) ?? 0) + jobs);
    const [key] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a));
    keys.add(key);
    left = left.filter(({ options }) => !options.some((option) => option.key === key));
  }
  return keys;
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
  for (const { options } of groups) {
    if (options.some(({ key }) => taken.has(key))) continue;
    for (const { key } of options) taken.add(key);
    count++;
  }
  return count;
}
