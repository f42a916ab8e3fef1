/**
 * Loaded before every test file while it judges changes. A plan is worked out once, and remembered, for all tests of a file,
 * or even before the first of them: so a change is there from the beginning, and what one test runs, all of the file judge.
 */
import fc from "fast-check";
import { afterAll, beforeEach, inject } from "vitest";

/** What the mutation tool keeps in the test's process: hits by change, by test. */
interface Kept {
  activeMutant?: string;
  readonly currentTestId?: string;
  readonly mutantCoverage?: { readonly perTest: Record<string, Record<string, number>> };
}

// That a change is noticed is enough: nobody reads the smallest bill that shows it.
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });

const told = inject as (key: string) => string;
const kept = (globalThis as unknown as Record<string, Kept>)[told("globalNamespace")] ?? {};
if (told("mode") === "mutant") kept.activeMutant = told("activeMutant");

// A store that a change lets double without end must not take the machine's memory.
const MOST_CELLS = 2 ** 24; // chosen: far above what any test fills
for (const name of ["Int32Array", "Float64Array", "Uint16Array"] as const) {
  const construct = (target: (typeof globalThis)[typeof name], args: unknown[]): object => {
    if (Number(args[0]) > MOST_CELLS) throw new RangeError(`${name} of ${args[0]}`);
    return Reflect.construct(target, args) as object;
  };
  Object.assign(globalThis, { [name]: new Proxy(globalThis[name], { construct }) });
}

const tests: string[] = [];
beforeEach(() => {
  if (kept.currentTestId !== undefined) tests.push(kept.currentTestId);
});
afterAll(() => {
  const perTest = kept.mutantCoverage?.perTest;
  if (!perTest) return;
  const ofAll = Object.assign({}, ...tests.map((test) => perTest[test]));
  for (const test of tests) perTest[test] = ofAll;
});
