/** Published values from a file of entries {id, published, target2NE?}. */
import { readFileSync } from "node:fs";
import type { Instance, ProblemKind } from "./instances.ts";

interface Entry {
  readonly id: string;
  readonly published: Readonly<Record<string, number | null>> | null;
  readonly target2NE?: number;
}

const GROUP_KEY: Partial<Record<ProblemKind, string>> = {
  "2bp-O": "2BP|O|G (no rotation)",
  "2bp-R": "2BP|R|G (90 deg rotation)",
};

export class Published {
  private readonly entries = new Map<string, Entry>();

  constructor(file: string | null) {
    if (file === null) return;
    const { entries } = JSON.parse(readFileSync(file, "utf8")) as { readonly entries: readonly Entry[] };
    for (const entry of entries) this.entries.set(entry.id, entry);
  }

  /** Value for one instance, null where only its group or nothing is published. */
  ofInstance({ problem, name, file }: Instance): number | null {
    if (problem === "csp") return this.read(`csp/${name}`, "2-stage non-exact (trim cut allowed)");
    if (problem === "knapsack") {
      return this.read(`knap/${name}`, "optimum") ?? this.read(`knap/${name}`, "upper");
    }
    if (problem === "large") return this.read(`csp-large/${file.includes("_AB") ? "AB" : "CZ"}/${name}`, "sheets");
    return null;
  }

  /** Sum published for a group of instances. */
  ofGroup(group: string, problem: ProblemKind): number | null {
    const key = GROUP_KEY[problem];
    return key === undefined ? null : this.read(`2bp/${group}`, key);
  }

  private read(id: string, key: string): number | null {
    return this.entries.get(id)?.published?.[key] ?? null;
  }
}
