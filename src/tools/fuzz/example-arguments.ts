/** A call that is known to be answered: the arguments of a record's own example. */
import type { Argument } from "../../cells/call/call.ts";
import { shopFunctions } from "../../cells/catalogue.ts";
import type { AnyRecord } from "../../cells/record/record.ts";
import { evaluateFormula } from "../../sheet/recalculate/calculate-one.ts";
import type { CellMatrix } from "../../units/cell.ts";

const known = new Map<string, Argument[]>();

export function exampleArguments(record: AnyRecord): Argument[] {
  const found = known.get(record.name) ?? read(record);
  known.set(record.name, found);
  return [...found];
}

function read({ name, example: { formula } }: AnyRecord): Argument[] {
  const start = formula.indexOf(`SHOP.${name}(`) + `SHOP.${name}(`.length;
  return split(formula.slice(start)).map((text) => {
    if (text === "") return null;
    // Tables are written as stacked rows.
    if (text.startsWith("VSTACK("))
      return split(text.slice("VSTACK(".length)).flatMap((row) => evaluated(row) as CellMatrix);
    return evaluated(text);
  });
}

const evaluated = (text: string): Argument => evaluateFormula(`=${text}`, shopFunctions).value;

/** The arguments up to the bracket that closes the call. */
function split(text: string): string[] {
  const parts: string[] = [];
  let part = "";
  let depth = 0;
  let quoted = false;
  for (const sign of text) {
    if (sign === '"') quoted = !quoted;
    if (!quoted && (sign === ")" || sign === "}")) depth--;
    if (depth < 0) break;
    if (!quoted && (sign === "(" || sign === "{")) depth++;
    if (sign === "," && depth === 0 && !quoted) {
      parts.push(part.trim());
      part = "";
    } else part += sign;
  }
  const last = part.trim();
  return parts.length === 0 && last === "" ? [] : [...parts, last];
}
