import aggregates from "../../../../tests/reference/worksheet/aggregates.json" with { type: "json" };
import annuities from "../../../../tests/reference/worksheet/annuities.json" with { type: "json" };
import arrays from "../../../../tests/reference/worksheet/arrays.json" with { type: "json" };
import bessel from "../../../../tests/reference/worksheet/bessel.json" with { type: "json" };
import bonds from "../../../../tests/reference/worksheet/bonds.json" with { type: "json" };
import cashFlows from "../../../../tests/reference/worksheet/cash-flows.json" with { type: "json" };
import complex from "../../../../tests/reference/worksheet/complex.json" with { type: "json" };
import conditional from "../../../../tests/reference/worksheet/conditional.json" with { type: "json" };
import convert from "../../../../tests/reference/worksheet/convert.json" with { type: "json" };
import countingDistributions from "../../../../tests/reference/worksheet/counting-distributions.json" with {
  type: "json",
};
import databases from "../../../../tests/reference/worksheet/databases.json" with { type: "json" };
import dates from "../../../../tests/reference/worksheet/dates.json" with { type: "json" };
import depreciation from "../../../../tests/reference/worksheet/depreciation.json" with { type: "json" };
import distributions from "../../../../tests/reference/worksheet/distributions.json" with { type: "json" };
import information from "../../../../tests/reference/worksheet/information.json" with { type: "json" };
import lambdas from "../../../../tests/reference/worksheet/lambdas.json" with { type: "json" };
import logical from "../../../../tests/reference/worksheet/logical.json" with { type: "json" };
import lookup from "../../../../tests/reference/worksheet/lookup.json" with { type: "json" };
import mathematics from "../../../../tests/reference/worksheet/mathematics.json" with { type: "json" };
import matrices from "../../../../tests/reference/worksheet/matrices.json" with { type: "json" };
import numberBases from "../../../../tests/reference/worksheet/number-bases.json" with { type: "json" };
import references from "../../../../tests/reference/worksheet/references.json" with { type: "json" };
import regression from "../../../../tests/reference/worksheet/regression.json" with { type: "json" };
import rounding from "../../../../tests/reference/worksheet/rounding.json" with { type: "json" };
import samplingDistributions from "../../../../tests/reference/worksheet/sampling-distributions.json" with {
  type: "json",
};
import securities from "../../../../tests/reference/worksheet/securities.json" with { type: "json" };
import statistics from "../../../../tests/reference/worksheet/statistics.json" with { type: "json" };
import subtotals from "../../../../tests/reference/worksheet/subtotals.json" with { type: "json" };
import text from "../../../../tests/reference/worksheet/text.json" with { type: "json" };
import textFormat from "../../../../tests/reference/worksheet/text-format.json" with { type: "json" };
import textSplit from "../../../../tests/reference/worksheet/text-split.json" with { type: "json" };
import volatiles from "../../../../tests/reference/worksheet/volatiles.json" with { type: "json" };
import workdays from "../../../../tests/reference/worksheet/workdays.json" with { type: "json" };

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
  information,
  lambdas,
  logical,
  lookup,
  mathematics,
  matrices,
  numberBases,
  references,
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
