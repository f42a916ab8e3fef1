import fc from "fast-check";
import { expect, test } from "vitest";
import { noCustomFunctions } from "../../src/sheet/evaluate/custom-functions.ts";
import { worksheetFunctions } from "../../src/sheet/functions/registry.ts";
import { evaluateFormula } from "../../src/sheet/recalculate/calculate-one.ts";

/** Chance has no two equal answers; arrays of the largest size allowed would be all that the test waits for. */
const LEFT_OUT = ["RAND", "RANDBETWEEN", "RANDARRAY", "SEQUENCE", "EXPAND", "MAKEARRAY", "MUNIT"];
const functions = worksheetFunctions
  .names()
  .filter((name) => !LEFT_OUT.includes(name))
  .flatMap((name) => worksheetFunctions.find(name) ?? []);
/** Ends of ranges, wrong kinds, errors, nothing, and whole numbers far beyond what a loop should follow. */
const argument = fc.constantFrom(
  ..."0,1,-1,0.5,12,255,1E+15,-1E+22,1E+308,-1E+308,1E-308,2958466,-2958466,1E+9,TRUE,1/0,#N/A,".split(","),
  ...['""', '"a"', '"3"', '"[<"', '"*~"', '"0.0%"', '"1+2i"', '">1"', "{0,0,0}", "{1;2;3}", '{1,"a";TRUE,#N/A}'],
  ...["{-5,1E+300}", "LAMBDA(x,x)", "LAMBDA(x,y,x+y)", "SUM"],
);
const call = fc
  .constantFrom(...functions)
  .chain(({ name, least, most }) =>
    fc
      .array(argument, { minLength: least, maxLength: Math.min(most, least + 3) })
      .map((args) => `${name}(${args.join(",")})`),
  );

test("no function answers infinity, NaN or nothing, and none throws", () => {
  fc.assert(
    fc.property(call, (formula) => {
      const { value } = evaluateFormula(formula, noCustomFunctions);
      const all = Array.isArray(value) ? value.flat() : [value];
      expect(
        all.every((one) => (typeof one === "number" ? Number.isFinite(one) : one !== undefined)),
        formula,
      ).toBe(true);
    }),
    { numRuns: 3_000 },
  );
});

test.each([
  "BINOM.DIST.RANGE(1E+308,0.5,1E+300)",
  "BINOM.INV(1E+308,0.5,0.5)",
  "HYPGEOM.DIST(1E+300,1E+300,1E+300,1E+301,TRUE)",
])("%s comes to an end where counting on by one changes nothing", (formula) => {
  expect(evaluateFormula(formula, noCustomFunctions).value).toBeDefined();
});
