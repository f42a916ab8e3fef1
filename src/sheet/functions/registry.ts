import type { WorksheetFunction, WorksheetFunctions } from "../evaluate/frame.ts";
import { aggregates } from "./aggregates.ts";
import { annuities } from "./annuities.ts";
import { arrays } from "./arrays.ts";
import { bessel } from "./bessel.ts";
import { bonds } from "./bonds.ts";
import { cashFlows } from "./cash-flows.ts";
import { complex } from "./complex.ts";
import { conditional } from "./conditional.ts";
import { convert } from "./convert.ts";
import { countingDistributions } from "./counting-distributions.ts";
import { databases } from "./databases.ts";
import { dates } from "./dates.ts";
import { depreciation } from "./depreciation.ts";
import { distributions } from "./distributions.ts";
import { grouping } from "./grouping.ts";
import { information } from "./information.ts";
import { lambdas } from "./lambdas.ts";
import { logical } from "./logical.ts";
import { lookup } from "./lookup.ts";
import { mathematics } from "./mathematics.ts";
import { matrices } from "./matrices.ts";
import { numberBases } from "./number-bases.ts";
import { pivots } from "./pivots.ts";
import { references } from "./references.ts";
import { regex } from "./regex.ts";
import { regression } from "./regression.ts";
import { rounding } from "./rounding.ts";
import { samplingDistributions } from "./sampling-distributions.ts";
import { securities } from "./securities.ts";
import { statistics } from "./statistics.ts";
import { subtotals } from "./subtotals.ts";
import { text } from "./text.ts";
import { textFormat } from "./text-format.ts";
import { textSplit } from "./text-split.ts";
import { volatiles } from "./volatiles.ts";
import { workdays } from "./workdays.ts";

const families = (): Readonly<Record<string, readonly WorksheetFunction[]>> => ({
  aggregates,
  convert,
  bonds,
  bessel,
  annuities,
  cashFlows,
  complex,
  countingDistributions,
  databases,
  pivots,
  depreciation,
  distributions,
  numberBases,
  regression,
  samplingDistributions,
  securities,
  arrays,
  conditional,
  dates,
  grouping,
  information,
  lambdas,
  logical,
  lookup,
  mathematics,
  matrices,
  references,
  regex,
  rounding,
  statistics,
  subtotals,
  text,
  textFormat,
  textSplit,
  volatiles,
  workdays,
});

let byName: Map<string, WorksheetFunction> | undefined;

// Filled on first use.
function table(): Map<string, WorksheetFunction> {
  byName ??= new Map(Object.values(families()).flatMap((family) => family.map((f) => [f.name, f] as const)));
  return byName;
}

/** Spellings of operators in files (A1#, @A1), not functions a person calls; LET and LAMBDA are syntax but called. */
const OPERATORS = ["ANCHORARRAY", "SINGLE"];

export const worksheetFunctionNames = (): readonly string[] =>
  [...table().keys(), "LAMBDA", "LET"].filter((name) => !OPERATORS.includes(name)).sort();

/** What the engine hands to its compiler. */
export const worksheetFunctions: WorksheetFunctions = {
  find: (name) => table().get(name),
  names: worksheetFunctionNames,
};
