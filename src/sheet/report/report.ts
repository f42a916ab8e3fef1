/** The report of `shop recalc`; its shape is a contract, see the command line's documentation. */
export type KeptReason = "unknown-function" | "external-link" | "volatile" | "depth" | "unsupported-syntax";

interface KeptCell {
  readonly cell: string;
  readonly reason: KeptReason;
  readonly detail: string;
}

export type JsonValue = number | string | boolean | null;

export interface FileReport {
  readonly in: string;
  readonly out: string | null;
  readonly status: "fresh" | "stale" | "different" | "refused";
  readonly formulas: number;
  readonly recalculated: number;
  readonly changed: number;
  readonly kept: readonly KeptCell[];
  readonly stale: readonly string[];
  readonly circular: readonly (readonly string[])[];
  readonly differences: readonly { readonly cell: string; readonly stored: JsonValue; readonly computed: JsonValue }[];
  readonly refused: { readonly reason: string; readonly message: string } | null;
  /** Something about the file that its owner should know; absent where there is nothing. */
  readonly note?: string;
  readonly seconds: number;
}

interface Excluded {
  "unknown-function": number;
  "external-link": number;
  volatile: number;
  dependant: number;
}

/** What the totals need and a file's own entry does not show. */
export interface Counts {
  readonly cached: number;
  readonly excluded: Excluded;
  readonly equal: number;
}

export interface FileResult {
  readonly report: FileReport;
  readonly counts: Counts;
}

interface Report {
  readonly version: 1;
  readonly tool: string;
  readonly files: readonly FileReport[];
  readonly totals: {
    readonly files: number;
    readonly fresh: number;
    readonly stale: number;
    readonly different: number;
    readonly refused: number;
    readonly cached: number;
    readonly excluded: Excluded;
    readonly equal: number;
  };
}

export const noCounts = (): Counts => ({
  cached: 0,
  excluded: { "unknown-function": 0, "external-link": 0, volatile: 0, dependant: 0 },
  equal: 0,
});

export function makeReport(tool: string, results: readonly FileResult[]): Report {
  const having = (status: FileReport["status"]): number => results.filter((r) => r.report.status === status).length;
  const sum = (pick: (counts: Counts) => number): number => results.reduce((total, r) => total + pick(r.counts), 0);
  return {
    version: 1,
    tool,
    files: results.map((r) => r.report),
    totals: {
      files: results.length,
      fresh: having("fresh"),
      stale: having("stale"),
      different: having("different"),
      refused: having("refused"),
      cached: sum((c) => c.cached),
      excluded: {
        "unknown-function": sum((c) => c.excluded["unknown-function"]),
        "external-link": sum((c) => c.excluded["external-link"]),
        volatile: sum((c) => c.excluded.volatile),
        dependant: sum((c) => c.excluded.dependant),
      },
      equal: sum((c) => c.equal),
    },
  };
}

/** 0 all fresh or equal; 1 something stale or different; 2 something refused; 70 our own fault. The highest wins. */
export function exitCode(report: Report): number {
  if (report.files.some((file) => file.refused?.reason === "internal")) return 70;
  if (report.totals.refused > 0) return 2;
  return report.totals.stale + report.totals.different > 0 ? 1 : 0;
}
