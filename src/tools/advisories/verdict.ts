/** What the known-advisory check found, in one line; a check that could not be made says so and is never a pass. */
interface AdvisoryCheck {
  readonly line: string;
  readonly code: 0 | 1 | 2;
}

/** `output` is what `npm audit --json` printed. */
export function verdictOf(output: string): AdvisoryCheck {
  let answer: {
    metadata?: { vulnerabilities?: Record<string, number> };
    message?: string;
    error?: { summary?: string };
  };
  try {
    answer = JSON.parse(output);
  } catch {
    return notRun("no answer that can be read");
  }
  const found = answer.metadata?.vulnerabilities;
  if (!found) return notRun(answer.message ?? answer.error?.summary ?? "no answer");
  const total = found["total"] ?? 0;
  const kinds = Object.entries(found).filter(([kind, count]) => kind !== "total" && count > 0);
  return total === 0
    ? { line: "advisories: none known for what is shipped", code: 0 }
    : { line: `advisories: ${total} (${kinds.map(([kind, count]) => `${count} ${kind}`).join(", ")})`, code: 1 };
}

/** Without the address that was asked: which server that is, is the user's own affair. */
const notRun = (why: string): AdvisoryCheck => ({
  line: `advisories: not run; ${why.replace(/https?:\/\/\S+/g, "the registry").split("\n")[0]}`,
  code: 2,
});
