/** In which order the work of a line is done: cut, deburr, notch, bend, drill, weld, what else there is, coat outside, pack (common practice). */
const RANKS: readonly RegExp[] = [/^(?:shear|waterjet)$/i, /deburr/i, /notch/i, /^brake$/i, /drill|tap|hole/i, /weld/i];
const NOTCHED = 2;
const OUTSIDE = RANKS.length + 1;

interface Work {
  readonly station: { readonly name: string; readonly basis?: string };
  /** undefined: a vendor does it. */
  readonly work: object | undefined;
}

export function rankOf({ station: { name, basis }, work }: Work): number {
  if (work === undefined) return OUTSIDE;
  if (basis === "notch") return NOTCHED;
  const found = RANKS.findIndex((words) => words.test(name));
  return found >= 0 ? found : /pack/i.test(name) ? OUTSIDE + 1 : RANKS.length;
}
