import type { Finding } from "../../calc/finding.ts";
import type { BillLine } from "../nouns/line.ts";
import { asksFor } from "../nouns/operations.ts";

/** Zinc boils under an arc: the fume makes people ill and the weld porous (common practice). */
export const galvanizedFinding = (line: BillLine): Finding | undefined =>
  line.material.gaugeSeries === "galvanized" && asksFor(line, "weld")
    ? { about: "galvanized", status: "check", kind: "welded", name: line.material.name }
    : undefined;
