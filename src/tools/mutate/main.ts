/**
 * npm run mutate:constants -- [--write] [FOLDER ...]
 * Changes every figure of src/data and src/calc (or of the folders named) by 1 % or one step and asks the published answers
 * of tests/reference. Prints what none of them noticed; --write keeps it in tests/recorded/unnoticed-figures.md. Exit 0: a
 * survivor is a question to a reader, not a failure.
 */
import { writeFileSync } from "node:fs";
import { Perturbation } from "./perturb.ts";
import { switchedBundle } from "./switched-bundle.ts";
import { unnoticedPage } from "./unnoticed-page.ts";

const FILE = "tests/recorded/unnoticed-figures.md";

const words = process.argv.slice(2);
const folders = words.filter((word) => word !== "--write");
const perturbation = new Perturbation(await switchedBundle(process.cwd(), "tests/reference/judge.ts"));
const verdicts = perturbation.bundle.constants
  .filter(({ file }) => folders.length === 0 || folders.some((folder) => file.startsWith(folder)))
  .map((constant, i, { length }) => {
    if (i % 100 === 0) console.error(`${i} of ${length}`);
    return perturbation.verdict(constant);
  });
const page = unnoticedPage(verdicts, perturbation.rows);
console.log(page);
if (words.includes("--write")) writeFileSync(FILE, page);
