/** A function as the guide shows it: everything in words, made from its record. */

import { NAMESPACE } from "../../../cells/catalogue.ts";
import { type AnyParameter, type AnyRecord, publicName } from "../../../cells/record/record.ts";
import { resultUnits } from "../../../cells/record/result-units.ts";
import { firstOf } from "../../../units/certain.ts";
import { SCALES } from "../../../units/system.ts";

export interface GuideArgument {
  readonly name: string;
  readonly optional: boolean;
  readonly description: string;
  /** "length, in or mm"; one cell or a range follows from the shape. */
  readonly takes: string;
  /** What a blank means; undefined where there is nothing to say. */
  readonly blank: string | undefined;
}
export interface GuideEntry {
  readonly name: string;
  /** The first word of the name: functions are grouped by it. */
  readonly topic: string;
  readonly question: string;
  readonly syntax: string;
  readonly answers: string;
  readonly arguments: readonly GuideArgument[];
  readonly example: { readonly formula: string; readonly answer: string };
  readonly source: string;
}

const SHAPES = {
  cell: "",
  list: '; a range, or text such as "2; 3.5; 2"',
  table: "; a range with a header row",
  data: "; an edition, or a range with a header row",
} as const;

function takes({ type, quantity, shape }: AnyParameter): string {
  const words = type.replaceAll(" | ", " or ");
  if (!quantity) return words + SHAPES[shape];
  const { in: inch, mm } = SCALES[quantity];
  return `${words}, ${inch.name === mm.name ? inch.name : `${inch.name} or ${mm.name}`}${SHAPES[shape]}`;
}

const argument = ([key, parameter]: [string, AnyParameter]): GuideArgument => ({
  name: publicName(key),
  optional: parameter.optional,
  description: parameter.description,
  takes: takes(parameter),
  blank: parameter.default === null ? undefined : JSON.stringify(parameter.default),
});

function answersOf(record: AnyRecord): string {
  const { result } = record;
  if (result.kind === "row" || result.kind === "table") return `a block with columns ${result.columns.join(", ")}`;
  return resultUnits(record)?.replace(" | ", " or ") ?? "a value in the unit of the property";
}

export function guideEntry(record: AnyRecord): GuideEntry {
  const parameters = Object.entries(record.parameters).map(argument);
  const name = `${NAMESPACE}.${record.name}`;
  return {
    name,
    topic: firstOf(record.name.split(".")),
    question: record.question,
    syntax: `=${name}(${parameters.map((one) => (one.optional ? `[${one.name}]` : one.name)).join(", ")})`,
    answers: answersOf(record),
    arguments: parameters,
    example: { formula: record.example.formula, answer: String(record.example.answer) },
    source: record.source,
  };
}
