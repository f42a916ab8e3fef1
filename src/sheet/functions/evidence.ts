import aggregates from "./evidence/aggregates.json" with { type: "json" };
import annuities from "./evidence/annuities.json" with { type: "json" };
import arrays from "./evidence/arrays.json" with { type: "json" };
import bessel from "./evidence/bessel.json" with { type: "json" };
import bonds from "./evidence/bonds.json" with { type: "json" };
import cashFlows from "./evidence/cash-flows.json" with { type: "json" };
import complex from "./evidence/complex.json" with { type: "json" };
import conditional from "./evidence/conditional.json" with { type: "json" };
import convert from "./evidence/convert.json" with { type: "json" };
import countingDistributions from "./evidence/counting-distributions.json" with { type: "json" };
import databases from "./evidence/databases.json" with { type: "json" };
import dates from "./evidence/dates.json" with { type: "json" };
import depreciation from "./evidence/depreciation.json" with { type: "json" };
import distributions from "./evidence/distributions.json" with { type: "json" };
import grouping from "./evidence/grouping.json" with { type: "json" };
import information from "./evidence/information.json" with { type: "json" };
import lambdas from "./evidence/lambdas.json" with { type: "json" };
import logical from "./evidence/logical.json" with { type: "json" };
import lookup from "./evidence/lookup.json" with { type: "json" };
import mathematics from "./evidence/mathematics.json" with { type: "json" };
import matrices from "./evidence/matrices.json" with { type: "json" };
import numberBases from "./evidence/number-bases.json" with { type: "json" };
import pivots from "./evidence/pivots.json" with { type: "json" };
import references from "./evidence/references.json" with { type: "json" };
import regex from "./evidence/regex.json" with { type: "json" };
import regression from "./evidence/regression.json" with { type: "json" };
import rounding from "./evidence/rounding.json" with { type: "json" };
import samplingDistributions from "./evidence/sampling-distributions.json" with { type: "json" };
import securities from "./evidence/securities.json" with { type: "json" };
import statistics from "./evidence/statistics.json" with { type: "json" };
import subtotals from "./evidence/subtotals.json" with { type: "json" };
import text from "./evidence/text.json" with { type: "json" };
import textFormat from "./evidence/text-format.json" with { type: "json" };
import textSplit from "./evidence/text-split.json" with { type: "json" };
import volatiles from "./evidence/volatiles.json" with { type: "json" };
import workdays from "./evidence/workdays.json" with { type: "json" };

/** What another program answers for a formula; never this engine. */
export interface Evidence {
  readonly function: string;
  /** Reads the cells of grid.json where it names cells. */
  readonly formula: string;
  /** A value, an error as {"error": code}, or rows. */
  readonly value: unknown;
  readonly origin: string;
}

const rows: readonly Evidence[] = [
  aggregates,
  annuities,
  arrays,
  bessel,
  bonds,
  cashFlows,
  complex,
  conditional,
  convert,
  countingDistributions,
  databases,
  dates,
  depreciation,
  distributions,
  grouping,
  information,
  lambdas,
  logical,
  lookup,
  mathematics,
  matrices,
  numberBases,
  pivots,
  references,
  regex,
  regression,
  rounding,
  samplingDistributions,
  securities,
  statistics,
  subtotals,
  text,
  textFormat,
  textSplit,
  volatiles,
  workdays,
].flat();

export const evidenceByFunction: ReadonlyMap<string, readonly Evidence[]> = new Map(
  [...new Set(rows.map((row) => row.function))].map((name) => [name, rows.filter((row) => row.function === name)]),
);
