/** The first number of an answer that is none, with the way to it. */
export function numberProblem(value: unknown, path = "plan"): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value !== "object" || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = numberProblem(inner, `${path}.${key}`);
    if (found) return found;
  }
  return undefined;
}
