/** In which order the work of a line is done (common practice). */
import { type Work, workOf } from "../nouns/operations.ts";

const IN_ORDER: readonly (Work | "other" | "outside")[] = [
  "cut",
  "deburr",
  "notch",
  "bend",
  "drill",
  "weld",
  "other",
  "outside",
  "pack",
];

interface Step {
  readonly station: { readonly name: string; readonly basis?: string };
  /** undefined: a vendor does it. */
  readonly work: object | undefined;
}

/** The first step of a line has the lowest. */
export const orderOfWork = ({ station: { name, basis }, work }: Step): number =>
  IN_ORDER.indexOf(work === undefined ? "outside" : basis === "notch" ? "notch" : (workOf(name) ?? "other"));
