/**
 * npm run mutate:constants -- [FOLDER ...]
 * Changes every figure of src/data and src/calc (or of the folders named) by 1 % or one step and asks the published answers
 * of tests/reference. Prints what none of them noticed. Exit 0: a survivor is a question to a reader, not a failure.
 */
import { Perturbation, type Verdict } from "./perturb.ts";
import { switchedBundle } from "./switched-bundle.ts";

/** Indices, signs, halves and powers, and the angles of plain geometry: no facts about a trade. */
const STRUCTURAL = new Set([0, 0.5, 1, 2, 3, 4, 10, 90, 180, 360]);
/** Machinery of searches and solvers: its steps and tolerances change how long an answer takes, not what it is. */
const MACHINERY = /^src\/calc\/(?:cutting|route|schedule|bend\/order|bend\/mechanics)\//;

type Kind = "data" | "arithmetic" | "machinery" | "structure";
const kindOf = ({ file, value }: Verdict): Kind =>
  file.startsWith("src/data/")
    ? "data"
    : STRUCTURAL.has(value)
      ? "structure"
      : MACHINERY.test(file)
        ? "machinery"
        : "arithmetic";

const folders = process.argv.slice(2);
const perturbation = new Perturbation(await switchedBundle(process.cwd(), "tests/reference/judge.ts"));
const verdicts = perturbation.bundle.constants
  .filter(({ file }) => folders.length === 0 || folders.some((folder) => file.startsWith(folder)))
  .map((constant, i, { length }) => {
    if (i % 100 === 0) console.error(`${i} of ${length}`);
    return perturbation.verdict(constant);
  });

console.log(`${perturbation.rows} published answers, ${verdicts.length} figures`);
for (const kind of ["data", "arithmetic", "machinery", "structure"] as const) {
  const all = verdicts.filter((verdict) => kindOf(verdict) === kind);
  const survivors = all.filter(({ noticedBy }) => noticedBy === undefined);
  const unused = survivors.filter(({ usedBy }) => usedBy === 0).length;
  console.log(`\n${kind}: ${all.length} figures, ${survivors.length} unnoticed, of which no answer uses ${unused}`);
  if (kind === "structure") continue;
  for (const { file, value, line, usedBy } of survivors)
    console.log(`${file}: ${value} in ${line.slice(0, 100)}${usedBy === 0 ? " (unused by the answers)" : ""}`);
}
