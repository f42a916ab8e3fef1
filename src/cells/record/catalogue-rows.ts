/** The catalogue as plain rows: for the FUNCTIONS spill, the sample's Functions sheet and the command line. */

import { type AnyRecord, publicName } from "./record.ts";
import { allRecords } from "./registry.ts";
import { resultUnits, unitChoice } from "./result-units.ts";

interface ParameterRow {
  readonly name: string;
  readonly type: string;
  /** "in | mm" where a plain number follows `units`; null where it has no unit. */
  readonly unit: string | null;
  readonly optional: boolean;
  readonly default: unknown;
  readonly description: string;
}

interface CatalogueRow {
  readonly name: string;
  readonly question: string;
  readonly parameters: readonly ParameterRow[];
  readonly unit: string | null;
  readonly example: string;
  readonly source: string;
  readonly contract: boolean;
}

export const catalogueEntry = (record: AnyRecord): CatalogueRow => ({
  name: record.name,
  question: record.question,
  parameters: Object.entries(record.parameters).map(
    ([key, { type, quantity, optional, default: fallback, description }]) => ({
      name: publicName(key),
      type,
      unit: quantity ? unitChoice(quantity) : null,
      optional,
      default: fallback,
      description,
    }),
  ),
  unit: resultUnits(record),
  example: record.example.formula,
  source: record.source,
  contract: record.contract === true,
});

export const catalogueRows = (): string[][] =>
  allRecords()
    .map(catalogueEntry)
    .map(({ name, question, parameters, unit, example, source }) => [
      `SHOP.${name}`,
      question,
      parameters.map(({ name: parameter, optional }) => (optional ? `[${parameter}]` : parameter)).join(", "),
      unit ?? "",
      example.replace(/^=/, ""), // a text that begins with "=" would be taken for a formula when it is copied
      source,
    ]);
