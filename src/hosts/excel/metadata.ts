/** functions.json: what Excel's formula bar knows about the functions, made from the catalogue. */

import { type AnyParameter, type AnyRecord, publicName } from "../../cells/record/record.ts";
import { resultUnits } from "../../cells/record/result-units.ts";
import { SCALES } from "../../units/system.ts";
import { spills } from "./excel-function.ts";
import { functionId } from "./function-id.ts";

interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type: "any";
  readonly dimensionality: "matrix";
  readonly optional?: true;
}
interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly result: { readonly dimensionality: "matrix" | "scalar" };
  readonly options?: { readonly cancelable: true };
}

/** "in or mm" behind a description that does not say it already. */
function unitHint({ quantity }: AnyParameter): string {
  if (!quantity) return "";
  const { in: inch, mm } = SCALES[quantity];
  return inch.name === mm.name ? ` (${inch.name})` : ` (${inch.name} or ${mm.name})`;
}

const parameterMetadata = ([key, parameter]: [string, AnyParameter]): ParameterMetadata => ({
  name: publicName(key),
  description: `${parameter.description}${unitHint(parameter)}${parameter.default === null ? "" : `. Default ${JSON.stringify(parameter.default)}`}`,
  type: "any",
  dimensionality: "matrix",
  ...(parameter.optional && { optional: true }),
});

function describe(record: AnyRecord): string {
  const units = resultUnits(record)?.replace(" | ", " or ");
  return units ? `${record.question} Answers ${units}.` : record.question;
}

/** `guide` is the page that explains a function; its name is added as the fragment. */
export const functionMetadata = (record: AnyRecord, guide: string): FunctionMetadata => ({
  id: functionId(record.name),
  name: record.name,
  description: describe(record),
  helpUrl: `${guide}#${record.name}`,
  parameters: Object.entries(record.parameters).map(parameterMetadata),
  result: { dimensionality: spills(record) ? "matrix" : "scalar" },
  ...(record.long && { options: { cancelable: true } }),
});

/** Error cells are let in, so that one bad row does not take the whole block with it. */
export const functionsJson = (records: readonly AnyRecord[], guide: string) => ({
  allowErrorForDataTypeAny: true,
  functions: records.map((record) => functionMetadata(record, guide)),
});
