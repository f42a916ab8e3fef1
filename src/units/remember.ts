import { contentId } from "./content.ts";
import { Refusal } from "./refusal.ts";

/**
 * The same function, which keeps its last answers: asked again with inputs of the same content it answers from memory.
 * For pure functions of plain data only. A refusal is an answer too. `most` answers are kept, the ones used last.
 */
export function remember<Inputs extends readonly unknown[], Answer>(
  most: number,
  answer: (...inputs: Inputs) => Answer,
): (...inputs: Inputs) => Answer {
  const kept = new Map<string, Answer | Refusal>();
  return (...inputs) => {
    const key = inputs.map(contentId).join();
    const found = kept.get(key);
    const value = found === undefined && !kept.has(key) ? refusalOr(() => answer(...inputs)) : found;
    kept.delete(key);
    kept.set(key, value as Answer | Refusal);
    if (kept.size > most) {
      const [oldest = key] = kept.keys();
      kept.delete(oldest);
    }
    if (value instanceof Refusal) throw value;
    return value as Answer;
  };
}

/** The answer, or the refusal in its place; any other fault is passed on. */
export function refusalOr<T>(action: () => T): T | Refusal {
  try {
    return action();
  } catch (problem) {
    if (problem instanceof Refusal) return problem;
    throw problem;
  }
}
