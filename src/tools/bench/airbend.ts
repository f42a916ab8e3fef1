import { readFileSync } from "node:fs";
import type { AirBendInput } from "../../calc/bend/mechanics/air-bend-input.ts";
import { itemAt } from "../../units/certain.ts";
import { degrees, megapascals, mm } from "../../units/quantity.ts";
import { bandAgainstRandomSolves } from "./airbend-band.ts";
import { answerCase, type CaseAnswer, ERRORS } from "./airbend-case.ts";
import { timeSolves } from "./airbend-shop-range.ts";
import { benchOptions } from "./options.ts";

const quantile = (sorted: readonly number[], share: number): number | null =>
  sorted.length === 0 ? null : itemAt(sorted, Math.min(sorted.length - 1, Math.floor(share * sorted.length)));

/** Root mean square, largest magnitude and mean of the errors that have a reference. */
function spread(errors: readonly number[]) {
  if (errors.length === 0) return { rms: null, max: null, mean: null };
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    rms: Math.sqrt(mean(errors.map((error) => error ** 2))),
    max: Math.max(...errors.map(Math.abs)),
    mean: mean(errors),
  };
}

function summarise(answers: readonly CaseAnswer[]) {
  const solved = answers.filter((answer) => answer.ok);
  const times = solved.map((answer) => answer.solve_ms).sort((a, b) => a - b);
  const errorsOf = (some: typeof solved) =>
    Object.fromEntries(ERRORS.map((name) => [name, spread(some.flatMap(({ error }) => error[name] ?? []))] as const));
  const inside = solved.filter((answer) => answer.inside);
  const among = solved.filter(({ distance_to_others }) => distance_to_others <= 1);
  return {
    cases: answers.length,
    refused: answers.length - solved.length,
    inside: { cases: inside.length, ...errorsOf(inside) },
    inside_without_itself: { cases: among.length, ...errorsOf(among) },
    ...errorsOf(solved),
    solve_ms: { median: quantile(times, 0.5), p99: quantile(times, 0.99) },
  };
}

/** An A36-like sheet of 3 mm in a 24 mm die, with deviations a stock of sheets may show (common practice). */
const BAND_EXAMPLE: AirBendInput = {
  hardening: { strength: megapascals(702.3), exponent: 0.1556 },
  modulus: megapascals(207000),
  poisson: 0.3,
  thickness: mm(3),
  dieOpening: mm(24),
  dieShoulder: mm(2),
  dieAngle: degrees(85),
  punchNose: mm(1.5),
  friction: 0.1,
};
const BAND_DEVIATIONS = { thickness: mm(0.1), strength: megapascals(50), exponent: 0.03, dieOpening: mm(0.2) };

function bandLines(solves: number) {
  return [{ finalAngle: degrees(90) }, { stroke: mm(9.9) }].map((target) => ({
    band: { target, solves, share: bandAgainstRandomSolves(BAND_EXAMPLE, target, BAND_DEVIATIONS, solves, 1) },
  }));
}

const text = (value: number | null, digits = 3) => (value === null ? "-" : value.toFixed(digits)).padStart(11);

function asText(line: object): string {
  if (!("id" in line)) return JSON.stringify(line);
  const answer = line as CaseAnswer;
  const name = String(answer.id).padEnd(12);
  if (!answer.ok) return `${name} refused: ${answer.message}`;
  return (
    name +
    answer.regime.padEnd(8) +
    (answer.inside ? "inside " : "outside").padEnd(9) +
    answer.distance_to_others.toFixed(2).padStart(8) +
    ERRORS.map((error) => text(answer.error[error])).join("")
  );
}

function run(): number {
  const {
    solves,
    band,
    operand: file,
    json,
  } = benchOptions("bench:airbend [FILE] [--json] [--solves N] [--band N]", {
    operand: "[FILE]",
    numbers: { solves: { usual: 0, least: 0 }, band: { usual: 0, least: 0 } },
  });
  if (file === "" && solves === 0 && band === 0) return refuse("FILE, --solves or --band must be given");

  const print = (line: object) => process.stdout.write(`${json ? JSON.stringify(line) : asText(line)}\n`);
  if (solves > 0) {
    const { refused, times } = timeSolves(solves);
    print({ solves: { count: times.length, refused, median_ms: quantile(times, 0.5), p99_ms: quantile(times, 0.99) } });
  }
  if (band > 0) for (const line of bandLines(band)) print(line);
  if (file === "") return 0;

  let cases: unknown;
  try {
    const content: unknown = JSON.parse(readFileSync(file, "utf8"));
    cases = Array.isArray(content) ? content : (content as { cases?: unknown } | null)?.cases;
  } catch (reason) {
    return refuse(`FILE must be a readable JSON file; got ${file}; ${(reason as Error).message}`);
  }
  if (!Array.isArray(cases)) return refuse(`FILE must hold an array of cases or {"cases": [...]}; got ${file}`);
  // The compiler warms up on the cases themselves, so that the times are those of a workbook that is recalculated.
  for (let i = 0; i < Math.min(500, 20 * cases.length); i++) answerCase(cases[i % cases.length]);
  if (!json)
    process.stdout.write(
      `${"id".padEnd(12)}${"regime".padEnd(8)}${"compared".padEnd(9)}${"others".padStart(8)}${ERRORS.map((e) => e.slice(0, 11).padStart(11)).join("")}\n`,
    );
  const answers = cases.map((value) => {
    const answer = answerCase(value);
    print(answer);
    return answer;
  });
  print({ summary: summarise(answers) });
  return 0;
}

function refuse(problem: string): number {
  process.stderr.write(`${problem}\n`);
  return 2;
}

process.exitCode = run();
