/**
 * Thrown, not returned: IFERROR must not swallow it. The cell keeps its cached value and the report names the reason.
 */
export class Keep {
  constructor(
    readonly reason: "unknown-function" | "external-link" | "volatile" | "depth" | "unsupported-syntax",
    readonly detail: string,
  ) {}
}

export function keep(reason: Keep["reason"], detail: string): never {
  throw new Keep(reason, detail);
}
