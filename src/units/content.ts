/**
 * Tells whether two values say the same, fast: every distinct content has a number. Two tables that were read apart and
 * hold the same cells have the same number, so that what was worked out from one is known for the other. Values must be
 * plain data that nobody changes afterwards: numbers, text, arrays, maps and objects of them.
 */
let numbers = new Map<string, number>();
/** Numbers, text and blanks by themselves: found without being written out. */
let plain = new Map<unknown, number>();
let known = new WeakMap<object, number>();
let next = 0;

/** Contents kept apart at once (chosen: about a hundred megabytes at the most); beyond it all are forgotten. */
const MOST_KNOWN = 400_000;

/** The number of a content. It is never given twice, also not after all were forgotten. */
export function contentId(value: unknown): number {
  if (numbers.size + plain.size > MOST_KNOWN) {
    numbers = new Map();
    plain = new Map();
    known = new WeakMap();
  }
  return idOf(value);
}

function idOf(value: unknown): number {
  if (typeof value !== "object" || value === null) return idIn(plain, value);
  const before = known.get(value);
  if (before !== undefined) return before;
  const id = idIn(numbers, contentOf(value));
  known.set(value, id);
  return id;
}

function contentOf(value: object): string {
  if (Array.isArray(value)) return `[${value.map(idOf).join()}]`;
  if (value instanceof Map) return `map[${[...value].map(([key, item]) => `${idOf(key)}:${idOf(item)}`).join()}]`;
  if (value instanceof Set) return `set[${[...value].map(idOf).join()}]`;
  let content = "{";
  for (const key of Object.keys(value)) {
    const item: unknown = (value as Record<string, unknown>)[key];
    // The length before the name, so that signs in a name are not taken for the next entry.
    if (item !== undefined && typeof item !== "function") content += `${key.length}:${key}:${idOf(item)},`;
  }
  return content;
}

function idIn<Key>(ids: Map<Key, number>, content: Key): number {
  let id = ids.get(content);
  if (id === undefined) {
    id = next++;
    ids.set(content, id);
  }
  return id;
}
