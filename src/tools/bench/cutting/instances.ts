/** Reads published cutting instances from a folder and says which kind of problem each is, by its content. */

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { itemAt } from "../../../units/certain.ts";

export const PROBLEMS = ["csp", "2bp-O", "2bp-R", "large", "knapsack"] as const;
export type ProblemKind = (typeof PROBLEMS)[number];

export interface Instance {
  readonly file: string;
  readonly name: string;
  readonly group: string | null;
  readonly problem: ProblemKind;
  readonly w: number;
  readonly h: number;
  /** Width, height, quantity, and value where there is one. */
  readonly items: readonly (readonly number[])[];
}

interface Raw {
  readonly name: string;
  readonly sheet: { readonly w: number; readonly h: number };
  readonly items: readonly (readonly number[])[];
  readonly max?: readonly (number | null)[];
}
type RawGroup = { readonly group: string; readonly instances: readonly Raw[] };

export function readInstances(folder: string): Instance[] {
  const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
  return files.sort().flatMap((file) => {
    const content = JSON.parse(readFileSync(join(folder, file), "utf8")) as readonly (Raw | RawGroup)[];
    return content.flatMap((entry) =>
      "group" in entry
        ? entry.instances.flatMap((raw) =>
            kindsOf(file, raw, entry.group).map((kind) => make(file, raw, entry.group, kind)),
          )
        : kindsOf(file, entry, null).map((kind) => make(file, entry, null, kind)),
    );
  });
}

function kindsOf(file: string, raw: Raw, group: string | null): ProblemKind[] {
  if (raw.items.some((row) => row.length === 4)) return ["knapsack"];
  if (group !== null) return ["2bp-O", "2bp-R"];
  return [file.startsWith("csp_large") ? "large" : "csp"];
}

function make(file: string, raw: Raw, group: string | null, problem: ProblemKind): Instance {
  const items = raw.items.map((row, k) => {
    const most = raw.max?.[k] ?? null;
    return most === null ? row : row.with(2, Math.min(itemAt(row, 2), most));
  });
  return { file, name: raw.name, group, problem, w: raw.sheet.w, h: raw.sheet.h, items };
}
